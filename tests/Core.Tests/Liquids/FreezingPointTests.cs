using Lanewright.Core.Liquids;

namespace Lanewright.Core.Tests.Liquids;

/// <summary>Freezing points: every source that was read lies within the spread that is stated.</summary>
public sealed class FreezingPointTests
{
    // Melinder's polynomials worked out apart from this code, °C.
    [Theory]
    [InlineData(SaltKind.SodiumChloride, 0.05, -3.055)]
    [InlineData(SaltKind.SodiumChloride, 0.20, -16.456)]
    [InlineData(SaltKind.SodiumChloride, 0.23, -20.515)]
    [InlineData(SaltKind.CalciumChloride, 0.10, -5.842)]
    [InlineData(SaltKind.CalciumChloride, 0.25, -29.046)]
    [InlineData(SaltKind.MagnesiumChloride, 0.15, -16.797)]
    [InlineData(SaltKind.MagnesiumChloride, 0.20, -28.709)]
    [InlineData(SaltKind.PotassiumAcetate, 0.20, -11.205)]
    [InlineData(SaltKind.PotassiumAcetate, 0.40, -42.124)]
    public void The_middle_is_the_polynomial(SaltKind salt, double strength, double expected) =>
        Assert.Equal(expected, FreezingPoint.Of(salt, strength)!.Kelvins - 273.15, 6e-4);

    [Theory]
    // CRC Handbook, a handful of rows.
    [InlineData(SaltKind.SodiumChloride, 0.01, -0.59)]
    [InlineData(SaltKind.SodiumChloride, 0.10, -6.56)]
    [InlineData(SaltKind.SodiumChloride, 0.20, -16.46)]
    [InlineData(SaltKind.SodiumChloride, 0.23, -20.67)]
    [InlineData(SaltKind.CalciumChloride, 0.04, -1.82)]
    [InlineData(SaltKind.CalciumChloride, 0.10, -5.86)]
    [InlineData(SaltKind.CalciumChloride, 0.20, -18.3)]
    [InlineData(SaltKind.CalciumChloride, 0.24, -25.3)]
    [InlineData(SaltKind.MagnesiumChloride, 0.05, -3.01)]
    // Lange's Handbook, 15th ed., table 5.13.
    [InlineData(SaltKind.SodiumChloride, 0.15, -10.88)]
    [InlineData(SaltKind.SodiumChloride, 0.233, -21.1)]
    [InlineData(SaltKind.MagnesiumChloride, 0.10, -7.83)]
    [InlineData(SaltKind.MagnesiumChloride, 0.15, -15.6)]
    [InlineData(SaltKind.MagnesiumChloride, 0.18, -22.1)]
    [InlineData(SaltKind.MagnesiumChloride, 0.20, -27.4)]
    [InlineData(SaltKind.MagnesiumChloride, 0.21, -30.6)]
    [InlineData(SaltKind.MagnesiumChloride, 0.22, -32.8)]
    [InlineData(SaltKind.MagnesiumChloride, 0.25, -23.3)]
    [InlineData(SaltKind.MagnesiumChloride, 0.30, -16.7)]
    // VDI's tables as an open library of fluids carries them.
    [InlineData(SaltKind.SodiumChloride, 0.136, -9.8)]
    [InlineData(SaltKind.SodiumChloride, 0.188, -15.2)]
    [InlineData(SaltKind.SodiumChloride, 0.231, -21.2)]
    [InlineData(SaltKind.CalciumChloride, 0.147, -10.2)]
    [InlineData(SaltKind.CalciumChloride, 0.209, -19.2)]
    [InlineData(SaltKind.MagnesiumChloride, 0.116, -10.3)]
    [InlineData(SaltKind.MagnesiumChloride, 0.17, -22.8)]
    [InlineData(SaltKind.MagnesiumChloride, 0.206, -33.6)]
    // Melinder's own table.
    [InlineData(SaltKind.PotassiumAcetate, 0.16, -8.457)]
    [InlineData(SaltKind.PotassiumAcetate, 0.41, -44.943)]
    // FHWA-RD-95-202, appendix A.
    [InlineData(SaltKind.MagnesiumChloride, 0.216, -33)]
    [InlineData(SaltKind.SodiumChloride, 0.233, -21)]
    public void Every_source_lies_within_the_spread(SaltKind salt, double strength, double celsius)
    {
        var point = FreezingPoint.Of(salt, strength)!;
        Assert.InRange(celsius + 273.15, point.Kelvins - point.PlusMinus, point.Kelvins + point.PlusMinus);
    }

    [Fact]
    public void The_spread_of_calcium_chloride_is_one_degree_at_20_percent_and_four_at_25_and_nothing_is_said_beyond()
    {
        Assert.Equal(1, FreezingPoint.Of(SaltKind.CalciumChloride, 0.20)!.PlusMinus, 1e-12);
        Assert.Equal(4, FreezingPoint.Of(SaltKind.CalciumChloride, 0.25)!.PlusMinus, 1e-12);
        Assert.Null(FreezingPoint.Of(SaltKind.CalciumChloride, 0.251));
    }

    [Fact]
    public void Magnesium_chloride_is_lowest_near_22_percent_and_rises_after()
    {
        var lowest = Enumerable.Range(0, 300).MinBy(i => FreezingPoint.Of(SaltKind.MagnesiumChloride, i / 1000.0)!.Kelvins) / 1000.0;
        Assert.InRange(lowest, 0.215, 0.225);
        Assert.False(FreezingPoint.Of(SaltKind.MagnesiumChloride, 0.2)!.RisesWithStrength);
        Assert.True(FreezingPoint.Of(SaltKind.MagnesiumChloride, 0.3)!.RisesWithStrength);
    }

    [Theory]
    [InlineData(SaltKind.SodiumChloride, 0.24)]
    [InlineData(SaltKind.MagnesiumChloride, 0.31)]
    [InlineData(SaltKind.PotassiumAcetate, 0.10)]
    [InlineData(SaltKind.PotassiumAcetate, 0.45)]
    [InlineData(SaltKind.SodiumChloride, -0.01)]
    [InlineData(SaltKind.SodiumChloride, double.NaN)]
    public void Where_the_sources_say_nothing_nothing_is_said(SaltKind salt, double strength) =>
        Assert.Null(FreezingPoint.Of(salt, strength));

    [Fact]
    public void Until_the_lowest_point_more_salt_freezes_later()
    {
        foreach (var (salt, most) in new[] { (SaltKind.SodiumChloride, 0.233), (SaltKind.CalciumChloride, 0.25), (SaltKind.MagnesiumChloride, 0.2) })
        {
            var last = 1000.0;
            for (var w = 0.0; w <= most; w += 0.001)
            {
                var next = FreezingPoint.Of(salt, w)!.Kelvins;
                Assert.True(next < last, $"{salt} {w}");
                last = next;
            }
        }
    }
}
