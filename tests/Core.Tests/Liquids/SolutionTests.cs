using CsCheck;
using Lanewright.Core.Liquids;

namespace Lanewright.Core.Tests.Liquids;

/// <summary>Density of solutions against published figures; sources beside them.</summary>
public sealed class SolutionTests
{
    private const double Zero = 273.15;

    // Published code's own tests (thermo, electrochem: water and NaCl).
    [Theory]
    [InlineData(25, 997.0448954179155)]
    [InlineData(50, 988.0362916114763)]
    public void The_models_water_is_the_published_one(double t, double expected) =>
        Assert.Equal(expected, Solution.WaterDensity(t), 1e-9);

    [Fact]
    public void The_apparent_density_of_salt_is_the_published_one() =>
        Assert.Equal(3761.8917585, Solution.Apparent(SaltKind.SodiumChloride, 0.0037838838, 0), 1e-6);

    [Fact]
    public void A_dilute_brine_has_the_published_density() =>
        Assert.Equal(1002.6250120185854, Solution.Density(SaltKind.SodiumChloride, 0.0037838838, Zero)!.Value, 1e-6);

    // Worked out apart from this code from the published coefficients of 2009.
    [Theory]
    [InlineData(SaltKind.SodiumChloride, 0.10, -10, 1076.61)]
    [InlineData(SaltKind.SodiumChloride, 0.20, 0, 1157.16)]
    [InlineData(SaltKind.SodiumChloride, 0.233, 15.5556, 1177.02)]
    [InlineData(SaltKind.SodiumChloride, 0.233, 20, 1174.63)]
    [InlineData(SaltKind.SodiumChloride, 0.25, 25, 1185.65)]
    [InlineData(SaltKind.CalciumChloride, 0.28, 15.5556, 1262.47)]
    [InlineData(SaltKind.CalciumChloride, 0.32, 20, 1303.72)]
    [InlineData(SaltKind.MagnesiumChloride, 0.26, 15.5556, 1235.60)]
    [InlineData(SaltKind.MagnesiumChloride, 0.30, 20, 1274.60)]
    [InlineData(SaltKind.PotassiumAcetate, 0.50, 15.5556, 1276.71)]
    [InlineData(SaltKind.PotassiumAcetate, 0.50, 20, 1274.29)]
    public void The_density_is_that_of_the_model(SaltKind salt, double strength, double t, double expected) =>
        Assert.Equal(expected, Solution.Density(salt, strength, t + Zero)!.Value, 0.006);

    // Printed tables at 20 °C: CRC Handbook 102nd ed. (a handful of rows); Melinder's polynomial for potassium acetate.
    [Theory]
    [InlineData(SaltKind.SodiumChloride, 0.05, 1034.0)]
    [InlineData(SaltKind.SodiumChloride, 0.23, 1172.1)]
    [InlineData(SaltKind.SodiumChloride, 0.26, 1197.2)]
    [InlineData(SaltKind.CalciumChloride, 0.20, 1177.5)]
    [InlineData(SaltKind.CalciumChloride, 0.32, 1303.6)]
    [InlineData(SaltKind.MagnesiumChloride, 0.20, 1174.2)]
    [InlineData(SaltKind.MagnesiumChloride, 0.30, 1276.3)]
    [InlineData(SaltKind.PotassiumAcetate, 0.30, 1157.73)]
    [InlineData(SaltKind.PotassiumAcetate, 0.40, 1215.01)]
    public void Printed_tables_lie_within_the_stated_spread(SaltKind salt, double strength, double expected)
    {
        var off = Math.Abs(Solution.Density(salt, strength, 20 + Zero)!.Value - expected);
        Assert.True(off <= Solution.PlusMinus(salt, 20 + Zero), $"off by {off}");
    }

    // VDI's tables in the cold, where the model is continued or at its edge.
    [Theory]
    [InlineData(SaltKind.SodiumChloride, 0.231, -10, 1187)]
    [InlineData(SaltKind.CalciumChloride, 0.209, 0, 1196)]
    [InlineData(SaltKind.MagnesiumChloride, 0.17, -10, 1157)]
    [InlineData(SaltKind.PotassiumAcetate, 0.21, 0, 1114.03)]
    public void Tables_for_the_cold_lie_within_the_stated_spread(SaltKind salt, double strength, double t, double expected)
    {
        var off = Math.Abs(Solution.Density(salt, strength, t + Zero)!.Value - expected);
        Assert.True(off <= Solution.PlusMinus(salt, t + Zero), $"off by {off}");
    }

    [Fact]
    public void Two_salts_together_weigh_what_the_model_of_mixtures_says()
    {
        // 90 parts by volume of 23.3 % NaCl with 10 of 32 % CaCl2 at 20 °C: 20.742 % and 3.513 %, 1187.83 kg/m3 by the model.
        var first = 0.9 * Solution.Density(SaltKind.SodiumChloride, 0.233, 20 + Zero)!.Value;
        var second = 0.1 * Solution.Density(SaltKind.CalciumChloride, 0.32, 20 + Zero)!.Value;
        var (sodium, calcium) = Brine.Blend(first, 0.233, second, 0.32);
        Assert.Equal(0.20742, sodium, 5e-6);
        Assert.Equal(0.03513, calcium, 5e-6);
        Assert.Equal(1187.53, first + second, 0.01);
        Assert.Equal(
            1187.83, Solution.Density([(SaltKind.SodiumChloride, sodium), (SaltKind.CalciumChloride, calcium)], 20 + Zero)!.Value, 0.01);
    }

    [Fact]
    public void Strength_undoes_density_for_every_salt_in_range()
    {
        var kinds = new[] { SaltKind.SodiumChloride, SaltKind.CalciumChloride, SaltKind.MagnesiumChloride, SaltKind.PotassiumAcetate };
        Gen.Select(Gen.Int[0, 3], Gen.Double[0, 1], Gen.Double[-20, 50]).Sample((kind, share, t) =>
        {
            var salt = kinds[kind];
            var strength = share * Solution.MostStrength(salt);
            var density = Solution.Density(salt, strength, t + Zero)!.Value;
            return Math.Abs(Solution.Strength(salt, density, t + Zero)!.Value - strength) < 1e-9;
        });
    }

    [Theory]
    [InlineData(SaltKind.SodiumChloride, 0.27, 20)]
    [InlineData(SaltKind.SodiumChloride, -0.01, 20)]
    [InlineData(SaltKind.SodiumChloride, 0.2, -26)]
    [InlineData(SaltKind.CalciumChloride, 0.2, 61)]
    [InlineData(SaltKind.None, 0.1, 20)]
    [InlineData(SaltKind.SodiumChloride, double.NaN, 20)]
    public void Outside_its_range_the_model_says_nothing(SaltKind salt, double strength, double t) =>
        Assert.Null(Solution.Density(salt, strength, t + Zero));

    [Fact]
    public void A_density_that_no_strength_has_gives_none()
    {
        Assert.Null(Solution.Strength(SaltKind.SodiumChloride, 1300, 20 + Zero));
        Assert.Null(Solution.Strength(SaltKind.SodiumChloride, 980, 20 + Zero));
        Assert.Equal(0, Solution.Strength(SaltKind.SodiumChloride, 997.9, 20 + Zero));
    }
}
