using Lanewright.App.Tests.Exchange;
using Lanewright.Core.Tests;

namespace Lanewright.App.Tests.Commands;

/// <summary>What cannot be answered: exit code 1, complaints on the error output, findings as JSON when that was asked for.</summary>
public sealed class RefusalTests
{
    [Theory]
    [InlineData("no-such-file.json", "read.no-file")]
    [InlineData("examples", "read.is-folder")]
    [InlineData("/dev/null", "read.empty")]
    [InlineData("/dev/zero", "read.too-large")]
    [InlineData("/proc/self/mem", "read.file-failed")]
    [InlineData("README.md", "read.")]
    [InlineData("docs/guide/analyse.svg", "read.")]
    public void A_file_that_is_no_sheet_is_refused_with_its_name_and_a_reason(string file, string code)
    {
        Assert.SkipWhen(file[0] == '/' && !File.Exists(file), $"There is no {file} on this system.");
        foreach (var command in (string[])["analyse", "check", "tidy", "plan"])
        {
            var answer = CommandLine.Run(command, file);
            Assert.Equal((1, ""), (answer.Code, answer.Output));
            Assert.StartsWith($"{file} cannot be used as it is:", answer.Errors, StringComparison.Ordinal);
            Assert.Contains(code, answer.Errors, StringComparison.Ordinal);
            Assert.DoesNotContain("   at ", answer.Errors, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_file_that_may_not_be_read_is_refused()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no such modes.");
        using var file = new TemporaryFile("{}");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(file.Path, UnixFileMode.None);
        var isRoot = Environment.UserName == "root";
        var answer = CommandLine.Run("analyse", file.Path);
        Assert.Equal((1, ""), (answer.Code, answer.Output));
        // Nothing is forbidden to root; the empty sheet is refused then.
        Assert.Contains(isRoot ? "read.missing-field" : "read.file-denied", answer.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Asked_for_json_a_refusal_is_json_too()
    {
        var answer = CommandLine.Run("analyse", "no-such-file.json", "--json");
        Assert.Equal((1, ""), (answer.Code, answer.Errors));
        Assert.Equal("lanewright-findings/1", answer.Json.GetProperty("format").GetString());
        Assert.False(answer.Json.GetProperty("usable").GetBoolean());
        Assert.Equal("read.no-file", answer.Json.GetProperty("findings")[0].GetProperty("code").GetString());
    }

    [Theory]
    [InlineData("analyse", "hr-104-check.yaml", "lanewright check")]
    [InlineData("check", "hr-104-closed-loop.json", "lanewright analyse")]
    public void A_sheet_of_the_other_kind_is_sent_to_its_command(string command, string example, string right)
    {
        var answer = CommandLine.Run(command, Examples.PathOf(example));
        Assert.Equal((1, ""), (answer.Code, answer.Output));
        Assert.Contains($"Use {right} for it", answer.Errors, StringComparison.Ordinal);
        var json = CommandLine.Run(command, Examples.PathOf(example), "--json");
        Assert.Equal(1, json.Code);
        Assert.Equal(("sheet.other-kind", "kind"), (
            json.Json.GetProperty("findings")[0].GetProperty("code").GetString(),
            json.Json.GetProperty("findings")[0].GetProperty("field").GetString()));
    }

    [Theory]
    [InlineData("--culture: 'klingon' was read; expected one of invariant, en-US", "analyse", "SHEET", "--culture", "klingon")]
    [InlineData("--units: 'metric' was read; expected us or si", "analyse", "SHEET", "--units", "metric")]
    [InlineData("--units: 'metric' was read; expected us or si", "plan", "PLAN", "--units", "metric")]
    [InlineData("--trials: 'many' was read; 0, or a whole number", "analyse", "SHEET", "--trials", "many")]
    [InlineData("--trials: '10' was read; 0, or a whole number", "analyse", "SHEET", "--trials", "10")]
    [InlineData("--trials: '1e99' was read", "analyse", "SHEET", "--trials", "1e99")]
    [InlineData("Help: lanewright analyse --help", "analyse")]
    [InlineData("Help: lanewright analyse --help", "analyse", "SHEET", "--nonsense")]
    [InlineData("'nonsense' was read; expected one of plan, analyse", "nonsense")]
    [InlineData("Meant, perhaps: convert.", "konvert", "5 lb", "kg")]
    [InlineData("Help: lanewright schema --help", "schema", "truck")]
    public void A_bad_command_line_says_what_is_wrong_with_it(string complaint, params string[] arguments)
    {
        string[] real = [.. arguments.Select(a => a switch
        {
            "SHEET" => Examples.PathOf("hr-104-closed-loop.json"),
            "PLAN" => Examples.PathOf("hr-104-plan.yaml"),
            _ => a,
        })];
        var answer = CommandLine.Run(real);
        Assert.Equal((1, ""), (answer.Code, answer.Output));
        Assert.Contains(complaint, answer.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrong_field_is_named_with_what_was_read_what_was_expected_and_its_line()
    {
        using var file = new TemporaryFile(
            File.ReadAllText(Examples.PathOf("hr-117-open-loop.yaml")).Replace("time: 58.8 s", "time: 58.8 lb", StringComparison.Ordinal), ".yaml");
        var errors = Answer.Flat(CommandLine.Run("analyse", file.Path).Errors);
        Assert.Contains("\"58.8 lb\" cannot be read as a time", errors, StringComparison.Ordinal);
        Assert.Contains("Write a unit such as s", errors, StringComparison.Ordinal);
        Assert.Contains("runs[1].time (line 30", errors, StringComparison.Ordinal);
    }
}
