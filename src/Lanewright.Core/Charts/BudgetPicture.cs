using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Charts;

/// <summary>
/// Where the uncertainty comes from: a bar for each family of error sources, as long as its share of the variance, with
/// its standard uncertainty relative to the result beside it.
/// </summary>
public static class BudgetPicture
{
    private const double Width = 360;
    private const double Row = 44;
    private const double BarEnd = 216;
    private const int MostLines = 8;

    /// <summary>The picture as SVG text.</summary>
    /// <param name="result">The result whose budget is drawn.</param>
    /// <param name="id">Prefix of ids; unique on the page.</param>
    /// <param name="culture">For its numbers.</param>
    public static string Svg(TestResult result, string id, TextCulture culture)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(culture);
        var lines = result.Budget.Take(MostLines).ToList();
        var described = string.Join("; ", lines.Select(line => $"{culture.Say(Phrase.OfFamily(line.Family))} {Share(line.Share, culture)}"));
        var svg = new SvgText(
            id, Width, 26 + (Row * lines.Count) + 8, culture.Say("Where the uncertainty comes from"), culture.Say($"{described} of the variance."));
        svg.Text(0, 14, culture.Say("source"), bold: true);
        svg.Text(Width, 14, culture.Say("share of variance · ± %"), "end", bold: true);
        for (var i = 0; i < lines.Count; i++)
        {
            var line = lines[i];
            var y = 26 + (Row * i);
            var relative = line.StandardUncertainty / Math.Abs(result.Value.Value);
            svg.Text(0, y + 14, Excerpt.Of(culture.Say(Phrase.OfFamily(line.Family)), 50));
            svg.Frame(0.5, y + 20.5, BarEnd, 14);
            svg.Box(0.5, y + 20.5, BarEnd * line.Share, 14, 1);
            svg.Text(
                Width, y + 32, $"{Share(line.Share, culture)} · ± {PercentText.Write(relative, culture)}", "end");
        }

        return svg.End();
    }

    private static string Share(double share, TextCulture culture) => share is > 0 and < 0.01
        ? "< " + PercentText.Write(0.01, culture)
        : QuantityText.WriteNumber(share * 100, culture, NumberForm.Decimals(0)) + " %";
}
