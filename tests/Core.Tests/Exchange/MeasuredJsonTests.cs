using System.Text;
using System.Text.Json;
using CsCheck;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Tests.Exchange;

public sealed class MeasuredJsonTests
{
    private static readonly ErrorSource[] Sources =
    [
        ErrorSource.Rectangular("scale:bench:gain", "scale bench"),
        ErrorSource.Normal("run:1:scatter", "scatter", 2.5, "residuals"),
        ErrorSource.Triangular("run:1:pulses", "counting"),
        ErrorSource.Arcsine("chamber", "temperature \"swing\" é😀"),
        ErrorSource.Normal("run:2:scatter", "scatter", 2.5, "residuals"),
    ];

    private static readonly Gen<Measured> Any = Gen.Select(
        Gen.Double[-1e9, 1e9], Gen.Double[-10, 10].Array[5], Gen.Bool.Array[5],
        (value, amounts, used) => Measured.Of(
            value, [.. Sources.Select((s, i) => new Contribution(s, amounts[i])).Where((_, i) => used[i])]));

    private static readonly string[] Pieces =
    [
        "{", "}", "[", "]", ":", ",", "\"si\"", "\"sources\"", "\"id\"", "\"family\"", "\"shape\"", "\"amount\"", "\"ensemble\"",
        "\"degreesOfFreedom\"", "\"normal\"", "\"cubic\"", "\"\\ud800\"", "1", "-1", "0", "1e999", "-1e999", "null", "true", "\"\"", "1.5",
    ];

    [Fact]
    public void Value_uncertainty_budget_and_correlation_are_kept_bit_for_bit() =>
        Gen.Select(Any, Any).Sample(
            (a, b) =>
            {
                var (x, y) = (Again(a), Again(b));
                Same(a.Value, x.Value);
                Same(a.StandardUncertainty, x.StandardUncertainty);
                Same(Measured.Correlation(a, b), Measured.Correlation(x, y));
                Same((a - b).StandardUncertainty, (x - y).StandardUncertainty);
                Assert.Null(Deep.Difference(Budget.Of(a), Budget.Of(x)));
                Assert.Equal(a.Contributions.Length, x.Contributions.Length);
                for (var i = 0; i < a.Contributions.Length; i++)
                {
                    var (was, now) = (a.Contributions[i].Source, x.Contributions[i].Source);
                    Assert.Equal((was.Id, was.Family, was.Shape, was.Ensemble), (now.Id, now.Family, now.Shape, now.Ensemble));
                    Same(was.DegreesOfFreedom, now.DegreesOfFreedom);
                    Same(a.Contributions[i].Amount, x.Contributions[i].Amount);
                }
            },
            iter: 1000,
            threads: 1);

