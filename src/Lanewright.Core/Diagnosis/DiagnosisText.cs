using Lanewright.Core.Quantities;
using Lanewright.Core.Statistics;
using Lanewright.Core.Text;

namespace Lanewright.Core.Diagnosis;

/// <summary>A cause in sentences: what it would be, and what speaks for it in numbers.</summary>
/// <param name="Culture">How numbers are written.</param>
/// <param name="Units">Units of masses.</param>
public sealed record DiagnosisText(TextCulture Culture, UnitPreferences Units)
{
    /// <summary>What the diagnosis comes to, in one sentence.</summary>
    public string Headline(DiagnosisReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (report.Causes.Count == 0) return Culture.Say("No run can be used, so there is nothing to look for a cause in.");
        var first = report.Causes[0];
        return Culture.Say(report.Outcome switch
        {
            Outcome.NothingWrong => (Phrase)$"Nothing is wrong as far as this sheet shows (chance {Chance(report.NothingWrong)}).",
            Outcome.Likely => $"Most likely: {(Phrase)first.Facts.Name} (chance {Chance(first.Chance)}).",
            _ => $"This sheet does not settle it. Chance that nothing is wrong: {Chance(report.NothingWrong)}. Do the next test.",
        });
    }

    /// <summary>The size of the effect if the cause is there; empty where the cause has none.</summary>
    public string Effect(RankedCause cause, DiagnosisReport report)
    {
        ArgumentNullException.ThrowIfNull(cause);
        ArgumentNullException.ThrowIfNull(report);
        var x = cause.Effect;
        Phrase effect = cause.Facts.Cause switch
        {
            Cause.MassUnit or Cause.TonKind or Cause.LaneConvention or Cause.RoadWidth or Cause.MileKilometre or Cause.RateUnit =>
                (Phrase)$"By a factor of {Number(cause.Best.Effect)}.",
            Cause.TareForgotten => $"About {Mass(x)} for each container.",
            Cause.ContainerMissing => $"About {Mass(x)} in run {RunName(cause, report)}.",
            Cause.PersonChanged => $"About {Mass(x)} in run {RunName(cause, report)}.",
            Cause.DigitsSwapped or Cause.DigitDropped => $"In run {RunName(cause, report)}.",
            Cause.FuelBurnt or Cause.RunOn => $"About {Mass(x)} in each run.",
            Cause.Unprimed => $"About {Mass(x)} in the first run.",
            Cause.Bridging => $"Run {RunName(cause, report)} lacks about {Percent(x)}.",
            Cause.ScaleDivision => $"All readings lie on steps of {Number(Marks.LatticeOf(report.Input.Report.Sheet).Multiple)} divisions.",
            Cause.ScaleOff => x > 0 ? (Phrase)$"The scale reads {Percent(x)} too much." : $"The scale reads {Percent(-x)} too little.",
            Cause.Spill => $"About {Percent(x)} is missing.",
            Cause.PulsesMissed => $"About {Percent(x)} of the pulses at full drive.",
            Cause.WrongTeeth => $"The wheel has {Number(cause.Best.Effect)} times the teeth it had.",
            Cause.GateMoved => $"The opening is {Percent(x)} of what it was.",
            Cause.MaterialChanged => x > 0 ? (Phrase)$"The material fills {Percent(x)} heavier than before." : $"The material fills {Percent(-x)} lighter than before.",
            Cause.Wear => $"About {Percent(x)} less with each season.",
            Cause.Slip => $"About {Percent(x)} at full drive.",
            Cause.HopperHead => $"About {Percent(x)} from the first run to the last.",
            Cause.FlowLimit => $"Nothing more comes above a setting of about {Percent(x)}.",
            Cause.ColdOil => $"The first run was about {Percent(x)} slow.",
            Cause.EngineSlow => $"The engine ran at about {Percent(x)} of its usual speed.",
            Cause.MotorLeak => $"About {Percent(x)} of full speed is lost.",
            Cause.ValveShift => x > 0 ? (Phrase)$"The shaft is {Percent(x)} of full speed too slow at every setting." : $"The shaft is {Percent(-x)} of full speed too fast at every setting.",
            Cause.ConstantLost => $"The controller works with {Percent(1 + x)} of the constant believed to be in it.",
            Cause.SpeedConstant => x > 0 ? (Phrase)$"The controller counts {Percent(x)} too much distance." : $"The controller counts {Percent(-x)} too little distance.",
            Cause.SpeedFrozen => $"It stands at about {QuantityText.Write(x, Units[Dimension.Speed], Culture, NumberForm.Significant(2))}.",
            _ => "",
        };
        return Culture.Say(effect);
    }

