using Lanewright.Core.Quantities;

namespace Lanewright.Core.Text;

/// <summary>The words that say what was expected, in plain English and with the culture's own marks.</summary>
internal static class Expected
{
    private const double Example = 1250.5;

    internal static Phrase Quantity(TextProblem problem, Dimension? dimension, TextCulture culture) => problem switch
    {
        TextProblem.TooLong => (Phrase)$"at most {AmountReader.LongestText} characters",
        TextProblem.UnknownUnit or TextProblem.MissingUnit or TextProblem.WrongDimension => dimension is { } known
            ? (Phrase)$"a unit such as {Symbols(known, culture)}"
            : "a unit such as lb, kg/min or °F",
        TextProblem.OutOfRange when dimension == Dimension.Density => "a density greater than zero",
        TextProblem.OutOfRange when dimension == Dimension.Temperature => "a temperature not below absolute zero",
        TextProblem.OutOfRange => "a number that can be kept",
        _ => dimension is { } wanted
            ? (Phrase)$"a number such as {Number(culture)} {UnitWords.Symbol(Units.Of(wanted)[0], culture)}"
            : $"a number with its unit, such as {Number(culture)} lb",
    };

    internal static Phrase Number(TextProblem problem, TextCulture culture) => problem switch
    {
        TextProblem.TooLong => (Phrase)$"at most {AmountReader.LongestText} characters",
        TextProblem.NotWhole => "a whole number",
        TextProblem.UnknownUnit or TextProblem.WrongDimension => "a number without a unit",
        TextProblem.OutOfRange => "a number that can be kept",
        _ => $"a number such as {Number(culture)}",
    };

    private static string Number(TextCulture culture) =>
        QuantityText.WriteNumber(Example, culture, NumberForm.RoundTrip);

    private static Phrase Symbols(Dimension dimension, TextCulture culture)
    {
        var symbols = Units.Of(dimension).Take(4).Select(unit => UnitWords.Symbol(unit, culture)).ToList();
        return symbols.Count == 1
            ? (Phrase)$"{symbols[0]}"
            : $"{string.Join(", ", symbols.Take(symbols.Count - 1))} or {symbols[^1]}";
    }
}
