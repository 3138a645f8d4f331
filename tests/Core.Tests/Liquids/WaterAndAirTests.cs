using Lanewright.Core.Liquids;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Tests.Liquids;

/// <summary>Water, air, and weight made into volume.</summary>
public sealed class WaterAndAirTests
{
    // Tanaka's formula worked out apart from this code.
    [Theory]
    [InlineData(0, 999.8428)]
    [InlineData(4, 999.9749)]
    [InlineData(10, 999.7027)]
    [InlineData(15.5555555556, 999.0170)]
    [InlineData(20, 998.2067)]
    [InlineData(25, 997.0470)]
    [InlineData(40, 992.2152)]
    public void Water_has_the_density_of_the_formula_and_the_models_water_agrees(double t, double expected)
    {
        Assert.Equal(expected, Water.Density(t + 273.15)!.Value, 6e-5);
        Assert.Equal(expected, Solution.WaterDensity(t), 0.01);
    }

    [Fact]
    public void Outside_its_range_nothing_is_said_of_water_and_air()
    {
        Assert.Null(Water.Density(272));
        Assert.Null(Water.Density(314));
        Assert.Null(Air.Density(293.15, 400, 0.5));
        Assert.Null(Air.Density(293.15, 1013, 1.2));
        Assert.Null(Air.Density(double.NaN, 1013, 0.5));
    }

    [Fact]
    public void Air_weighs_what_the_formula_says() =>
        Assert.Equal(1.1993, Air.Density(293.15, 1013.25, 0.5)!.Value, 1e-4);

    // Z factors in mL/g printed in a laboratory pipette's manual (easymanua.ls, p. 31); they hang on water, air and lift together.
    // Every cell: 800, 853, 907, 960, 1013, 1067 hPa.
    [Theory]
    [InlineData(15, 1.0018, 1.0018, 1.0019, 1.0019, 1.0020, 1.0020)]
    [InlineData(18, 1.0022, 1.0023, 1.0024, 1.0024, 1.0025, 1.0025)]
    [InlineData(20, 1.0026, 1.0027, 1.0027, 1.0028, 1.0029, 1.0029)]
    [InlineData(21, 1.0028, 1.0029, 1.0030, 1.0030, 1.0031, 1.0031)]
    [InlineData(23, 1.0033, 1.0033, 1.0034, 1.0035, 1.0035, 1.0036)]
    [InlineData(25, 1.0038, 1.0038, 1.0039, 1.0039, 1.0040, 1.0041)]
    [InlineData(27, 1.0043, 1.0044, 1.0044, 1.0045, 1.0045, 1.0046)]
    [InlineData(30, 1.0052, 1.0052, 1.0053, 1.0053, 1.0054, 1.0055)]
    public void The_printed_table_of_Z_factors_comes_out(double t, params double[] printed)
    {
        double[] pressures = [800, 853, 907, 960, 1013, 1067];
        for (var i = 0; i < pressures.Length; i++)
        {
            var air = Air.Density(t + 273.15, pressures[i], 0.5)!.Value;
            var z = Air.Volume(1, Water.Density(t + 273.15)!.Value, air).Value * 1000;
            Assert.Equal(printed[i], z, 1.01e-4);
        }
    }

    [Fact]
    public void A_weighed_catch_of_brine_has_the_worked_volume()
    {
        // 22.210 kg of 23.3 % brine at 20 °C, 1174.625 kg/m3, air 1.1993: 18.92465 L = 4.99936 gal; without the air's lift 18.90816 L.
        Assert.Equal(0.01892465, Air.Volume(22.210, 1174.625, 1.1993).Value, 1e-8);
        Assert.Equal(0.01890816, Air.Volume(22.210, 1174.625, 0).Value, 1e-8);
    }

    [Fact]
    public void An_error_of_density_moves_the_volume_the_other_way()
    {
        var density = Measured.Of(1174.625, 1.174625, ErrorSource.Rectangular("d", "d"));
        var volume = Air.Volume(22.210, density, 1.2);
        Assert.Equal(0.001, volume.RelativeUncertainty, 2e-6);
        Assert.True(Measured.Covariance(volume, density) < 0);
    }
}
