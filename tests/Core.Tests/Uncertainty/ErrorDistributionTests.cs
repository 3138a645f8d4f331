using CsCheck;
using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Tests.Uncertainty;

public sealed class ErrorDistributionTests
{
    /// <summary>Any proportion of rectangle and normals, from one kind alone to both alike.</summary>
    private static readonly Gen<ErrorDistribution> Any = Gen.Select(
        Gen.Double[-5, 3], Gen.OneOf(Gen.Const(0.0), Gen.Double[0.001, 2]), Gen.Double[0.01, 1].Array[1, 5],
        Gen.Double[0, 3].Array[5],
        (logHalf, normal, weights, spreads) =>
        {
            var x = Mixed(Math.Exp(logHalf), normal);
            return ErrorDistribution.Of(x, weights, spreads.AsSpan(0, weights.Length));
        });

    [Fact]
    public void Chance_grows_with_the_limit_from_none_to_all() => Gen.Select(Any, Gen.Double[0, 5], Gen.Double[0, 5])
        .Sample(
            (d, a, b) =>
            {
                var (low, high) = (Math.Min(a, b), Math.Max(a, b));
                Assert.True(d.ChanceWithin(low) <= d.ChanceWithin(high) + 1e-13);
                Assert.InRange(d.ChanceWithin(a), 0, 1);
                Assert.Equal(0, d.ChanceWithin(-1e-9));
                Assert.Equal(1, d.ChanceWithin(d.HalfWidth + 200), 1e-12);
                Assert.Equal(1, d.ChanceWithin(1e12), 1e-14);
                Assert.Equal(1, d.ChanceWithin(double.PositiveInfinity));
                Assert.Equal(1, d.ChanceBelow(a) + d.ChanceBelow(-a), 1e-12);
                Assert.Equal(d.ChanceWithin(a), d.ChanceBelow(a) - d.ChanceBelow(-a), 1e-12);
            },
            iter: 2000, threads: 1);

    [Fact]
    public void Coverage_is_the_limit_with_that_chance() => Gen.Select(Any, Gen.Double[0.01, 0.999]).Sample(
        (d, p) => Assert.Equal(p, d.ChanceWithin(d.Coverage(p)), 1e-9), iter: 3000, threads: 1);

    [Fact]
    public void Only_the_proportions_of_the_weights_count() => Gen.Select(Gen.Double[0.01, 1].Array[3], Gen.Double[0.1, 9])
        .Sample(
            (w, factor) =>
            {
                var a = ErrorDistribution.Of(Mixed(1, 0.3), w, [0.1, 0.5, 2]);
                var b = ErrorDistribution.Of(Mixed(1, 0.3), [w[0] * factor, w[1] * factor, w[2] * factor], [0.1, 0.5, 2]);
                Assert.Equal(a.Coverage(0.95), b.Coverage(0.95), 1e-9);
            },
            iter: 300, threads: 1);

    [Fact]
    public void Normals_alone_give_the_normal_interval()
    {
        var x = Measured.Of(5, 3, ErrorSource.Normal("a", "a")).With(ErrorSource.Normal("b", "b"), 4);
        var d = ErrorDistribution.Of(x);
        Assert.Equal(5 * 1.959963984540054, d.Coverage(0.95), 1e-9);
        Assert.Equal(5, d.StandardDeviation, 1e-12);
        Assert.Equal(0, d.HalfWidth);
        Assert.Equal(0.682689492137086, d.ChanceWithin(5), 1e-12);
    }

    [Fact]
    public void A_rectangle_alone_gives_its_own_interval()
    {
        var d = ErrorDistribution.Of(Measured.Of(0, 2 / Math.Sqrt(3), ErrorSource.Rectangular("a", "a")));
        Assert.Equal(2, d.HalfWidth, 1e-12);
        Assert.Equal(1.9, d.Coverage(0.95), 1e-9);
        Assert.Equal(0.25, d.ChanceWithin(0.5), 1e-12);
        Assert.Equal(2 / Math.Sqrt(3), d.StandardDeviation, 1e-12);
    }

    /// <summary>GUM 4.3.9 NOTE and G.2.2: a small rectangle beside a normal may be taken by its variance; here it is, below
    /// a twentieth, and the two ways must meet there.</summary>
    [Fact]
    public void The_formula_does_not_jump_where_the_rectangle_becomes_negligible()
    {
        var below = ErrorDistribution.Of(Mixed(0.05 * (1 - 1e-9), 1));
        var above = ErrorDistribution.Of(Mixed(0.05 * (1 + 1e-9), 1));
        foreach (var p in (double[])[0.5, 0.9, 0.95, 0.99, 0.999])
            Assert.Equal(below.Coverage(p), above.Coverage(p), 2e-6);
    }

    /// <summary>A normal error whose variance has degrees of freedom nu, mixed over the spreads that nu allows, is Student's
    /// t with nu degrees of freedom (its definition).</summary>
    [Theory]
    [InlineData(2, 1e-3)]
    [InlineData(5, 1e-5)]
    [InlineData(30, 1e-6)]
    public void A_mixture_over_an_estimated_spread_gives_student(double nu, double room)
    {
        // s with s^2 = nu / chi^2(nu): density of log s is s^-nu exp(-nu / (2 s^2)).
        const int Cells = 4000;
        var weights = new double[Cells];
        var spreads = new double[Cells];
        for (var i = 0; i < Cells; i++)
        {
            var logS = -3 + (9.0 * i / Cells);
            spreads[i] = Math.Exp(logS);
            weights[i] = Math.Exp((-nu * logS) - (nu / 2 * (Math.Exp(-2 * logS) - 1)));
        }

        var d = ErrorDistribution.Of(Measured.Exact(0), weights, spreads);
        foreach (var p in (double[])[0.5, 0.9, 0.95, 0.99])
        {
            var t = StudentT.Quantile((1 + p) / 2, nu);
            Assert.Equal(t, d.Coverage(p), room * t);
        }
    }

