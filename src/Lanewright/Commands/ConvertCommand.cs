using System.CommandLine;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Commands;

/// <summary><c>lanewright convert</c>: a quantity from one unit to another, or to all units of its kind.</summary>
internal static class ConvertCommand
{
    private const int MostNear = 6;

    internal static Command Make()
    {
        var amount = new Argument<string>("amount") { Description = "A number with its unit, such as \"1,250 lb\"." };
        var unit = new Argument<string?>("unit")
        {
            Description = "The unit wanted; every unit of the kind when left out.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var lane = new Option<string?>("--lane") { Description = "Lane width, for converting between a lane's length and its area." };
        var culture = CommonOptions.Culture();
        var command = new Command("convert", "Convert units.") { amount, unit, lane, culture };
        command.SetAction(parsed =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var error = parsed.InvocationConfiguration.Error;
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            if (Value(QuantityText.ReadAny(parsed.GetValue(amount), c), "amount", c, error) is not { } from)
                return CommonOptions.CouldNotRead;
            Length? width = null;
            if (parsed.GetValue(lane) is { } laneText)
            {
                if (Value(QuantityText.Read<Length>(laneText, c), "--lane", c, error) is not { } w)
                    return CommonOptions.CouldNotRead;
                if (w.Si is < 1 or > 20)
                {
                    error.WriteLine(c.Say($"--lane: '{laneText}' was read; a lane width of 1 m to 20 m was expected."));
                    return CommonOptions.CouldNotRead;
                }

                width = w;
            }

            return parsed.GetValue(unit) is { } wanted
                ? One(from, wanted, width, c, output, error)
                : Every(from, width, c, output);
        });
        return command;
    }

    private static int One(
        Amount from, string wanted, Length? width, TextCulture culture, TextWriter output, TextWriter error)
    {
        if (Units.Find(wanted) is not { } unit)
        {
            // Ask the reader: it knows which unit is meant, or what the question is.
            if (Value(QuantityText.ReadAny("1 " + wanted, culture), "unit", culture, error) is not { } one)
                return CommonOptions.CouldNotRead;
            unit = one.Unit;
        }

        if (Across(from, unit.Dimension, width) is not { } si)
        {
            var others = string.Join(", ", Units.Of(from.Unit.Dimension).Select(u => u.Symbol));
            error.WriteLine(culture.Say($"unit: '{wanted}' does not measure the same as '{from.Unit.Symbol}'. Units that do: {others}."));
            if (IsRate(from.Unit.Dimension) && IsRate(unit.Dimension))
                error.WriteLine(culture.Say("A rate per lane and a rate per area convert with a lane width: add --lane \"12 ft\"."));
            return CommonOptions.CouldNotRead;
        }

        output.WriteLine(Written(si, unit, culture));
        return CommonOptions.Answered;
    }

    private static bool IsRate(Dimension dimension) => dimension
        is Dimension.LaneRate or Dimension.AreaRate or Dimension.LiquidLaneRate or Dimension.LiquidAreaRate;

    private static int Every(Amount from, Length? width, TextCulture culture, TextWriter output)
    {
        foreach (var dimension in Enum.GetValues<Dimension>())
        {
            if (Across(from, dimension, width) is not { } si) continue;
            foreach (var unit in Units.Of(dimension))
                output.WriteLine(Written(si, unit, culture));
        }

        return CommonOptions.Answered;
    }

    // Eight digits tell any two weighings apart; zeros at the end tell nothing.
    private static string Written(double si, Unit unit, TextCulture culture)
    {
        var number = QuantityText.WriteValue(si, unit, culture, NumberForm.Significant(8));
        if (number.Contains(culture.DecimalMark, StringComparison.Ordinal))
            number = number.TrimEnd('0').TrimEnd(culture.DecimalMark);
        return $"{number} {QuantityText.Symbol(unit, culture)}";
    }

    /// <summary>The value in SI as another dimension: the same one, or lane and area through a lane width.</summary>
    private static double? Across(Amount from, Dimension to, Length? width) => (from.Unit.Dimension, to, width) switch
    {
        var (a, b, _) when a == b => from.Si,
        (Dimension.LaneRate, Dimension.AreaRate, { } w) => LaneRate.FromSi(from.Si).ToAreaRate(w).Si,
        (Dimension.AreaRate, Dimension.LaneRate, { } w) => AreaRate.FromSi(from.Si).ToLaneRate(w).Si,
        (Dimension.LiquidLaneRate, Dimension.LiquidAreaRate, { } w) => LiquidLaneRate.FromSi(from.Si).ToAreaRate(w).Si,
        (Dimension.LiquidAreaRate, Dimension.LiquidLaneRate, { } w) => LiquidAreaRate.FromSi(from.Si).ToLaneRate(w).Si,
        _ => null,
    };

    private static string Near<T>(TextReading<T> reading, TextCulture culture)
    {
        if (reading.Problem != TextProblem.UnknownUnit) return "";
        var near = Nearest.Close(reading.Read, Enum.GetValues<Dimension>().SelectMany(Units.Of).Select(u => u.Symbol));
        var listed = string.Join(", ", near.Take(MostNear));
        return listed.Length == 0 ? "" : " " + culture.Say($"Spelt nearly like it: {listed}.");
    }

    private static T? Value<T>(TextReading<T> reading, string field, TextCulture culture, TextWriter error)
        where T : struct
    {
        switch (reading.Outcome)
        {
            case TextOutcome.Value:
                return reading.Value;
            case TextOutcome.Question:
                var choices = reading.Choices.Select(choice => choice.Words).Aggregate((all, next) => culture.Say($"{all} or {next}"));
                error.WriteLine(culture.Say($"{field}: '{reading.Read}' has more than one meaning. Write which: {choices}."));
                return null;
            default:
                error.WriteLine(culture.Say($"{field}: '{reading.Read}' was read; expected {reading.Wanted}.") + Near(reading, culture));
                return null;
        }
    }
}
