using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Tests.Uncertainty;

/// <summary>Examples of JCGM 101:2008 and others with known answers. Every run is on a stated seed; the room is four
/// standard errors of the trials themselves, to which a printed figure adds half its last digit.</summary>
public sealed class MonteCarloTests
{
    private const int Trials = 1_000_000;
    private const double HalfDigit = 0.5;

    /// <summary>JCGM 101, 9.2.2: sum of four standard normals: 0, 2.0, [-3.92, 3.92].</summary>
    [Fact]
    public void Four_normals_add_up_to_the_published_interval()
    {
        var t = MonteCarlo.Run(
            static (random, y) =>
            {
                for (var i = 0; i < y.Length; i++)
                    y[i] = random.NextNormal() + random.NextNormal() + random.NextNormal() + random.NextNormal();
            },
            Trials, seed: 922);
        Assert.Equal(0, t.Mean, 4 * 2 / Math.Sqrt(Trials));
        Assert.Equal(2, t.StandardUncertainty, 4 * 2 / Math.Sqrt(2.0 * Trials));
        var half = 2 * NormalDistribution.Quantile(0.975);
        Assert.Equal(3.92, half, 0.005);
        Assert.Equal(-half, t.Low, 4 * t.EndStandardError);
        Assert.Equal(half, t.High, 4 * t.EndStandardError);
        Assert.True(t.Agrees(-half, half));
        Assert.False(t.Agrees(-half - 0.1, half - 0.1));
        Assert.Equal(Trials, t.Trials);
        Assert.Equal(922UL, t.Seed);
        // Standard error from the definition: sqrt(q (1 - q) / M) over the density 0.05845 / 2 of the normal at 1.96.
        Assert.Equal(Math.Sqrt(0.025 * 0.975 / Trials) / (0.058445 / 2), t.EndStandardError, 5e-5);
    }

    /// <summary>JCGM 101, 9.2.3: sum of four rectangles of standard deviation 1: 0, 2.0, [-3.88, 3.88]. The exact end is
    /// 2 sqrt(3) (2 - 0.6^(1/4)) = 3.879407: the tail of the sum of four is a fourth power.</summary>
    [Fact]
    public void Four_rectangles_add_up_to_the_exact_interval()
    {
        var t = MonteCarlo.Run(
            static (random, y) =>
            {
                for (var i = 0; i < y.Length; i++)
                {
                    y[i] = random.NextRectangular() + random.NextRectangular() + random.NextRectangular()
                        + random.NextRectangular();
                }
            },
            Trials, seed: 923);
        var exact = 2 * Math.Sqrt(3) * (2 - Math.Pow(0.6, 0.25));
        Assert.Equal(3.879407, exact, 5e-7);
        Assert.Equal(0, t.Mean, 4 * 2 / Math.Sqrt(Trials));
        Assert.Equal(2, t.StandardUncertainty, 4 * 2 / Math.Sqrt(2.0 * Trials));
        Assert.Equal(-exact, t.Low, 4 * t.EndStandardError);
        Assert.Equal(exact, t.High, 4 * t.EndStandardError);

        // The distribution by formula keeps one rectangle and takes the other three for a normal: 3.904, 0.64 % too wide
        // (a normal for all four: 3.920, 1.0 %). Two digits of u cannot tell that from the trials.
        Measured[] x = [.. Enumerable.Range(1, 4).Select(
            i => Measured.Of(0, 1, ErrorSource.Rectangular($"x{i}", "x")))];
        var formula = ErrorDistribution.Of(Measured.Sum(x)).Coverage(0.95);
        Assert.Equal(1.0064, formula / exact, 5e-5);
        Assert.True(t.Agrees(-formula, formula));
    }

