using Lanewright.Commands;

namespace Lanewright.App.Tests.Languages;

/// <summary>The help of commands in the reader's language.</summary>
public sealed class HelpTests
{
    [Theory]
    [InlineData("Options:", "Analyse a sheet", "--help")]
    [InlineData("Options :", "Analyser une fiche", "--help", "--language", "fr")]
    [InlineData("Options :", "Analyser une fiche", "--help", "--culture", "fr-CA")]
    [InlineData("Valinnat:", "Analysoi", "--help", "--language", "fi")]
    [InlineData("Valinnat:", "Analysoi", "--help", "--language", "fi", "--culture", "fr-CA")]
    [InlineData("Options:", "Analyse a sheet", "--help", "--language", "none")]
    public void Help_follows_the_language_and_then_the_culture(string head, string text, params string[] asked)
    {
        using var output = new StringWriter();
        Assert.Equal(0, CommandTree.Help(CommandTree.Make().Parse(["analyse", .. asked]), output));
        var lines = output.ToString().Split('\n').Select(line => line.TrimEnd()).ToList();
        Assert.Contains(head, lines);
        Assert.Contains(lines, line => line.TrimStart().StartsWith(text, StringComparison.Ordinal));
        Assert.Contains(lines, line => line.Contains("--trials", StringComparison.Ordinal));
    }
}
