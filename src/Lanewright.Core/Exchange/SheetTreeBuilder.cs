using Lanewright.Core.Findings;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// Builds a <see cref="SheetTree"/> from what a syntax's reader meets, in the order of the text: the one place that
/// keeps the limits of <see cref="SheetLimits"/> and notices a name given twice. Once <see cref="Stopped"/>, further
/// calls do nothing and the tree has no root. Lines and columns count from 1; 0 means not known.
/// </summary>
public sealed class SheetTreeBuilder
{
    private readonly Stack<SheetNode> open = new();
    private readonly List<Finding> findings = [];
    private SheetNode? root;
    private string? name;
    private int nameLine;
    private int nameColumn;
    private int nodes;
    private int duplicates;

    /// <summary>Whether the text was refused; the reader should read no further.</summary>
    public bool Stopped { get; private set; }

    /// <summary>A map begins here.</summary>
    public void Map(int line, int column) => Begin(NodeKind.Map, line, column);

    /// <summary>A list begins here.</summary>
    public void List(int line, int column) => Begin(NodeKind.List, line, column);

    /// <summary>The name of the map's next field.</summary>
    /// <exception cref="InvalidOperationException">The innermost open node is not a map, or the last name has no
    /// value yet.</exception>
    public void Name(string name, int line, int column)
    {
        ArgumentNullException.ThrowIfNull(name);
        if (Stopped) return;
        if (this.name is not null || !open.TryPeek(out var parent) || parent.Kind != NodeKind.Map)
            throw new InvalidOperationException("A name belongs to a map, one before each value.");
        (this.name, nameLine, nameColumn) = (name, line, column);
    }

    /// <summary>A value that is neither a map nor a list.</summary>
    public void Scalar(NodeKind kind, string literal, int line, int column)
    {
        ArgumentNullException.ThrowIfNull(literal);
        if (kind is NodeKind.Map or NodeKind.List)
            throw new ArgumentOutOfRangeException(nameof(kind), kind, "A scalar is neither a map nor a list.");
        Add(kind, literal, line, column);
    }

    /// <summary>The innermost open map or list ends.</summary>
    /// <exception cref="InvalidOperationException">Nothing is open, or a name has no value.</exception>
    public void End()
    {
        if (Stopped) return;
        if (name is not null || open.Count == 0)
            throw new InvalidOperationException("Nothing is open, or a name has no value yet.");
        open.Pop();
    }

    /// <summary>Adds a finding that leaves the tree standing.</summary>
    public void Report(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        findings.Add(finding);
    }

    /// <summary>Refuses the text for a reason.</summary>
    public void Refuse(Finding finding)
    {
        Report(finding);
        Stopped = true;
    }

    /// <summary>The tree and its findings.</summary>
    /// <exception cref="InvalidOperationException">A map or list is still open.</exception>
    public SheetTree Build()
    {
        if (!Stopped && open.Count > 0) throw new InvalidOperationException("A map or list is still open.");
        if (!Stopped && root is null) Refuse(ReadFindings.Empty.At(""));
        if (duplicates > SheetLimits.Findings)
            findings.Add(ReadFindings.MoreFindings.At("", Place.Count("count", duplicates - SheetLimits.Findings)));
        return new SheetTree(Stopped ? null : root, findings);
    }

    private void Begin(NodeKind kind, int line, int column)
    {
        if (Add(kind, "", line, column) is not { } node) return;
        if (open.Count == SheetLimits.Depth)
            Refuse(ReadFindings.TooDeep.At(
                "", [Place.Count("limit", SheetLimits.Depth), .. Place.Of(line, column)]));
        else
            open.Push(node);
    }

    private SheetNode? Add(NodeKind kind, string literal, int line, int column)
    {
        if (Stopped) return null;
        if (++nodes > SheetLimits.Nodes)
        {
            Refuse(ReadFindings.TooManyParts.At("", Place.Count("limit", SheetLimits.Nodes)));
            return null;
        }

        var parent = open.TryPeek(out var innermost) ? innermost : null;
        if (parent is null ? root is not null : parent.Kind == NodeKind.Map && name is null)
            throw new InvalidOperationException("A tree has one root, and each field of a map has a name.");

        var node = new SheetNode(kind, literal, parent, name, parent?.Children.Count ?? 0, line, column);
        if (parent is null) root = node;
        else if (!parent.Add(node) && ++duplicates <= SheetLimits.Findings) ReportDuplicate(node);
        name = null;
        return node;
    }

    private void ReportDuplicate(SheetNode node)
    {
        Report(ReadFindings.DuplicateField.At(
            node.Path,
            [FindingValue.Text("name", Excerpt.Of(node.Name)), .. Place.Of(nameLine, nameColumn)]));
    }
}
