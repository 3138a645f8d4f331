using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>Reads the fields of a sheet from its tree; see <see cref="Fields"/> for how it is used.</summary>
public sealed class TreeFields : Fields
{
    /// <summary>A field that names the schema, so that editors can offer help; never part of the sheet.</summary>
    internal const string SchemaField = "$schema";

    private readonly SheetNode group;
    private readonly ScalarReader scalars;
    private readonly NumberNodes numbers;
    private readonly List<string> asked = [];

    private TreeFields(SheetNode group, ScalarReader scalars, NumberNodes numbers)
    {
        this.group = group;
        this.scalars = scalars;
        this.numbers = numbers;
    }

    /// <inheritdoc/>
    public override string Path => group.Path;

    /// <summary>
    /// Reads a whole sheet. The findings are those of the tree followed by those of the fields.
    /// </summary>
    /// <param name="tree">The text, taken apart.</param>
    /// <param name="culture">In which the texts were written: their decimal mark, and what a bare ton or gallon
    /// is.</param>
    /// <param name="read">Asks for the sheet's fields; null when nothing usable can be made of them.</param>
    public static SheetReading<T> Read<T>(SheetTree tree, TextCulture culture, Func<Fields, T?> read)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(tree);
        ArgumentNullException.ThrowIfNull(culture);
        ArgumentNullException.ThrowIfNull(read);
        var findings = new FindingList();
        foreach (var finding in tree.Findings) findings.Add(finding);
        if (tree.Root is null) return new SheetReading<T>(null, findings.ToList());

