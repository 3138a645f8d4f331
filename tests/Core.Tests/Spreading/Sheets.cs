using System.Text.Json;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;
using Lanewright.Core.Weighing;
using TestResult = Lanewright.Core.Spreading.TestResult;

namespace Lanewright.Core.Tests.Spreading;

/// <summary>Sheets to start from; all data invented.</summary>
internal static class Sheets
{
    internal static readonly DateOnly Day = new(2026, 10, 6);

    internal static readonly Scale Pallet = new()
    {
        Id = "pallet",
        Kind = ScaleKind.Pallet,
        Class = ScaleClass.III,
        Capacity = Mass.FromPounds(2000),
        Division = Mass.FromPounds(0.5),
        Verified = new(2026, 3, 2),
    };

    internal static readonly Scale Bench = new()
    {
        Id = "bench",
        Class = ScaleClass.III,
        Capacity = Mass.FromPounds(150),
        Division = Mass.FromPounds(0.1),
        Verified = new(2026, 4, 14),
    };

    internal static readonly Scale Vehicle = new()
    {
        Id = "vehicle",
        Kind = ScaleKind.Vehicle,
        Class = ScaleClass.IIIL,
        Capacity = Mass.FromPounds(120_000),
        Division = Mass.FromPounds(20),
        Verified = new(2026, 5, 20),
    };

    /// <summary>So fine that weighing adds nothing.</summary>
    internal static readonly Scale Fine = new()
    {
        Id = "fine",
        Capacity = Mass.FromPounds(2000),
        Division = Mass.FromPounds(1e-9),
        Tolerance = Mass.FromPounds(1e-9),
        Verified = new(2026, 4, 14),
    };

    /// <summary>Six runs, one twice as large, that agree within 1 %: nothing to say against them.</summary>
    internal static TestSheet Clean() => Drop(
        (2400, 200), (2410, 200), (2391, 200), (2406, 200), (2395, 200), (4802, 400));

    internal static TestSheet Drop(params (double Pulses, double Pounds)[] runs) => new()
    {
        Kind = TestKind.DropTest,
        Title = "invented",
        Invented = true,
        Date = Day,
        Spreader = new()
        {
            Id = "HR-104",
            Form = ConstantForm.PulsesPerMass,
            Unit = Units.PulsePerPound,
            Resolution = Units.PulsePerPound.ToSi(0.01),
            Lowest = Units.PulsePerPound.ToSi(1),
            Highest = Units.PulsePerPound.ToSi(250),
        },
        Material = new() { Name = "salt" },
        Scale = Pallet,
        CommonError = true,
        Runs = [.. runs.Select((r, i) => new Run
        {
            Id = $"{i + 1}",
            Pulses = PulseCount.FromPulses(r.Pulses),
            EngineSpeed = RotationalSpeed.FromRevolutionsPerMinute(1500),
            Gate = Length.FromInches(2),
            Oil = OilState.Warm,
            Setting = "50 %",
            Catch = Whole(r.Pounds),
        })],
    };

    /// <summary>An open loop: setting, seconds, pounds.</summary>
    internal static TestSheet OpenLoop(params (string Setting, double Seconds, double Pounds)[] runs) =>
        Drop() with
        {
            Spreader = new()
            {
                Id = "HR-117",
                Loop = ControlLoop.Open,
                Form = ConstantForm.MassFlow,
                Unit = Units.PoundPerMinute,
                Resolution = Units.PoundPerMinute.ToSi(1),
            },
            TimingUncertainty = Duration.FromSeconds(0.3),
            Runs = [.. runs.Select((r, i) => new Run
            {
                Id = $"{i + 1}", Setting = r.Setting, Time = Duration.FromSeconds(r.Seconds), Catch = Whole(r.Pounds),
            })],
        };

    /// <summary>A verification: what the controller says, what the scale says; pounds.</summary>
    internal static TestSheet Check(params (double Delivered, double Pounds)[] runs) =>
        Drop() with
        {
            Kind = TestKind.Verification,
            Runs = [.. runs.Select((r, i) => new Run
            {
                Id = $"{i + 1}", Delivered = Mass.FromPounds(r.Delivered), Catch = Whole(r.Pounds),
            })],
        };

    internal static WholeCatch Whole(double pounds, double tare = 62) =>
        new(Mass.FromPounds(tare), Mass.FromPounds(tare + pounds));

    internal static TestSheet With(this TestSheet sheet, int run, Func<Run, Run> change) =>
        sheet with { Runs = [.. sheet.Runs.Select((r, i) => i == run ? change(r) : r)] };

    internal static TestSheet WithAll(this TestSheet sheet, Func<Run, Run> change) =>
        sheet with { Runs = [.. sheet.Runs.Select(change)] };

    internal static TestSheet WithSpreader(this TestSheet sheet, Func<Spreader, Spreader> change) =>
        sheet with { Spreader = change(sheet.Spreader) };

    internal static TestResult Result(this TestSheet sheet, AnalysisOptions? options = null) =>
        Assert.Single(SheetAnalysis.Analyse(sheet, options).Results);

    /// <summary>The result as it is kept: written into a report and read back.</summary>
    internal static Measured Kept(this TestSheet sheet)
    {
        var text = ReportWriter.Write(SheetAnalysis.Analyse(sheet), [], TextCulture.Invariant, UnitPreferences.UnitedStates);
        using var report = JsonDocument.Parse(text);
        return MeasuredJson.Read(report.RootElement.GetProperty("results")[0].GetProperty("measured"));
    }

    internal static Finding? Find(this TestReport report, FindingKind kind) =>
        report.Findings.FirstOrDefault(f => f.Kind == kind);

    internal static double Number(this Finding finding, string name) =>
        finding.Values.Single(v => v.Name == name).Si;

    internal static bool Says(this TestSheet sheet, FindingKind kind) =>
        SheetAnalysis.Analyse(sheet).Find(kind) is not null;
}
