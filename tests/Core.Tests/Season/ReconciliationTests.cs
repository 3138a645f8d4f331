using Lanewright.Core.Season;
using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Tests.Season;

public sealed class ReconciliationTests
{
    /// <summary>
    /// The example of VDI 2048 part 1 (steam and feed water of a power plant, with correlated flow meters); half-widths of 95 %
    /// intervals. Data, balances and results as the open-source library dvrlib and the tests of OpenModelica hold them.
    /// </summary>
    [Fact]
    public void The_example_of_VDI_2048()
    {
        double[] x = [46.241, 45.668, 44.575, 44.319, 0.525, 69.978, 10.364, 3.744, 4.391, 18.498];
        double[] half = [0.800, 0.790, 0.535, 0.532, 0.105, 0.854, 0.168, 0.058, 0.058, 0.205];
        double[] adjusted =
        [
            44.9644892064291, 44.4179721417342, 44.9259040471917, 44.6670964499405, 0.526347872422335, 70.553060829315,
            10.3757829833265, 3.74540440603423, 4.39240440603423, 18.5135917953949,
        ];
        double[] narrower =
        [
            0.575626570589129, 0.572817587480311, 0.404463177421466, 0.402919370199657, 0.104623410451298, 0.559872848891984,
            0.133003389109488, 0.056695251568643, 0.056695251568643, 0.137102511396334,
        ];
        var covariance = new double[10, 10];
        for (var i = 0; i < 10; i++)
        {
            for (var j = 0; j < 10; j++)
            {
                var correlation = i == j ? 1 : (i, j) is (0, 1) or (1, 0) ? 0.2 : (i, j) is (2, 3) or (3, 2) ? 0.4 : 0;
                covariance[i, j] = correlation * half[i] * half[j] / (1.96 * 1.96);
            }
        }

        var result = Reconciliation.Of(
            Measured.Correlated("vdi", "meters", x, covariance),
            [
                new("water", [(0, 1), (1, 1), (2, -1), (3, -1), (4, 0.4)]),
                new("steam", [(2, 1), (3, 1), (4, -1), (5, -1), (6, -1), (7, -1), (8, -1)]),
                new("drain", [(6, 1), (7, 1), (8, 1), (9, -1)]),
            ]);
        for (var i = 0; i < 10; i++)
        {
            Assert.Equal(adjusted[i], result.Adjusted[i].Value, 1e-9);
            Assert.Equal(narrower[i], 1.96 * result.Adjusted[i].StandardUncertainty, 1e-9);
        }

        // The standard, too, finds that the two meters of the boiler do not fit.
        Assert.True(result.Chance < 0.01);
        Assert.Equal([0, 1], result.Suspects[0].Places);
    }

    [Fact]
    public void A_planted_error_is_named_and_its_size_found()
    {
        var random = new RandomSource(12);
        var (named, falsely, size) = (0, 0, 0.0);
        const int trials = 300;
        for (var trial = 0; trial < trials; trial++)
        {
            if (Depot(random, wrong: 1, out _).Suspect is { } suspect && suspect.Places is [7])
            {
                named++;
                size += suspect.Size;
            }

            if (Depot(random, wrong: 0, out _).Suspect is not null) falsely++;
        }

        // The error planted in the second spreader's log is seven times the uncertainty of its balance, and the pile tells the log from
        // the tickets. One in twenty of the sound depots may be suspected.
        Assert.InRange(named, 280, trials);
        Assert.InRange(falsely, 0, 29);
        Assert.Equal(-12_000, size / named, 500.0);
    }

    [Fact]
    public void What_is_spread_is_held_by_its_interval()
    {
        var random = new RandomSource(8);
        var held = 0;
        for (var trial = 0; trial < 1000; trial++)
        {
            var ledger = Depot(random, wrong: 0, out var truth);
            if (Math.Abs(ledger.Spread.Value - truth) <= 1.96 * ledger.Spread.StandardUncertainty) held++;
        }

        Assert.InRange(held, 922, 978);
    }