        var scalars = new ScalarReader(findings);
        var root = new TreeFields(tree.Root, scalars, new NumberNodes(scalars, culture));
        var value = root.ReadGroup(tree.Root, "the fields of a sheet", read);
        return new SheetReading<T>(value, findings.ToList());
    }

    /// <inheritdoc/>
    public override string? Text(string name, string doc, Need need = Need.Required, int maxLength = 200) =>
        Find(name, doc, need) is { } node ? scalars.Text(node, doc, maxLength, severalLines: false) : null;

    /// <inheritdoc/>
    public override string? Notes(string name, string doc, Need need = Need.Optional, int maxLength = 4000) =>
        Find(name, doc, need) is { } node ? scalars.Text(node, doc, maxLength, severalLines: true) : null;

    /// <inheritdoc/>
    public override T? Quantity<T>(
        string name, string doc, Need need = Need.Required, Unit? unitWhenNone = null, T? least = null, T? most = null,
        bool unitsAgreed = false)
    {
        Check(unitWhenNone, least, most);
        return Find(name, doc, need) is { } node ? numbers.Quantity(node, doc, unitWhenNone, least, most) : null;
    }

    /// <inheritdoc/>
    public override IReadOnlyList<T?> Quantities<T>(
        string name, string doc, int minItems = 0, int maxItems = 1000, Unit? unitWhenNone = null,
        T? least = null, T? most = null)
    {
        Check(unitWhenNone, least, most);
        return [.. Items(name, doc, minItems, maxItems)
            .Select(node => numbers.Quantity(node, doc, unitWhenNone, least, most))];
    }

    /// <inheritdoc/>
    public override Amount? Amount(
        string name, string doc, IReadOnlyList<Dimension> dimensions, Unit? unitWhenNone = null,
        Need need = Need.Required) =>
        Find(name, doc, need) is { } node ? numbers.Amount(node, doc, dimensions, unitWhenNone) : null;

    /// <inheritdoc/>
    public override Unit? Unit(
        string name, string doc, IReadOnlyList<Dimension> dimensions, Need need = Need.Required) =>
        Find(name, doc, need) is { } node ? numbers.UnitOf(node, doc, dimensions) : null;

    /// <inheritdoc/>
    public override double? Number(
        string name, string doc, Need need = Need.Required,
        double least = double.MinValue, double most = double.MaxValue)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, least);
        return Find(name, doc, need) is { } node ? numbers.Number(node, doc, least, most) : null;
    }

    /// <inheritdoc/>
    public override long? Count(
        string name, string doc, Need need = Need.Required, long least = 0, long most = 1_000_000_000_000)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, least);
        return Find(name, doc, need) is { } node ? numbers.Count(node, doc, least, most) : null;
    }

    /// <inheritdoc/>
    public override bool? YesNo(string name, string doc, Need need = Need.Required) =>
        Find(name, doc, need) is { } node ? scalars.YesNo(node, doc) : null;

    /// <inheritdoc/>
    public override T? Choice<T>(string name, string doc, IReadOnlyList<Word<T>> words, Need need = Need.Required)
    {
        ArgumentNullException.ThrowIfNull(words);
        return Find(name, doc, need) is { } node ? scalars.Choice(node, doc, words) : null;
    }

    /// <inheritdoc/>
    public override DateOnly? Date(string name, string doc, Need need = Need.Required) =>
        Find(name, doc, need) is { } node ? scalars.Date(node, doc) : null;

    /// <inheritdoc/>
    public override DateTimeOffset? Moment(string name, string doc, Need need = Need.Required) =>
        Find(name, doc, need) is { } node ? scalars.Moment(node, doc) : null;

    /// <inheritdoc/>
    public override T? Group<T>(string name, string doc, Func<Fields, T?> read, Need need = Need.Required)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(read);
        return Find(name, doc, need) is { } node ? ReadGroup(node, doc, read) : null;
    }

    /// <inheritdoc/>
    public override IReadOnlyList<T> List<T>(
        string name, string doc, Func<Fields, int, T?> read, int minItems = 0, int maxItems = 1000)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(read);
        var items = new List<T>();
        foreach (var node in Items(name, doc, minItems, maxItems))
            if (ReadGroup(node, doc, fields => read(fields, node.Index)) is { } item) items.Add(item);
        return items;
    }

    /// <inheritdoc/>
    public override void Report(FindingKind kind, string? name, params FindingValue[] values)
    {
        ArgumentNullException.ThrowIfNull(kind);
        ArgumentNullException.ThrowIfNull(values);
        if (name is null) scalars.Report(kind, group, values);
        else if (group.Find(name) is { } node) scalars.Report(kind, node, values);
        else ReportAbsent(kind, name, values);
    }

    /// <inheritdoc/>
    public override void Report(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        scalars.Findings.Add(finding);
    }

    private T? ReadGroup<T>(SheetNode node, string doc, Func<Fields, T?> read)
        where T : class
    {
        if (node.Kind != NodeKind.Map)
        {
            scalars.WrongShape(node, "a group of fields", doc);
            return null;
        }

        var stopsBefore = scalars.Findings.Stops;
        var fields = new TreeFields(node, scalars, numbers);
        var value = read(fields);
        fields.ReportUnknown();
        if (value is null && scalars.Findings.Stops == stopsBefore)
            scalars.Report(ReadFindings.NotUsable, node, FindingValue.Said("doc", doc));
        return value;
    }

    private SheetNode? Find(string name, string doc, Need need)
    {
        Ask(name, doc);
        var node = group.Find(name);
        if (node is not null && !IsAbsent(node)) return node;

        if (need == Need.Required)
            ReportAbsent(ReadFindings.MissingField, name, FindingValue.Text("name", name), FindingValue.Said("doc", doc));
        return null;
    }

    private static bool IsAbsent(SheetNode node) =>
        node.Kind == NodeKind.Null || (node.Kind == NodeKind.Text && string.IsNullOrWhiteSpace(node.Literal));

    private IReadOnlyList<SheetNode> Items(string name, string doc, int minItems, int maxItems)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(minItems);
        ArgumentOutOfRangeException.ThrowIfLessThan(maxItems, minItems);
        if (Find(name, doc, minItems > 0 ? Need.Required : Need.Optional) is not { } list) return [];
        if (list.Kind != NodeKind.List)
        {
            scalars.WrongShape(list, "a list", doc);
            return [];
        }

        var count = list.Children.Count;
        if (count >= minItems && count <= maxItems) return list.Children;
        scalars.Report(
            count < minItems ? ReadFindings.TooFewItems : ReadFindings.TooManyItems, list,
            Place.Count("count", count), Place.Count("limit", count < minItems ? minItems : maxItems),
            FindingValue.Said("doc", doc));
        return count < minItems ? list.Children : [];
    }

    private void Ask(string name, string doc)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentException.ThrowIfNullOrWhiteSpace(doc);
        if (asked.Contains(name)) throw new ArgumentException($"The field '{name}' was asked for already.", nameof(name));
        asked.Add(name);
    }

    private void ReportAbsent(FindingKind kind, string name, params FindingValue[] values)
    {
        scalars.Findings.Add(kind.At(Place.Join(group.Path, name), [.. values, .. Place.Of(group)]));
    }

    private void ReportUnknown()
    {
        foreach (var child in group.Children)
        {
            if (asked.Contains(child.Name!) || (group.Parent is null && child.Name == SchemaField)) continue;
            var closest = scalars.Findings.IsFull ? "" : Nearest.Names(child.Name!, asked);
            scalars.Report(
                ReadFindings.UnknownField, child,
                FindingValue.Text("name", Excerpt.Of(child.Name)), FindingValue.Text("closest", closest));
        }
    }
}