    [Fact]
    public void Two_reports_read_from_files_are_correlated_through_their_scale_and_nothing_else()
    {
        var (first, second) = (Report("HR-104", "bench", 41.0), Report("HR-117", "bench", 52.0));
        var other = Report("HR-117", "floor", 52.0);
        var shared = first.Contributions.ToArray().Select(c => c.Source)
            .Intersect(second.Contributions.ToArray().Select(c => c.Source)).ToList();
        Assert.Equal("scale:bench:gain", Assert.Single(shared).Id);
        var correlation = Measured.Correlation(first, second);
        Assert.InRange(correlation, 1e-6, 0.9999);
        Assert.Equal(0, Measured.Correlation(first, other));

        // The same observations are the same errors, whenever they are written.
        Assert.Equal(0, (first - Report("HR-104", "bench", 41.0)).StandardUncertainty);
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("[]")]
    [InlineData("1")]
    [InlineData("null")]
    [InlineData("{\"si\": 1}")]
    [InlineData("{\"sources\": []}")]
    [InlineData("{\"si\": \"1\", \"sources\": []}")]
    [InlineData("{\"si\": 1e999, \"sources\": []}")]
    [InlineData("{\"si\": 1, \"sources\": {}}")]
    [InlineData("{\"si\": 1, \"sources\": [1]}")]
    [InlineData("{\"si\": 1, \"sources\": [{\"id\": \"\", \"family\": \"f\", \"shape\": \"normal\", \"amount\": 1}]}")]
    [InlineData("{\"si\": 1, \"sources\": [{\"id\": \"a\", \"family\": null, \"shape\": \"normal\", \"amount\": 1}]}")]
    [InlineData("{\"si\": 1, \"sources\": [{\"id\": \"a\", \"family\": \"f\", \"shape\": \"cubic\", \"amount\": 1}]}")]
    [InlineData("{\"si\": 1, \"sources\": [{\"id\": \"a\", \"family\": \"f\", \"shape\": \"normal\", \"amount\": 1e999}]}")]
    [InlineData("{\"si\": 1, \"sources\": [{\"id\": \"a\", \"family\": \"f\", \"shape\": \"normal\", \"amount\": \"1\"}]}")]
    [InlineData("{\"si\": 1, \"sources\": [{\"id\": \"a\", \"family\": \"f\", \"shape\": \"normal\", \"amount\": 1, \"degreesOfFreedom\": 0}]}")]
    [InlineData("{\"si\": 1, \"sources\": [{\"id\": \"a\", \"family\": \"f\", \"shape\": \"normal\", \"amount\": 1, \"ensemble\": 1}]}")]
    [InlineData("{\"si\": 1, \"sources\": [{\"id\": \"\\ud800\", \"family\": \"f\", \"shape\": \"normal\", \"amount\": 1}]}")]
    [InlineData("{\"si\": 1, \"sources\": [{\"id\": \"a\", \"family\": \"f\", \"shape\": \"normal\", \"amount\": 1}, {\"id\": \"a\", \"family\": \"f\", \"shape\": \"normal\", \"amount\": 1}]}")]
    public void What_is_not_a_measured_value_is_a_format_exception(string text)
    {
        using var document = JsonDocument.Parse(text);
        Assert.Throws<FormatException>(() => MeasuredJson.Read(document.RootElement));
    }

    [Fact]
    public void Any_json_at_all_is_a_measured_value_or_a_format_exception()
    {
        var read = 0;
        Gen.OneOf(Pieces).Array[1, 24].Sample(
            pieces =>
            {
                JsonDocument document;
                try
                {
                    document = JsonDocument.Parse(string.Concat(pieces));
                }
                catch (JsonException)
                {
                    return;
                }

                using (document)
                {
                    read++;
                    try
                    {
                        Assert.True(double.IsFinite(MeasuredJson.Read(document.RootElement).Variance));
                    }
                    catch (FormatException)
                    {
                    }
                }
            },
            iter: 50_000,
            threads: 1);
        Assert.True(read > 100, $"{read} read");
    }

    // Invented numbers; the whole catch on one scale, so that the scale's proportional error is the only thing shared.
    private static Measured Report(string spreader, string scale, double gross)
    {
        var runs = string.Join(',', Enumerable.Range(0, 3).Select(i =>
            string.Create(System.Globalization.CultureInfo.InvariantCulture, $$"""{"pulses": {{2300 + (9 * i)}}, "whole": {"tare": "2.4 lb", "gross": "{{gross + i}} lb"} }""")));
        var sheet = SheetReader.Read(JsonTree.Read(
            $$"""
            {"kind": "drop-test", "spreader": {"id": "{{spreader}}", "loop": "closed", "constant": "pulses-per-mass", "unit": "pulse/lb"},
             "material": {"name": "salt"}, "commonError": true,
             "scale": {"id": "{{scale}}", "capacity": "150 lb", "division": "0.1 lb", "class": "iii"}, "runs": [{{runs}}]}
            """)).Value!;
        var text = ReportWriter.Write(SheetAnalysis.Analyse(sheet), [], TextCulture.Invariant, UnitPreferences.Metric);
        using var document = JsonDocument.Parse(text);
        return MeasuredJson.Read(document.RootElement.GetProperty("results")[0].GetProperty("measured"));
    }

    private static Measured Again(Measured measured)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream)) MeasuredJson.Write(json, measured);
        using var document = JsonDocument.Parse(Encoding.UTF8.GetString(stream.ToArray()));
        return MeasuredJson.Read(document.RootElement);
    }

    private static void Same(double left, double right) =>
        Assert.Equal(BitConverter.DoubleToInt64Bits(left), BitConverter.DoubleToInt64Bits(right));
}
