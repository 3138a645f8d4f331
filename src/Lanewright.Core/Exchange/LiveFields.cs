using System.Text;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// What the numbers of a sheet are in when typed without a unit, so that a page can say back what was understood.
/// </summary>
internal static class LiveFields
{
    private enum Bare
    {
        None,
        Mass,
        Opening,
        Density,
        Constant,
        Pulses,
        Turns,
        Seconds,
        EngineSpeed,
    }

    private static readonly Dictionary<string, Bare> Numbers = new(StringComparer.Ordinal)
    {
        ["spreader.resolution"] = Bare.Constant,
        ["spreader.lowest"] = Bare.Constant,
        ["spreader.highest"] = Bare.Constant,
        ["spreader.current"] = Bare.Constant,
        ["material.bulkDensity"] = Bare.Density,
        ["material.moisture.share"] = Bare.None,
        ["material.moisture.plusMinus"] = Bare.None,
        ["scale.capacity"] = Bare.Mass,
        ["scale.division"] = Bare.Mass,
        ["scale.tolerance"] = Bare.Mass,
        ["timingUncertainty"] = Bare.Seconds,
        ["revolutionStep"] = Bare.Turns,
        ["wantedUncertainty"] = Bare.None,
        ["tolerance"] = Bare.None,
        ["runs[].pulses"] = Bare.Pulses,
        ["runs[].revolutions"] = Bare.Turns,
        ["runs[].time"] = Bare.Seconds,
        ["runs[].delivered"] = Bare.Mass,
        ["runs[].engineSpeed"] = Bare.EngineSpeed,
        ["runs[].gate"] = Bare.Opening,
        ["runs[].containers[].tare"] = Bare.Mass,
        ["runs[].containers[].gross"] = Bare.Mass,
        ["runs[].counted.tare"] = Bare.Mass,
        ["runs[].counted.gross"] = Bare.Mass,
        ["runs[].whole.tare"] = Bare.Mass,
        ["runs[].whole.gross"] = Bare.Mass,
        ["runs[].truck.before"] = Bare.Mass,
        ["runs[].truck.after"] = Bare.Mass,
        ["runs[].truck.fuelBurnt.amount"] = Bare.Mass,
        ["runs[].truck.fuelBurnt.plusMinus"] = Bare.Mass,
        ["runs[].truck.changes[].amount"] = Bare.Mass,
        ["runs[].truck.changes[].plusMinus"] = Bare.Mass,
    };

    /// <summary>What a number was understood as, with its unit; null for no number or one with two meanings.</summary>
    internal static string? Echo(LiveInput input, string path, string text)
    {
        if (!Numbers.TryGetValue(Pattern(path), out var bare)) return null;
        var number = QuantityText.ReadNumber(text, input.Culture);
        if (number.Outcome is TextOutcome.Value && UnitOf(bare, input) is { } unit)
            return Words(number.Value, unit, input.Culture);
        return number.Outcome is TextOutcome.Problem && QuantityText.ReadAny(text, input.Culture).TryGet(out var amount)
            ? Words(amount.Value, amount.Unit, input.Culture)
            : null;
    }

    private static string Words(double value, Unit unit, TextCulture culture) =>
        QuantityText.WriteNumber(value, culture, NumberForm.RoundTrip) + " " + QuantityText.Symbol(unit, culture);

    private static Unit? UnitOf(Bare bare, LiveInput input) => bare switch
    {
        Bare.Mass => input.Bare.Mass,
        Bare.Opening => input.Bare.Opening,
        Bare.Density => input.Bare.Density,
        Bare.Constant => Units.Find(input.Text("spreader.unit")),
        Bare.Pulses => Units.Pulse,
        Bare.Turns => Units.Revolution,
        Bare.Seconds => Units.Second,
        Bare.EngineSpeed => Units.RevolutionPerMinute,
        _ => null,
    };

    // Places do not matter for what a field is.
    private static string Pattern(string path)
    {
        if (!path.Contains('[', StringComparison.Ordinal)) return path;
        var pattern = new StringBuilder(path.Length);
        foreach (var letter in path)
        {
            if (!char.IsAsciiDigit(letter)) pattern.Append(letter);
        }

        return pattern.ToString();
    }
}
