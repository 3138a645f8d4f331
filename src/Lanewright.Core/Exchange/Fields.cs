using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// The fields of one group of a sheet, asked for by name. One function that asks for its fields serves twice: over
/// <see cref="TreeFields"/> it reads a sheet, over <see cref="SchemaFields"/> the same questions write the sheet's
/// JSON Schema.
/// </summary>
/// <remarks>
/// <para>A value that is absent or wrong comes back as null (a list as an empty one) and has been reported with its
/// path when that matters, so the caller only decides what can still be made of the rest.</para>
/// <para>A function that reads a group must ask for all its fields before it decides anything: the schema learns of a
/// field only when it is asked for, and a field that nobody asked for is reported as unknown. It returns null when a
/// value it needs is null:</para>
/// <code>
/// static Run? Read(Fields fields)
/// {
///     var pulses = fields.Count("pulses", "Pulses counted during the drop.");
///     var gross = fields.Quantity&lt;Mass&gt;("gross", "Mass of the full container.", least: Mass.FromKilograms(0));
///     return pulses is { } p &amp;&amp; gross is { } g ? new Run(p, g) : null;
/// }
/// </code>
/// <para>A name is asked for once; asking again is a programming mistake and throws
/// <see cref="ArgumentException"/>, as does a range whose least exceeds its most.</para>
/// </remarks>
public abstract class Fields
{
    /// <summary>Where this group is, e.g. <c>runs[2]</c>; empty for the whole sheet.</summary>
    public abstract string Path { get; }

    /// <summary>One line of text; blanks around it are removed, and a blank text counts as absent.</summary>
    /// <param name="name">Name of the field in the sheet.</param>
    /// <param name="doc">What the field means: a sentence for the person who fills it in.</param>
    /// <param name="need">Whether it must be there.</param>
    /// <param name="maxLength">Most characters (Unicode scalar values); at least 1.</param>
    public abstract string? Text(string name, string doc, Need need = Need.Required, int maxLength = 200);

    /// <summary>Text of several lines, otherwise like <see cref="Text"/>.</summary>
    public abstract string? Notes(string name, string doc, Need need = Need.Optional, int maxLength = 4000);

    /// <summary>
    /// A quantity with its unit, such as <c>412.5 lb</c>. A text with more than one meaning is a finding that lists
    /// them; a number without a unit is one too, unless <paramref name="unitWhenNone"/> says what it is in.
    /// </summary>
    /// <param name="name">Name of the field in the sheet.</param>
    /// <param name="doc">What the field means.</param>
    /// <param name="need">Whether it must be there.</param>
    /// <param name="unitWhenNone">The unit of a bare number; null when a bare number is not accepted.</param>
    /// <param name="least">The least allowed value; null for no limit.</param>
    /// <param name="most">The most allowed value; null for no limit.</param>
    /// <param name="unitsAgreed">Whether <paramref name="unitWhenNone"/> follows from another field (<c>units</c>), so
    /// that the schema, which looks at each field alone, has to allow a bare number.</param>
    public abstract T? Quantity<T>(
        string name, string doc, Need need = Need.Required, Unit? unitWhenNone = null, T? least = null, T? most = null,
        bool unitsAgreed = false)
        where T : struct, IQuantity<T>;

    /// <summary>A list of quantities; an item that is wrong is null, so that the others keep their places.</summary>
    public abstract IReadOnlyList<T?> Quantities<T>(
        string name, string doc, int minItems = 0, int maxItems = 1000, Unit? unitWhenNone = null,
        T? least = null, T? most = null)
        where T : struct, IQuantity<T>;

    /// <summary>A quantity that may be of one of several dimensions; as typed, with its unit.</summary>
    /// <param name="name">Name of the field in the sheet.</param>
    /// <param name="doc">What the field means.</param>
    /// <param name="dimensions">What it may measure; at least one.</param>
    /// <param name="unitWhenNone">The unit of a bare number; null when a bare number is not accepted.</param>
    /// <param name="need">Whether it must be there.</param>
    public abstract Amount? Amount(
        string name, string doc, IReadOnlyList<Dimension> dimensions, Unit? unitWhenNone = null,
        Need need = Need.Required);

