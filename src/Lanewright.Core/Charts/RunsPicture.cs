using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Charts;

/// <summary>
/// The runs against the interval of the result: one row a run, its ratio as a dot with what weighing and counting alone
/// leave uncertain (two standard uncertainties) as a bar, the interval as a shaded band.
/// </summary>
public static class RunsPicture
{
    private const double Width = 360;
    private const double Left = 74;
    private const double Right = 272;
    private const double Top = 26;
    private const double Row = 30;

    /// <summary>The picture as SVG text.</summary>
    /// <param name="result">The result whose runs are drawn.</param>
    /// <param name="id">Prefix of ids; unique on the page.</param>
    /// <param name="culture">For its numbers.</param>
    public static string Svg(TestResult result, string id, TextCulture culture)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(culture);
        var unit = QuantityText.Symbol(result.Unit, culture);
        var interval = result.RelativeExpanded;
        var reach = Reach(result);
        var probability = PercentText.Write(result.Probability, culture);
        var (low, _) = QuantityText.WriteTogether(result.Low, result.Expanded, result.Unit, culture);
        var (high, _) = QuantityText.WriteTogether(result.High, result.Expanded, result.Unit, culture);
        var described = string.Join("; ", result.Runs.Select(run =>
            culture.Say($"run {run.Id} {Number(run.Ratio, result.Unit, culture)} {unit}, {Signed(run.Deviation, culture)}")));
        var bottom = Top + (Row * result.Runs.Count);
        var svg = new SvgText(
            id, Width, bottom + 58, culture.Say("Each run beside the result"),
            culture.Say($"{described}. The {probability} interval of the result is {low} to {high} {unit}."));

        svg.Text(0, 14, culture.Say("run"), bold: true);
        svg.Text(Width, 14, unit, "end", bold: true);
        svg.Box(X(-interval, reach), Top, X(interval, reach) - X(-interval, reach), bottom - Top, 0.16);
        svg.Line(X(-interval, reach), Top, X(-interval, reach), bottom, 1, "4 3");
        svg.Line(X(interval, reach), Top, X(interval, reach), bottom, 1, "4 3");
        svg.Line(X(0, reach), Top, X(0, reach), bottom, 1.5);
        for (var i = 0; i < result.Runs.Count; i++)
        {
            var run = result.Runs[i];
            var y = Top + (Row * (i + 0.5));
            svg.Text(0, y + 4.5, Excerpt.Of(run.Id, 9));
            var half = Math.Min(2 * run.OwnUncertainty, 2 * reach);
            svg.Line(X(run.Deviation - half, reach), y, X(run.Deviation + half, reach), y, 2);
            svg.Dot(X(run.Deviation, reach), y, 6);
            svg.Text(Width, y + 4.5, Number(run.Ratio, result.Unit, culture), "end");
        }

        svg.Line(Left, bottom, Right, bottom);
        foreach (var tick in (double[])[-reach, 0, reach])
        {
            svg.Line(X(tick, reach), bottom, X(tick, reach), bottom + 5);
            svg.Text(X(tick, reach), bottom + 19, tick == 0 ? "0" : Signed(tick, culture), "middle");
        }

        svg.Text((Left + Right) / 2, bottom + 36, culture.Say("difference from the result"), "middle");
        svg.Text(0, bottom + 54, culture.Say($"Shaded: {probability} interval, {low} to {high} {unit}"));
        return svg.End();
    }

    // The axis ends at a round share beyond the farthest run and the interval.
    private static double Reach(TestResult result)
    {
        var far = result.RelativeExpanded;
        foreach (var run in result.Runs) far = Math.Max(far, Math.Abs(run.Deviation));
        foreach (var end in (double[])[0.002, 0.005, 0.01, 0.02, 0.03, 0.05, 0.1, 0.2, 0.3, 0.5])
        {
            if (far * 1.08 <= end) return end;
        }

        return Math.Max(1, far * 1.1);
    }

    private static double X(double deviation, double reach) =>
        ((Left + Right) / 2) + (Math.Clamp(deviation / reach, -1.06, 1.06) * (Right - Left) / 2);

    private static string Number(double si, Unit unit, TextCulture culture) =>
        QuantityText.WriteValue(si, unit, culture, NumberForm.Significant(4));

    private static string Signed(double share, TextCulture culture) =>
        (share > 0 ? "+" : "") + PercentText.Write(share, culture);
}
