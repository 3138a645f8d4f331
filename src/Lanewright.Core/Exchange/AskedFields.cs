using System.Globalization;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// Listens to the questions of a reading function: from them a form is drawn, a table gets its headings, and what was typed
/// is written down so that it reads the same everywhere. For records of flat fields and groups; lists are passed on unheard.
/// </summary>
public sealed class AskedFields : Fields
{
    private readonly Fields inner;
    private readonly List<AskedField> asked;
    private readonly Func<string, string?> typed;
    private readonly TextCulture culture;

    private AskedFields(Fields inner, List<AskedField> asked, Func<string, string?> typed, TextCulture culture)
    {
        this.inner = inner;
        this.asked = asked;
        this.typed = typed;
        this.culture = culture;
    }

    /// <inheritdoc/>
    public override string Path => inner.Path;

    /// <summary>The fields that a reading function asks for.</summary>
    public static IReadOnlyList<AskedField> Of<T>(Func<Fields, T?> read)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(read);
        var asked = new List<AskedField>();
        read(new AskedFields(new SchemaFields(""), asked, _ => null, TextCulture.Invariant));
        return asked;
    }

    /// <summary>Reads typed texts, and gives for each field that was read its text for every reader.</summary>
    /// <param name="texts">Paths and texts as typed.</param>
    /// <param name="culture">In which they were typed.</param>
    /// <param name="read">Asks for the fields.</param>
    public static (SheetReading<T> Reading, IReadOnlyList<AskedField> Fields) Read<T>(
        IReadOnlyDictionary<string, string> texts, TextCulture culture, Func<Fields, T?> read)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(texts);
        ArgumentNullException.ThrowIfNull(culture);
        ArgumentNullException.ThrowIfNull(read);
        var asked = new List<AskedField>();
        var reading = TreeFields.Read(
            TypedFields.Of(texts).Tree, culture,
            fields => read(new AskedFields(fields, asked, path => texts.GetValueOrDefault(path), culture)));
        return (reading, asked);
    }

    /// <inheritdoc/>
    public override string? Text(string name, string doc, Need need = Need.Required, int maxLength = 200) =>
        Heard(name, doc, need, FieldShape.Text, inner.Text(name, doc, need, maxLength), text => text, new() { MaxLength = maxLength });

    /// <inheritdoc/>
    public override string? Notes(string name, string doc, Need need = Need.Optional, int maxLength = 4000) =>
        Heard(name, doc, need, FieldShape.Notes, inner.Notes(name, doc, need, maxLength), text => text, new() { MaxLength = maxLength });

    /// <inheritdoc/>
    public override T? Quantity<T>(
        string name, string doc, Need need = Need.Required, Unit? unitWhenNone = null, T? least = null, T? most = null,
        bool unitsAgreed = false)
    {
        var value = inner.Quantity(name, doc, need, unitWhenNone, least, most, unitsAgreed);
        return Heard(
            name, doc, need, FieldShape.Quantity, value, _ => Canonical(name, unitWhenNone, value!.Value),
            new() { Dimensions = [T.Dimension], UnitWhenNone = unitWhenNone });
    }

    /// <inheritdoc/>
    public override IReadOnlyList<T?> Quantities<T>(
        string name, string doc, int minItems = 0, int maxItems = 1000, Unit? unitWhenNone = null, T? least = null, T? most = null) =>
        inner.Quantities(name, doc, minItems, maxItems, unitWhenNone, least, most);

    /// <inheritdoc/>
    public override Amount? Amount(
        string name, string doc, IReadOnlyList<Dimension> dimensions, Unit? unitWhenNone = null, Need need = Need.Required)
    {
        var value = inner.Amount(name, doc, dimensions, unitWhenNone, need);
        return Heard(
            name, doc, need, FieldShape.Quantity, value, _ => Written(value!.Value),
            new() { Dimensions = dimensions, UnitWhenNone = unitWhenNone });
    }

    /// <inheritdoc/>
    public override Unit? Unit(string name, string doc, IReadOnlyList<Dimension> dimensions, Need need = Need.Required) =>
        Heard(
            name, doc, need, FieldShape.Unit, inner.Unit(name, doc, dimensions, need), unit => unit!.Symbol,
            new() { Dimensions = dimensions });

    /// <inheritdoc/>
    public override double? Number(
        string name, string doc, Need need = Need.Required, double least = double.MinValue, double most = double.MaxValue) =>
        Heard(
            name, doc, need, FieldShape.Number, inner.Number(name, doc, need, least, most),
            number => QuantityText.WriteNumber(number!.Value, TextCulture.Invariant, NumberForm.RoundTrip), new());

    /// <inheritdoc/>
    public override long? Count(
        string name, string doc, Need need = Need.Required, long least = 0, long most = 1_000_000_000_000) =>
        Heard(
            name, doc, need, FieldShape.Number, inner.Count(name, doc, need, least, most),
            count => count!.Value.ToString(CultureInfo.InvariantCulture), new());

    /// <inheritdoc/>
    public override bool? YesNo(string name, string doc, Need need = Need.Required) =>
        Heard(
            name, doc, need, FieldShape.YesNo, inner.YesNo(name, doc, need), yes => yes!.Value ? "yes" : "no",
            new() { Words = [("yes", ""), ("no", "")] });

    /// <inheritdoc/>
    public override T? Choice<T>(string name, string doc, IReadOnlyList<Word<T>> words, Need need = Need.Required) =>
        Heard(
            name, doc, need, FieldShape.Choice, inner.Choice(name, doc, words, need),
            value => words.First(word => EqualityComparer<T>.Default.Equals(word.Value, value!.Value)).Text,
            new() { Words = [.. words.Select(word => (word.Text, word.Doc))] });

    /// <inheritdoc/>
    public override DateOnly? Date(string name, string doc, Need need = Need.Required) =>
        Heard(
            name, doc, need, FieldShape.Date, inner.Date(name, doc, need),
            day => day!.Value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), new());

    /// <inheritdoc/>
    public override DateTimeOffset? Moment(string name, string doc, Need need = Need.Required) => inner.Moment(name, doc, need);

    /// <inheritdoc/>
    public override T? Group<T>(string name, string doc, Func<Fields, T?> read, Need need = Need.Required)
        where T : class =>
        inner.Group(name, doc, fields => read(new AskedFields(fields, asked, typed, culture)), need);

    /// <inheritdoc/>
    public override IReadOnlyList<T> List<T>(
        string name, string doc, Func<Fields, int, T?> read, int minItems = 0, int maxItems = 1000)
        where T : class => inner.List(name, doc, read, minItems, maxItems);

    /// <inheritdoc/>
    public override void Report(FindingKind kind, string? name, params FindingValue[] values) => inner.Report(kind, name, values);

    /// <inheritdoc/>
    public override void Report(Finding finding) => inner.Report(finding);

    private T Heard<T>(string name, string doc, Need need, FieldShape shape, T value, Func<T, string?> write, Details details)
    {
        asked.Add(new(Place.Join(Path, name), doc, need, shape)
        {
            Words = details.Words,
            Dimensions = details.Dimensions,
            MaxLength = details.MaxLength,
            UnitWhenNone = details.UnitWhenNone,
            Text = value is null ? null : write(value),
        });
        return value;
    }

    // The unit that was typed is kept: a person finds "420 short ton" again, not its kilograms.
    private string Canonical<T>(string name, Unit? unitWhenNone, T value)
        where T : struct, IQuantity<T>
    {
        var unit = QuantityText.Read<T>(typed(Place.Join(Path, name)), culture, unitWhenNone).Unit ?? Units.Of(T.Dimension)[0];
        return QuantityText.Write(value, unit, TextCulture.Invariant, NumberForm.RoundTrip);
    }

    private static string Written(Amount amount) =>
        QuantityText.Write(amount.Si, amount.Unit, TextCulture.Invariant, NumberForm.RoundTrip);

    private sealed record Details
    {
        internal IReadOnlyList<(string Text, string Doc)> Words { get; init; } = [];

        internal IReadOnlyList<Dimension> Dimensions { get; init; } = [];

        internal int MaxLength { get; init; }

        internal Unit? UnitWhenNone { get; init; }
    }
}
