using System.Text.Json;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace Lanewright.Browser.Tests;

/// <summary>The faults that axe finds on a page. Our pages have no frames, so it runs in the page itself, put there once.</summary>
internal static class Axe
{
    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    private static readonly object All = new { type = "tag", values = new[] { "wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice" } };

    // Between light and dark only colours differ.
    private static readonly object Colours = new { type = "rule", values = new[] { "color-contrast", "link-in-text-block" } };

    /// <summary>Looks at a page in light and then in dark; <paramref name="look"/> looks at more in each.</summary>
    internal static async Task<IReadOnlyList<string>> FaultsAsync(IPage page, string screen, Func<Task<IEnumerable<string>>>? look = null)
    {
        var wrong = new List<string>();
        if (!await page.EvaluateAsync<bool>("() => Boolean(globalThis.axe)")) await page.EvaluateAsync(Script);
        foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            await page.EmulateMediaAsync(new() { ColorScheme = scheme, ReducedMotion = ReducedMotion.Reduce });
            // What looks for more holds every text's contrast to more than axe does.
            if (scheme is ColorScheme.Light || look is null)
            {
                var faults = await page.EvaluateAsync<string[]>(
                    """
                    async runOnly => {
                      const { violations, passes } = await axe.run(document, { runOnly: JSON.parse(runOnly), resultTypes: ['violations'] });
                      if (!passes.length) throw new Error('axe looked at nothing');
                      return violations.map(fault => `${fault.id}: ${fault.nodes.slice(0, 3).map(node => node.html).join(', ')}`);
                    }
                    """,
                    JsonSerializer.Serialize(scheme is ColorScheme.Dark ? Colours : All));
                wrong.AddRange(faults.Select(fault => $"{screen}, {scheme}: {fault}"));
            }

            if (look is not null) wrong.AddRange((await look()).Select(one => $"{screen}, {scheme}: {one}"));
        }

        return wrong;
    }
}
