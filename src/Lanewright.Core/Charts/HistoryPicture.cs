using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Charts;

/// <summary>One calibration in a spreader's history.</summary>
/// <param name="Day">Day of the test.</param>
/// <param name="Value">The constant, SI.</param>
/// <param name="Low">Lower end of its interval, SI.</param>
/// <param name="High">Upper end of its interval, SI.</param>
/// <param name="Adopted">Whether it was keyed in.</param>
public sealed record HistoryPoint(DateOnly Day, double Value, double Low, double High, bool Adopted);

/// <summary>
/// A spreader's constants through time, each with its interval; a filled dot was keyed in, an open one was not.
/// </summary>
public static class HistoryPicture
{
    private const double Width = 720;
    private const double Left = 74;
    private const double Right = 700;
    private const double Top = 30;
    private const double Bottom = 250;

    /// <summary>The picture as SVG text.</summary>
    /// <param name="points">In any order; at least one.</param>
    /// <param name="unit">Unit of the constant.</param>
    /// <param name="id">Prefix of ids; unique on the page.</param>
    /// <param name="culture">For its numbers.</param>
    public static string Svg(IReadOnlyList<HistoryPoint> points, Unit unit, string id, TextCulture culture)
    {
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(culture);
        if (points.Count == 0) throw new ArgumentException("At least one calibration is needed.", nameof(points));
        var ordered = points.OrderBy(point => point.Day).ToList();
        var symbol = QuantityText.Symbol(unit, culture);
        double low = ordered.Min(p => p.Low), high = ordered.Max(p => p.High);
        var room = Math.Max((high - low) * 0.08, Math.Abs(high) * 1e-6);
        (low, high) = (low - room, high + room);
        int first = ordered[0].Day.DayNumber - 20, last = ordered[^1].Day.DayNumber + 20;
        var svg = new SvgText(
            id, Width, 300, culture.Say("Calibrations through time"),
            string.Join("; ", ordered.Select(p => $"{Day(p.Day)} {Number(p.Value)} {symbol} "
                + culture.Say(p.Adopted ? $"({Number(p.Low)} to {Number(p.High)})" : (Phrase)$"({Number(p.Low)} to {Number(p.High)}, not keyed in)"))) + ".");
        svg.Text(0, 16, symbol, bold: true);
        for (var i = 0; i <= 4; i++)
        {
            var value = low + ((high - low) * i / 4);
            svg.Line(Left, Y(value), Right, Y(value), 0.5, i == 0 ? "" : "2 4");
            svg.Text(Left - 8, Y(value) + 4.5, Number(value), "end");
        }

        var labelled = double.NegativeInfinity;
        foreach (var point in ordered)
        {
            var x = X(point.Day);
            svg.Line(x, Y(point.Low), x, Y(point.High), 2.5);
            svg.Line(x - 5, Y(point.Low), x + 5, Y(point.Low), 2.5);
            svg.Line(x - 5, Y(point.High), x + 5, Y(point.High), 2.5);
            if (point.Adopted) svg.Dot(x, Y(point.Value), 6);
            else svg.Ring(x, Y(point.Value), 6);
            if (x - labelled < 84) continue;
            svg.Text(x, Bottom + 20, Day(point.Day), "middle");
            labelled = x;
        }

        svg.Text(Left, Bottom + 44, culture.Say("filled: keyed in; open: not keyed in; bars: interval"));
        return svg.End();

        double X(DateOnly day) => Left + 20 + ((Right - Left - 40) * (day.DayNumber - first) / (last - first));
        double Y(double value) => Bottom - ((Bottom - Top) * (value - low) / (high - low));
        string Number(double si) => QuantityText.WriteValue(si, unit, culture, NumberForm.Significant(4));
    }

    private static string Day(DateOnly day) =>
        day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
