using Lanewright.Core.Quantities;
using Lanewright.Core.Register;

namespace Lanewright.Core.Tests.Register;

public sealed class DueListTests
{
    private static readonly YardRules Rules = new();
    private static readonly DateOnly Today = new(2026, 11, 25);

    [Fact]
    public void A_spreader_calibrated_this_season_is_not_due() =>
        Assert.Empty(DueList.Of([State("A", new(2026, 9, 1))], Rules, Today));

    [Fact]
    public void The_day_before_the_season_is_the_season_before()
    {
        var item = Assert.Single(DueList.Of([State("A", new(2026, 8, 31))], Rules, Today));
        Assert.Equal((DueReason.NewSeason, new DateOnly(2026, 9, 1)), (item.Reason, item.Since));
        Assert.Equal(new DateOnly(2025, 9, 1), Rules.SeasonStart(new(2026, 8, 31)));
    }

    [Fact]
    public void A_change_after_the_calibration_makes_it_due_and_one_before_it_does_not()
    {
        var after = State("A", new(2026, 10, 1)) with { Changes = [(SpreaderChange.Gate, new(2026, 10, 2))] };
        var before = State("B", new(2026, 10, 1)) with { Changes = [(SpreaderChange.Gate, new(2026, 9, 30))] };
        var harmless = State("C", new(2026, 10, 1)) with { Changes = [(SpreaderChange.Other, new(2026, 10, 2))] };
        var item = Assert.Single(DueList.Of([after, before, harmless], Rules, Today));
        Assert.Equal(("A", DueReason.Changed, SpreaderChange.Gate), (item.Spreader.Spreader.Id, item.Reason, item.Change));
    }

    [Fact]
    public void The_dearest_to_wait_for_comes_first()
    {
        var list = DueList.Of(
            [
                State("season", new(2025, 10, 1)), State("never", null),
                State("failed", new(2026, 10, 1)) with { FailedShare = 0.7 },
                State("unknown", null) with { PricePerTonne = null },
            ],
            Rules, Today);
        Assert.Equal(["failed", "never", "season", "unknown"], list.Select(d => d.Spreader.Spreader.Id));
        // 30 % of 100 t at 70 for 1,000 kg.
        Assert.Equal(2100, list[0].Cost!.Value, 6);
        Assert.Null(list[3].Cost);
    }

    [Fact]
    public void Drift_out_of_the_tolerance_is_due_by_its_size_and_a_failed_check_comes_before_it()
    {
        var drifted = State("A", new(2026, 10, 1)) with { DriftedShare = -0.06 };
        var item = Assert.Single(DueList.Of([drifted], Rules, Today));
        Assert.Equal((DueReason.Drifted, 0.06), (item.Reason, item.Share));
        Assert.Equal(420, item.Cost!.Value, 6);
        Assert.Equal(DueReason.FailedCheck, DueList.Of([drifted with { FailedShare = 0.9 }], Rules, Today)[0].Reason);
        Assert.Equal(DueReason.NeverCalibrated, DueList.Of([drifted with { Calibrated = null }], Rules, Today)[0].Reason);
    }

    [Fact]
    public void A_retired_spreader_is_never_due()
    {
        var state = State("A", null);
        Assert.Empty(DueList.Of([state with { Spreader = state.Spreader with { Retired = true } }], Rules, Today));
    }

    private static CalibrationState State(string id, DateOnly? calibrated) => new(
        new() { Spreader = new() { Id = id, Unit = Units.PulsePerPound }, SeasonMass = Mass.FromSi(100_000) }, calibrated,
        null, [], 70);
}
