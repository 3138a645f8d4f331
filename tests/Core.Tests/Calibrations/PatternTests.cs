using CsCheck;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Calibrations;

/// <summary>Profiles across the road.</summary>
public sealed class PatternTests
{
    // Trays every metre from -4 to +4 that catch 0 1 2 3 4 3 2 1 0.
    private static readonly PatternStrip[] Triangle =
        [.. Enumerable.Range(-4, 9).Select(i => new PatternStrip(i - 0.5, i + 0.5, 4 - Math.Abs(i)))];

    [Fact]
    public void A_triangle_overlaps_evenly_at_4_metres_and_not_at_5()
    {
        // Worked by hand: 4 m gives 4 everywhere; 5 m gives 4 3 3 3 3, mean 3.2, variation 13.975 % (divisor n - 1) or 12.500 % (n).
        var even = SpreadPattern.Overlap(Triangle, 4, false);
        Assert.Equal([4, 4, 4, 4], even.Totals);
        Assert.Equal(0, even.VariationSample);
        var uneven = SpreadPattern.Overlap(Triangle, 5, false);
        Assert.Equal([4, 3, 3, 3, 3], uneven.Totals);
        Assert.Equal(3.2, uneven.Mean, 1e-12);
        Assert.Equal(0.13975, uneven.VariationSample, 5e-6);
        Assert.Equal(0.125, uneven.VariationWhole, 1e-12);
    }

    [Fact]
    public void A_profile_alike_on_both_sides_overlaps_alike_both_ways() => Gen.Double[0, 5].Array[2, 8].Sample(half =>
    {
        double[] heights = [.. half.Reverse(), .. half];
        var strips = heights.Select((h, i) => new PatternStrip(i - half.Length, i - half.Length + 1, h + 0.1)).ToArray();
        foreach (var swath in (double[])[3, 5])
        {
            var there = SpreadPattern.Overlap(strips, swath, false);
            var back = SpreadPattern.Overlap(strips, swath, true);
            Assert.Equal(there.Mean, back.Mean, 1e-9);
            Assert.Equal(there.VariationWhole, back.VariationWhole, 1e-9);
        }
    });

    [Fact]
    public void Shares_of_zones_add_up_and_half_width_is_where_the_profile_crosses_half()
    {
        Assert.Equal(16, SpreadPattern.MassWithin(Triangle, double.NegativeInfinity, double.PositiveInfinity));
        // Half of 4 is reached at -2 and +2.
        Assert.Equal(4, SpreadPattern.WidthAtHalf(Triangle), 1e-12);
        Gen.Select(Gen.Double[-5, 5], Gen.Double[-5, 5]).Sample((a, b) =>
        {
            var (left, right) = (Math.Min(a, b), Math.Max(a, b));
            var sum = SpreadPattern.MassWithin(Triangle, double.NegativeInfinity, left) + SpreadPattern.MassWithin(Triangle, left, right)
                + SpreadPattern.MassWithin(Triangle, right, double.PositiveInfinity);
            Assert.Equal(16, sum, 1e-9);
        });
    }

    [Fact]
    public void Pans_and_blocks_of_one_profile_give_the_same_shares()
    {
        var pans = Worked.Of(Sheet("\"panWidth\": \"0.5 m\",", i => $"\"at\": \"{i} m\"", i => $"{10 * (4 - Math.Abs(i))} g"));
        var blocks = Worked.Of(Sheet("", i => $"\"from\": \"{i - 1}.5 m\", \"to\": \"{i}.5 m\"", i => $"{10 * (4 - Math.Abs(i))} g", 1));
        // Within -1.75 ... 1.75: 4 + 2 x 3 + 2 x 0.25 x 2 = 11 of 16; half on each side.
        Assert.Equal(11.0 / 16, Value(pans, "in the lane"), 1e-12);
        Assert.Equal(0.5, Value(pans, "left of the truck's middle"), 1e-12);
        Assert.Equal(1, Value(blocks, "in the lane") + Value(blocks, "beyond, left") + Value(blocks, "beyond, right"), 1e-12);
        Assert.Contains(pans.Findings, f => f.Code == "pattern.not-a-rate");
        Assert.Contains(pans.Findings, f => f.Code == "pattern.one-pass");
    }

