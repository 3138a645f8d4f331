using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Documents;

/// <summary>What a certificate says of a drop test or a check besides its results.</summary>
internal sealed class DropTestFacts(TestSheet sheet, CertificateWords words)
{
    private bool IsCheck => sheet.Kind is TestKind.Verification;

    internal CertificateFacts Item() => new("Item",
    [
        ("Spreader", sheet.Spreader.Id),
        ("Metering device", sheet.Spreader.Metering),
        ("Control", sheet.Spreader.Loop is ControlLoop.Closed ? "closed loop" : "open loop"),
        ("Constant", Form(sheet.Spreader.Form)),
        ("Constant in use before", sheet.Spreader.Current is { } current ? words.Stated(current, sheet.Spreader.Unit) : ""),
    ]);

    internal CertificateFacts Conditions()
    {
        var oil = sheet.Runs.Select(run => run.Oil).Where(state => state is not OilState.NotStated).Distinct().ToList();
        return new("Material and conditions",
        [
            ("Material", sheet.Material.Name),
            ("Bulk density", sheet.Material.BulkDensity is { } density ? words.Stated(density.Si, words.Units[Dimension.Density]) : ""),
            ("Moisture", sheet.Material.Moisture is { } water ? $"{words.Percent(water.Share)} of the {(water.OfDry ? "dry" : "wet")} mass" : ""),
            ("Gate", Range(sheet.Runs.Select(run => run.Gate?.Si), words.Units[Dimension.Length] == Units.Foot ? Units.Inch : Units.Millimetre)),
            ("Engine speed", Range(sheet.Runs.Select(run => run.EngineSpeed?.Si), words.Units[Dimension.RotationalSpeed])),
            ("Hydraulic oil", oil.Count switch { 0 => "", 1 => oil[0] is OilState.Warm ? "warm" : "cold", _ => "cold in some runs, warm in others" }),
            ("Drive settings", string.Join("; ", sheet.Runs.Select(run => run.Setting.Trim()).Where(text => text.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase))),
        ]);
    }

    internal List<string> Method(TestReport report)
    {
        List<string> lines =
        [
            IsCheck
                ? "Material was caught and weighed, and compared with what the controller said it delivered."
                : "Material was caught and weighed by difference of readings, while pulses, turns or time were counted.",
        ];
        if (report.Results.Count > 0)
        {
            var result = report.Results[0];
            var estimate = result.Estimate;
            lines.Add($"Runs drawn together as the {ReportWords.Sentence(estimate.Estimator)}, because {ReportWords.Sentence(estimate.Reason)}.");
            lines.Add(
                $"Uncertainty: the interval of {words.Percent(result.Probability)} by the method of docs/method/drop-test.md and decision 2 of Lanewright;"
                + $" the classical evaluation (JCGM 100:2008, annex G) would say ± {words.Percent(result.Classical.Expanded / Math.Abs(result.Value.Value))}.");
        }

        return lines;
    }

    internal List<string> Meaning(TestReport report)
    {
        List<string> lines = [];
        foreach (var result in report.Results)
        {
            var (with, rounding) = result.Setting.Length > 0
                ? ($"At setting {result.Setting}: with", $"At setting {result.Setting}: rounding") : ("With", "Rounding");
            if (result.Delivery is { } delivery && !IsCheck)
            {
                var off = delivery.Share.Value >= 1 ? $"{words.Percent(delivery.Share.Value - 1)} too much" : $"{words.Percent(1 - delivery.Share.Value)} too little";
                lines.Add($"{with} the constant in use before, the spreader has been putting down {off}.");
            }

            if (result.KeyIn is { } key && !IsCheck)
                lines.Add($"{rounding} to the controller's step costs {words.Signed(key.Cost)}.");
        }

        return lines;
    }

    internal CertificateTable Runs(TestResult result)
    {
        var mass = words.Units[Dimension.Mass];
        var at = result.Setting.Length > 0 ? $" at setting {result.Setting}" : "";
        return new(
            $"Runs{at}",
            ["Run", $"Net, {words.Symbol(mass)}", $"Ratio, {words.Symbol(result.Unit)}", "Off the result", "Own standard uncertainty"],
            [.. result.Runs.Select(run => (IReadOnlyList<string>)
            [
                run.Id, QuantityText.WriteTogether(run.Net.Value, run.Net.StandardUncertainty, mass, words.Culture).Value,
                words.Number(run.Ratio, result.Unit), words.Signed(run.Deviation), words.Percent(run.OwnUncertainty),
            ])],
            [false, true, true, true, true]);
    }

    private string Range(IEnumerable<double?> values, Unit unit)
    {
        var known = values.OfType<double>().ToList();
        if (known.Count == 0) return "";
        var (least, most) = (words.Stated(known.Min(), unit), words.Stated(known.Max(), unit));
        return least == most ? least : $"{least} to {most}";
    }

    private static string Form(ConstantForm form) => form switch
    {
        ConstantForm.PulsesPerMass => "sensor pulses per mass",
        ConstantForm.MassPerPulse => "mass per sensor pulse",
        ConstantForm.MassPerRevolution => "mass per turn of the metering shaft",
        _ => "mass per time at a drive setting",
    };
}
