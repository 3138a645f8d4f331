using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Charts;

/// <summary>A bar.</summary>
/// <param name="Name">What it is of.</param>
/// <param name="Value">Its length, SI; may be negative.</param>
/// <param name="Half">Half the width of its interval, SI; 0 when it has none.</param>
public sealed record Bar(string Name, double Value, double Half);

/// <summary>Amounts side by side as bars from one line of zero, each with its interval.</summary>
public static class BarPicture
{
    /// <summary>How many bars are shown at most: the longest ones, in their order.</summary>
    public const int Most = 24;

    private const double Width = 720;
    private const double Left = 210;
    private const double Right = 620;
    private const double Step = 24;
    private const int LongestName = 29;

    /// <summary>The picture as SVG text.</summary>
    /// <param name="title">What is shown, in the reader's language.</param>
    /// <param name="bars">In the order in which they are shown; at least one.</param>
    /// <param name="unit">Unit of the lengths.</param>
    /// <param name="id">Prefix of ids; unique on the page.</param>
    /// <param name="culture">For its numbers and words.</param>
    public static string Svg(string title, IReadOnlyList<Bar> bars, Unit unit, string id, TextCulture culture)
    {
        ArgumentNullException.ThrowIfNull(bars);
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(culture);
        if (bars.Count == 0) throw new ArgumentException("At least one bar is needed.", nameof(bars));
        var least = bars.Count <= Most ? 0 : bars.Select(bar => Math.Abs(bar.Value)).OrderDescending().ElementAt(Most - 1);
        var shown = bars.Where(bar => Math.Abs(bar.Value) >= least).Take(Most).ToList();
        var symbol = QuantityText.Symbol(unit, culture);
        var (low, high) = (Math.Min(0, shown.Min(bar => bar.Value - bar.Half)), Math.Max(0, shown.Max(bar => bar.Value + bar.Half)));
        if (high <= low) high = low + 1;
        var bottom = 34 + (Step * shown.Count);
        var hasInterval = shown.Any(bar => bar.Half > 0);
        var svg = new SvgText(
            id, Width, bottom + 30, title,
            string.Join("; ", shown.Select(bar => $"{bar.Name} {Number(bar.Value)}{(bar.Half > 0 ? " ± " + Number(bar.Half) : "")} {symbol}")) + ".");
        svg.Text(0, 16, $"{title}, {symbol}", bold: true);
        for (var i = 0; i < shown.Count; i++)
        {
            var bar = shown[i];
            var y = 34 + (Step * i);
            svg.Text(Left - 8, y + 14, Excerpt.Of(bar.Name, LongestName), "end");
            svg.Box(Math.Min(X(0), X(bar.Value)), y + 2, Math.Abs(X(bar.Value) - X(0)), Step - 8, 0.35);
            if (bar.Half > 0)
            {
                svg.Line(X(bar.Value - bar.Half), y + 10, X(bar.Value + bar.Half), y + 10, 2);
                svg.Line(X(bar.Value - bar.Half), y + 6, X(bar.Value - bar.Half), y + 14, 2);
                svg.Line(X(bar.Value + bar.Half), y + 6, X(bar.Value + bar.Half), y + 14, 2);
            }

            svg.Text(Math.Max(X(bar.Value + bar.Half), X(0)) + 8, y + 14, Number(bar.Value));
        }

        svg.Line(X(0), 30, X(0), bottom);
        var notes = new List<string>();
        if (hasInterval) notes.Add(culture.Say("lines: 95 % interval"));
        if (shown.Count < bars.Count) notes.Add(culture.Say($"the {shown.Count} largest of {bars.Count}"));
        svg.Text(Left, bottom + 20, string.Join("; ", notes));
        return svg.End();

        double X(double value) => Left + ((Right - Left) * (value - low) / (high - low));
        string Number(double si) => QuantityText.WriteValue(si, unit, culture, NumberForm.Significant(3));
    }
}
