using System.Globalization;
using CsCheck;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Findings;

namespace Lanewright.Core.Tests.Calibrations;

/// <summary>Nozzles against each other.</summary>
public sealed class NozzlesTests
{
    [Fact]
    public void Mean_and_coefficient_of_variation_with_n_less_one()
    {
        // 2, 4, 4, 4, 5, 5, 7, 9: mean 5, squares 32; 32 / 7 = 4.5714, root 2.13809, by 5: 0.427618 (by hand).
        var report = Of("\"limit\": \"50 %\", \"unit\": \"L\"", 2, 4, 4, 4, 5, 5, 7, 9);
        Assert.Equal(0.427618, report.Figures[0].Value.Value, 1e-6);
        Assert.Equal(0.005, report.Figures[1].Value.Value, 1e-12);
        Assert.Equal(1.4, report.Figures[2].Value.Value, 1e-12);
        // 2, 9 lie 60 and 80 % off; 7 is 40 % off.
        Assert.Equal(["nozzles[0]", "nozzles[7]"], report.Findings.Where(f => f.Code == "nozzle.off").Select(f => f.Field).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_nozzle_exactly_on_the_limit_passes_and_the_usual_limit_is_ten_percent()
    {
        var report = Of("\"unit\": \"L\"", 0.9, 1.1, 1, 1);
        Assert.DoesNotContain(report.Findings, f => f.Code == "nozzle.off");
        Assert.Contains(report.Findings, f => f.Code == "nozzle.limit-assumed");
        Assert.Equal(2, Of("\"unit\": \"L\"", 0.88, 1.12, 1, 1).Findings.Count(f => f.Code == "nozzle.off"));
    }

    [Fact]
    public void Left_and_right_are_compared()
    {
        var report = Worked.Of("""
            { "kind": "nozzles", "unit": "kg", "limit": "10 %", "nozzles": [{ "side": "left", "amount": 1.2 }, { "side": "left", "amount": 1.2 },
              { "side": "middle", "amount": 1.1 }, { "side": "right", "amount": 1.0 }, { "side": "right", "amount": 1.0 }] }
            """);
        var finding = Assert.Single(report.Findings, f => f.Code == "nozzle.sides-differ");
        Assert.Equal(0.2, finding.Values.Single(v => v.Name == "off").Si, 1e-9);
    }

    [Fact]
    public void The_order_of_the_nozzles_and_the_unit_do_not_matter()
    {
        Gen.Double[0.1, 10].Array[2, 12].Sample(amounts =>
        {
            var there = Of("\"unit\": \"L\"", amounts).Figures[0].Value.Value;
            var back = Of("\"unit\": \"US gal\"", [.. amounts.Reverse()]).Figures[0].Value.Value;
            Assert.Equal(there, back, 1e-9);
        });
    }

    [Fact]
    public void A_blocked_nozzle_counts()
    {
        var report = Of("\"unit\": \"L\"", 0, 1, 1, 1);
        var off = Assert.Single(report.Findings, f => f.Code == "nozzle.off" && f.Field == "nozzles[0]");
        Assert.Equal(-1, off.Values.Single(v => v.Name == "off").Si, 1e-12);
    }

    [Fact]
    public void A_coarse_reading_is_said() =>
        Assert.Contains(Of("\"unit\": \"L\", \"plusMinus\": 0.1", 1, 1, 1).Findings, f => f.Code == "nozzle.reading-coarse");

    [Theory]
    [InlineData("""{ "amount": "1 L" }, { "amount": "1 kg" }""", "nozzle.mixed")]
    [InlineData("""{ "amount": "1 L" }, { "amount": "-1 L" }""", "nozzle.negative")]
    [InlineData("""{ "id": "a", "amount": "1 L" }, { "id": "a", "amount": "1 L" }""", "nozzle.twice")]
    [InlineData("""{ "amount": "0 L" }, { "amount": "0 L" }""", "nozzle.nothing-flowed")]
    [InlineData("""{ "amount": "1 L" }""", "read.too-few-items")]
    public void What_cannot_be_used_is_said(string nozzles, string code)
    {
        var reading = Worked.Reading("{ \"kind\": \"nozzles\", \"nozzles\": [" + nozzles + "] }");
        Assert.False(reading.IsUsable);
        Assert.Contains(reading.Findings, f => f.Code == code);
    }

    private static CalibrationReport Of(string fields, params double[] amounts)
    {
        var list = string.Join(", ", amounts.Select(a => "{ \"amount\": " + a.ToString("R", CultureInfo.InvariantCulture) + " }"));
        var report = Worked.Of("{ \"kind\": \"nozzles\", " + fields + ", \"nozzles\": [" + list + "] }");
        Assert.All(report.Findings, f => Assert.True(FindingText.IsComplete(f), f.Code));
        return report;
    }
}
