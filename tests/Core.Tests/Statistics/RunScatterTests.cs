using CsCheck;
using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Statistics;

public sealed class RunScatterTests
{
    private static readonly Gen<double[]> Ratios = Gen.Double[0.7, 1.3].Array[1, 8];

    [Fact]
    public void Chances_are_chances() => Gen.Select(Ratios, Gen.Double[0, 0.05], Gen.Double[0, 0.1], Gen.Double[0, 30])
        .Sample(
            (ratios, reading, earlier, freedom) =>
            {
                var s = Learn(ratios, reading, earlier, freedom);
                Assert.Equal(RunScatter.Sizes.Length, s.Chances.Length);
                var sum = 0.0;
                foreach (var c in s.Chances)
                {
                    Assert.InRange(c, 0, 1);
                    sum += c;
                }

                Assert.Equal(1, sum, 1e-12);
                Assert.InRange(s.Median, RunScatter.Least * (1 - 1e-12), RunScatter.Most * (1 + 1e-12));
                Assert.InRange(s.RootMeanSquare, RunScatter.Least, RunScatter.Most);
                Assert.True(s.DegreesOfFreedom > 0);
            },
            iter: 1000, threads: 1);

    [Fact]
    public void The_order_of_the_runs_and_the_unit_of_the_ratios_do_not_matter() =>
        Gen.Select(Gen.Double[0.7, 1.3].Array[2, 8], Gen.Double[0.01, 100]).Sample(
            (ratios, unit) =>
            {
                var a = Learn(ratios);
                var b = Learn([.. ratios.Reverse().Select(r => r * unit)]);
                for (var j = 0; j < a.Chances.Length; j++)
                    Assert.Equal(a.Chances[j], b.Chances[j], 1e-9);
                Assert.Equal(a.LogEvidence, b.LogEvidence, 1e-7);
            },
            iter: 500, threads: 1);

    /// <summary>The likelihood against a second statement of it: with equal variances the restricted likelihood of s is
    /// s^-(n-1) exp(-SS / (2 s^2)), that is, SS/s^2 is chi-squared with n - 1 degrees of freedom.</summary>
    [Fact]
    public void Equal_runs_give_the_textbook_likelihood()
    {
        double[] ratios = [0.98, 1.03, 1.01, 0.99, 0.995];
        var s = Learn(ratios);
        var none = Learn([1]);
        var mean = ratios.Average();
        var squares = ratios.Sum(r => Math.Pow((r / mean) - 1, 2));
        // Against the prior (what one run alone leaves), relative to one size of the grid.
        const int Base = 20;
        for (var j = 10; j < 40; j++)
        {
            var (x, x0) = (RunScatter.Sizes[j], RunScatter.Sizes[Base]);
            var expected = (-4 * Math.Log(x / x0)) - (squares / 2 * ((1 / x / x) - (1 / x0 / x0)));
            var got = Math.Log(s.Chances[j] / none.Chances[j]) - Math.Log(s.Chances[Base] / none.Chances[Base]);
            Assert.Equal(expected, got, 1e-9 * (1 + Math.Abs(expected)));
        }
    }

    [Fact]
    public void One_run_alone_leaves_the_prior()
    {
        var s = Learn([3.7], 0.01);
        var level = s.Chances[0];
        for (var j = 0; j < s.Chances.Length; j++)
        {
            var fall = Math.Min(1, RunScatter.Knee / RunScatter.Sizes[j]);
            Assert.Equal(level * fall * fall, s.Chances[j], 1e-12);
        }

        Assert.Equal(0, s.LogEvidence, 1e-12);
        Assert.Equal(RunScatter.Least, RunScatter.Sizes[0], 1e-15);
        Assert.Equal(RunScatter.Most, RunScatter.Sizes[^1], 1e-12);
    }

    /// <summary>Runs placed at the quantiles of a normal with the true scatter: invented data without luck.</summary>
    [Theory]
    [InlineData(0.01)]
    [InlineData(0.03)]
    [InlineData(0.10)]
    [InlineData(0.20)]
    public void More_runs_sharpen_it_around_the_truth(double truth)
    {
        var last = double.PositiveInfinity;
        foreach (var n in (int[])[3, 6, 12, 50])
        {
            var s = Learn(Quantiles(n, truth));
            var width = Width(s);
            Assert.True(width < last, $"{n} runs: {width}");
            last = width;
        }

        var many = Learn(Quantiles(200, truth));
        Assert.Equal(truth, many.RootMeanSquare, 0.1 * truth);
        Assert.Equal(truth, many.Median, 0.15 * truth);

        // Posterior of a variance from 20 normals: nu s^2 / chi^2(nu), for which 2 E^2 / Var is nu - 4; nu is 19 below the
        // knee of the prior and 21 above it.
        Assert.InRange(Learn(Quantiles(20, truth)).DegreesOfFreedom, 14, 18);
    }

    /// <summary>A spreader out of order scatters by 20 to 50 %; the answer must say so even after three runs.</summary>
    [Theory]
    [InlineData(0.2)]
    [InlineData(0.35)]
    [InlineData(0.5)]
    public void Huge_scatter_is_not_cut_down(double truth)
    {
        double[] three = [1 - truth, 1, 1 + truth];
        var s = Learn(three);
        Assert.True(s.RootMeanSquare > 0.85 * truth, $"{s.RootMeanSquare}");
        Assert.True(s.Median > 0.6 * truth, $"{s.Median}");
        Assert.True(ChanceAbove(s, truth / 2) > 0.75);
        Assert.Equal(truth, Learn(Quantiles(30, truth)).Median, 0.15 * truth);
    }

