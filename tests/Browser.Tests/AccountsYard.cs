using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Lanewright.Browser.Tests;

/// <summary>The program serving a garage: https with the yard's own authority, and accounts.</summary>
public sealed partial class AccountsYard : YardServer
{
    internal const string Password = "gravel under the plow";

    private readonly TaskCompletionSource<string> code = new(TaskCreationOptions.RunContinuationsAsynchronously);

    internal override Uri Address => new($"https://localhost:{Port}/");

    /// <summary>The code for the first supervisor, as the window shows it.</summary>
    internal Task<string> FirstCode => code.Task.WaitAsync(TimeSpan.FromSeconds(20));

    protected override string[] Serving => ["serve", "--lan", "--trust-port", "0"];

    protected override void Said(string line)
    {
        if (CodeLine().Match(line) is { Success: true } found) code.TrySetResult(found.Groups[1].Value);
    }

    /// <summary>A person sets the password with a code, and is signed in.</summary>
    internal async Task PairAsync(IPage page, string person, string code)
    {
        await page.GotoAsync(new Uri(Address, "pair").ToString());
        await page.GetByLabel("Name, as in the yard's register").FillAsync(person);
        await page.GetByLabel("Code", new() { Exact = true }).FillAsync(code);
        await page.GetByLabel("New password", new() { Exact = false }).FillAsync(Password);
        await page.GetByLabel("The same password again").FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Set the password" }).ClickAsync();
        await Assertions.Expect(page).Not.ToHaveURLAsync(new Regex("/pair$"));
    }

    [GeneratedRegex(@"^\s+([0-9A-Z]{4}(?:-[0-9A-Z]{4}){3})\s*$")]
    private static partial Regex CodeLine();
}
