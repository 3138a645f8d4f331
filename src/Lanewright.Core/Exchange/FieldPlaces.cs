using Lanewright.Core.Findings;

namespace Lanewright.Core.Exchange;

/// <summary>
/// A tree that grows row by row, in whatever order the rows name its places; at the end it is built as a
/// <see cref="SheetTree"/> in the order in which the places were first named.
/// </summary>
public sealed class FieldPlaces
{
    private readonly Spot root = new(NodeKind.Map, 1);
    private readonly List<Finding> findings = [];

    /// <summary>Adds a finding about the text itself.</summary>
    public void Report(Finding finding) => findings.Add(finding);

    /// <summary>How many items the list of a name at the root has; 0 when there is none.</summary>
    public int Count(string list) =>
        root.ByName.GetValueOrDefault(list) is { Kind: NodeKind.List } spot ? spot.Fields.Count : 0;

    /// <summary>Puts a scalar, or an empty group, at a path; a place that is taken gives a finding.</summary>
    public void Put(string path, IReadOnlyList<PathStep> steps, Spot value)
    {
        var spot = root;
        for (var i = 0; i < steps.Count; i++)
        {
            var wanted = steps[i].Name is null ? NodeKind.List : NodeKind.Map;
            if (spot.Kind != wanted)
            {
                Report(ReadFindings.CsvClash, path, value);
                return;
            }

            var isLast = i == steps.Count - 1;
            var next = Find(spot, steps[i]);
            if (next is null)
            {
                if (wanted == NodeKind.List && steps[i].Index != spot.Fields.Count)
                {
                    Report(
                        ReadFindings.CsvOrder, path, value, Place.Count("count", spot.Fields.Count),
                        Place.Count("number", steps[i].Index));
                    return;
                }

                next = isLast ? value : new Spot(steps[i + 1].Name is null ? NodeKind.List : NodeKind.Map, value.Line);
                spot.Add(steps[i].Name, next);
            }
            else if (isLast)
            {
                if (next.Kind is NodeKind.Map or NodeKind.List) Report(ReadFindings.CsvClash, path, value);
                else Report(ReadFindings.DuplicateField, path, value, FindingValue.Text("name", path));
                return;
            }

            spot = next;
        }
    }

    /// <summary>The tree, with everything that was found on the way.</summary>
    public SheetTree Build()
    {
        var builder = new SheetTreeBuilder();
        foreach (var finding in findings.Take(SheetLimits.Findings)) builder.Report(finding);
        if (findings.Count > SheetLimits.Findings)
            builder.Report(ReadFindings.MoreFindings.At("", Place.Count("count", findings.Count - SheetLimits.Findings)));
        if (root.Fields.Count == 0 && findings.Count == 0) builder.Refuse(ReadFindings.Empty.At(""));
        Write(root, builder);
        return builder.Build();
    }

    // Paths are at most as deep as a sheet may be, so the recursion is bounded.
    private static void Write(Spot spot, SheetTreeBuilder builder)
    {
        if (spot.Kind is not (NodeKind.Map or NodeKind.List))
        {
            builder.Scalar(spot.Kind, spot.Literal, spot.Line, 0);
            return;
        }

        if (spot.Kind == NodeKind.Map) builder.Map(spot.Line, 0);
        else builder.List(spot.Line, 0);
        foreach (var (name, field) in spot.Fields)
        {
            if (name is not null) builder.Name(name, field.Line, 0);
            Write(field, builder);
        }

        builder.End();
    }

    private static Spot? Find(Spot spot, PathStep step) =>
        step.Name is not null ? spot.ByName.GetValueOrDefault(step.Name)
        : step.Index < spot.Fields.Count ? spot.Fields[step.Index].Spot
        : null;

    private void Report(FindingKind kind, string path, Spot value, params FindingValue[] values) =>
        Report(kind.At(path, [.. values, .. Place.Of(value.Line, 0)]));

    /// <summary>A place of the growing tree.</summary>
    public sealed class Spot(NodeKind kind, int line, string literal = "")
    {
        internal NodeKind Kind => kind;

        internal int Line => line;

        internal string Literal => literal;

        internal List<(string? Name, Spot Spot)> Fields { get; } = [];

        internal Dictionary<string, Spot> ByName { get; } = new(StringComparer.Ordinal);

        internal void Add(string? name, Spot spot)
        {
            Fields.Add((name, spot));
            if (name is not null) ByName.Add(name, spot);
        }
    }
}
