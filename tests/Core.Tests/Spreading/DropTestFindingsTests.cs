using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using static Lanewright.Core.Spreading.DropTestFindings;

namespace Lanewright.Core.Tests.Spreading;

/// <summary>Every finding of a drop test or verification, provoked once. All data invented.</summary>
public sealed class DropTestFindingsTests
{
    private sealed record Case(FindingKind Kind, string Field, TestSheet Sheet, int Trials = 0);

    private static readonly (double, double)[] Wild = [(2400, 200), (2460, 200), (2350, 200)];

    private static readonly TestSheet Good = Sheets.Clean();

    private static readonly TestSheet Flow = Sheets.OpenLoop(("50 %", 60, 210), ("50 %", 60, 212), ("50 %", 60, 211));

    private static readonly Case[] Cases =
    [
        new(NoCount, "runs[1].pulses", Good.With(1, r => r with { Pulses = null })),
        new(CountNotPositive, "runs[1].pulses", Good.With(1, r => r with { Pulses = PulseCount.FromPulses(0) })),
        new(NoRuns, "runs", Sheets.Drop()),
        new(SingleRun, "runs", Sheets.Drop((2400, 200))),
        new(SingleRunKnown, "runs", Sheets.Drop((2400, 200)) with { EarlierScatter = new(0.01, 12) }),
        new(TwoRuns, "runs", Sheets.Drop((2400, 200), (2402, 200))),
        new(DropTestFindings.Scatter, "runs", Sheets.Drop((2400, 200), (2700, 200), (2550, 200))),
        new(Outlier, "runs[2]", Good.With(2, r => r with { Pulses = PulseCount.FromPulses(2520) })),
        new(OutlierNoPower, "runs", Sheets.Drop((2400, 200), (2410, 200), (4802, 400))),
        // 3 lb left in the pail at every run.
        new(StartStop, "runs", Sheets.Drop((564, 50), (1164, 100), (2364, 200), (3564, 300), (4764, 400), (4766, 400))),
        new(OneSize, "runs", Sheets.Drop((2400, 200), (2410, 200), (2391, 200))),
        new(SettingMatters, "runs", Good.With(0, Fast).With(1, Fast).With(2, Fast)),
        new(FewCounts, "runs[0].pulses", Sheets.Drop((120, 200), (120, 200), (121, 200))),
        new(SmallDrop, "runs[0]", Sheets.Drop((240, 20), (2400, 200), (2402, 200))),
        new(MoistureTakenAsExact, "material.moisture.plusMinus", Good with
        {
            Material = new() { Name = "salt", Moisture = new(0.02, false, null) },
        }),
        new(LongRun, "runs[1].time", Good.With(1, r => r with { Time = Duration.FromSi(10_800) })),
        new(TimingAssumed, "timingUncertainty", Flow with { TimingUncertainty = null }),
        new(LowEngineSpeed, "runs[3].engineSpeed", Good.With(3, r => Engine(r, 1100))),
        new(EngineSpeedDiffers, "runs", Good.With(3, r => Engine(r, 1800))),
        new(ColdOil, "runs[3].oil", Good.With(3, r => r with { Oil = OilState.Cold })),
        new(GateDiffers, "runs", Good.With(3, r => r with { Gate = Length.FromInches(2.5) })),
        new(PulsesPerTurn, "runs[5].pulses", Good.WithAll(r => r with
        {
            Revolutions = RevolutionCount.FromRevolutions(r.Id == "6" ? 206 : Math.Round(r.Pulses!.Value.Si / 24)),
        })),
        new(Wide, "runs", Sheets.Drop(Wild)),
        new(WideForGood, "runs", Good with { Scale = Sheets.Fine with { Tolerance = null, RelativeTolerance = Fraction.FromSi(0.03) } }),
        new(TooWide, "runs", Sheets.Drop(Wild) with { Tolerance = 0.01 }),
        new(FirstOrderFails, "runs", Sheets.Drop((360, 30), (365, 30), (1420, 120)) with
        {
            Scale = Sheets.Pallet with { Division = Mass.FromPounds(10), Class = Core.Weighing.ScaleClass.IIII },
            CommonError = false,
        }, 20_000),
        new(ResolutionNotStated, "spreader.resolution", Good.WithSpreader(s => s with { Resolution = null })),
        new(CoarseResolution, "spreader.resolution", Good.WithSpreader(s => s with { Resolution = s.Unit.ToSi(1) })),
        new(OutOfRange, "spreader.highest", Good.WithSpreader(s => s with { Highest = s.Unit.ToSi(11.9) })),
        new(LargeChange, "spreader.current", Good.WithSpreader(s => s with { Current = s.Unit.ToSi(15) })),
        new(CurrentOfManySettings, "spreader.current",
            Sheets.OpenLoop(("50 %", 60, 210), ("70 %", 60, 300)).WithSpreader(s => s with { Current = s.Unit.ToSi(210) })),
        new(NoDelivered, "runs[0].delivered", Sheets.Check((200, 200), (200, 201)).With(0, r => r with { Delivered = null })),
        new(Fails, "runs", Sheets.Check((200, 220), (200, 221), (200, 219), (400, 440))),
        new(CannotTell, "runs", Sheets.Check((200, 210), (200, 211), (200, 209), (400, 420))),
        new(AdoptedAgainstStop, "decision.verdict", Sheets.Drop() with { Decision = new(Verdict.Adopt, "R.V.", "no time") }),
        new(DecisionWithoutReason, "decision", Good with { Decision = new(Verdict.Adopt, "R.V.", " ") }),
    ];

