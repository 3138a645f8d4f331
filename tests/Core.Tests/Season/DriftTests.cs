using Lanewright.Campaigns;
using Lanewright.Core.Season;
using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;
using MathNet.Numerics.LinearAlgebra;

namespace Lanewright.Core.Tests.Season;

public sealed class DriftTests
{
    private static readonly DriftRules Rules = new();

    [Fact]
    public void For_equal_uncertainties_the_chart_is_the_usual_one()
    {
        var random = new RandomSource(5);
        var (values, deviations) = (new double[30], new double[30]);
        Array.Fill(deviations, 0.02);
        for (var i = 0; i < 30; i++) values[i] = 0.03 + (0.02 * random.NextNormal());
        var ours = DriftChart.Of(values, deviations, 0.05, 4);
        var usual = ControlCharts.Cusum(values, 0, 0.025, 4 * 0.02 * 0.02 / 0.05);
        for (var i = 0; i < 30; i++)
        {
            Assert.Equal(usual[i].High, ours[i].High * 0.02 * 0.02 / 0.05, 12);
            Assert.Equal(usual[i].Low, ours[i].Low * 0.02 * 0.02 / 0.05, 12);
            Assert.Equal(usual[i].Signal, ours[i].Signal);
        }

        Assert.Contains(ours, point => point.Signal == ChartSignal.High);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(1.5)]
    public void The_chances_of_silence_add_up_to_the_run_length(double shift)
    {
        // With deviation 1 and change 1, k is 0.5 and the limit is h.
        var (means, deviations) = (new double[2500], new double[2500]);
        Array.Fill(means, shift);
        Array.Fill(deviations, 1);
        var silence = DriftChart.ChanceOfSilence(means, deviations, 1, 3);
        Assert.Equal(RunLengths.OfUpperCusum(0.5, 3, shift), 1 + silence.Sum(), 1e-5 * RunLengths.OfUpperCusum(0.5, 3, shift));
    }

    /// <summary>A part of the campaign season-drift.</summary>
    [Theory]
    [InlineData(0.002)]
    [InlineData(0.008)]
    public void A_season_keeps_what_the_chart_promised(double calibration)
    {
        var still = new SimulatedDrift(31) { Calibration = calibration };
        var changed = new SimulatedDrift(32) { Calibration = calibration, Every = 7, Looks = 25 };
        const int seasons = 30;
        double promised = 0, alarms = 0, late = 0;
        for (var i = 0; i < seasons; i++)
        {
            var (start, looks) = still.Season(_ => 0, out _);
            var quiet = SpreaderDrift.Of(start, looks, Rules, looks[^1].Day);
            promised += quiet.Promise!.Value.FalseAlarm;
            if (quiet.Alarm is not null) alarms++;
            Assert.InRange(quiet.Promise!.Value.FalseAlarm, 0.045, 0.0501);

            (start, looks) = changed.Season(_ => 0.05, out _);
            var found = SpreaderDrift.Of(start, looks, Rules, looks[^1].Day);
            var place = found.Points.TakeWhile(point => point != found.Alarm).Count() + 1;
            if (place > (found.Promise!.Value.MostToFind ?? int.MaxValue)) late++;
        }

        // Beyond these a chance of 5 % has less than one in ten thousand.
        Assert.InRange(alarms, 0, 8);
        Assert.InRange(late, 0, 8);
        Assert.Equal(1.47, promised, 0.05);
    }

    [Fact]
    public void One_scale_for_all_cancels_in_the_chart_and_stays_in_the_interval()
    {
        var gain = ErrorSource.Normal("gain", "scale");
        var start = new DriftLook(new(2026, 10, 1), DriftLookKind.Calibration, "test", Measured.Of(0, 0.02, gain));
        var looks = Enumerable.Range(1, 60).Select(i => new DriftLook(
            new DateOnly(2026, 10, 1).AddDays(i), DriftLookKind.Check, $"{i:00}",
            Measured.Of(0.001, 0.02, gain).With(ErrorSource.Normal($"{i}", "reading"), 0.005))).ToList();
        var drift = SpreaderDrift.Of(start, looks, Rules, new(2026, 12, 1));
        Assert.All(drift.Points, point => Assert.Equal(Math.Sqrt((0.005 * 0.005) + (Rules.DayToDay * Rules.DayToDay)), point.Own, 12));
        Assert.InRange(drift.Now.LevelUncertainty, 0.02, 0.021);
        Assert.Equal(0.001, drift.Share, 0.003);
    }

