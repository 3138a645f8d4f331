using Lanewright.Core.Quantities;

namespace Lanewright.Core.Text;

/// <summary>
/// The one reader and writer of numbers with units. Reading never throws and never guesses: a text with two meanings is
/// answered with a question. The rules, with every example, are in <c>docs/method/quantities.md</c>:
/// <list type="bullet">
/// <item>one point or comma followed by exactly three digits is the culture's decimal mark, or else its group mark, or
/// else a question: <c>1,250</c> is 1250 in en-US, 1.25 in de-DE and a question in files; <c>1.250</c> is 1.25 in en-US
/// and in files, and a question in de-DE, since the displays of scales show points;</item>
/// <item>any other number has the same meaning in every culture: <c>12,5</c> is 12.5, <c>1.250,5</c> is 1250.5;</item>
/// <item>"ton", "gal" and "oz" are what the culture's customary units say, or else a question; <c>lb/mile</c> is always
/// a question, because some handbooks print per mile of a two-lane road.</item>
/// </list>
/// </summary>
public static partial class QuantityText
{
    /// <summary>Reads a quantity of one dimension, e.g. a mass.</summary>
    /// <param name="text">What was typed; anything, null included.</param>
    /// <param name="culture">Whose decimal mark and customary units count.</param>
    /// <param name="unitWhenNone">The unit of a bare number; null when a bare number is to be asked about.</param>
    /// <exception cref="ArgumentException"><paramref name="unitWhenNone"/> measures something else.</exception>
    public static TextReading<T> Read<T>(string? text, TextCulture culture, Unit? unitWhenNone = null)
        where T : struct, IQuantity<T>
    {
        ArgumentNullException.ThrowIfNull(culture);
        if (unitWhenNone is not null && unitWhenNone.Dimension != T.Dimension)
            throw new ArgumentException($"{unitWhenNone} does not measure {T.Dimension}.", nameof(unitWhenNone));
        var scan = AmountReader.Read(text, culture);
        if (scan.Problem != TextProblem.None)
            return Fail<T>(scan.Problem, scan.Read, culture);
        var amounts = OfDimension(T.Dimension, scan.Meanings, unitWhenNone);
        if (amounts.Count == 0)
            return Fail<T>(TextProblem.WrongDimension, scan.Read, culture);
        var choices = new List<TextChoice<T>>(amounts.Count);
        foreach (var amount in amounts)
        {
            if (T.Allows(amount.Si))
                choices.Add(new(T.FromSi(amount.Si), amount.Unit, Words(amount.Value, amount.Unit!, culture)));
        }

        return choices.Count == 0
            ? Fail<T>(TextProblem.OutOfRange, scan.Read, culture)
            : TextReading<T>.Of(choices, scan.Read);
    }

    /// <summary>Reads a number with a unit of any dimension.</summary>
    public static TextReading<Amount> ReadAny(string? text, TextCulture culture)
    {
        ArgumentNullException.ThrowIfNull(culture);
        var scan = AmountReader.Read(text, culture);
        var problem = scan.Problem == TextProblem.None && scan.Meanings.Any(meaning => meaning.Unit is null)
            ? TextProblem.MissingUnit
            : scan.Problem;
        if (problem != TextProblem.None)
            return TextReading<Amount>.Failed(problem, scan.Read, Expected.Quantity(problem, null, culture));
        var choices = scan.Meanings
            .Select(meaning => new Amount(meaning.Value, meaning.Unit!))
            .Where(amount => double.IsFinite(amount.Si))
            .Select(amount => new TextChoice<Amount>(amount, amount.Unit, Words(amount.Value, amount.Unit, culture)))
            .ToList();
        return choices.Count == 0
            ? TextReading<Amount>.Failed(
                TextProblem.OutOfRange, scan.Read, Expected.Quantity(TextProblem.OutOfRange, null, culture))
            : TextReading<Amount>.Of(choices, scan.Read);
    }

    /// <summary>Reads a plain number; a unit behind it is a problem.</summary>
    public static TextReading<double> ReadNumber(string? text, TextCulture culture)
    {
        ArgumentNullException.ThrowIfNull(culture);
        var scan = AmountReader.Read(text, culture);
        var problem = PlainProblem(scan);
        return problem != TextProblem.None
            ? TextReading<double>.Failed(problem, scan.Read, Expected.Number(problem, culture))
            : TextReading<double>.Of(
                [.. scan.Meanings.Select(meaning => new TextChoice<double>(
                    meaning.Value, null, WriteNumber(meaning.Value, culture, NumberForm.RoundTrip)))],
                scan.Read);
    }

    /// <summary>Reads a whole number, negative ones included; meanings that are not whole do not count.</summary>
    public static TextReading<long> ReadCount(string? text, TextCulture culture)
    {
        ArgumentNullException.ThrowIfNull(culture);
        const double LargestExact = 1L << 53;
        var scan = AmountReader.Read(text, culture);
        var whole = scan.Meanings.Where(meaning => meaning.Value == Math.Floor(meaning.Value)).ToList();
        var problem = PlainProblem(scan) is var plain and not TextProblem.None ? plain
            : whole.Count == 0 ? TextProblem.NotWhole
            : whole.Exists(meaning => Math.Abs(meaning.Value) > LargestExact) ? TextProblem.OutOfRange
            : TextProblem.None;
        return problem != TextProblem.None
            ? TextReading<long>.Failed(problem, scan.Read, Expected.Number(problem, culture))
            : TextReading<long>.Of(
                [.. whole.Select(meaning => new TextChoice<long>(
                    (long)meaning.Value, null, WriteNumber(meaning.Value, culture, NumberForm.RoundTrip)))],
                scan.Read);
    }

    // Every different amount of a dimension that the meanings may stand for.
    private static List<AmountReader.Meaning> OfDimension(
        Dimension dimension, IReadOnlyList<AmountReader.Meaning> meanings, Unit? unitWhenNone)
    {
        var amounts = new List<AmountReader.Meaning>();
        foreach (var meaning in meanings)
        {
            if (meaning.Unit is not null)
                Add(meaning);
            else if (unitWhenNone is not null)
                Add(meaning with { Unit = unitWhenNone });
            else
                foreach (var unit in Units.Of(dimension))
                    Add(meaning with { Unit = unit });
        }

        return amounts;

        void Add(AmountReader.Meaning amount)
        {
            if (amount.Unit!.Dimension == dimension && !amounts.Exists(a => a.Si.Equals(amount.Si)))
                amounts.Add(amount);
        }
    }

    private static TextProblem PlainProblem(AmountReader.Scan scan) =>
        scan.Problem == TextProblem.None && scan.Meanings.Any(meaning => meaning.Unit is not null)
            ? TextProblem.WrongDimension
            : scan.Problem;

    private static TextReading<T> Fail<T>(TextProblem problem, string read, TextCulture culture)
        where T : struct, IQuantity<T> =>
        TextReading<T>.Failed(problem, read, Expected.Quantity(problem, T.Dimension, culture));

    private static string Words(double value, Unit unit, TextCulture culture) =>
        WriteNumber(value, culture, NumberForm.RoundTrip) + " " + UnitWords.Symbol(unit, culture);
}
