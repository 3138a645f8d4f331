using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Tests.Uncertainty;

/// <summary>GUM (JCGM 100:2008) H.2 (impedance from simultaneous readings) and H.3 (calibration line), data and published
/// results as quoted in the documentation of the open libraries GTC and suncal; further digits by exact
/// arithmetic on the data.</summary>
public sealed class GumCorrelatedTests
{
    private static readonly double[] Volts = [5.007, 4.994, 5.005, 4.990, 4.999];
    private static readonly double[] Amperes = [19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3];
    private static readonly double[] Radians = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];

    private static readonly double[] Temperatures =
        [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511];

    private static readonly double[] Corrections =
        [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160];

    [Fact]
    public void Means_of_paired_readings_have_the_published_uncertainties_and_correlations()
    {
        var m = Means();
        Assert.Equal([4.9990, 19.6610e-3, 1.04446], m.Select(x => Math.Round(x.Value, 9)));
        Assert.Equal(0.0032094, m[0].StandardUncertainty, 5e-8);
        Assert.Equal(0.0094710e-3, m[1].StandardUncertainty, 5e-11);
        Assert.Equal(0.00075206, m[2].StandardUncertainty, 5e-9);
        Assert.Equal(-0.355311, Measured.Correlation(m[0], m[1]), 5e-7);
        Assert.Equal(0.857624, Measured.Correlation(m[0], m[2]), 5e-7);
        Assert.Equal(-0.645111, Measured.Correlation(m[1], m[2]), 5e-7);
    }

    [Fact]
    public void Impedance_has_the_published_uncertainties_and_correlations()
    {
        var (r, x, z) = Impedance(Means());
        Assert.Equal(127.73217, r.Value, 5e-6);
        Assert.Equal(219.84651, x.Value, 5e-6);
        Assert.Equal(254.25970, z.Value, 5e-6);
        // Published (approach 1): 0.071, 0.295 and 0.236 ohm.
        Assert.Equal(0.071071, r.StandardUncertainty, 5e-7);
        Assert.Equal(0.295582, x.StandardUncertainty, 5e-7);
        Assert.Equal(0.236336, z.StandardUncertainty, 5e-7);
        Assert.Equal(-0.58843, Measured.Correlation(r, x), 5e-6);
        Assert.Equal(-0.48526, Measured.Correlation(r, z), 5e-6);
        Assert.Equal(0.99251, Measured.Correlation(x, z), 5e-6);
    }

    [Fact]
    public void Impedance_keeps_the_four_degrees_of_freedom_of_its_five_readings()
    {
        var (r, x, z) = Impedance(Means());
        Assert.Equal(4, WelchSatterthwaite.EffectiveDegreesOfFreedom(r), 1e-9);
        Assert.Equal(4, WelchSatterthwaite.EffectiveDegreesOfFreedom(x), 1e-9);
        Assert.Equal(4, WelchSatterthwaite.EffectiveDegreesOfFreedom(z), 1e-9);
    }

    /// <summary>The wrong answer that GUM Table H.5 warns of: 0.195 ohm.</summary>
    [Fact]
    public void Leaving_the_correlation_out_gives_the_known_wrong_answer()
    {
        var m = Means();
        var (r, _, _) = Impedance(
        [
            Measured.Of(m[0].Value, m[0].StandardUncertainty, ErrorSource.Normal("v", "readings")),
            Measured.Of(m[1].Value, m[1].StandardUncertainty, ErrorSource.Normal("i", "readings")),
            Measured.Of(m[2].Value, m[2].StandardUncertainty, ErrorSource.Normal("phi", "readings")),
        ]);
        Assert.Equal(0.194544, r.StandardUncertainty, 5e-7);
    }

    [Fact]
    public void Calibration_line_predicts_with_the_published_uncertainty()
    {
        var (intercept, slope) = Line();
        // Published: -0.1712 (0.0029), 0.00218 (0.00067), r -0.930; b(30 C) -0.1494 (0.0041) with 9 degrees of freedom.
        Assert.Equal(-0.171203790131, intercept.Value, 5e-13);
        Assert.Equal(0.00287759783516, intercept.StandardUncertainty, 5e-15);
        Assert.Equal(0.00218269773989, slope.Value, 5e-15);
        Assert.Equal(0.000667938773228, slope.StandardUncertainty, 5e-16);
        Assert.Equal(-0.930429603, Measured.Correlation(intercept, slope), 5e-10);
        var at30 = intercept + (10 * slope);
        Assert.Equal(-0.149376813, at30.Value, 5e-10);
        Assert.Equal(0.004138596, at30.StandardUncertainty, 5e-10);
        Assert.Equal(9, WelchSatterthwaite.EffectiveDegreesOfFreedom(at30), 1e-9);
    }

    /// <summary>Variant in GTC's documentation: one error of u 0.005 common to all corrections, as when one scale weighs
    /// every drop.</summary>
    [Fact]
    public void An_error_common_to_all_points_moves_the_intercept_but_not_the_slope()
    {
        var (intercept, slope) = Line();
        var common = ErrorSource.Normal("thermometer", "reference thermometer");
        var moved = intercept.With(common, 0.005);
        Assert.Equal(0.00576893138, moved.StandardUncertainty, 5e-12);
        Assert.Equal(145.4, WelchSatterthwaite.EffectiveDegreesOfFreedom(moved), 0.05);
        Assert.Equal(0.00066793877, slope.StandardUncertainty, 5e-12);
        Assert.Equal(9, WelchSatterthwaite.EffectiveDegreesOfFreedom(slope), 1e-9);
        // A difference along the line does not hold the common error.
        var difference = (moved + (10 * slope)) - (moved + (3 * slope));
        Assert.Equal(7 * slope.StandardUncertainty, difference.StandardUncertainty, 1e-15);
    }

    private static Measured[] Means()
    {
        double[][] readings = [Volts, Amperes, Radians];
        var n = Volts.Length;
        var means = readings.Select(x => x.Average()).ToArray();
        var covariance = new double[3, 3];
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                for (var k = 0; k < n; k++)
                {
                    covariance[i, j] +=
                        (readings[i][k] - means[i]) * (readings[j][k] - means[j]) / (n - 1) / n;
                }
            }
        }

        return Measured.Correlated("readings", "readings", means, covariance, n - 1);
    }

    private static (Measured R, Measured X, Measured Z) Impedance(Measured[] m)
    {
        var (v, i, phi) = (m[0], m[1], m[2]);
        var cos = phi.Map(Math.Cos(phi.Value), -Math.Sin(phi.Value));
        var sin = phi.Map(Math.Sin(phi.Value), Math.Cos(phi.Value));
        return (v / i * cos, v / i * sin, v / i);
    }

    private static (Measured Intercept, Measured Slope) Line()
    {
        double n = Temperatures.Length, sx = 0, sxx = 0, sy = 0, sxy = 0;
        for (var i = 0; i < Temperatures.Length; i++)
        {
            var x = Temperatures[i] - 20;
            sx += x;
            sxx += x * x;
            sy += Corrections[i];
            sxy += x * Corrections[i];
        }

        var det = (n * sxx) - (sx * sx);
        var a = ((sxx * sy) - (sx * sxy)) / det;
        var b = ((n * sxy) - (sx * sy)) / det;
        var misfit = 0.0;
        for (var i = 0; i < Temperatures.Length; i++)
            misfit += Math.Pow(Corrections[i] - a - (b * (Temperatures[i] - 20)), 2);
        var variance = misfit / (n - 2);
        double[,] covariance =
        {
            { variance * sxx / det, -variance * sx / det },
            { -variance * sx / det, variance * n / det },
        };
        var pair = Measured.Correlated("line", "calibration line", [a, b], covariance, n - 2);
        return (pair[0], pair[1]);
    }
}
