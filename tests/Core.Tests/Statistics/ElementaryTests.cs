using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Statistics;

/// <summary>Second opinion: System.Math of this machine, itself right to about half a unit in the last place.</summary>
public sealed class ElementaryTests
{
    private const int Samples = 100_000;

    private static readonly double[] Special =
    [
        0.0, -0.0, 1, -1, 0.5, -0.5, 2, -2, 3, -3, 0.1, double.Epsilon, -double.Epsilon, 2.2250738585072014e-308,
        double.MaxValue, double.MinValue, double.PositiveInfinity, double.NegativeInfinity, double.NaN, 1e-300, 1e300,
        9007199254740991, 9007199254740992, -9007199254740991, 1e17, Math.PI, Math.PI / 2, Math.PI / 4, 709.78, 710,
        -745.13, -745.2, -708.5, 1.4142, 1.41420001, 0.7071, Math.BitIncrement(1), Math.BitDecrement(1), 2.5, -2.5,
    ];

    private static IEnumerable<double> AnyBits(int seed)
    {
        var random = new Random(seed);
        return Special.Concat(Enumerable.Range(0, Samples)
            .Select(_ => BitConverter.Int64BitsToDouble(random.NextInt64(long.MinValue, long.MaxValue))));
    }

    private static IEnumerable<double> Between(double low, double high, int seed)
    {
        var random = new Random(seed);
        return Enumerable.Range(0, Samples).Select(_ => low + ((high - low) * random.NextDouble()));
    }

    [Fact]
    public void Exp_agrees_to_the_last_place()
    {
        foreach (var x in AnyBits(1).Concat(Between(-746, 710, 2)).Concat(Between(-1, 1, 3)))
            Ulps.AssertWithin(1, Math.Exp(x), Elementary.Exp(x), x);
    }

    [Fact]
    public void Log_agrees_to_the_last_place()
    {
        foreach (var x in AnyBits(4).Concat(Between(0, 3, 5)).Concat(Between(0.999, 1.001, 6)))
            Ulps.AssertWithin(1, Math.Log(x), Elementary.Log(x), x);
    }

    [Fact]
    public void Log1p_and_Expm1_undo_each_other_and_match_known_series()
    {
        var small = Between(-1e-5, 1e-5, 8).Concat(AnyBits(9).Where(x => Math.Abs(x) < 1e-6));
        foreach (var x in Between(-0.9, 3, 7).Concat(small))
        {
            Ulps.AssertWithin(4, x, Elementary.Expm1(Elementary.Log1p(x)), x);
            if (x != 0 && Math.Abs(x) < 1e-6)
            {
                Ulps.AssertWithin(1, x - (x * x / 2) + (x * x * x / 3), Elementary.Log1p(x), x);
                Ulps.AssertWithin(1, x + (x * x / 2) + (x * x * x / 6), Elementary.Expm1(x), x);
            }
        }
    }

    [Fact]
    public void Expm1_and_Log1p_agree_where_nothing_cancels()
    {
        foreach (var x in Between(2, 720, 10).Concat(Between(-50, -2, 11)))
            Ulps.AssertWithin(2, Math.Exp(x) - 1, Elementary.Expm1(x), x);
        foreach (var x in Between(2, 1e6, 12))
            Ulps.AssertWithin(1, MathNet.Numerics.SpecialFunctions.Log1p(x), Elementary.Log1p(x), x);
    }

    [Theory]
    [InlineData(-1, double.NegativeInfinity, -0.6321205588285577)]
    [InlineData(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity)]
    [InlineData(double.NaN, double.NaN, double.NaN)]
    [InlineData(-2, double.NaN, -0.8646647167633873)]
    [InlineData(double.NegativeInfinity, double.NaN, -1)]
    [InlineData(0, 0, 0)]
    public void Log1p_and_Expm1_have_the_special_values_of_IEEE_754(double x, double log1p, double expm1)
    {
        Ulps.AssertWithin(0, log1p, Elementary.Log1p(x), x);
        Ulps.AssertWithin(1, expm1, Elementary.Expm1(x), x);
    }

    [Fact]
    public void Pow_agrees_to_the_last_place()
    {
        var random = new Random(13);
        for (var i = 0; i < Samples; i++)
        {
            var x = Math.Exp(random.NextDouble() * 40 - 20);
            var y = random.NextDouble() * 60 - 30;
            Ulps.AssertWithin(1, Math.Pow(x, y), Elementary.Pow(x, y), x);
            Ulps.AssertWithin(1, Math.Pow(x, 0.5), Elementary.Pow(x, 0.5), x);
            var whole = random.Next(-30, 30);
            Ulps.AssertWithin(1, Math.Pow(-x, whole), Elementary.Pow(-x, whole), x);
        }
    }

    [Fact]
    public void Pow_agrees_for_any_bits_and_every_special_pair()
    {
        foreach (var (x, y) in AnyBits(14).Zip(AnyBits(15)))
            Ulps.AssertWithin(1, Math.Pow(x, y), Elementary.Pow(x, y), x);
        foreach (var x in Special)
        {
            foreach (var y in Special)
                Ulps.AssertWithin(1, Math.Pow(x, y), Elementary.Pow(x, y), x);
        }
    }

    [Fact]
    public void Sine_and_cosine_agree_for_every_size_of_angle()
    {
        foreach (var x in AnyBits(16).Concat(Between(-10, 10, 17)).Concat(Between(-1e6, 1e6, 18)))
        {
            Ulps.AssertWithin(1, Math.Sin(x), Elementary.Sin(x), x);
            Ulps.AssertWithin(1, Math.Cos(x), Elementary.Cos(x), x);
        }
    }

    /// <summary>The double that comes closest to a multiple of pi/2 (J.-M. Muller, Elementary Functions, the chapter on
    /// range reduction; the number from memory); its cosine computed in 450 digits, pi from Machin's formula.</summary>
    [Fact]
    public void The_hardest_angle_to_reduce_keeps_its_digits() =>
        Assert.Equal(-4.687165924254628e-19, Elementary.Cos(Math.ScaleB(6381956970095103.0, 797)));

    /// <summary>The bits themselves are pinned: they must not depend on the machine or the runtime.</summary>
    [Fact]
    public void The_bits_are_the_same_on_every_machine()
    {
        var hash = 14695981039346656037UL;
        foreach (var x in Between(-20, 20, 19))
        {
            foreach (var value in (double[])
                [Elementary.Exp(x), Elementary.Log(Math.Abs(x)), Elementary.Sin(x), Elementary.Pow(Math.Abs(x), x)])
                hash = (hash ^ BitConverter.DoubleToUInt64Bits(value)) * 1099511628211UL;
        }

        Assert.Equal(15869960249462883482UL, hash);
    }
}
