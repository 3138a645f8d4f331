using System.Diagnostics;
using System.Text;
using Lanewright.App.Tests.Exchange;
using Lanewright.Core.Practice;
using Lanewright.Core.Tests;

namespace Lanewright.App.Tests.Commands;

public sealed class DiagnoseTests
{
    [Fact]
    public void A_sheet_is_answered_with_three_causes_evidence_and_next_tests()
    {
        var answer = CommandLine.Run("diagnose", Examples.PathOf("hr-104-closed-loop.json"));
        Assert.Equal((0, ""), (answer.Code, answer.Errors));
        Assert.Contains("the material is not what it was", answer.Output, StringComparison.Ordinal);
        Assert.Contains("What to do next", answer.Output, StringComparison.Ordinal);
        Assert.Equal(3, answer.Output.Split("If so:").Length - 1);
        Assert.True(CommandLine.Run("diagnose", Examples.PathOf("hr-104-closed-loop.json"), "--all").Output.Split("If so:").Length > 15);
    }

    [Fact]
    public void An_earlier_sheet_is_the_reference_and_json_says_the_same()
    {
        string Sheet(string day, double gain) => $$"""
            {"kind": "drop-test", "units": "us", "date": "{{day}}", "spreader": {"id": "A", "loop": "closed", "constant": "pulses-per-mass", "unit": "pulse/lb"},
             "material": {"name": "salt"}, "scale": {"id": "pallet", "class": "iii", "capacity": "2000 lb", "division": "0.5 lb"}, "commonError": true,
             "runs": [{{string.Join(',', new[] { 1003, 2006, 1509 }.Select(p => FormattableString.Invariant(
                 $"{{\"pulses\": {p}, \"whole\": {{\"tare\": 50.5, \"gross\": {Math.Round((50.5 + (p / 10.0 * gain)) * 2) / 2}}}}}")))}}]}
            """;
        using var now = new TemporaryFile(Sheet("2026-10-01", 1 / 2.20462262));
        using var before = new TemporaryFile(Sheet("2025-10-01", 1));
        var text = CommandLine.Run("diagnose", now.Path, "--history", before.Path);
        Assert.StartsWith("Most likely: kilograms and pounds mixed up", text.Output, StringComparison.Ordinal);
        var json = CommandLine.Run("diagnose", now.Path, "--history", before.Path, "--json").Json;
        Assert.Equal("mass-unit", json.GetProperty("causes")[0].GetProperty("code").GetString());
        Assert.Equal("likely", json.GetProperty("outcome").GetString());
    }

    [Fact]
    public void A_file_that_cannot_be_read_is_named_and_refused()
    {
        Assert.Equal(1, CommandLine.Run("diagnose", "no-such-file.json").Code);
        var history = CommandLine.Run("diagnose", Examples.PathOf("hr-104-closed-loop.json"), "--history", "no-such-file.json");
        Assert.Equal(1, history.Code);
        Assert.Contains("no-such-file.json", history.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Practice_is_played_from_a_script_to_the_truth()
    {
        var truth = Core.Diagnosis.CauseTable.Of(PracticeExercises.All[4].Cause).Code;
        var (code, output) = Play(["--exercise", "5"], "run 50 %\nrun 50 % for 30 s\nfly\nrun 900 %\ntest run-again\nhint\nname " + truth + "\n");
        Assert.Equal(0, code);
        Assert.Contains("Right:", output, StringComparison.Ordinal);
        Assert.Contains("'fly' was read", output, StringComparison.Ordinal);
        Assert.Contains("'900 %' was read", output, StringComparison.Ordinal);
        Assert.Contains("runs[1].pulses", output, StringComparison.Ordinal);
        Assert.Equal(output, Play(["--exercise", "5"], "run 50 %\nrun 50 % for 30 s\nfly\nrun 900 %\ntest run-again\nhint\nname " + truth + "\n").Output);
    }

    [Fact]
    public void Practice_that_ends_early_or_is_called_wrongly_says_so()
    {
        var (code, output) = Play(["--seed", "7"], "run 50 %\n\0\n" + new string('x', 100_000));
        Assert.Equal(1, code);
        Assert.Contains("Ended without a fault named", output, StringComparison.Ordinal);
        Assert.Equal(1, Play(["--exercise", "99"], "").Code);
        Assert.Equal(1, Play(["--seed", "-4"], "").Code);
    }

    private static (int Code, string Output) Play(string[] arguments, string script)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            WorkingDirectory = Repository.Root, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
        };
        foreach (var argument in (string[])[CommandLine.Program, "practice", .. arguments]) start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        try
        {
            process.StandardInput.Write(script);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It had ended before reading.
        }

        Assert.True(process.WaitForExit(120_000));
        return (process.ExitCode, output.GetAwaiter().GetResult());
    }
}
