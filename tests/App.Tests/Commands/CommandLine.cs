using System.Diagnostics;
using System.Text;
using System.Text.Json;
using Lanewright.App.Tests.Exchange;
using Lanewright.Core.Tests;
using Lanewright.Files;

namespace Lanewright.App.Tests.Commands;

/// <summary>What a command answered.</summary>
internal sealed record Answer(int Code, string Output, string Errors)
{
    /// <summary>The output as JSON.</summary>
    public JsonElement Json => JsonDocument.Parse(Output).RootElement;

    /// <summary>The text with single blanks, for sentences that are broken into lines.</summary>
    public static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}

/// <summary>Runs the built program as a process of its own, as a person does.</summary>
internal static class CommandLine
{
    /// <summary>As ./test puts it together for a person, compiled ahead, which starts in less time; otherwise as built for these tests.</summary>
    internal static string Program { get; } = Environment.GetEnvironmentVariable("LANEWRIGHT_TEST_PROGRAM") is { Length: > 0 } published
        ? published : typeof(SheetFile).Assembly.Location;

    /// <summary>Runs it in the root of the repository.</summary>
    public static Answer Run(params string[] arguments) => RunIn(null, arguments);

    /// <summary>The same with the language that the machine is set to.</summary>
    public static Answer RunIn(string? language, params string[] arguments)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet")
        {
            WorkingDirectory = Repository.Root,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        start.ArgumentList.Add(Program);
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        if (language is not null) start.Environment["LC_ALL"] = language;
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(120_000), string.Join(' ', arguments));
        return new(process.ExitCode, output, errors.GetAwaiter().GetResult());
    }

    /// <summary>The command that suits a sheet, without random trials.</summary>
    public static string[] For(string example) =>
        [example.Contains("check", StringComparison.Ordinal) ? "check" : "analyse", Examples.PathOf(example), "--trials", "0"];
}