    /// <summary>One rectangle, normals, and a further error of uncertain spread: the formula is exact, so the trials must
    /// agree within four of their standard errors whatever the mixture.</summary>
    [Theory]
    [InlineData(1.0, 0.2, 0.9, 0.1, 0.5, 1UL)]
    [InlineData(1.0, 0.0, 0.5, 0.02, 3.0, 2UL)]
    [InlineData(0.3, 0.5, 0.7, 0.0, 1.0, 3UL)]
    [InlineData(2.0, 0.05, 0.5, 0.01, 0.04, 4UL)]
    public void Trials_agree_with_the_formula(
        double half, double normal, double firstWeight, double firstSpread, double secondSpread, ulong seed)
    {
        const int Trials = 200_000;
        var trials = MonteCarlo.Run(
            (random, y) =>
            {
                for (var i = 0; i < y.Length; i++)
                {
                    var spread = random.NextDouble() < firstWeight ? firstSpread : secondSpread;
                    y[i] = (half / Math.Sqrt(3) * random.NextRectangular()) + (normal * random.NextNormal())
                        + (spread * random.NextNormal());
                }
            },
            Trials, seed);
        var d = ErrorDistribution.Of(
            Mixed(half, normal), [firstWeight, 1 - firstWeight], [firstSpread, secondSpread]);
        // What the trials put inside the formula's end, instead of where their own end lies: no density is needed.
        var room = 4 * Math.Sqrt(0.025 * 0.975 / Trials);
        Assert.Equal(0.025, d.ChanceBelow(trials.Low), room);
        Assert.Equal(0.975, d.ChanceBelow(trials.High), room);
        Assert.Equal(d.StandardDeviation, trials.StandardUncertainty, 0.02 * d.StandardDeviation);
    }

    /// <summary>What taking a second rectangle by its variance costs, against the exact trapezoid of half-widths 1 and r:
    /// P(|x| &lt;= t) = t up to 1 - r, and a tail of (1 + r - t)^2 / 8r beyond. The bounds are those of the method page.
    /// </summary>
    [Theory]
    [InlineData(0.90, 0.975, 1.002)]
    [InlineData(0.95, 0.986, 1.009)]
    [InlineData(0.99, 0.996, 1.108)]
    public void A_second_rectangle_costs_a_known_amount(double probability, double least, double most)
    {
        double low = 2, high = 0;
        for (var r = 0.02; r <= 1.0001; r += 0.01)
        {
            var end = 1 + r - Math.Sqrt(4 * r * (1 - probability));
            var exact = end < 1 - r ? probability : end;
            var x = Measured.Of(0, 1 / Math.Sqrt(3), ErrorSource.Rectangular("a", "a"))
                .With(ErrorSource.Rectangular("b", "b"), r / Math.Sqrt(3));
            var ratio = ErrorDistribution.Of(x).Coverage(probability) / exact;
            (low, high) = (Math.Min(low, ratio), Math.Max(high, ratio));
        }

        Assert.InRange(low, least, least + 0.002);
        Assert.InRange(high, most - 0.002, most);
    }

    /// <summary>A triangle or an arcsine alone is taken for a normal; exact 95 % ends by integration.</summary>
    [Fact]
    public void Other_shapes_alone_cost_a_known_amount()
    {
        var triangle = Measured.Of(0, 1, ErrorSource.Triangular("t", "t"));
        var triangleEnd = Math.Sqrt(6) * (1 - Math.Sqrt(0.05));
        Assert.Equal(1.0306, ErrorDistribution.Of(triangle).Coverage(0.95) / triangleEnd, 0.001);
        var arcsine = Measured.Of(0, 1, ErrorSource.Arcsine("u", "u"));
        var arcsineEnd = Math.Sqrt(2) * Math.Sin(0.95 * Math.PI / 2);
        Assert.Equal(1.390, ErrorDistribution.Of(arcsine).Coverage(0.95) / arcsineEnd, 0.001);
    }

    [Fact]
    public void Nothing_uncertain_needs_no_interval()
    {
        var d = ErrorDistribution.Of(Measured.Exact(4));
        Assert.Equal(0, d.Coverage(0.95));
        Assert.Equal(1, d.ChanceWithin(0));
        Assert.Equal(0, d.StandardDeviation);
    }

    [Fact]
    public void Wrong_settings_throw()
    {
        Assert.Throws<ArgumentException>(() => ErrorDistribution.Of(Measured.Exact(0), [1], [1, 2]));
        Assert.Throws<ArgumentException>(() => ErrorDistribution.Of(Measured.Exact(0), [], []));
        Assert.Throws<ArgumentException>(() => ErrorDistribution.Of(Measured.Exact(0), [0, 0], [1, 2]));
        var d = ErrorDistribution.Of(Mixed(1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => d.Coverage(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => d.Coverage(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => d.Coverage(double.NaN));
    }

    private static Measured Mixed(double half, double normal) =>
        Measured.Of(0, half / Math.Sqrt(3), ErrorSource.Rectangular("rectangle", "r"))
            .With(ErrorSource.Normal("normal", "n"), normal);
}