    /// <summary>JCGM 101, 9.3: calibration of a mass standard, inputs as in the R package propagate; published trials
    /// (from memory) 1.2341 mg, 0.0754 mg, shortest 95 % interval [1.0834, 1.3825] mg; first order 0.0539 mg
    /// [1.1285, 1.3395] mg, second order 0.0750 mg [1.0870, 1.3810] mg. First order must be found to fail.</summary>
    [Fact]
    public void The_mass_standard_shows_first_order_to_fail()
    {
        var t = MonteCarlo.Run(
            static (random, y) =>
            {
                for (var i = 0; i < y.Length; i++)
                {
                    var reference = 100_000 + (0.050 * random.NextNormal());
                    var added = 1.234 + (0.020 * random.NextNormal());
                    var air = 1.20 + (0.10 / Math.Sqrt(3) * random.NextRectangular());
                    var weight = 8000 + (1000 / Math.Sqrt(3) * random.NextRectangular());
                    var standard = 8000 + (50 / Math.Sqrt(3) * random.NextRectangular());
                    y[i] = ((reference + added) * (1 + ((air - 1.2) * ((1 / weight) - (1 / standard))))) - 100_000;
                }
            },
            Trials, seed: 93);
        Assert.Equal(1.2341, t.Mean, (4 * 0.0754 / Math.Sqrt(Trials)) + (HalfDigit * 1e-4));
        Assert.Equal(0.0754, t.StandardUncertainty, (4 * 0.0754 / Math.Sqrt(2.0 * Trials)) + (HalfDigit * 1e-4));
        // The place of a shortest interval wanders with the cube root of the trials: u M^(-1/3) = 0.00075.
        var wander = 4 * 0.0754 / Math.Cbrt(Trials);
        Assert.Equal(1.0834, t.ShortestLow, wander);
        Assert.Equal(1.3825, t.ShortestHigh, wander);

        var k = NormalDistribution.Quantile(0.975);
        var first = Math.Sqrt(Math.Pow(0.050, 2) + Math.Pow(0.020, 2));
        Assert.Equal(0.053852, first, 5e-7);
        Assert.False(t.Agrees(1.234 - (k * first), 1.234 + (k * first)));
        var perAir = 100_000 * 0.10 / Math.Sqrt(3) / 8000 / 8000 / Math.Sqrt(3);
        var second = Math.Sqrt((first * first) + Math.Pow(perAir * 1000, 2) + Math.Pow(perAir * 50, 2));
        Assert.Equal(0.074963, second, 5e-7);
        Assert.True(t.Agrees(1.234 - (k * second), 1.234 + (k * second), digits: 1));
    }

    /// <summary>A logarithm of a rectangle, example of the UK's National Physical Laboratory as quoted in suncal: first
    /// order -0.511, 0.481; trials -0.665, 0.606, shortest 95 % [-1.895, 0.095]. Exact by integration.</summary>
    [Fact]
    public void The_logarithm_of_a_rectangle_shows_first_order_to_fail()
    {
        var t = MonteCarlo.Run(
            static (random, y) =>
            {
                for (var i = 0; i < y.Length; i++)
                    y[i] = Math.Log(0.1 + random.NextDouble());
            },
            Trials, seed: 11);
        Assert.Equal(-0.6649003, t.Mean, 4 * 0.606 / Math.Sqrt(Trials));
        // A kurtosis of up to 6 makes the standard error of s sqrt((6 - 1)/4M) of it.
        Assert.Equal(0.6062267, t.StandardUncertainty, 4 * 0.606 * Math.Sqrt(5 / (4.0 * Trials)));
        // The density exp(y) grows, so the shortest interval is cut off at the left: ln 0.15 to ln 1.1.
        Assert.Equal(Math.Log(0.15), t.ShortestLow, 4 * Math.Sqrt(0.05 * 0.95 / Trials) / 0.15);
        Assert.Equal(Math.Log(1.1), t.ShortestHigh, 1e-3);
        Assert.Equal(Math.Log(0.125), t.Low, 4 * Math.Sqrt(0.025 * 0.975 / Trials) / 0.125);
        Assert.Equal(Math.Log(1.075), t.High, 4 * Math.Sqrt(0.025 * 0.975 / Trials) / 1.075);

        var x = Measured.Of(0.6, 0.5 / Math.Sqrt(3), ErrorSource.Rectangular("x", "x"));
        var log = x.Map(Math.Log(0.6), 1 / 0.6);
        Assert.Equal(-0.5108256, log.Value, 5e-8);
        Assert.Equal(0.4811252, log.StandardUncertainty, 5e-8);
        var half = ErrorDistribution.Of(log).Coverage(0.95);
        Assert.False(t.Agrees(log.Value - half, log.Value + half, digits: 1));
    }