    /// <summary>Second opinion: the same model as one least-squares problem, solved with MathNet.Numerics.</summary>
    [Fact]
    public void The_filter_agrees_with_all_looks_at_once()
    {
        var simulated = new SimulatedDrift(9) { Looks = 8 };
        var (start, later) = simulated.Season(day => 0.0002 * day, out _);
        List<DriftLook> looks = [start, .. later];
        var state = WearFilter.Of(looks, Rules, looks[^1].Day);

        // Level on each day, wear and gain with their covariances beforehand; then conditioned on the looks.
        var n = looks.Count;
        var (level, wear) = (0.3 * 0.3, Math.Pow(Rules.WearInYear / 365.25, 2));
        var wander = Rules.WanderInYear * Rules.WanderInYear / 365.25;
        double T(int i) => looks[i].Day.DayNumber - looks[0].Day.DayNumber;
        var prior = Matrix<double>.Build.Dense(n, n, (i, j) => level + (T(i) * T(j) * wear) + (wander * Math.Min(T(i), T(j))));
        var noise = Matrix<double>.Build.Dense(n, n, (i, j) => Measured.Covariance(looks[i].LogShare, looks[j].LogShare)
            + (i == j ? Rules.DayToDay * Rules.DayToDay : 0));
        var seen = Vector<double>.Build.Dense(n, i => looks[i].LogShare.Value);
        var gain = prior * (prior + noise).Inverse();
        Assert.Equal((gain * seen)[n - 1], state.Level, 1e-10);
        Assert.Equal(Math.Sqrt((prior - (gain * prior))[n - 1, n - 1]), state.LevelUncertainty, 1e-10);
    }

    [Fact]
    public void The_interval_and_the_day_of_leaving_hold_the_truth()
    {
        var simulated = new SimulatedDrift(77);
        int share = 0, leaves = 0;
        const int seasons = 400;
        var today = SimulatedDrift.Autumn.AddDays(150);
        for (var i = 0; i < seasons; i++)
        {
            var path = simulated.Worn(881);
            var (calibration, looks) = simulated.Season(day => path[day], out var start);
            var state = WearFilter.Of([calibration, .. looks], Rules, today);
            if (Math.Abs(start + path[150] - state.Level) <= 1.96 * state.LevelUncertainty) share++;
            var day = Enumerable.Range(0, 731).Where(t => Math.Abs(Math.Exp(start + path[150 + t]) - 1) > Rules.Tolerance)
                .Select(t => today.AddDays(t)).FirstOrDefault(DateOnly.MaxValue);
            if (day >= (state.Leaves(Rules.Tolerance, 0.025, 730) ?? DateOnly.MaxValue)
                && day <= (state.Leaves(Rules.Tolerance, 0.975, 730) ?? DateOnly.MaxValue)) leaves++;
        }

        // 95 % give or take four standard errors. A wandering path first passes a limit before it is likely to lie beyond it.
        Assert.InRange(share, 363, 397);
        Assert.InRange(leaves, 355, 400);
    }

    [Fact]
    public void Looks_before_the_calibration_and_after_the_day_do_not_count()
    {
        var simulated = new SimulatedDrift(3);
        var (start, looks) = simulated.Season(_ => 0, out _);
        var before = looks[0] with { Day = start.Day.AddDays(-1), LogShare = Measured.Of(0.5, 0.001, ErrorSource.Normal("x", "x")) };
        var drift = SpreaderDrift.Of(start, [before, .. looks], Rules, looks[4].Day);
        Assert.Equal(5, drift.Points.Count);
        Assert.Equal(SpreaderDrift.Of(start, looks, Rules, looks[4].Day).Now, drift.Now);
        Assert.Empty(SpreaderDrift.Of(start, [], Rules, start.Day).Points);
        // A check of the calibration's day is of it; a storm that ended that day is not.
        Assert.Single(SpreaderDrift.Of(start, [looks[0] with { Day = start.Day }], Rules, start.Day).Points);
        Assert.Empty(SpreaderDrift.Of(start, [looks[0] with { Day = start.Day, Kind = DriftLookKind.Tickets }], Rules, start.Day).Points);
    }
}
