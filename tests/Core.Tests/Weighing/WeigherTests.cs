using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;
using Lanewright.Core.Weighing;
using static Lanewright.Core.Tests.Weighing.Scales;

namespace Lanewright.Core.Tests.Weighing;

public sealed class WeigherTests
{
    private static readonly TruckCatch Drop = new(Lb(40_000), Lb(38_000), new(Lb(0), null), true, []);

    /// <summary>
    /// A drop of 2,000 lb near 40,000 lb on a Class III L scale with d = 20 lb, Handbook 44 tolerance 4 d = 80 lb. By
    /// arithmetic: each reading rectangular, 80/sqrt(3) = 46.19 lb and rounding 20/sqrt(12) = 5.77 lb, so 65.83 lb or
    /// 3.29 % of the drop.
    /// </summary>
    [Fact]
    public void Errors_of_their_own_make_the_truck_method_poor()
    {
        var net = Weigh(Vehicle, Drop);
        Assert.Equal(2000, Pounds(net.Value), 1e-9);
        Assert.Equal(65.83, Pounds(net.StandardUncertainty), 0.005);
        Assert.Equal(0.0329, net.RelativeUncertainty, 5e-5);
        Assert.Equal(46.19 * Math.Sqrt(2), LineInPounds(net, "error of each reading"), 0.01);
        Assert.Equal(5.77 * Math.Sqrt(2), LineInPounds(net, "rounding"), 0.01);
    }

    /// <summary>The same drop when the scale's error is the same in both readings: it cancels but for a share of the drop
    /// itself, at most 1 d in 500 d, and rounding leaves 8.16 lb or 0.408 %.</summary>
    [Fact]
    public void A_common_error_cancels_but_for_its_share_of_the_drop()
    {
        var net = Weigh(Vehicle, Drop, common: true);
        Assert.Equal(8.16, LineInPounds(net, "rounding"), 0.005);
        Assert.Equal(0.00408, LineInPounds(net, "rounding") / 2000, 5e-6);
        Assert.Equal(0.002 * 2000 / Math.Sqrt(3), LineInPounds(net, "in proportion to load"), 1e-9);
        Assert.Equal(0.00424, net.RelativeUncertainty, 5e-6);
    }

    [Fact]
    public void A_common_error_is_shared_by_all_runs_and_rounding_by_none()
    {
        var weigher = new Weigher(Vehicle, true, Lb(40_000), null);
        var (a, b) = (weigher.Net(Drop, "1", "runs[0]"), weigher.Net(Drop, "2", "runs[1]"));
        Assert.Equal(Math.Pow(0.002 * 2000 / Math.Sqrt(3), 2), Measured.Covariance(a, b) / Math.Pow(Lb(1).Si, 2), 1e-6);
        var apart = new Weigher(Vehicle, false, Lb(40_000), null);
        Assert.Equal(0, Measured.Covariance(apart.Net(Drop, "1", "runs[0]"), apart.Net(Drop, "2", "runs[1]")));
    }

    [Fact]
    public void Each_container_has_readings_of_its_own()
    {
        var what = new ContainerCatch([new(Lb(2), Lb(50)), new(Lb(2.5), Lb(48.5)), new(Lb(1.95), Lb(52))]);
        var net = Weigh(Platform500, what);
        Assert.Equal(48 + 46 + 50.05, Pounds(net.Value), 1e-9);
        // Six readings: 2 lb is 40 d, tolerance 1 d; 52 lb is 1,040 d, tolerance 2 d.
        var d = 0.05;
        var each = 3 * ((d * d) + (4 * d * d)) / 3;
        Assert.Equal(Math.Sqrt(each + (6 * d * d / 12)), Pounds(net.StandardUncertainty), 1e-9);
        Assert.Equal([6, 6], Budget.Of(net).Select(l => l.Sources));
        var common = Weigh(Platform500, what, common: true);
        Assert.Equal(
            Platform500.GainLimit(0) * 144.05 / Math.Sqrt(3), LineInPounds(common, "in proportion to load"), 1e-9);
    }

    [Fact]
    public void A_whole_catch_is_gross_less_tare()
    {
        var net = Weigh(Platform500, new WholeCatch(Lb(60), Lb(420)));
        Assert.Equal(360, Pounds(net.Value), 1e-9);
        // 60 lb is 1,200 d: 2 d; 420 lb is 8,400 d: 5 d.
        Assert.Equal(0.05 * Math.Sqrt((29.0 / 3) + (2.0 / 12)), Pounds(net.StandardUncertainty), 1e-9);
    }

