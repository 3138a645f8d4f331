using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Lanewright.Browser.Tests;

/// <summary>The faults that axe finds on a page.</summary>
internal static class Axe
{
    private static readonly AxeRunOptions All = new()
    {
        RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"] },
    };

    // Between light and dark only colours differ.
    private static readonly AxeRunOptions Colours = new()
    {
        RunOnly = new RunOnlyOptions { Type = "rule", Values = ["color-contrast", "link-in-text-block"] },
    };

    internal static async Task<IEnumerable<string>> FaultsAsync(IPage page, string screen, ColorScheme scheme)
    {
        var result = await page.RunAxe(scheme is ColorScheme.Dark ? Colours : All);
        return result.Violations.Select(fault => $"{screen}: {fault.Id}: {string.Join(", ", fault.Nodes.Take(3).Select(node => node.Html))}");
    }
}