    /// <summary>What was observed beside what is expected of a healthy spreader, a line each.</summary>
    public IReadOnlyList<string> Evidence(DiagnosisReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (report.Seen is not { } seen) return [];
        var lines = new List<string>();
        var (reference, variance) = Reference(seen);
        if (variance < 0.5) Line(seen.CountedMass, reference, variance);
        else lines.Add(Culture.Say($"No earlier constant is known, so the runs could only be held against each other ({seen.CountedMass.Name})."));
        foreach (var channel in (Channel?[])[seen.PulsesPerTurn, seen.ShaftSpeed, seen.ControllerCount])
            if (channel is not null) Line(channel, 0, 0);
        foreach (var sister in report.Input.Sisters)
        {
            Phrase same = (sister.SameMaterial, sister.SameScale) switch
            {
                (true, true) => "same material and scale",
                (true, false) => "same material",
                (false, true) => "same scale",
                _ => "other material and scale",
            };
            lines.Add(Culture.Say($"Spreader {Excerpt.Of(sister.Id)} ({same}): {Signed(sister.Change)} since its last test, ± {Percent(2 * sister.Uncertainty)}."));
        }

        if (report.Input.Facts.Events.Count > 0)
            lines.Add(Culture.Say($"In the register since the last test: {string.Join(", ", report.Input.Facts.Events.Select(e => Culture.Say(Excerpt.Of(e))))}."));
        return lines;

        void Line(Channel channel, double against, double more)
        {
            double weights = 0, sum = 0, low = double.PositiveInfinity, high = double.NegativeInfinity;
            var scatter = report.Input.Report.Results.Count > 0 ? report.Input.Report.Results[0].Estimate.Scatter.Median : 0.01;
            for (var i = 0; i < channel.Values.Length; i++)
            {
                if (channel.Values[i] is not { } value) continue;
                var weight = 1 / ((channel.Own[i] * channel.Own[i]) + (ReferenceEquals(channel, seen.CountedMass) ? scatter * scatter : 0));
                (weights, sum) = (weights + weight, sum + (weight * (value - against)));
                (low, high) = (Math.Min(low, value - against), Math.Max(high, value - against));
            }

            var u = 2 * Math.Sqrt(more + (channel.Common * channel.Common) + (1 / weights));
            var name = Upper(Culture.Say(channel.Name));
            lines.Add(Culture.Say(channel.Count > 1
                ? $"{name}: {Signed(sum / weights)} against what is expected, ± {Percent(u)}; from run to run {Signed(low)} to {Signed(high)}."
                : (Phrase)$"{name}: {Signed(sum / weights)} against what is expected, ± {Percent(u)}."));
        }
    }

    /// <summary>A chance as people say it.</summary>
    public string Chance(double chance) => chance switch
    {
        > 0.99 => Culture.Say($"more than {Percent(0.99)}"),
        < 0.01 => Culture.Say($"less than {Percent(0.01)}"),
        _ => Percent(Math.Round(chance * 100) / 100),
    };

    /// <summary>Minutes in words.</summary>
    public string Minutes(double minutes) => $"{Number(minutes)} min";

    /// <summary>The reference of the mass for each count, as a logarithm, and its variance.</summary>
    internal static (double Reference, double Variance) Reference(Observations seen)
    {
        if (seen.Referred) return (0, seen.ReferenceUncertainty * seen.ReferenceUncertainty);
        var (mean, variance, _) = seen.History.Expect(0, seen.Keyed);
        return (mean, variance);
    }

    private static string RunName(RankedCause cause, DiagnosisReport report) =>
        cause.Best.Run >= 0 && report.Seen is { } seen && cause.Best.Run < seen.Runs.Count ? Excerpt.Of(seen.Runs[cause.Best.Run].Run.Id) : "?";

    private static string Upper(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private string Percent(double share) => PercentText.Write(share, Culture);

    private string Signed(double log)
    {
        var share = Elementary.Expm1(log);
        return (share >= 0 ? "+" : "") + Percent(share);
    }

    private string Number(double value) => QuantityText.WriteNumber(value, Culture, NumberForm.Significant(4)).TrimEnd('0').TrimEnd(Culture.DecimalMark);

    private string Mass(double kilograms) => QuantityText.Write(kilograms, Units[Dimension.Mass], Culture, NumberForm.Significant(2));
}
