using CsCheck;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Tests.Uncertainty;

/// <summary>Measured values that share some of a dozen sources.</summary>
internal static class MeasuredGen
{
    internal static readonly ErrorSource[] Sources = [.. Enumerable.Range(0, 12).Select(Source)];

    /// <summary>A number that is 0 or no smaller than 1e-6: squares of numbers near the least double vanish.</summary>
    internal static Gen<double> Number(double low, double high) =>
        Gen.Double[low, high].Select(x => Math.Abs(x) < 1e-6 ? 0 : x);

    private static readonly Gen<Contribution> Part = Gen.Select(
        Gen.Int[0, Sources.Length - 1], Number(-3, 3), (i, amount) => new Contribution(Sources[i], amount));

    /// <summary>Any value, with none to six sources.</summary>
    internal static readonly Gen<Measured> Any = Gen.Select(
        Number(-100, 100), Part.Array[0, 6], (value, parts) => Measured.Of(value, parts));

    /// <summary>A value from 1 to 100, so that it can stand below a line.</summary>
    internal static readonly Gen<Measured> Positive = Gen.Select(
        Gen.Double[1, 100], Part.Array[0, 6], (value, parts) => Measured.Of(value, parts));

    internal static void Near(double expected, double actual, double size) =>
        Assert.Equal(expected, actual, 1e-12 * (1 + Math.Abs(size)));

    /// <summary>Same value and same contributions but for rounding.</summary>
    internal static void Same(Measured expected, Measured actual)
    {
        Near(expected.Value, actual.Value, expected.Value);
        foreach (var source in Sources)
        {
            var amount = Amount(expected, source);
            Near(amount, Amount(actual, source), amount + expected.Value);
        }
    }

    internal static double Amount(Measured x, ErrorSource source)
    {
        foreach (var c in x.Contributions)
        {
            if (c.Source == source) return c.Amount;
        }

        return 0;
    }

    private static ErrorSource Source(int i)
    {
        var (id, family) = ($"source {i}", $"family {i % 4}");
        return (i % 3) switch
        {
            0 => ErrorSource.Normal(id, family, i + 1, i % 2 == 0 ? "readings" : null),
            1 => ErrorSource.Rectangular(id, family),
            _ => ErrorSource.Triangular(id, family, 20),
        };
    }
}
