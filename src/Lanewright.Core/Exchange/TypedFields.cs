using System.Globalization;
using System.Text;
using Lanewright.Core.Findings;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// A sheet typed field by field: paths such as <c>runs[0].pulses</c> with their texts. A blank text counts as absent,
/// and places of a list may be left free (a run that was cleared does not count), so the places of the
/// <see cref="Tree"/> can differ from those typed; <see cref="TypedPath"/> leads back.
/// </summary>
public sealed class TypedFields
{
    private readonly Branch root = new();
    private readonly List<Finding> refused = [];

    private TypedFields()
    {
    }

    /// <summary>The fields as a tree, with a finding for each path that is none or clashes with another.</summary>
    public SheetTree Tree { get; private set; } = null!;

    /// <summary>Takes typed fields; wrong paths are findings, never exceptions.</summary>
    /// <param name="fields">Paths and texts as typed.</param>
    /// <param name="keepsRun">Whether the run at a typed place is taken; null for every run.</param>
    public static TypedFields Of(IEnumerable<KeyValuePair<string, string>> fields, Predicate<int>? keepsRun = null)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var typed = new TypedFields();
        foreach (var (path, text) in fields)
        {
            if (string.IsNullOrWhiteSpace(text)) continue;
            var steps = FieldPath.Read(path);
            if (steps is null) typed.Refuse(path);
            else if (keepsRun is null || RunOf(steps) is not { } run || keepsRun(run)) typed.Put(path, steps, text);
        }

        var builder = new SheetTreeBuilder();
        foreach (var finding in typed.refused) builder.Report(finding);
        typed.root.Write(builder);
        typed.Tree = builder.Build();
        return typed;
    }

    /// <summary>The place of the run that a path belongs to; null when it belongs to none.</summary>
    internal static int? RunOf(string path) => FieldPath.Read(path) is { } steps ? RunOf(steps) : null;

    /// <summary>
    /// The path as it was typed for a path of the tree. What analysis says of a weighing is led to the group the
    /// weighing was typed in.
    /// </summary>
    public string TypedPath(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        // The runs of one drive setting are named with it, not with a path.
        if (path.StartsWith("runs at ", StringComparison.Ordinal)) return path;
        if (FieldPath.Read(path.Replace("spreader.controller", "spreader", StringComparison.Ordinal)) is not { } steps)
            return path;

        var text = new StringBuilder();
        var branch = root;
        for (var i = 0; i < steps.Count; i++)
        {
            var step = steps[i];
            if (step.Name is null)
            {
                var place = branch?.PlaceOf(step.Index) ?? step.Index;
                text.Append(CultureInfo.InvariantCulture, $"[{place}]");
                branch = branch?.At(place);
                continue;
            }

            if (i == 2 && branch?.WeighingWith(step.Name) is { } group)
            {
                text.Append('.').Append(group);
                branch = branch.Child(group);
            }

            text.Append(text.Length == 0 ? "" : ".").Append(step.Name);
            branch = branch?.Child(step.Name);
        }

        return text.ToString();
    }

    private static int? RunOf(IReadOnlyList<PathStep> steps) =>
        steps.Count > 1 && steps[0].Name == "runs" && steps[1].Name is null ? steps[1].Index : null;

    private void Put(string path, IReadOnlyList<PathStep> steps, string text)
    {
        var branch = root;
        foreach (var step in steps)
        {
            if (branch.Enter(step) is { } next) branch = next;
            else
            {
                Refuse(path);
                return;
            }
        }

        if (!branch.Take(text)) Refuse(path);
    }

    private void Refuse(string path) =>
        refused.Add(ReadFindings.UnknownField.At(
            "", FindingValue.Text("name", Excerpt.Of(path)), FindingValue.Said("closest", "none")));

    /// <summary>A group, a list or a text; what it is is settled by what is put in first.</summary>
    private sealed class Branch
    {
        private static readonly string[] Weighings = ["whole", "truck", "counted"];

        private Dictionary<string, Branch>? names;
        private SortedList<int, Branch>? places;
        private string? text;

        internal Branch? Child(string name) => names?.GetValueOrDefault(name);

        internal Branch? At(int place) => places?.GetValueOrDefault(place);

        internal int? PlaceOf(int index) => index < places?.Count ? places.Keys[index] : null;

        // Analysis speaks of runs[0].gross whatever the way of weighing.
        internal string? WeighingWith(string name) =>
            names is null || names.ContainsKey(name)
                ? null
                : Array.Find(Weighings, group => names.GetValueOrDefault(group) is { names: { } fields }
                    && (fields.ContainsKey(name) || name is "fuelBurnt" or "samePeople" or "fillSpread"));

        internal Branch? Enter(PathStep step)
        {
            if (text is not null || (step.Name is null ? names is not null : places is not null)) return null;
            if (step.Name is { } name)
            {
                names ??= new(StringComparer.Ordinal);
                if (!names.TryGetValue(name, out var child)) names.Add(name, child = new());
                return child;
            }

            places ??= [];
            if (!places.TryGetValue(step.Index, out var item)) places.Add(step.Index, item = new());
            return item;
        }

        internal bool Take(string value)
        {
            if (names is not null || places is not null || text is not null) return false;
            text = value;
            return true;
        }

        internal void Write(SheetTreeBuilder builder)
        {
            if (text is not null)
            {
                builder.Scalar(NodeKind.Text, text, 0, 0);
                return;
            }

            if (places is not null)
            {
                builder.List(0, 0);
                foreach (var item in places.Values) item.Write(builder);
            }
            else
            {
                builder.Map(0, 0);
                foreach (var (name, child) in names ?? [])
                {
                    builder.Name(name, 0, 0);
                    child.Write(builder);
                }
            }

            builder.End();
        }
    }
}