    /// <summary>The name of a unit, such as <c>pulse/lb</c>.</summary>
    /// <param name="name">Name of the field in the sheet.</param>
    /// <param name="doc">What the field means.</param>
    /// <param name="dimensions">What the unit may measure; at least one.</param>
    /// <param name="need">Whether it must be there.</param>
    public abstract Unit? Unit(
        string name, string doc, IReadOnlyList<Dimension> dimensions, Need need = Need.Required);

    /// <summary>A plain number without a unit; a finite one.</summary>
    public abstract double? Number(
        string name, string doc, Need need = Need.Required,
        double least = double.MinValue, double most = double.MaxValue);

    /// <summary>A whole number; <c>3,021</c> and <c>3021</c> are the same count.</summary>
    public abstract long? Count(
        string name, string doc, Need need = Need.Required, long least = 0, long most = 1_000_000_000_000);

    /// <summary>Yes or no; the words yes, no, true and false.</summary>
    public abstract bool? YesNo(string name, string doc, Need need = Need.Required);

    /// <summary>One of a few words.</summary>
    public abstract T? Choice<T>(string name, string doc, IReadOnlyList<Word<T>> words, Need need = Need.Required)
        where T : struct;

    /// <summary>A date, in the form 2026-01-31 only (ISO 8601 calendar date, extended format).</summary>
    public abstract DateOnly? Date(string name, string doc, Need need = Need.Required);

    /// <summary>A date and time with its offset from UTC, such as 2026-01-31T07:45:00-05:00 (RFC 3339); returned in
    /// UTC.</summary>
    public abstract DateTimeOffset? Moment(string name, string doc, Need need = Need.Required);

    /// <summary>A group of fields.</summary>
    /// <param name="name">Name of the field in the sheet.</param>
    /// <param name="doc">What the group holds.</param>
    /// <param name="read">Asks for the group's fields; null when nothing usable can be made of them.</param>
    /// <param name="need">Whether it must be there.</param>
    public abstract T? Group<T>(string name, string doc, Func<Fields, T?> read, Need need = Need.Required)
        where T : class;

    /// <summary>A list of groups; one that nothing usable can be made of is left out, with a finding.</summary>
    /// <param name="name">Name of the field in the sheet.</param>
    /// <param name="doc">What the list holds.</param>
    /// <param name="read">Asks for the fields of one item; its second argument is the zero-based place.</param>
    /// <param name="minItems">Fewest items; with 0 the list may be left out.</param>
    /// <param name="maxItems">Most items.</param>
    public abstract IReadOnlyList<T> List<T>(
        string name, string doc, Func<Fields, int, T?> read, int minItems = 0, int maxItems = 1000)
        where T : class;

    /// <summary>
    /// Reports what the reading function itself found, such as two fields that contradict each other.
    /// </summary>
    /// <param name="kind">What was found.</param>
    /// <param name="name">The field of this group that it is about; null for the group itself.</param>
    /// <param name="values">The values of its text.</param>
    public abstract void Report(FindingKind kind, string? name, params FindingValue[] values);

    /// <summary>Reports a finding whose path is already complete.</summary>
    public abstract void Report(Finding finding);

    /// <summary>The checks that both uses make of a quantity's limits.</summary>
    private protected static void Check<T>(Unit? unitWhenNone, T? least, T? most)
        where T : struct, IQuantity<T>
    {
        if (unitWhenNone is not null && unitWhenNone.Dimension != T.Dimension)
            throw new ArgumentException($"{unitWhenNone} does not measure {T.Dimension}.", nameof(unitWhenNone));
        if (least?.Si > most?.Si) throw new ArgumentException("The least is above the most.", nameof(least));
    }
}