    [Fact]
    public void Earlier_knowledge_pulls_it_and_more_of_it_pulls_harder()
    {
        double[] ratios = [0.99, 1.0, 1.012];
        var alone = Learn(ratios).RootMeanSquare;
        var last = alone;
        foreach (var freedom in (double[])[2, 10, 50])
        {
            var high = Learn(ratios, earlier: 0.08, freedom: freedom).RootMeanSquare;
            Assert.True(high > last);
            last = high;
        }

        Assert.Equal(0.08, last, 0.012);
        Assert.True(Learn(ratios, earlier: 0.004, freedom: 20).RootMeanSquare < alone);
        // Either half of earlier knowledge alone says nothing.
        Assert.Equal(alone, Learn(ratios, earlier: 0.08).RootMeanSquare);
        Assert.Equal(alone, Learn(ratios, freedom: 50).RootMeanSquare);
    }

    /// <summary>Earlier knowledge of n - 1 degrees is worth the n runs it came from, but for the mean that they also
    /// had to give: adding it to one run leaves the same as those runs.</summary>
    [Fact]
    public void Earlier_runs_are_worth_as_much_as_their_own_likelihood()
    {
        double[] earlier = [0.97, 1.0, 1.01, 1.02];
        var mean = earlier.Average();
        var s = Math.Sqrt(earlier.Sum(r => Math.Pow((r / mean) - 1, 2)) / 3);
        var runs = Learn(earlier);
        var told = Learn([2.5], earlier: s, freedom: 3);
        for (var j = 0; j < runs.Chances.Length; j++)
            Assert.Equal(runs.Chances[j], told.Chances[j], 1e-9);
    }

    [Fact]
    public void Scatter_that_the_readings_explain_is_not_blamed_on_the_spreader()
    {
        var ratios = Quantiles(6, 0.03);
        Assert.True(Learn(ratios, reading: 0.03).RootMeanSquare < 0.7 * Learn(ratios).RootMeanSquare);
    }

    [Fact]
    public void The_evidence_tells_which_growth_the_runs_follow()
    {
        // Invented: small drops scatter by 6 %, large ones by 2 %, as when a ninth of the variance goes with size.
        double[] ratios = [0.94, 1.06, 0.95, 1.05, 0.98, 1.02, 0.985, 1.015];
        double[] growth = [1.8, 1.8, 1.8, 1.8, 0.2, 0.2, 0.2, 0.2];
        var right = RunScatter.Learn(ratios, new double[8], growth).LogEvidence;
        var flat = Learn(ratios).LogEvidence;
        Array.Reverse(growth);
        var wrong = RunScatter.Learn(ratios, new double[8], growth).LogEvidence;
        Assert.True(right > flat && flat > wrong, $"{right} {flat} {wrong}");
    }

    [Fact]
    public void Impossible_runs_throw()
    {
        Assert.Throws<ArgumentException>(() => RunScatter.Learn([], [], []));
        Assert.Throws<ArgumentException>(() => RunScatter.Learn([1, 2], [0], [1, 1]));
        Assert.Throws<ArgumentException>(() => RunScatter.Learn([1, 2], [0, 0], [1]));
        Assert.Throws<ArgumentException>(() => RunScatter.Learn([1, -0.5], [0, 0], [1, 1]));
        Assert.Throws<ArgumentException>(() => RunScatter.Learn([1, double.NaN], [0, 0], [1, 1]));
        Assert.Throws<ArgumentException>(() => RunScatter.Learn([1, 1], [0, -1], [1, 1]));
        Assert.Throws<ArgumentException>(() => RunScatter.Learn([1, 1], [0, 0], [1, 0]));
    }

    private static RunScatter Learn(double[] ratios, double reading = 0, double earlier = 0, double freedom = 0)
    {
        var errors = new double[ratios.Length];
        Array.Fill(errors, reading);
        var growth = new double[ratios.Length];
        Array.Fill(growth, 1);
        return RunScatter.Learn(ratios, errors, growth, earlier, freedom);
    }

    // Scaled so that their own standard deviation is exactly the truth.
    private static double[] Quantiles(int n, double truth)
    {
        var z = Enumerable.Range(0, n).Select(i => NormalDistribution.Quantile((i + 0.5) / n)).ToArray();
        var s = Math.Sqrt(z.Sum(v => v * v) / (n - 1));
        return [.. z.Select(v => Math.Max(0.01, 1 + (truth * v / s)))];
    }

    private static double Width(RunScatter s)
    {
        double mean = 0, square = 0;
        for (var j = 0; j < s.Chances.Length; j++)
        {
            var log = Math.Log(RunScatter.Sizes[j]);
            mean += s.Chances[j] * log;
            square += s.Chances[j] * log * log;
        }

        return Math.Sqrt(square - (mean * mean));
    }

    private static double ChanceAbove(RunScatter s, double size)
    {
        var sum = 0.0;
        for (var j = 0; j < s.Chances.Length; j++)
            sum += RunScatter.Sizes[j] > size ? s.Chances[j] : 0;
        return sum;
    }
}
