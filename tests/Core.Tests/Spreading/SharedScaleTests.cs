using System.Text;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Tests.Spreading;

/// <summary>What two tests, read back from their reports, have in common, and units that must not matter. All data
/// invented.</summary>
public sealed class SharedScaleTests
{
    private static readonly TestSheet Spring = Sheets.Clean() with { Title = "spring" };

    private static readonly TestSheet Autumn = Sheets.Drop(
        (2300, 200), (2310, 200), (2291, 200), (2306, 200), (2295, 200), (4602, 400)) with { Title = "autumn" };

    [Fact]
    public void Two_tests_on_one_scale_are_correlated_through_it_and_only_through_it()
    {
        Measured a = Spring.Kept(), b = Autumn.Kept();
        Assert.InRange(Measured.Correlation(a, b), 0.001, 0.999);
        var shared = a.Contributions.ToArray().Select(c => c.Source)
            .Intersect(b.Contributions.ToArray().Select(c => c.Source));
        Assert.Equal("scale:pallet:gain", Assert.Single(shared).Id);
        var other = (Autumn with { Scale = Sheets.Pallet with { Id = "another" } }).Kept();
        Assert.Equal(0, Measured.Correlation(a, other));
    }

    [Fact]
    public void Old_by_new_on_one_scale_loses_the_scales_gain_and_keeps_everything_else()
    {
        Measured a = Spring.Kept(), b = Autumn.Kept();
        var ratio = a / b;
        Assert.DoesNotContain(
            ratio.Contributions.ToArray(), c => c.Source.Id == "scale:pallet:gain" && Math.Abs(c.Amount) > 1e-15);
        var gain = a.Contributions.ToArray().Single(c => c.Source.Id == "scale:pallet:gain").Amount / a.Value;
        var apart = Square(a.RelativeUncertainty) + Square(b.RelativeUncertainty);
        Assert.Equal(Math.Sqrt(apart - (2 * gain * gain)), ratio.RelativeUncertainty, 1e-12);
        Assert.Equal(12.0 / 11.5, ratio.Value, 1e-3);
    }

    [Fact]
    public void Separate_errors_have_nothing_in_common() =>
        Assert.Equal(0, Measured.Correlation(
            (Spring with { CommonError = false }).Kept(), (Autumn with { CommonError = false }).Kept()));

    [Fact]
    public void A_sheet_analysed_twice_is_the_same_test_and_the_same_runs_on_another_day_are_not()
    {
        Measured a = Spring.Kept(), again = Spring.Kept(), other = (Spring with { Date = new(2026, 11, 2) }).Kept();
        Assert.Equal(0, (a - again).StandardUncertainty);
        Assert.True((a - other).StandardUncertainty > a.StandardUncertainty);
    }

    [Theory]
    [InlineData("lb", "pulse/lb", 1)]
    [InlineData("kg", "pulse/kg", 0.45359237)]
    public void Pounds_and_kilograms_give_the_same_answer(string mass, string unit, double kilograms)
    {
        string Of(double pounds) => FormattableString.Invariant($"\"{pounds * kilograms:R} {mass}\"");
        var json = $$"""
            {
              "kind": "drop-test", "title": "t", "spreader": {
                "id": "X", "loop": "closed", "constant": "pulses-per-mass", "unit": "{{unit}}" },
              "material": { "name": "salt" }, "commonError": false,
              "scale": { "id": "s", "kind": "pallet", "capacity": {{Of(2000)}}, "division": {{Of(0.5)}}, "class": "iii" },
              "runs": [
                { "id": "1", "pulses": 2400, "whole": { "tare": {{Of(62)}}, "gross": {{Of(262)}} } },
                { "id": "2", "pulses": 2440, "whole": { "tare": {{Of(62)}}, "gross": {{Of(263.5)}} } },
                { "id": "3", "pulses": 4900, "whole": { "tare": {{Of(62.5)}}, "gross": {{Of(468)}} } }
              ]
            }
            """;
        var reading = SheetReader.Read(JsonTree.Read(Encoding.UTF8.GetBytes(json)));
        Assert.True(reading.IsUsable, string.Join("; ", reading.Findings.Select(f => $"{f.Code} {f.Field}")));
        var result = reading.Value!.Result();
        Assert.Equal(12.0643, Units.PulsePerPound.FromSi(result.Value.Value), 1e-4);
        var pounds = (Sheets.Drop((2400, 200), (2440, 201.5), (4900, 405.5)) with { CommonError = false })
            .With(2, r => r with { Catch = Sheets.Whole(405.5, 62.5) }).Result();
        Assert.Equal(pounds.Value.Value, result.Value.Value, 1e-9);
        Assert.Equal(pounds.Expanded, result.Expanded, 1e-9);
    }

    private static double Square(double x) => x * x;
}