    public static TheoryData<string> Codes => [.. Cases.Select(c => c.Kind.Code)];

    [Fact]
    public void Every_finding_has_a_case_and_is_listed() =>
        Assert.Equal(All.Select(k => k.Code).Order(), Cases.Select(c => c.Kind.Code).Order());

    [Theory]
    [MemberData(nameof(Codes))]
    public void A_case_gives_its_finding_with_field_severity_and_all_values(string code)
    {
        var which = Array.Find(Cases, c => c.Kind.Code == code)!;
        var report = SheetAnalysis.Analyse(which.Sheet, new(which.Trials));
        var finding = report.Findings.First(f => f.Kind == which.Kind);
        Assert.Equal(which.Kind.Severity, finding.Severity);
        Assert.StartsWith(which.Field, finding.Field, StringComparison.Ordinal);
        Assert.All(report.Findings, f => Assert.True(FindingText.IsComplete(f), f.Code));
        var text = FindingText.Message(finding, TextCulture.UnitedStates, UnitPreferences.UnitedStates)
            + FindingText.Action(finding, TextCulture.UnitedStates, UnitPreferences.UnitedStates);
        Assert.DoesNotContain("{", text, StringComparison.Ordinal);
        Assert.DoesNotContain("?", text, StringComparison.Ordinal);
        Assert.False(Good.Says(which.Kind));
    }

    [Fact]
    public void A_clean_sheet_has_no_finding_at_all()
    {
        var report = SheetAnalysis.Analyse(Good);
        Assert.Empty(report.Findings);
        Assert.True(report.Usable);
    }

    [Fact]
    public void Three_equal_runs_have_only_the_notes_that_they_show_little()
    {
        var report = SheetAnalysis.Analyse(Sheets.Drop((2400, 200), (2410, 200), (2391, 200)));
        Assert.Equal([OutlierNoPower.Code, OneSize.Code], report.Findings.Select(f => f.Code));
        Assert.True(report.Usable);
    }

    [Fact]
    public void Gravest_findings_come_first_and_one_stop_makes_the_report_unusable()
    {
        var report = SheetAnalysis.Analyse(Sheets.Drop((2400, 200)).With(0, r => r with { Oil = OilState.Cold }));
        Assert.Equal([SingleRun, TooWide, ColdOil, Wide], report.Findings.Select(f => f.Kind));
        Assert.Single(report.Results);
        Assert.False(report.Usable);
    }

    [Fact]
    public void Warnings_and_notes_leave_a_report_usable()
    {
        var report = SheetAnalysis.Analyse(Good.With(3, r => r with { Oil = OilState.Cold }).WithSpreader(s => s with { Resolution = null }));
        Assert.Equal([Severity.Warn, Severity.Note], report.Findings.Select(f => f.Severity));
        Assert.True(report.Usable);
    }

    [Fact]
    public void Without_a_result_a_report_is_not_usable_and_says_why()
    {
        var report = SheetAnalysis.Analyse(Sheets.Drop((0, 200)));
        Assert.Empty(report.Results);
        Assert.Equal([CountNotPositive.Code, NoRuns.Code], report.Findings.Select(f => f.Code));
        Assert.False(report.Usable);
    }

    [Fact]
    public void A_bad_run_stops_the_answer_but_the_others_are_still_computed()
    {
        var report = SheetAnalysis.Analyse(Good.With(0, r => r with { Catch = Sheets.Whole(-5) }));
        Assert.Equal(5, Assert.Single(report.Results).Runs.Count);
        Assert.False(report.Usable);
    }

    private static Run Engine(Run run, double rpm) =>
        run with { EngineSpeed = RotationalSpeed.FromRevolutionsPerMinute(rpm) };

    // The same run at another setting, where the auger slips by 3 %.
    private static Run Fast(Run run) =>
        run with { Setting = "90 %", Pulses = PulseCount.FromPulses(Math.Round(run.Pulses!.Value.Si * 1.03)) };
}
