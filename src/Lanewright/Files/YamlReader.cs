using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Text;
using YamlDotNet.Core.Events;
using YamlDotNet.Core;

namespace Lanewright.Files;

/// <summary>Turns the events of a YAML parser into a tree, one by one, and refuses what a sheet does not use.</summary>
internal sealed class YamlReader(SheetTreeBuilder builder)
{
    private readonly Stack<Due> open = new();
    private bool sawDocument;

    internal void Take(ParsingEvent one)
    {
        var (line, column) = ((int)one.Start.Line, (int)one.Start.Column);
        var isName = one is NodeEvent && TakesName();
        switch (one)
        {
            case DocumentStart when sawDocument:
                Refuse(ReadFindings.SeveralDocuments, one);
                break;
            case DocumentStart:
                sawDocument = true;
                break;
            case AnchorAlias alias:
                Refuse(ReadFindings.YamlAlias, one, "*" + alias.Value);
                break;
            case NodeEvent { Anchor.IsEmpty: false } node:
                Refuse(ReadFindings.YamlAlias, one, "&" + node.Anchor);
                break;
            case NodeEvent { Tag.IsEmpty: false } node:
                Refuse(ReadFindings.YamlTag, one, node.Tag.ToString());
                break;
            case Scalar { Style: ScalarStyle.Plain, Value: "" } when isName:
                // A row that starts with a colon; the parser loses its value, so nothing after it can be trusted.
                Refuse(ReadFindings.YamlName, one);
                break;
            case Scalar name when isName:
                builder.Name(name.Value, line, column);
                break;
            case Scalar scalar:
                var isNull = scalar.Style == ScalarStyle.Plain && scalar.Value is ("" or "~" or "null" or "Null" or "NULL");
                builder.Scalar(isNull ? NodeKind.Null : NodeKind.Text, isNull ? "" : scalar.Value, line, column);
                break;
            case MappingStart or SequenceStart when isName:
                Refuse(ReadFindings.YamlName, one);
                break;
            case MappingStart:
                builder.Map(line, column);
                open.Push(Due.Name);
                break;
            case SequenceStart:
                builder.List(line, column);
                open.Push(Due.Item);
                break;
            case MappingEnd or SequenceEnd:
                open.Pop();
                builder.End();
                break;
        }
    }

    /// <summary>Whether the node that comes is a map's name. In a map, names and values take turns.</summary>
    private bool TakesName()
    {
        if (open.Count == 0 || open.Peek() == Due.Item) return false;
        var due = open.Pop();
        open.Push(due == Due.Name ? Due.Value : Due.Name);
        return due == Due.Name;
    }

    private void Refuse(FindingKind kind, ParsingEvent at, string? near = null)
    {
        var place = Place.Of((int)at.Start.Line, (int)at.Start.Column);
        builder.Refuse(kind.At("", near is null ? place : [FindingValue.Text("near", Excerpt.Of(near, 20)), .. place]));
    }

    private enum Due
    {
        Item,
        Name,
        Value,
    }
}