    /// <summary>Against a simulation: n fillings with spread s, the sum of all against n times the first. Their difference
    /// has standard deviation s sqrt(n (n - 1)).</summary>
    [Theory]
    [InlineData(2, 0.05)]
    [InlineData(7, 0.03)]
    [InlineData(20, 0.05)]
    public void Counting_containers_costs_what_a_simulation_shows(int n, double spread)
    {
        var net = Weigh(Platform500, new CountedCatch(n, Lb(2), Lb(50), Fraction.FromRatio(spread)));
        Assert.Equal(48 * n, Pounds(net.Value), 1e-9);

        const int Trials = 40_000;
        var random = new RandomSource(2026, (ulong)n);
        var squares = 0.0;
        for (var t = 0; t < Trials; t++)
        {
            double first = 0, all = 0;
            for (var i = 0; i < n; i++)
            {
                var fill = 48 * (1 + (spread * random.NextNormal()));
                if (i == 0) first = fill;
                all += fill;
            }

            squares += ((n * first) - all) * ((n * first) - all);
        }

        // Four standard errors of a standard deviation.
        var seen = Math.Sqrt(squares / Trials);
        Assert.Equal(seen, LineInPounds(net, "counted"), 4 * seen / Math.Sqrt(2.0 * Trials));
    }

    [Fact]
    public void Counting_is_dearer_than_weighing_every_container_and_one_container_is_free()
    {
        var weighed = Weigh(Platform500, new ContainerCatch([.. Enumerable.Repeat(new Container(Lb(2), Lb(50)), 10)]));
        var counted = Weigh(Platform500, new CountedCatch(10, Lb(2), Lb(50), Fraction.FromPercent(5)));
        Assert.Equal(Pounds(weighed.Value), Pounds(counted.Value), 1e-9);
        Assert.True(counted.StandardUncertainty > 50 * weighed.StandardUncertainty);
        var one = Weigh(Platform500, new CountedCatch(1, Lb(2), Lb(50), Fraction.FromPercent(5)));
        var same = Weigh(Platform500, new WholeCatch(Lb(2), Lb(50)));
        Assert.Equal(same.StandardUncertainty, one.StandardUncertainty, 1e-15);
    }

    /// <summary>Signs by sense: what left without being dropped makes the truck lighter, so less was dropped; what joined
    /// makes it heavier, so more was.</summary>
    [Fact]
    public void Fuel_people_and_changes_count_with_their_sign()
    {
        double Net(Allowance? fuel, params Change[] changes) =>
            Pounds(Weigh(Vehicle, new TruckCatch(Lb(40_000), Lb(38_000), fuel, true, changes)).Value);
        Change Of(bool joined, double pounds) => new("observer", joined, new(Lb(pounds), Lb(5)));
        Assert.Equal(2000, Net(new(Lb(0), null)), 1e-9);
        Assert.Equal(2000, Net(null), 1e-9);
        Assert.Equal(1993, Net(new(Lb(7), Lb(2))), 1e-9);
        Assert.Equal(1820, Net(new(Lb(0), null), Of(false, 180)), 1e-9);
        Assert.Equal(2180, Net(new(Lb(0), null), Of(true, 180)), 1e-9);
        Assert.Equal(2033, Net(new(Lb(7), Lb(2)), Of(true, 180), Of(false, 140)), 1e-9);
    }

    [Fact]
    public void Allowances_are_rectangular_and_a_quarter_where_nobody_said()
    {
        var what = Drop with
        {
            FuelBurnt = new(Lb(8), null), Changes = [new("driver", false, new(Lb(200), Lb(10)))],
        };
        var net = Weigh(Vehicle, what, common: true);
        Assert.Equal(Math.Sqrt((4 + 100) / 3.0), LineInPounds(net, "allowances"), 1e-9);
        Assert.All(
            net.Contributions.ToArray().Where(c => c.Source.Family.StartsWith("allow", StringComparison.Ordinal)),
            c => Assert.Equal(ErrorShape.Rectangular, c.Source.Shape));
    }

    [Fact]
    public void A_scale_without_division_or_tolerance_gives_a_net_without_error()
    {
        var net = Weigh(new Scale { Id = "unknown" }, new WholeCatch(Lb(3), Lb(103)));
        Assert.Equal(100, Pounds(net.Value), 1e-9);
        Assert.Equal(0, net.StandardUncertainty);
    }

    [Fact]
    public void Without_a_list_for_findings_it_only_computes() =>
        Assert.Equal(-100, Pounds(Weigh(Platform500, new WholeCatch(Lb(700.01), Lb(600.01))).Value), 1e-9);
}
