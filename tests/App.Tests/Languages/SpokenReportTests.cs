using System.Text.RegularExpressions;
using Lanewright.App.Tests.Commands;
using Lanewright.App.Tests.Exchange;
using Lanewright.Core.Text;

namespace Lanewright.App.Tests.Languages;

/// <summary>What a person at a terminal reads in another language: no English line is left.</summary>
[Trait("culture", "own")]
public sealed partial class SpokenReportTests
{
    public static TheoryData<string, string> Cases => new()
    {
        { "fr-CA", "hr-104-check.yaml" }, { "fi-FI", "hr-104-check.yaml" }, { "fr-FR", "hr-117-open-loop.yaml" },
        { "fi-FI", "hr-121-weighed-truck.csv" }, { "fr-FR", "calibrations/hr-104-ground-speed.yaml" }, { "fi-FI", "calibrations/hr-104-rate-card.yaml" },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_report_leaves_no_line_in_English(string culture, string example)
    {
        string[] command = [example.Contains("check", StringComparison.Ordinal) ? "check" : "analyse", Examples.PathOf(example), "--trials", "1000"];
        var english = CommandLine.Run([.. command, "--culture", "de-DE"]);
        var own = CommandLine.Run([.. command, "--culture", culture]);
        Assert.Equal(english.Code, own.Code);
        Assert.Equal("", own.Errors);
        var lines = Lines(own.Output).ToHashSet();
        // The head says what the sheet says of itself.
        var left = Lines(english.Output).Skip(2).Where(line => !Place().IsMatch(line) && Spoken.IsProse(line) && lines.Contains(line)).ToList();
        Assert.True(left.Count == 0, string.Join('\n', left));
    }

    [Fact]
    public void The_language_can_be_chosen_apart_from_the_numbers_and_a_wrong_one_is_refused()
    {
        string[] command = ["check", Examples.PathOf("hr-104-check.yaml"), "--trials", "0"];
        var french = CommandLine.Run([.. command, "--language", "fr"]);
        Assert.Contains("Tolérance", french.Output, StringComparison.Ordinal);
        Assert.Contains("Constats", french.Output, StringComparison.Ordinal);
        Assert.Contains("Tolerance", CommandLine.Run([.. command, "--culture", "fi-FI", "--language", "EN"]).Output, StringComparison.Ordinal);
        var refused = CommandLine.Run([.. command, "--language", "sv"]);
        Assert.Equal(1, refused.Code);
        Assert.Contains("en, fr, fi", refused.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_of_things_take_the_form_of_the_language()
    {
        Assert.Equal("1 run", Say(Language.English, 1));
        Assert.Equal("0 runs", Say(Language.English, 0));
        Assert.Equal("0 prise", Say(Language.French, 0));
        Assert.Equal("2 prises", Say(Language.French, 2));
        Assert.Equal("1 erä", Say(Language.Finnish, 1));
        Assert.Equal("0 erää", Say(Language.Finnish, 0));

        static string Say(Language language, int runs) => language.Say($"{runs} run|{runs} runs");
    }

    [Fact]
    public void A_value_that_looks_like_a_place_or_a_text_of_the_code_stays_as_it_is()
    {
        foreach (var name in (string[])["{1}", "{0", "Speed"])
            Assert.Equal("Épandeuse " + name, Language.French.Say($"Spreader {name}"));
        Assert.Equal("Épandeuse Vitesse", Language.French.Say($"Spreader {(Phrase)"Speed"}"));
    }

    [Fact]
    public void A_number_of_the_programs_own_takes_the_readers_decimal_mark_and_a_typed_one_stays()
    {
        Phrase rate = $"{new Reading("300.5 lb/lane-mile")} ({new Reading("23.1 g/m²")})";
        Assert.Equal("Épandeuse 300,5 lb/lane-mile (23,1 g/m²) v2.5", TextCulture.French.Say($"Spreader {(Phrase)$"{rate} {"v2.5"}"}"));
        Assert.Equal("Spreader 300.5 lb/lane-mile (23.1 g/m²) v2.5", TextCulture.UnitedStates.Say($"Spreader {(Phrase)$"{rate} {"v2.5"}"}"));
    }

    // A field and a code, as in (runs at 50 %: answer.wide).
    [GeneratedRegex(@"^\(.*[a-z-]+\.[a-z-]+\)$")]
    private static partial Regex Place();

    private static IEnumerable<string> Lines(string output) => output.Split('\n').Select(line => line.Trim()).Where(line => line.Length > 0);
}
