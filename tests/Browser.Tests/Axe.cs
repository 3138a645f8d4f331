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

    /// <summary>Looks at a page in light and then in dark; <paramref name="look"/> looks at more in each.</summary>
    internal static async Task<IReadOnlyList<string>> FaultsAsync(IPage page, string screen, Func<Task<IEnumerable<string>>>? look = null)
    {
        var wrong = new List<string>();
        foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            await page.EmulateMediaAsync(new() { ColorScheme = scheme, ReducedMotion = ReducedMotion.Reduce });
            // What looks for more holds every text's contrast to more than axe does.
            if (scheme is ColorScheme.Light || look is null)
            {
                var result = await page.RunAxe(scheme is ColorScheme.Dark ? Colours : All);
                wrong.AddRange(result.Violations.Select(fault =>
                    $"{screen}, {scheme}: {fault.Id}: {string.Join(", ", fault.Nodes.Take(3).Select(node => node.Html))}"));
            }

            if (look is not null) wrong.AddRange((await look()).Select(one => $"{screen}, {scheme}: {one}"));
        }

        return wrong;
    }
}
