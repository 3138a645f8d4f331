using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>What a result means, in sentences for the person in the yard.</summary>
/// <param name="Culture">How numbers are written.</param>
/// <param name="Units">Units of masses.</param>
public sealed record AnswerText(TextCulture Culture, UnitPreferences Units)
{
    /// <summary>A share as percent.</summary>
    public string Percent(double share) => PercentText.Write(share, Culture);

    /// <summary>A mass in the reader's unit.</summary>
    public string Mass(double kilograms, int digits) =>
        QuantityText.Write(kilograms, Units[Dimension.Mass], Culture, NumberForm.Significant(digits));

    /// <summary>The number to key in, with exactly the decimals of the controller's step.</summary>
    public string Keyed(KeyIn key, Unit unit)
    {
        ArgumentNullException.ThrowIfNull(key);
        ArgumentNullException.ThrowIfNull(unit);
        var decimals = key.Step > 0 ? Math.Max(0, -ShortestNumber.In(unit, key.Step).LastPlace) : 0;
        return QuantityText.WriteValue(key.Value, unit, Culture, NumberForm.Decimals(decimals));
    }

    /// <summary>What rounding to the controller's step costs.</summary>
    public string Rounding(KeyIn key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return Culture.Say($"Rounding to the controller's step changes the rate by {Signed(key.Cost)}, at most {Percent(key.WorstCost)}.");
    }

    /// <summary>The result with its interval, e.g. <c>12.62 ± 0.11 pulse/lb</c>.</summary>
    public string Constant(TestResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return QuantityText.WriteWithUncertainty(result.Value.Value, result.Expanded, result.Unit, Culture);
    }

    /// <summary>The interval, e.g. <c>95 % interval 12.51 to 12.73 pulse/lb</c>.</summary>
    public string Interval(TestResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var (low, _) = QuantityText.WriteTogether(result.Low, result.Expanded, result.Unit, Culture);
        var (high, _) = QuantityText.WriteTogether(result.High, result.Expanded, result.Unit, Culture);
        return Culture.Say($"{Percent(result.Probability)} interval {low} to {high} {QuantityText.Symbol(result.Unit, Culture)}");
    }

    /// <summary>What happened on the road until now; null when the value in use is not known.</summary>
    public string? Road(TestSheet sheet, TestResult result)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(result);
        if (result.Delivery is not { } delivery) return null;
        var share = delivery.Share.Value;
        var off = Percent(Math.Abs(share - 1));
        Phrase much = share < 1 ? (Phrase)$"{off} too little" : $"{off} too much";
        if (sheet.Kind is TestKind.Verification)
            return Culture.Say($"The spreader puts down {much}: {Percent(share)} of what its controller says (± {Percent(delivery.Expanded)}).");
        var current = QuantityText.Write(
            sheet.Spreader.Current!.Value, result.Unit, Culture, NumberForm.Significant(4));
        return Culture.Say($"With {current} in the controller it has been putting down {much} (± {Percent(delivery.Expanded)}).");
    }

    /// <summary>The verdict against the yard's tolerance; null without one.</summary>
    public string? Tolerance(TestResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Delivery is not { } delivery) return null;
        var tolerance = Percent(delivery.Tolerance);
        return Culture.Say(delivery.Conformity switch
        {
            Conformity.Pass => (Phrase)$"Tolerance ± {tolerance}: inside, even with the uncertainty against it.",
            Conformity.Fail => $"Tolerance ± {tolerance}: outside, even with the uncertainty in its favour.",
            _ => (Phrase)$"Tolerance ± {tolerance}: cannot tell; the chance of being inside is {Percent(delivery.ChanceWithin)}.",
        });
    }

    /// <summary>How much more to drop; null when nothing more is wanted.</summary>
    public string? More(TestSheet sheet, TestResult result)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(result);
        var wanted = Percent(sheet.WantedUncertainty);
        return result.More switch
        {
            null => null,
            { Runs: > 0 } more => Culture.Say(
                $"To reach ± {wanted}: {more.Runs} more run like these, about {Mass(more.Mass, 2)} in all.|To reach ± {wanted}: {more.Runs} more runs like these, about {Mass(more.Mass, 2)} in all."),
            var more => Culture.Say($"More runs like these cannot reach ± {wanted}; the best they give is ± {Percent(more.Floor)}."),
        };
    }

    /// <summary>How the runs were drawn together and why so.</summary>
    public string Method(TestResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return Culture.Say(
            $"Drawn together as the {ReportWords.Sentence(result.Estimate.Estimator)}, because {ReportWords.Sentence(result.Estimate.Reason)}.");
    }

    /// <summary>A share with its sign.</summary>
    public string Signed(double share) => (share >= 0 ? "+" : "") + Percent(share);
}
