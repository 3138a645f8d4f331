using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Exchange;

/// <summary>What kind of value a field holds.</summary>
internal enum FieldShape
{
    Text,
    Notes,
    Quantity,
    Amount,
    Unit,
    Number,
    Count,
    YesNo,
    Choice,
    Date,
    Moment,
    Group,
    List,
}

/// <summary>One question that a reading function asks.</summary>
/// <param name="Path">Names joined by dots; <c>[]</c> behind a list's name.</param>
/// <param name="Shape">What is asked for.</param>
/// <param name="Doc">What it means.</param>
/// <param name="Need">Whether it must be there.</param>
internal sealed record FieldFact(string Path, FieldShape Shape, string Doc, Need Need)
{
    public IReadOnlyList<Dimension> Dimensions { get; init; } = [];

    public Unit? Bare { get; init; }

    public bool UnitsAgreed { get; init; }

    public double Least { get; init; } = double.NegativeInfinity;

    public double Most { get; init; } = double.PositiveInfinity;

    public IReadOnlyList<string> Words { get; init; } = [];
}

/// <summary>Writes down every question that a reading function asks; the answers are null, apart from the units.</summary>
internal sealed class RecordingFields : Fields
{
    private readonly List<FieldFact> facts;
    private readonly UnitSystem? units;

    private RecordingFields(string path, List<FieldFact> facts, UnitSystem? units) =>
        (Path, this.facts, this.units) = (path, facts, units);

    public override string Path { get; }

    /// <summary>The questions in the order in which they are asked.</summary>
    public static IReadOnlyList<FieldFact> Of<T>(Func<Fields, T?> read, UnitSystem? units = null)
        where T : class
    {
        var facts = new List<FieldFact>();
        read(new RecordingFields("", facts, units));
        return facts;
    }

    public override string? Text(string name, string doc, Need need = Need.Required, int maxLength = 200)
    {
        Add(name, FieldShape.Text, doc, need, fact => fact with { Most = maxLength });
        return null;
    }

    public override string? Notes(string name, string doc, Need need = Need.Optional, int maxLength = 4000)
    {
        Add(name, FieldShape.Notes, doc, need, fact => fact with { Most = maxLength });
        return null;
    }

    public override T? Quantity<T>(
        string name, string doc, Need need = Need.Required, Unit? unitWhenNone = null, T? least = null, T? most = null,
        bool unitsAgreed = false)
    {
        Add(name, FieldShape.Quantity, doc, need, fact => fact with
        {
            Dimensions = [T.Dimension],
            Bare = unitWhenNone,
            UnitsAgreed = unitsAgreed,
            Least = least?.Si ?? double.NegativeInfinity,
            Most = most?.Si ?? double.PositiveInfinity,
        });
        return null;
    }

    public override IReadOnlyList<T?> Quantities<T>(
        string name, string doc, int minItems = 0, int maxItems = 1000, Unit? unitWhenNone = null,
        T? least = null, T? most = null) => throw new NotSupportedException("No file has a list of quantities.");

    public override Amount? Amount(
        string name, string doc, IReadOnlyList<Dimension> dimensions, Unit? unitWhenNone = null, Need need = Need.Required)
    {
        Add(name, FieldShape.Amount, doc, need, fact => fact with { Dimensions = dimensions });
        return null;
    }

    public override Unit? Unit(string name, string doc, IReadOnlyList<Dimension> dimensions, Need need = Need.Required)
    {
        Add(name, FieldShape.Unit, doc, need, fact => fact with { Dimensions = dimensions });
        return null;
    }

    public override double? Number(
        string name, string doc, Need need = Need.Required, double least = double.MinValue, double most = double.MaxValue)
    {
        Add(name, FieldShape.Number, doc, need, fact => fact with { Least = least, Most = most });
        return null;
    }

    public override long? Count(
        string name, string doc, Need need = Need.Required, long least = 0, long most = 1_000_000_000_000)
    {
        Add(name, FieldShape.Count, doc, need, fact => fact with { Least = least, Most = most });
        return null;
    }

    public override bool? YesNo(string name, string doc, Need need = Need.Required)
    {
        Add(name, FieldShape.YesNo, doc, need);
        return null;
    }

    public override T? Choice<T>(string name, string doc, IReadOnlyList<Word<T>> words, Need need = Need.Required)
    {
        Add(name, FieldShape.Choice, doc, need, fact => fact with { Words = [.. words.Select(word => word.Text)] });
        return units is T system ? system : null;
    }

    public override DateOnly? Date(string name, string doc, Need need = Need.Required)
    {
        Add(name, FieldShape.Date, doc, need);
        return null;
    }

    public override DateTimeOffset? Moment(string name, string doc, Need need = Need.Required)
    {
        Add(name, FieldShape.Moment, doc, need);
        return null;
    }

    public override T? Group<T>(string name, string doc, Func<Fields, T?> read, Need need = Need.Required)
        where T : class
    {
        Add(name, FieldShape.Group, doc, need);
        read(new RecordingFields(Place.Join(Path, name), facts, units));
        return null;
    }

    public override IReadOnlyList<T> List<T>(
        string name, string doc, Func<Fields, int, T?> read, int minItems = 0, int maxItems = 1000)
        where T : class
    {
        Add(name, FieldShape.List, doc, minItems > 0 ? Need.Required : Need.Optional, fact => fact with { Least = minItems, Most = maxItems });
        read(new RecordingFields(Place.Join(Path, name) + "[]", facts, units), 0);
        return [];
    }

    public override void Report(FindingKind kind, string? name, params FindingValue[] values)
    {
    }

    public override void Report(Finding finding)
    {
    }

    private void Add(string name, FieldShape shape, string doc, Need need, Func<FieldFact, FieldFact>? more = null)
    {
        var fact = new FieldFact(Place.Join(Path, name), shape, doc, need);
        facts.Add(more is null ? fact : more(fact));
    }
}
