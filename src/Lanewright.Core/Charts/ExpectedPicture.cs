using Lanewright.Core.Text;

namespace Lanewright.Core.Charts;

/// <summary>A run as observed and as expected, each as a share off what a healthy spreader gives.</summary>
/// <param name="Name">Name of the run.</param>
/// <param name="Observed">What was observed; 0 is as it should be.</param>
/// <param name="Half">Half the width of its interval.</param>
/// <param name="Expected">What would be expected if the cause were there.</param>
public sealed record ExpectedRow(string Name, double Observed, double Half, double Expected);

/// <summary>
/// Observed against expected, a row for each run: a dot with its bar is what was observed, an open ring what the cause would
/// give, the line in the middle a healthy spreader.
/// </summary>
public static class ExpectedPicture
{
    private const double Width = 360;
    private const double Left = 74;
    private const double Right = 340;
    private const double Top = 26;
    private const double Row = 30;

    /// <summary>The picture as SVG text.</summary>
    /// <param name="quantity">What was observed.</param>
    /// <param name="cause">Name of the cause.</param>
    /// <param name="rows">The runs; at least one.</param>
    /// <param name="id">Prefix of ids; unique on the page.</param>
    /// <param name="culture">For its numbers.</param>
    public static string Svg(Phrase quantity, Phrase cause, IReadOnlyList<ExpectedRow> rows, string id, TextCulture culture)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(culture);
        var reach = 1.1 * Math.Max(0.01, rows.Max(r => Math.Max(Math.Abs(r.Observed), Math.Abs(r.Expected))));
        var bottom = Top + (Row * rows.Count);
        var svg = new SvgText(
            id, Width, bottom + 94, culture.Say($"Observed and expected: {quantity}"),
            string.Join("; ", rows.Select(r => culture.Say($"run {r.Name} observed {Signed(r.Observed)}, expected {Signed(r.Expected)}"))) + ".");
        svg.Text(0, 14, culture.Say(quantity), bold: true);
        svg.Line(X(0), Top, X(0), bottom, 1.5);
        for (var i = 0; i < rows.Count; i++)
        {
            var (row, y) = (rows[i], Top + (Row * (i + 0.5)));
            svg.Text(0, y + 4.5, Excerpt.Of(row.Name, 9));
            svg.Line(X(row.Observed - row.Half), y, X(row.Observed + row.Half), y, 2);
            svg.Dot(X(row.Observed), y, 5);
            svg.Ring(X(row.Expected), y, 8);
        }

        svg.Line(Left, bottom, Right, bottom);
        foreach (var tick in (double[])[-reach, 0, reach])
            svg.Text(X(tick), bottom + 18, tick == 0 ? "0" : Signed(tick), tick < 0 ? "start" : tick > 0 ? "end" : "middle");
        svg.Text(0, bottom + 42, culture.Say("off what is expected of a healthy spreader"));
        // On a line of its own, since causes have long names.
        svg.Text(0, bottom + 60, culture.Say("dot: observed; ring: if the cause is this:"));
        svg.Text(0, bottom + 78, culture.Say(cause));
        return svg.End();

        double X(double share) => ((Left + Right) / 2) + (Math.Clamp(share / reach, -1.05, 1.05) * (Right - Left) / 2);
        string Signed(double share) => (share > 0 ? "+" : "") + PercentText.Write(share, culture);
    }
}