    [Fact]
    public void Passes_that_differ_widen_the_interval()
    {
        double Half(string even, string odd)
        {
            var report = Worked.Of(Sheet(
                "\"panWidth\": \"0.5 m\", \"massPlusMinus\": \"0.1 g\",", i => $"\"at\": \"{i} m\"",
                i => string.Join("\", \"", i < 0 ? [even, odd, even] : (string[])[odd, odd, even])));
            return report.Figures.Single(f => f.Name == "left of the truck's middle").Expanded!.Value;
        }

        Assert.True(Half("20 g", "30 g") > 10 * Half("20 g", "20 g"));
    }

    [Fact]
    public void The_overlap_is_printed_with_both_divisors()
    {
        var report = Worked.Of(Sheet(
            "\"panWidth\": \"0.5 m\", \"swaths\": [\"5 m\"],", i => $"\"at\": \"{i} m\"", i => $"{10 * (4 - Math.Abs(i))} g"));
        Assert.Equal(0.13975, report.Tables[0].Rows[0][1].Si, 5e-6);
        Assert.Equal(0.125, report.Tables[0].Rows[0][2].Si, 1e-12);
        var svg = report.Pictures[0].Svg("p", TextCulture.UnitedStates, UnitPreferences.Metric);
        Assert.Contains("-0.5 to 0.5 m: 25 %", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("style=", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void What_contradicts_itself_is_said_and_nothing_throws()
    {
        Assert.Contains(Worked.Of(Sheet("", i => $"\"at\": \"{i} m\"", _ => "1 g")).Findings, f => f.Code == "pattern.no-pan-width");
        Assert.Contains(Worked.Of(Sheet("\"panWidth\": \"0.5 m\",", i => $"\"at\": \"{i} m\"", _ => "0 g")).Findings, f => f.Code == "pattern.nothing");
        Assert.Contains(
            Worked.Of(Sheet("\"panWidth\": \"0.5 m\",", i => $"\"at\": \"{i} m\"", i => i == 0 ? "1 g\", \"2 g" : "1 g")).Findings,
            f => f.Code == "pattern.passes-differ");
        Assert.Contains(
            Worked.Of(Sheet("", i => $"\"from\": \"{i} m\", \"to\": \"{i + 2} m\"", _ => "1 g")).Findings, f => f.Code == "pattern.overlap");
        Assert.Contains(Worked.Of(Sheet("\"panWidth\": \"0.5 m\",", i => $"\"at\": \"{i} m\"", _ => "1 g")).Findings, f => f.Code == "pattern.ends-early");
        var reading = Worked.Reading("""
            { "kind": "pattern", "lane": { "left": "2 m", "right": "-2 m" }, "catches": [{ "masses": ["1 g"] }] }
            """);
        Assert.False(reading.IsUsable);
        Assert.Contains(reading.Findings, f => f.Code == "pattern.edges-turned");
        Assert.Contains(reading.Findings, f => f.Code == "pattern.nowhere" && f.Field == "catches[0]");
    }

    private static double Value(CalibrationReport report, string name) => Assert.Single(report.Figures, f => f.Name == name).Value.Value;

    private static string Sheet(string more, Func<int, string> place, Func<int, string> masses, int first = -4) =>
        "{ \"kind\": \"pattern\", \"lane\": { \"left\": \"-1.75 m\", \"right\": \"1.75 m\" }, " + more + " \"catches\": ["
        + string.Join(", ", Enumerable.Range(first, 5 - first).Select(i => $"{{ {place(i)}, \"masses\": [\"{masses(i)}\"] }}")) + "] }";
}
