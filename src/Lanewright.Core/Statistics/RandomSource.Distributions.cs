namespace Lanewright.Core.Statistics;

public sealed partial class RandomSource
{
    private const double Root3 = 1.7320508075688772;
    private const double Root6 = 2.449489742783178;
    private const double Root2 = 1.4142135623730951;

    /// <summary>Rectangular with mean 0 and standard deviation 1: between -sqrt 3 and sqrt 3.</summary>
    public double NextRectangular() => ((2 * NextDouble()) - 1) * Root3;

    /// <summary>Symmetric triangular with mean 0 and standard deviation 1: between -sqrt 6 and sqrt 6.</summary>
    public double NextTriangular() => (NextDouble() + NextDouble() - 1) * Root6;

    /// <summary>Arcsine (U-shaped) with mean 0 and standard deviation 1: between -sqrt 2 and sqrt 2, like a sine wave
    /// read at a random moment.</summary>
    public double NextArcsine()
    {
        // The direction of a point uniform in the disc is uniform, and the arcsine law is that of its cosine.
        double x, squared;
        do
        {
            x = (2 * NextDouble()) - 1;
            var y = (2 * NextDouble()) - 1;
            squared = (x * x) + (y * y);
        }
        while (squared > 1 || squared == 0);
        return Root2 * x / Math.Sqrt(squared);
    }

    /// <summary>Normal with mean 0 and standard deviation 1, by the ziggurat method.</summary>
    public double NextNormal() => NormalFrom(NextUInt64());

    /// <summary>The layer and the place in it come from different bits: the lowest 8 and the highest 53.</summary>
    private double NormalFrom(ulong bits)
    {
        ref readonly var layer = ref NormalLayers.Layers[(byte)bits];
        var x = ((long)bits >> 11) * layer.Scale;
        return Math.Abs(x) < layer.Inside ? x : NormalAtEdge((byte)bits, x);
    }

    private double NormalAtEdge(int layer, double x)
    {
        if (layer == 0)
            return NormalTail(x < 0);
        var low = NormalLayers.Height[layer];
        var height = low + (NextDouble() * (NormalLayers.Height[layer + 1] - low));
        return height < NormalLayers.Bell(x) ? x : NextNormal();
    }

    /// <summary>Beyond the last edge: exponential with rejection (G. Marsaglia, Technometrics 6 (1964)).</summary>
    private double NormalTail(bool negative)
    {
        double excess, test;
        do
        {
            excess = -Elementary.Log(NextAboveZero()) / NormalLayers.TailStart;
            test = -Elementary.Log(NextAboveZero());
        }
        while (2 * test < excess * excess);
        return negative ? -NormalLayers.TailStart - excess : NormalLayers.TailStart + excess;
    }

    /// <summary>
    /// Student's t with <paramref name="nu"/> degrees of freedom, any real number above 0; not scaled to unit standard
    /// deviation (which is sqrt(nu/(nu - 2)) for nu above 2). Infinite nu gives the normal distribution.
    /// </summary>
    /// <remarks>R. W. Bailey, "Polar generation of random variates with the t-distribution", Mathematics of Computation
    /// 62 (1994).</remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="nu"/> is not above 0.</exception>
    public double NextStudentT(double nu)
    {
        Require.Positive(nu);
        if (double.IsPositiveInfinity(nu))
            return NextNormal();
        double x, squared;
        do
        {
            x = (2 * NextDouble()) - 1;
            var y = (2 * NextDouble()) - 1;
            squared = (x * x) + (y * y);
        }
        while (squared > 1 || squared == 0);
        return x * Math.Sqrt(nu * Elementary.Expm1(-2 / nu * Elementary.Log(squared)) / squared);
    }

    /// <summary>Fills with <see cref="NextDouble"/>.</summary>
    public void FillUniform(Span<double> values)
    {
        ulong a = s0, b = s1, c = s2, d = s3;
        foreach (ref var value in values)
            value = UnitFrom(Step(ref a, ref b, ref c, ref d));
        (s0, s1, s2, s3) = (a, b, c, d);
    }

    /// <summary>Fills with <see cref="NextNormal"/>: the same numbers, faster.</summary>
    public void FillNormal(Span<double> values)
    {
        // The state lives in registers; only the one number in a hundred at an edge goes through the fields.
        ulong a = s0, b = s1, c = s2, d = s3;
        var layers = NormalLayers.Layers;
        foreach (ref var value in values)
        {
            var bits = Step(ref a, ref b, ref c, ref d);
            ref readonly var layer = ref layers[(byte)bits];
            value = ((long)bits >> 11) * layer.Scale;
            if (Math.Abs(value) < layer.Inside)
                continue;
            (s0, s1, s2, s3) = (a, b, c, d);
            value = NormalAtEdge((byte)bits, value);
            (a, b, c, d) = (s0, s1, s2, s3);
        }

        (s0, s1, s2, s3) = (a, b, c, d);
    }

    /// <summary>Fills with <see cref="NextStudentT"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="nu"/> is not above 0.</exception>
    public void FillStudentT(Span<double> values, double nu)
    {
        Require.Positive(nu);
        foreach (ref var value in values)
            value = NextStudentT(nu);
    }
}
