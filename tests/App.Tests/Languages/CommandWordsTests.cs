using Lanewright.Commands;
using Lanewright.Core.Findings;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.App.Tests.Languages;

/// <summary>What commands refuse, and what is said of a command line that cannot be read, in the reader's language.</summary>
public sealed class CommandWordsTests
{
    public static TheoryData<string> Misspelt => new()
    {
        "convert 1 lb kg extra more", "certificate", "certificate x.yaml", "backup --to", "backup --to a --to b", "logs", "serve --port x",
        "schema nonsense", "card x.yaml --out y.pdf --paper a3",
    };

    // The library's own sentences are matched by their English words: a new version of it that says them otherwise fails here.
    [Theory]
    [MemberData(nameof(Misspelt))]
    public void Every_sentence_about_a_misspelt_command_is_known(string line)
    {
        var parsed = CommandTree.Make().Parse(line.Split(' '));
        Assert.NotEmpty(parsed.Errors);
        foreach (var error in parsed.Errors)
        {
            var said = Misspelling.Said(error.Message);
            foreach (var language in (Language[])[Language.French, Language.Finnish])
            {
                Assert.NotEqual(said.ToString(), said.In(language));
                Assert.NotEqual(error.Message, said.In(language));
            }
        }
    }

    [Theory]
    [InlineData("Profil, zone", "fr", "logs", "import", "x.csv", "--profile", "{0}")]
    [InlineData("Profiili, zone", "fi", "logs", "import", "x.csv", "--profile", "{0}")]
    [InlineData("Aucun journal n'est encore pris", "fr", "season", "salt", "--constants", "{1}")]
    [InlineData("--by\u00a0: «\u00a0moon\u00a0» a été lu", "fr", "logs", "applied", "--by", "moon")]
    [InlineData("--kind: luettiin ”moon”", "fi", "register", "x.csv", "--kind", "moon")]
    [InlineData("--units: luettiin ”moon”", "fi", "analyse", "x.yaml", "--units", "moon")]
    [InlineData("--culture\u00a0: «\u00a0xx\u00a0» a été lu", "fr", "analyse", "x.yaml", "--culture", "xx")]
    [InlineData("constants.csv, ligne 2", "fr", "season", "drift", "{2}")]
    [InlineData("constants.csv, rivi 2", "fi", "season", "drift", "{2}")]
    [InlineData("--interval: luettiin ”0”", "fi", "practice-season", "--out", "{2}", "--interval", "0")]
    public async Task Refusals_are_in_the_language_asked_for(string expected, string language, params string[] arguments)
    {
        var folder = Directory.CreateTempSubdirectory("lanewright-words-").FullName;
        try
        {
            string[] files = [Path.Combine(folder, "profile.json"), Path.Combine(folder, "good.csv"), folder];
            await File.WriteAllTextAsync(files[0], """{ "format": "lanewright-log-profile/1", "columns": { "time": {"column": "t"}, "spreader": {"column": "s"}, "depot": {"fixed": "d"}, "counts": {"column": "c", "unit": "pulse", "kind": "running"} } }""", TestContext.Current.CancellationToken);
            await File.WriteAllTextAsync(files[1], "constant,spreader,from,kg_per_count,u_rel\n", TestContext.Current.CancellationToken);
            await File.WriteAllTextAsync(Path.Combine(folder, "constants.csv"), "constant,spreader,depot,from,kg_per_count,u_rel\na,HR-1,north,yesterday,1,0.01\n", TestContext.Current.CancellationToken);
            await File.WriteAllTextAsync(Path.Combine(folder, "verifications.csv"), "verification,at,depot,spreader,expected_kg,weighed_kg\n", TestContext.Current.CancellationToken);
            string[] data = arguments[0] is "logs" || arguments is ["season", "salt", ..] ? ["--data", Path.Combine(folder, "data")] : [];
            var parsed = CommandTree.Make().Parse([.. arguments.Select(Filled), .. data, "--language", language]);
            using var errors = new StringWriter();
            Assert.NotEqual(0, await parsed.InvokeAsync(new() { Output = TextWriter.Null, Error = errors }, TestContext.Current.CancellationToken));
            Assert.Contains(expected, errors.ToString(), StringComparison.Ordinal);

            string Filled(string text) => text.Replace("{0}", files[0], StringComparison.Ordinal).Replace("{1}", files[1], StringComparison.Ordinal).Replace("{2}", files[2], StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void The_place_of_a_finding_is_put_into_words()
    {
        var finding = DropTestFindings.NoRuns.At("runs at 50 %");
        Assert.Equal("prises à 50 %", FindingText.Where(finding, Language.French));
        Assert.Equal("runs at 50 %", FindingText.Where(finding));
    }
}
