using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Statistics;
using Lanewright.Core.Text;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Diagnosis;

/// <summary>
/// What earlier sheets, of this spreader and of its sisters, say: constants, changes, teeth, tares, gate, engine and shaft speed.
/// </summary>
public static class DiagnosisHistory
{
    /// <summary>Sister tests within so many days of the sheet count as of now (common practice, no source).</summary>
    public const int SisterDays = 120;

    private const double NearWhole = 0.02;

    /// <summary>What a diagnosis of a report is given.</summary>
    /// <param name="report">The report in doubt.</param>
    /// <param name="others">Reports of other tests, in any order; those without a day or without a result say nothing.</param>
    /// <param name="facts">What the register says; it stands before what the sheets say.</param>
    public static DiagnosisInput Of(TestReport report, IEnumerable<TestReport> others, SpreaderFacts? facts = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(others);
        var sheet = report.Sheet;
        var usable = others.Where(o => o.Results.Count > 0 && o.Sheet is { Kind: TestKind.DropTest, Date: not null }
            && o.Sheet.Spreader.Form == sheet.Spreader.Form).OrderBy(o => o.Sheet.Date).ToList();
        var own = usable.Where(o => Same(o.Sheet.Spreader.Id, sheet.Spreader.Id) && (sheet.Date is null || o.Sheet.Date < sheet.Date)).ToList();
        return new()
        {
            Report = report,
            Earlier =
            [
                .. own.SelectMany(o => o.Results.Select(r =>
                    new EarlierConstant(o.Sheet.Date!.Value, r.Value.Value, r.RelativeExpanded / 2, r.Setting))),
            ],
            Sisters = [.. Sisters(sheet, usable)],
            Facts = Facts(sheet, own, facts ?? new()),
        };
    }

    private static bool Same(string a, string b) => string.Equals(a.Trim(), b.Trim(), StringComparison.OrdinalIgnoreCase);

    private static IEnumerable<SisterChange> Sisters(TestSheet sheet, List<TestReport> reports)
    {
        foreach (var sister in reports.Where(o => !Same(o.Sheet.Spreader.Id, sheet.Spreader.Id)).GroupBy(o => o.Sheet.Spreader.Id.Trim().ToUpperInvariant()))
        {
            var tests = sister.ToList();
            if (tests.Count < 2) continue;
            var (before, now) = (tests[^2], tests[^1]);
            if (sheet.Date is { } day && Math.Abs(now.Sheet.Date!.Value.DayNumber - day.DayNumber) > SisterDays) continue;
            // A delivery is compared at one setting.
            var pair = (from n in now.Results from b in before.Results where Same(n.Setting, b.Setting) select (n, b)).FirstOrDefault();
            if (pair.n is not { } later || !(later.Value.Value > 0 && pair.b.Value.Value > 0)) continue;
            var change = Elementary.Log(later.Value.Value / pair.b.Value.Value);
            var u = Math.Sqrt((later.RelativeExpanded * later.RelativeExpanded) + (pair.b.RelativeExpanded * pair.b.RelativeExpanded)) / 2;
            yield return new(
                now.Sheet.Spreader.Id, sheet.Spreader.Form is ConstantForm.PulsesPerMass ? -change : change, u,
                Same(now.Sheet.Material.Name, sheet.Material.Name), Same(now.Sheet.Scale.Id, sheet.Scale.Id));
        }
    }

    private static SpreaderFacts Facts(TestSheet sheet, List<TestReport> own, SpreaderFacts known)
    {
        var runs = own.SelectMany(o => o.Sheet.Runs).ToList();
        var gates = runs.Select(r => r.Gate?.Si).OfType<double>().Where(g => g > 0).ToList();
        var tares = runs.Select(r => r.Catch).OfType<ContainerCatch>().SelectMany(c => c.Containers).Select(c => c.Tare.Si).Where(t => t > 0).ToList();
        var engines = runs.Select(r => r.EngineSpeed?.Si).OfType<double>().Where(e => e > 0).ToList();
        var road = sheet.Kind is TestKind.Verification && sheet.Runs.Any(r =>
            QuantityText.ReadAny(r.Setting, TextCulture.Invariant).TryGet(out var a) && a.Unit.Dimension is Dimension.Speed);
        return known with
        {
            Teeth = known.Teeth ?? Teeth(runs),
            Gate = known.Gate ?? (gates.Count > 0 ? gates[^1] : null),
            Gates = known.Gates.Count > 0 ? known.Gates : [.. gates.Distinct()],
            Tare = known.Tare ?? (tares.Count > 0 ? tares.Average() : null),
            EngineSpeed = known.EngineSpeed ?? (engines.Count > 0 ? engines.Average() : null),
            Shaft = known.Shaft.Count > 0 ? known.Shaft : Shaft(own),
            OnTheRoad = known.OnTheRoad || road,
        };
    }

    private static double? Teeth(List<Run> runs)
    {
        var ratios = runs.Where(r => r is { Pulses.Si: > 0, Revolutions.Si: > 0 }).Select(r => r.Pulses!.Value.Si / r.Revolutions!.Value.Si)
            .Order().ToList();
        if (ratios.Count == 0) return null;
        var middle = ratios[ratios.Count / 2];
        return Math.Abs(middle - Math.Round(middle)) <= NearWhole * middle ? Math.Round(middle) : middle;
    }

    private static List<ShaftSpeed> Shaft(List<TestReport> own)
    {
        foreach (var report in Enumerable.Reverse(own))
        {
            var speeds =
                from run in report.Sheet.Runs
                where run is { Revolutions.Si: > 0, Time.Si: > 0 }
                let setting = QuantityText.ReadAny(run.Setting, TextCulture.Invariant).TryGet(out var a) && a.Unit.Dimension is Dimension.Fraction ? a.Si : -1
                where setting is > 0 and <= 1
                group run.Revolutions!.Value.Si / run.Time!.Value.Si by setting into at
                select new ShaftSpeed(at.Key, at.Average());
            if (speeds.ToList() is { Count: > 0 } found) return found;
        }

        return [];
    }
}