    /// <summary>Thermal expansion coefficient, NIST Technical Note 1900 as quoted in suncal: 1.7266e-5 and 1.76e-6 per
    /// kelvin by first order, 1.7268e-5 and 1.74e-6 by trials with t distributions of 3 degrees of freedom.</summary>
    [Fact]
    public void Thermal_expansion_agrees_with_the_technical_note()
    {
        var l0 = Measured.Of(1.4999, 0.0001, ErrorSource.Normal("l0", "length", 3));
        var l1 = Measured.Of(1.5021, 0.0002, ErrorSource.Normal("l1", "length", 3));
        var t0 = Measured.Of(288.15, 0.02, ErrorSource.Normal("t0", "temperature", 3));
        var t1 = Measured.Of(373.10, 0.05, ErrorSource.Normal("t1", "temperature", 3));
        var a = (l1 - l0) / (l0 * (t1 - t0));
        Assert.Equal(1.7266e-5, a.Value, 5e-10);
        Assert.Equal(1.76e-6, a.StandardUncertainty, 5e-9);

        const int Some = 300_000;
        var t = MonteCarlo.Run(
            static (random, y) =>
            {
                // A t of 3 degrees of freedom has standard deviation sqrt(3).
                double Draw(double value, double u) => value + (u / Math.Sqrt(3) * random.NextStudentT(3));
                for (var i = 0; i < y.Length; i++)
                {
                    var start = Draw(1.4999, 0.0001);
                    y[i] = (Draw(1.5021, 0.0002) - start) / (start * (Draw(373.10, 0.05) - Draw(288.15, 0.02)));
                }
            },
            Some, seed: 1900);
        Assert.Equal(1.7268e-5, t.Mean, (4 * 1.75e-6 / Math.Sqrt(Some)) + 5e-10);
        // Without a fourth moment the standard deviation settles slowly; 5 % is what the note's own two figures and a
        // few seeds differ by.
        Assert.Equal(a.StandardUncertainty, t.StandardUncertainty, 0.05 * a.StandardUncertainty);
    }

    /// <summary>JCGM 101, 7.9.2 (examples from memory): u = 0.00035 g with both digits 35e-5, so 0.000005 g; with one digit
    /// 4e-4 g, so 0.00005 g; u = 2 K with one digit, 0.5 K.</summary>
    [Theory]
    [InlineData(0.00035, 2, 0.000005)]
    [InlineData(0.00035, 1, 0.00005)]
    [InlineData(2, 1, 0.5)]
    [InlineData(2, 2, 0.05)]
    [InlineData(0.0754, 2, 0.0005)]
    [InlineData(99.9, 2, 0.5)]
    [InlineData(100, 2, 5)]
    [InlineData(1e-12, 2, 0.5e-13)]
    [InlineData(0, 2, 0)]
    public void Numerical_tolerance_is_half_the_last_digit(double u, int digits, double expected) =>
        Assert.Equal(expected, MonteCarlo.NumericalTolerance(u, digits), expected * 1e-12);

    /// <summary>Ranks of JCGM 101, 7.7.2: q = pM, r = (M - q)/2 rounded up; here the trials are 1 to M in wild order.</summary>
    [Theory]
    [InlineData(1000, 0.95, 25, 975)]
    [InlineData(1010, 0.95, 25, 985)]
    [InlineData(2000, 0.5, 500, 1500)]
    [InlineData(1000, 0.1, 450, 550)]
    [InlineData(1000, 0.9999, 1, 1000)]
    public void Ranks_are_those_of_the_guide(int trials, double probability, double low, double high)
    {
        var next = 0;
        var t = MonteCarlo.Run(
            (_, y) =>
            {
                // 617 shares no factor with the number of trials, so every rank comes once.
                for (var i = 0; i < y.Length; i++)
                    y[i] = (next++ * 617L % trials) + 1;
            },
            trials, seed: 0, probability);
        Assert.Equal(low, t.Low);
        Assert.Equal(high, t.High);
        Assert.Equal((trials + 1) / 2.0, t.Mean, 1e-9);
        Assert.Equal(high - low, t.ShortestHigh - t.ShortestLow);
    }

    [Fact]
    public void Equal_seeds_give_equal_figures()
    {
        static MonteCarlo Run(ulong seed) => MonteCarlo.Run(static (random, y) => random.FillNormal(y), 5000, seed);
        Assert.Equal(Run(7), Run(7));
        Assert.NotEqual(Run(7).Mean, Run(8).Mean);
    }

    [Fact]
    public void Wrong_settings_throw()
    {
        static void Nothing(RandomSource random, Span<double> y) => y.Clear();
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.Run(Nothing, 999, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.Run(Nothing, 1000, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.Run(Nothing, 1000, 1, double.NaN));
        Assert.Throws<ArgumentNullException>(() => MonteCarlo.Run(null!, 1000, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.NumericalTolerance(1, 0));
    }
}
