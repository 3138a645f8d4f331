using System.Text.RegularExpressions;

namespace Lanewright.Browser.Tests;

/// <summary>The program serving a garage: https with the yard's own authority, and accounts.</summary>
public sealed partial class AccountsYard : YardServer
{
    private readonly TaskCompletionSource<string> code = new(TaskCreationOptions.RunContinuationsAsynchronously);

    internal override Uri Address => new($"https://localhost:{Port}/");

    /// <summary>The code for the first supervisor, as the window shows it.</summary>
    internal Task<string> FirstCode => code.Task.WaitAsync(TimeSpan.FromSeconds(20));

    protected override string[] Serving => ["serve", "--lan", "--trust-port", "0"];

    protected override void Said(string line)
    {
        if (CodeLine().Match(line) is { Success: true } found) code.TrySetResult(found.Groups[1].Value);
    }

    [GeneratedRegex(@"^\s+([0-9A-Z]{4}(?:-[0-9A-Z]{4}){3})\s*$")]
    private static partial Regex CodeLine();
}
