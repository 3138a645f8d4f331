using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Findings;

public sealed class FindingTextTests
{
    [Theory]
    [InlineData("{x}", 187.10685262, Dimension.Mass, "412.5 lb", "187,1 kg")]
    [InlineData("{x}", 60, Dimension.Time, "60 s", "60 s")]
    [InlineData("{x:2}", 187.10685262, Dimension.Mass, "410 lb", "190 kg")]
    [InlineData("{x}", 5599.6, Dimension.Mass, "12,345 lb", "5\u202F600 kg")]
    [InlineData("{x}", 0.034, Dimension.Fraction, "0.034", "0,034")]
    [InlineData("{x:percent}", 0.034, Dimension.Fraction, "3.4 %", "3,4 %")]
    [InlineData("{x:count}", 100000, Dimension.Fraction, "100,000", "100\u202F000")]
    [InlineData("{x}", 0, Dimension.Mass, "0 lb", "0 kg")]
    [InlineData("{x}", -1.5, Dimension.Fraction, "-1.5", "-1,5")]
    [InlineData("{x}", double.NaN, Dimension.Mass, "?", "?")]
    public void Numbers_are_shown_in_the_readers_units_and_marks(
        string template, double si, Dimension dimension, string unitedStates, string german)
    {
        var finding = Kind(template, "{x:count}").At("", FindingValue.Number("x", si, dimension));
        Assert.Equal($"a {unitedStates} b", FindingText.Message(finding, TextCulture.UnitedStates, UnitPreferences.UnitedStates));
        Assert.Equal($"a {german} b", FindingText.Message(finding, TextCulture.German, UnitPreferences.Metric));
    }

    [Fact]
    public void Words_are_shown_as_they_are_and_never_taken_for_placeholders()
    {
        var finding = Kind("{w}", "{w} {missing}").At("f", FindingValue.Text("w", "{w} {x}"));
        Assert.Equal("a {w} {x} b", FindingText.Message(finding, TextCulture.Invariant, UnitPreferences.Metric));
        Assert.Equal("c {w} {x} ? d", FindingText.Action(finding, TextCulture.Invariant, UnitPreferences.Metric));
        Assert.False(FindingText.IsComplete(finding));
        Assert.True(FindingText.IsComplete(Kind("{w}", "").At("f", FindingValue.Text("w", "x"), FindingValue.Number("line", 1, Dimension.Fraction))));
        Assert.False(FindingText.IsComplete(Kind("", "").At("f", FindingValue.Text("w", "x"))));
    }

    [Theory]
    [InlineData(1, "c do 1 more")]
    [InlineData(2, "do 2 more again d")]
    [InlineData(0, "do 0 more again d")]
    public void Two_forms_for_one_and_for_more_are_chosen_by_the_first_number(double count, string expected)
    {
        var finding = Kind("{w}", "do {n:count} more|do {n:count} more again").At(
            "f", FindingValue.Text("w", "a|b"), FindingValue.Number("n", count, Dimension.Fraction));
        Assert.Equal("a a|b b", FindingText.Message(finding, TextCulture.Invariant, UnitPreferences.Metric));
        Assert.Equal(expected, FindingText.Action(finding, TextCulture.Invariant, UnitPreferences.Metric));
        Assert.True(FindingText.IsComplete(finding));
    }

    [Theory]
    [InlineData("en", "Do 1 more run like these, about 40 kg more in all.", "Do 3 more runs like these, about 40 kg more in all.")]
    [InlineData("fr", "Faire 1 prise de plus comme celles-ci, environ 40 kg de plus en tout.", "Faire 3 prises de plus comme celles-ci, environ 40 kg de plus en tout.")]
    [InlineData("fi", "Tee vielä 1 samanlainen erä, yhteensä noin 40 kg lisää.", "Tee vielä 3 samanlaista erää, yhteensä noin 40 kg lisää.")]
    public void One_more_run_and_more_runs_are_said_in_each_language(string language, string one, string more)
    {
        Assert.True(Language.TryFind(language, out var found));
        var culture = TextCulture.Invariant.In(found);
        Assert.Equal(one, Said(1));
        Assert.Equal(more, Said(3));

        string Said(double runs) => FindingText.Action(
            Core.Spreading.DropTestFindings.Wide.At(
                "runs", FindingValue.Number("got", 0.05, Dimension.Fraction), FindingValue.Number("wanted", 0.02, Dimension.Fraction),
                FindingValue.Number("runs", runs, Dimension.Fraction), FindingValue.Number("mass", 40, Dimension.Mass)),
            culture, UnitPreferences.Metric);
    }

    [Fact]
    public void A_place_is_a_path_a_line_and_a_column_as_far_as_they_are_known()
    {
        var line = FindingValue.Number("line", 7, Dimension.Fraction);
        var column = FindingValue.Number("column", 3, Dimension.Fraction);
        var kind = Kind("", "");
        Assert.Equal("", FindingText.Where(kind.At("")));
        Assert.Equal("runs[0].pulses", FindingText.Where(kind.At("runs[0].pulses")));
        Assert.Equal("line 7", FindingText.Where(kind.At("", line)));
        Assert.Equal("runs[0] (line 7, column 3)", FindingText.Where(kind.At("runs[0]", line, column)));
    }

    private static FindingKind Kind(string message, string action) =>
        new("test.kind", Severity.Note, $"a {message} b", $"c {action} d");
}
