using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Tests.Spreading;

/// <summary>The interval by formula against random trials, and the classical figure by hand. All data invented.</summary>
public sealed class IntervalTests
{
    private const int Trials = 100_000;

    private static readonly TestSheet[] Ordinary =
    [
        Sheets.Clean(),
        Sheets.Clean() with { CommonError = false },
        Sheets.Drop((2400, 200), (2460, 210), (1190, 100), (7150, 600)),
        Sheets.Drop((2400, 200), (2430, 200)),
        Sheets.Clean().WithSpreader(s => s with { Form = ConstantForm.MassPerPulse, Unit = Units.PoundPerPulse }),
        Sheets.OpenLoop(("50 %", 60, 210), ("50 %", 58.5, 207), ("50 %", 61, 214)),
        Sheets.Check((200, 203), (200, 204), (400, 407)),
        Sheets.Clean() with { Material = new() { Name = "sand", Moisture = new(0.05, true, 0.01) } },
        Sheets.Drop((24_000, 2000), (24_150, 2000), (23_900, 2000)) with
        {
            Scale = Sheets.Vehicle,
            Runs = [.. Truck],
        },
    ];

    private static IEnumerable<Run> Truck => new[] { 24_000, 24_150, 23_900 }.Select((p, i) => new Run
    {
        Id = $"{i}",
        Pulses = PulseCount.FromPulses(p),
        Catch = new TruckCatch(Mass.FromPounds(45_000), Mass.FromPounds(43_000), new(default, null), true, []),
    });

    public static TheoryData<int> Numbers => [.. Enumerable.Range(0, Ordinary.Length)];

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Random_trials_agree_with_the_formula_on_ordinary_sheets(int number)
    {
        var result = Ordinary[number].Result(new(Trials));
        Assert.True(result.TrialsAgree, $"{result.Low} to {result.High}, trials {result.Trials}");
        Assert.Equal(result.Value.Value, result.Trials!.Mean, result.Expanded * 0.1);
        // Two significant digits of the half-width.
        Assert.Equal(result.Expanded, (result.Trials.High - result.Trials.Low) / 2, 0.05 * result.Expanded);
    }

    [Fact]
    public void A_tiny_drop_on_a_coarse_scale_is_beyond_the_formula_and_the_report_says_so()
    {
        // 35 lb on a scale that may be off by 10 lb at each reading: 26 % standard uncertainty for each run.
        var sheet = Sheets.Drop((420, 35), (425, 35), (415, 35)) with
        {
            Scale = Sheets.Pallet with { Division = Mass.FromPounds(10), Class = ScaleClass.IIII },
            CommonError = false,
        };
        var report = SheetAnalysis.Analyse(sheet, new(Trials));
        var result = Assert.Single(report.Results);
        Assert.InRange(result.Runs[0].OwnUncertainty, 0.2, 0.3);
        Assert.False(result.TrialsAgree);
        var finding = report.Find(DropTestFindings.FirstOrderFails)!;
        Assert.Equal(Severity.Warn, finding.Severity);
        Assert.Equal(result.Trials!.High, finding.Number("high"));
        Assert.Null(SheetAnalysis.Analyse(sheet).Find(DropTestFindings.FirstOrderFails));
        // A ratio with an uncertain mass below is skewed towards large constants.
        Assert.True(result.Trials.High - result.Value.Value > result.Value.Value - result.Trials.Low);
    }

    // 2,000 lb as a difference of 45,000 lb with separate errors: 4 % for each run. At two digits of u (JCGM 101, 8.1)
    // that is already too much for the formula, though its ends are off by less than a twentieth of the half-width.
    [Fact]
    public void A_truck_weighed_with_separate_errors_is_just_beyond_the_formula()
    {
        var result = (Sheets.Drop() with { Scale = Sheets.Vehicle, CommonError = false, Runs = [.. Truck] }).Result(new(Trials));
        Assert.InRange(result.Runs[0].OwnUncertainty, 0.035, 0.045);
        Assert.False(result.TrialsAgree);
        Assert.Equal(result.Low, result.Trials!.Low, 0.05 * result.Expanded);
        Assert.Equal(result.High, result.Trials.High, 0.05 * result.Expanded);
    }

    [Fact]
    public void The_same_seed_gives_the_same_trials()
    {
        AnalysisOptions options = new(5000, 7);
        Assert.Equal(Sheets.Clean().Result(options).Trials, Sheets.Clean().Result(options).Trials);
        Assert.NotEqual(Sheets.Clean().Result(options).Trials, Sheets.Clean().Result(new(5000, 8)).Trials);
    }

    // Ratios 11.9, 12.0, 12.1 pulse/lb weighed without error: s = 0.1, t(95 %, 2) = 4.302653 (tables),
    // U = 4.302653 x 0.1 / sqrt(3) = 0.248414.
    [Fact]
    public void The_classical_figure_is_t_s_by_root_n()
    {
        var sheet = Sheets.Drop((2380, 200), (2400, 200), (2420, 200)) with { Scale = Sheets.Fine };
        var classical = sheet.Result().Classical;
        Assert.Equal(2, classical.DegreesOfFreedom, 1e-6);
        Assert.Equal(4.302653, classical.CoverageFactor, 1e-6);
        Assert.Equal(0.248414, Units.PulsePerPound.FromSi(classical.Expanded), 1e-5);
    }

    // The same runs on a scale that may be 1 % wrong at every load: u = 1 % / sqrt(3) of 12 beside 0.1 / sqrt(3), and
    // by Welch-Satterthwaite nu = u^4 / (s^4/n^2 / 2).
    [Fact]
    public void An_error_of_the_scale_that_all_runs_share_stands_beside_their_standard_deviation()
    {
        var sheet = Sheets.Drop((2380, 200), (2400, 200), (2420, 200)) with
        {
            Scale = Sheets.Fine with { Tolerance = null, RelativeTolerance = Fraction.FromPercent(1) },
        };
        var classical = sheet.Result().Classical;
        double scale = 0.12 * 0.12 / 3, runs = 0.01 / 3;
        Assert.Equal((scale + runs) * (scale + runs) / (runs * runs / 2), classical.DegreesOfFreedom, 1e-3);
    }

    [Fact]
    public void A_higher_probability_gives_a_wider_interval_about_the_same_value()
    {
        var (p80, p95, p99) = (At(0.80), At(0.95), At(0.99));
        Assert.True(p80.Expanded < p95.Expanded && p95.Expanded < p99.Expanded);
        Assert.Equal(p80.Value.Value, p99.Value.Value);
        Assert.Equal(0.95, p95.Error.ChanceWithin(p95.Expanded), 1e-9);

        static Core.Spreading.TestResult At(double probability) =>
            (Sheets.Clean() with { Probability = probability }).Result();
    }

    [Fact]
    public void Scatter_known_from_many_earlier_runs_decides_when_there_is_one_run()
    {
        var one = Sheets.Drop((2400, 200));
        var quiet = (one with { EarlierScatter = new(0.01, 200) }).Result();
        // 1.96 x 1 %, within what the grid of scatters resolves.
        Assert.InRange(quiet.RelativeExpanded, 0.0186, 0.0206);
        Assert.True(one.Result().RelativeExpanded > 3 * quiet.RelativeExpanded);
    }
}
