using Lanewright.Core.Liquids;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Tests.Calibrations;

/// <summary>Salt in an even film of water.</summary>
public sealed class FilmTests
{
    [Theory]
    // Worked from the freezing points of the CRC Handbook (102nd ed.), linear between its rows: g/m2 of pure NaCl on 0.10 mm.
    [InlineData(-2, 3.45)]
    [InlineData(-3, 5.18)]
    [InlineData(-5, 8.56)]
    [InlineData(-7, 11.80)]
    [InlineData(-10, 16.36)]
    [InlineData(-15, 23.17)]
    public void The_salt_a_film_needs_agrees_with_the_handbooks_freezing_points(double celsius, double grams)
    {
        var needed = WetFilm.Needed(SaltKind.SodiumChloride, 0.1, celsius + 273.15);
        Assert.Equal(grams, needed!.Value * 1000, grams * 0.03);
    }

    [Theory]
    // Same source: 10 g on 0.1 mm is 9.091 % and freezes at -5.88 C; 10 g on 0.2 mm 4.762 %, -2.90; 20 g on 0.5 mm 3.846 %, -2.32.
    [InlineData(10, 0.1, 0.09091, -5.88)]
    [InlineData(10, 0.2, 0.04762, -2.90)]
    [InlineData(20, 0.5, 0.03846, -2.32)]
    public void Strength_and_freezing_point_of_a_film(double grams, double millimetres, double strength, double celsius)
    {
        var w = WetFilm.Strength(grams / 1000, millimetres);
        Assert.Equal(strength, w, 1e-5);
        Assert.Equal(celsius, FreezingPoint.Of(SaltKind.SodiumChloride, w)!.Kelvins - 273.15, 0.15);
    }

    [Fact]
    public void What_is_needed_grows_with_the_cold_and_with_the_water()
    {
        var last = 0.0;
        for (var t = 272; t > 254; t--)
        {
            var needed = WetFilm.Needed(SaltKind.SodiumChloride, 0.25, t)!.Value;
            Assert.True(needed > last);
            Assert.Equal(2 * needed, WetFilm.Needed(SaltKind.SodiumChloride, 0.5, t)!.Value, 1e-9);
            last = needed;
        }

        Assert.Null(WetFilm.Needed(SaltKind.SodiumChloride, 0.25, 250));
        Assert.Equal(0, WetFilm.Needed(SaltKind.SodiumChloride, 0.25, 274));
    }

    [Fact]
    public void The_report_explains_and_orders_nothing()
    {
        var report = Worked.Of("""
            { "kind": "film", "salt": "sodium-chloride", "areaRate": "10 g/m2", "film": "0.1 mm", "pavement": "-3 °C" }
            """);
        Assert.Contains(report.Lines, line => line.Template.Contains("stays liquid", StringComparison.Ordinal));
        Assert.Contains(report.Lines, line => line.Template.Contains("the yard's own rates", StringComparison.Ordinal));
        Assert.Equal(["salt by area", "strength of the film", "freezing point of the film", "salt the film needs"], report.Figures.Select(f => f.Name));
    }

    [Theory]
    [InlineData("\"rate\": \"300 lb/lane-mile\"", "film.no-width")]
    [InlineData("\"laneWidth\": \"12 ft\"", "film.no-rate")]
    public void What_is_missing_is_said(string fields, string code)
    {
        var reading = Worked.Reading("{ \"kind\": \"film\", \"salt\": \"sodium-chloride\", \"film\": \"0.1 mm\", \"pavement\": \"-3 °C\", " + fields + " }");
        Assert.False(reading.IsUsable);
        Assert.Contains(reading.Findings, f => f.Code == code);
    }

    [Fact]
    public void Too_cold_is_said()
    {
        var report = Worked.Of("""{ "kind": "film", "salt": "sodium-chloride", "areaRate": "10 g/m2", "film": "0.1 mm", "pavement": "-30 °C" }""");
        Assert.Contains(report.Findings, f => f.Code == "film.too-cold");
    }
}
