using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// Reads one number of a sheet, with or without a unit. A text is read in the culture of the person who wrote it; a
/// number without quotes belongs to the syntax, so its mark is always a decimal point.
/// </summary>
internal sealed class NumberNodes(ScalarReader scalars, TextCulture culture)
{
    private const int MostReadings = 6;

    internal T? Quantity<T>(SheetNode node, string doc, Unit? unitWhenNone, T? least, T? most)
        where T : struct, IQuantity<T>
    {
        var words = DimensionWords.Of(T.Dimension);
        if (!IsReadable(node, words, doc)) return null;

        var reading = QuantityText.Read<T>(node.Literal, CultureOf(node), unitWhenNone);
        switch (reading.Outcome)
        {
            case TextOutcome.Value:
                return IsWithin(node, doc, T.Dimension, reading.Value.Si, least?.Si, most?.Si) ? reading.Value : null;
            case TextOutcome.Question:
                var isBare = unitWhenNone is null
                    && QuantityText.ReadNumber(node.Literal, CultureOf(node)).Outcome != TextOutcome.Problem;
                var readings = Readings(reading.Choices.Select(choice => choice.Words));
                scalars.Report(isBare ? ReadFindings.UnitMissing : ReadFindings.Ambiguous, node, Read(node), readings);
                return null;
            default:
                scalars.Report(
                    ReadFindings.NotAQuantity, node, Read(node), FindingValue.Said("dimension", words),
                    FindingValue.Said("expected", reading.Wanted), FindingValue.Said("doc", doc));
                return null;
        }
    }

    internal Amount? Amount(SheetNode node, string doc, IReadOnlyList<Dimension> dimensions, Unit? unitWhenNone)
    {
        var words = OneOf(dimensions);
        if (!IsReadable(node, words, doc)) return null;

        var number = QuantityText.ReadNumber(node.Literal, CultureOf(node));
        if (number.Outcome != TextOutcome.Problem)
        {
            if (unitWhenNone is null)
            {
                var units = dimensions.SelectMany(Units.Of).Select(unit => $"{node.Literal.Trim()} {unit.Symbol}");
                scalars.Report(
                    ReadFindings.UnitMissing, node, Read(node), Readings(units));
                return null;
            }

            return IsOne(node, doc, number) ? new Amount(number.Value, unitWhenNone) : null;
        }

        var reading = QuantityText.ReadAny(node.Literal, CultureOf(node));
        List<Amount> amounts = reading.Outcome switch
        {
            TextOutcome.Value => [reading.Value],
            TextOutcome.Question => [.. reading.Choices.Select(choice => choice.Value)],
            _ => [],
        };
        amounts.RemoveAll(amount => !dimensions.Contains(amount.Unit.Dimension));
        if (amounts.Count == 1) return amounts[0];
        if (amounts.Count == 0)
        {
            var expected = reading.Outcome == TextOutcome.Problem ? reading.Wanted : words;
            scalars.Report(
                ReadFindings.NotAQuantity, node, Read(node), FindingValue.Said("dimension", words),
                FindingValue.Said("expected", expected), FindingValue.Said("doc", doc));
            return null;
        }

        var readings = Readings(reading.Choices.Where(c => amounts.Contains(c.Value)).Select(c => c.Words));
        scalars.Report(ReadFindings.Ambiguous, node, Read(node), readings);
        return null;
    }

    internal Unit? UnitOf(SheetNode node, string doc, IReadOnlyList<Dimension> dimensions)
    {
        var expected = string.Join(", ", dimensions.SelectMany(Units.Of).Select(unit => unit.Symbol));
        if (!IsReadable(node, "a unit", doc)) return null;

        var unit = Units.Find(node.Literal.Trim());
        if (unit is null && QuantityText.ReadAny("1 " + node.Literal, culture).TryGet(out var one)) unit = one.Unit;
        if (unit is not null && dimensions.Contains(unit.Dimension)) return unit;
        scalars.Report(
            ReadFindings.NotAQuantity, node, Read(node), FindingValue.Said("dimension", "one of the units expected here"),
            FindingValue.Text("expected", expected), FindingValue.Said("doc", doc));
        return null;
    }

    internal double? Number(SheetNode node, string doc, double least, double most)
    {
        if (!IsReadable(node, "a number", doc)) return null;

        var reading = QuantityText.ReadNumber(node.Literal, CultureOf(node));
        if (!IsOne(node, doc, reading)) return null;
        return IsWithin(node, doc, Dimension.Fraction, reading.Value, least, most) ? reading.Value : null;
    }

    internal long? Count(SheetNode node, string doc, long least, long most)
    {
        if (!IsReadable(node, "a whole number", doc)) return null;

        var reading = QuantityText.ReadCount(node.Literal, CultureOf(node));
        if (!IsOne(node, doc, reading)) return null;
        return IsWithin(node, doc, Dimension.Fraction, reading.Value, least, most) ? reading.Value : null;
    }

    private TextCulture CultureOf(SheetNode node) => node.Kind == NodeKind.Number ? TextCulture.Invariant : culture;

    private bool IsReadable(SheetNode node, Phrase expected, string doc)
    {
        if (node.Kind is NodeKind.Text or NodeKind.Number) return true;
        scalars.WrongShape(node, expected, doc);
        return false;
    }

    private bool IsOne<T>(SheetNode node, string doc, TextReading<T> reading)
    {
        if (reading.Outcome == TextOutcome.Question)
        {
            var readings = Readings(reading.Choices.Select(choice => choice.Words));
            scalars.Report(ReadFindings.Ambiguous, node, Read(node), readings);
        }
        else if (reading.Outcome == TextOutcome.Problem)
        {
            scalars.Report(
                reading.Problem == TextProblem.NotWhole ? ReadFindings.NotWhole : ReadFindings.NotANumber, node,
                Read(node), FindingValue.Said("expected", reading.Wanted), FindingValue.Said("doc", doc));
        }

        return reading.Outcome == TextOutcome.Value;
    }

    private bool IsWithin(SheetNode node, string doc, Dimension dimension, double si, double? least, double? most)
    {
        var limit = si < least ? least : si > most ? most : null;
        if (limit is null) return true;
        scalars.Report(
            si < least ? ReadFindings.TooSmall : ReadFindings.TooBig, node,
            Read(node), FindingValue.Number("limit", limit.Value, dimension), FindingValue.Said("doc", doc));
        return false;
    }

    private static Phrase OneOf(IReadOnlyList<Dimension> dimensions)
    {
        var words = DimensionWords.Of(dimensions[0]);
        foreach (var dimension in dimensions.Skip(1)) words = $"{words} or {DimensionWords.Of(dimension)}";
        return words;
    }

    private static FindingValue Read(SheetNode node) => FindingValue.Text("read", Excerpt.Of(node.Literal.Trim()));

    // "12 t or 12 short ton": each is a text with one meaning, so a page can offer it instead of what was typed.
    private static FindingValue Readings(IEnumerable<string> readings)
    {
        var all = readings.ToList();
        Phrase listed = $"{all[0]}";
        foreach (var reading in all.Skip(1).Take(MostReadings - 1)) listed = $"{listed} or {reading}";
        return FindingValue.Said("readings", all.Count > MostReadings ? $"{listed} or …" : listed);
    }
}
