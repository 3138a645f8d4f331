using System.Globalization;
using System.Text;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// One place in a sheet's text, whatever the syntax it was written in: a map, a list, or a scalar kept as typed.
/// Cannot be changed once its tree is built; equal only to itself.
/// </summary>
public sealed class SheetNode
{
    /// <summary>Longest part of a name that is shown in a path.</summary>
    private const int ShownNameLength = 40;

    private readonly List<SheetNode> children = [];
    private readonly Dictionary<string, SheetNode>? byName;

    internal SheetNode(
        NodeKind kind, string literal, SheetNode? parent, string? name, int index, int line, int column)
    {
        Kind = kind;
        Literal = literal;
        Parent = parent;
        Name = name;
        Index = index;
        Line = line;
        Column = column;
        byName = kind == NodeKind.Map ? new Dictionary<string, SheetNode>(StringComparer.Ordinal) : null;
    }

    /// <summary>What this place holds.</summary>
    public NodeKind Kind { get; }

    /// <summary>The scalar as it was typed, without quotes and escapes; empty for a map, a list and null.</summary>
    public string Literal { get; }

    /// <summary>The map or list that holds this node; null for the root.</summary>
    public SheetNode? Parent { get; }

    /// <summary>The name within the parent map; null for a list's item and for the root.</summary>
    public string? Name { get; }

    /// <summary>Zero-based place within the parent.</summary>
    public int Index { get; }

    /// <summary>Line in the text, from 1; 0 when it is not known.</summary>
    public int Line { get; }

    /// <summary>Column in the line, in characters from 1; 0 when it is not known.</summary>
    public int Column { get; }

    /// <summary>The fields of a map or the items of a list in the order written; empty for a scalar.</summary>
    public IReadOnlyList<SheetNode> Children => children;

    /// <summary>Where the node is, from the root: names joined by dots, items counted from zero, e.g.
    /// <c>runs[2].pulses</c>; empty for the root. Very long names are shown shortened.</summary>
    public string Path
    {
        get
        {
            var parts = new Stack<SheetNode>();
            for (var node = this; node.Parent is not null; node = node.Parent) parts.Push(node);

            var path = new StringBuilder();
            foreach (var part in parts)
            {
                if (part.Name is null)
                    path.Append(CultureInfo.InvariantCulture, $"[{part.Index}]");
                else
                    path.Append(path.Length == 0 ? "" : ".").Append(Excerpt.Of(part.Name, ShownNameLength));
            }

            return path.ToString();
        }
    }

    /// <summary>The field of a map by its exact name; null when there is none or this is not a map.</summary>
    public SheetNode? Find(string name) => byName is not null && byName.TryGetValue(name, out var node) ? node : null;

    /// <inheritdoc/>
    public override string ToString() => $"{Path}: {Kind} {Excerpt.Of(Literal)}";

    /// <summary>Adds a child while the tree is being built; false when a map has the name already.</summary>
    internal bool Add(SheetNode child)
    {
        if (byName is not null && !byName.TryAdd(child.Name!, child)) return false;

        children.Add(child);
        return true;
    }
}
