using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Documents;

/// <summary>What a certificate says of a drop test or a check besides its results.</summary>
internal sealed class DropTestFacts(TestSheet sheet, CertificateWords words)
{
    private bool IsCheck => sheet.Kind is TestKind.Verification;

    internal CertificateFacts Item() => new(words.Say("Item"),
    [
        (words.Say("Spreader"), sheet.Spreader.Id),
        (words.Say("Metering device"), sheet.Spreader.Metering),
        (words.Say("Control"), words.Say(sheet.Spreader.Loop is ControlLoop.Closed ? "closed loop" : "open loop")),
        (words.Say("Constant"), words.Say(Form(sheet.Spreader.Form))),
        (words.Say("Constant in use before"), sheet.Spreader.Current is { } current ? words.Stated(current, sheet.Spreader.Unit) : ""),
    ]);

    internal CertificateFacts Conditions()
    {
        var oil = sheet.Runs.Select(run => run.Oil).Where(state => state is not OilState.NotStated).Distinct().ToList();
        return new(words.Say("Material and conditions"),
        [
            (words.Say("Material"), sheet.Material.Name),
            (words.Say("Bulk density"), sheet.Material.BulkDensity is { } density ? words.Stated(density.Si, words.Units[Dimension.Density]) : ""),
            (words.Say("Moisture"), sheet.Material.Moisture is { } water ? Water(water) : ""),
            (words.Say("Gate"), Range(sheet.Runs.Select(run => run.Gate?.Si), words.Units[Dimension.Length] == Units.Foot ? Units.Inch : Units.Millimetre)),
            (words.Say("Engine speed"), Range(sheet.Runs.Select(run => run.EngineSpeed?.Si), words.Units[Dimension.RotationalSpeed])),
            (words.Say("Hydraulic oil"), oil.Count switch { 0 => "", 1 => words.Say(oil[0] is OilState.Warm ? "warm" : "cold"), _ => words.Say("cold in some runs, warm in others") }),
            (words.Say("Drive settings"), string.Join("; ", sheet.Runs.Select(run => run.Setting.Trim()).Where(text => text.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase))),
        ]);
    }

    internal List<string> Method(TestReport report)
    {
        List<string> lines =
        [
            words.Say(IsCheck
                ? "Material was caught and weighed, and compared with what the controller said it delivered."
                : "Material was caught and weighed by difference of readings, while pulses, turns or time were counted."),
        ];
        if (report.Results.Count > 0)
        {
            var result = report.Results[0];
            var estimate = result.Estimate;
            lines.Add(words.Say($"Runs drawn together as the {ReportWords.Sentence(estimate.Estimator)}, because {ReportWords.Sentence(estimate.Reason)}."));
            lines.Add(words.Say(
                $"Uncertainty: the interval of {words.Percent(result.Probability)} by the method of docs/method/drop-test.md and decision 2 of Lanewright;"
                + $" the classical evaluation (JCGM 100:2008, annex G) would say ± {words.Percent(result.Classical.Expanded / Math.Abs(result.Value.Value))}."));
        }

        return lines;
    }

    internal List<string> Meaning(TestReport report)
    {
        List<string> lines = [];
        foreach (var result in report.Results)
        {
            if (result.Delivery is { } delivery && !IsCheck)
            {
                Phrase off = delivery.Share.Value >= 1 ? (Phrase)$"{words.Percent(delivery.Share.Value - 1)} too much" : $"{words.Percent(1 - delivery.Share.Value)} too little";
                lines.Add(words.Say(result.Setting.Length > 0
                    ? (Phrase)$"At setting {result.Setting}: with the constant in use before, the spreader has been putting down {off}."
                    : $"With the constant in use before, the spreader has been putting down {off}."));
            }

            if (result.KeyIn is { } key && !IsCheck)
            {
                lines.Add(words.Say(result.Setting.Length > 0
                    ? (Phrase)$"At setting {result.Setting}: rounding to the controller's step costs {words.Signed(key.Cost)}."
                    : $"Rounding to the controller's step costs {words.Signed(key.Cost)}."));
            }
        }

        return lines;
    }

    /// <summary>The runs behind the results, with their settings where there are several.</summary>
    internal CertificateTable Runs(IReadOnlyList<TestResult> results)
    {
        var mass = words.Units[Dimension.Mass];
        var several = results.Any(result => result.Setting.Length > 0);
        IEnumerable<string> setting = several ? [words.Say("Setting")] : [];
        return new(
            words.Say("Runs"),
            [
                .. setting, words.Say("Run"), words.Say($"Net, {words.Symbol(mass)}"), words.Say($"Ratio, {words.Symbol(results[0].Unit)}"),
                words.Say("Off the result"), words.Say("Own standard uncertainty"),
            ],
            [
                .. results.SelectMany(result => result.Runs.Select(run => (IReadOnlyList<string>)
                [
                    .. setting.Select(_ => result.Setting), run.Id,
                    QuantityText.WriteTogether(run.Net.Value, run.Net.StandardUncertainty, mass, words.Culture).Value,
                    words.Number(run.Ratio, result.Unit), words.Signed(run.Deviation), words.Percent(run.OwnUncertainty),
                ])),
            ],
            [.. setting.Select(_ => false), false, true, true, true, true]);
    }

    private string Range(IEnumerable<double?> values, Unit unit)
    {
        var known = values.OfType<double>().ToList();
        if (known.Count == 0) return "";
        var (least, most) = (words.Stated(known.Min(), unit), words.Stated(known.Max(), unit));
        return least == most ? least : words.Say($"{least} to {most}");
    }

    private string Water(Moisture water) => words.Say(
        water.OfDry ? (Phrase)$"{words.Percent(water.Share)} of the dry mass" : $"{words.Percent(water.Share)} of the wet mass");

    private static Phrase Form(ConstantForm form) => form switch
    {
        ConstantForm.PulsesPerMass => "sensor pulses per mass",
        ConstantForm.MassPerPulse => "mass per sensor pulse",
        ConstantForm.MassPerRevolution => "mass per turn of the metering shaft",
        _ => "mass per time at a drive setting",
    };
}