    [Fact]
    public void A_scale_that_weighed_everything_is_not_made_better_by_balancing()
    {
        var gain = ErrorSource.Normal("gain", "scale");
        Measured Weighed(double value) => Measured.Of(value, 0.01 * value, gain).With(ErrorSource.Normal($"r{value}", "reading"), 5);
        var result = Reconciliation.Of([Weighed(1000), Weighed(600), Weighed(400)], [new("split", [(0, 1), (1, -1), (2, -1)])]);
        Assert.Equal(10, result.Adjusted[0].StandardUncertainty, 1.0);
        Assert.Equal(0, result.Adjusted[0].Value - result.Adjusted[1].Value - result.Adjusted[2].Value, 9);
    }

    [Fact]
    public void Balances_that_say_the_same_are_refused()
    {
        Measured[] x = [Measured.Of(1, 1, ErrorSource.Normal("a", "a")), Measured.Of(1, 1, ErrorSource.Normal("b", "b"))];
        Balance same = new("one", [(0, 1), (1, -1)]);
        Assert.Throws<ArgumentException>(() => Reconciliation.Of(x, [same, same]));
    }

    /// <summary>Worked figures of the project: slope 32 degrees, radius 20 ft, 80 lb/ft3 (facts/materials.md, calculated).</summary>
    [Fact]
    public void Volumes_of_piles()
    {
        const double foot = 0.3048, pound = 0.45359237;
        var height = PileSurvey.HeightOf(40 * foot, 32 * Math.PI / 180);
        Assert.Equal(12.497, height.Value / foot, 0.0005);
        Measured density = 80 * pound / (foot * foot * foot);
        var cone = new PileSurvey(PileShape.Cone, 40 * foot, 0, height);
        Assert.Equal(5234.9, cone.Volume.Value / (foot * foot * foot), 0.05);
        Assert.Equal(209.4, cone.Mass(density).Value / pound / 2000, 0.05);
        var windrow = new PileSurvey(PileShape.Windrow, 40 * foot, 100 * foot, height);
        Assert.Equal(20_231.8, windrow.Volume.Value / (foot * foot * foot), 0.05);
        Assert.Equal(809.3, windrow.Mass(density).Value / pound / 2000, 0.05);
    }

    // A depot with two spreaders, a scale for its tickets, one density for both surveys; all invented.
    private static SeasonLedger Depot(RandomSource random, int wrong, out double truth)
    {
        var gain = ErrorSource.Normal("scale", "scale");
        var density = ErrorSource.Normal("density", "density of the pile");
        var (g, d) = (0.003 * random.NextNormal(), 0.01 * random.NextNormal());
        var id = 0;
        Measured Seen(double value, double own, double common, double commonError, ErrorSource? source)
        {
            var said = value * (1 + commonError) + (own * random.NextNormal());
            var measured = Measured.Of(said, own, ErrorSource.Normal($"own {id++}", "own"));
            return source is null ? measured : measured.With(source, common * said);
        }

        truth = 500_000 + 400_000;
        var tickets = new List<LoadTicket>
        {
            new("D", "", TicketKind.Delivery, Seen(800_000, 300, 0.003, g, gain)),
            new("D", "A", TicketKind.Load, Seen(510_000, 400, 0.003, g, gain)),
            new("D", "A", TicketKind.Return, Seen(10_000, 50, 0.003, g, gain)),
            new("D", "B", TicketKind.Load, Seen(400_000, 400, 0.003, g, gain)),
        };
        return SeasonLedger.Of(
            tickets, [new("D", Seen(600_000, 1500, 0.01, d, density), Seen(500_000, 1200, 0.01, d, density))],
            [
                new("D", "A", Seen(500_000, 2000, 0, 0, null)),
                new("D", "B", Seen(400_000 - (12_000 * wrong), 1600, 0, 0, null)),
            ])[0];
    }
}
