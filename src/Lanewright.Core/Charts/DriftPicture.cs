using System.Globalization;
using Lanewright.Core.Text;

namespace Lanewright.Core.Charts;

/// <summary>A look at a spreader on the picture; shares are less 1.</summary>
/// <param name="Day">Day of it.</param>
/// <param name="Share">What it found off the calibration.</param>
/// <param name="Half">Half the width of its interval.</param>
/// <param name="Mean">Weighted mean up to it.</param>
/// <param name="High">Upper sum as a part of the limit; 1 is the alarm.</param>
/// <param name="Low">Lower sum as a part of the limit.</param>
public sealed record DriftDot(DateOnly Day, double Share, double Half, double Mean, double High, double Low);

/// <summary>
/// Looks at a spreader through time, above what each found with the weighted mean and the tolerance, below the two sums that raise the
/// alarm.
/// </summary>
public static class DriftPicture
{
    private const double Width = 720;
    private const double Left = 74;
    private const double Right = 700;
    private const double Top = 30;
    private const double Middle = 230;
    private const double SumsTop = 280;
    private const double Bottom = 400;

    /// <summary>The picture as SVG text.</summary>
    /// <param name="start">Day of the calibration.</param>
    /// <param name="dots">In order of their days; at least one.</param>
    /// <param name="tolerance">As a share.</param>
    /// <param name="id">Prefix of ids; unique on the page.</param>
    /// <param name="culture">For its numbers.</param>
    public static string Svg(DateOnly start, IReadOnlyList<DriftDot> dots, double tolerance, string id, TextCulture culture)
    {
        ArgumentNullException.ThrowIfNull(dots);
        ArgumentNullException.ThrowIfNull(culture);
        if (dots.Count == 0) throw new ArgumentException("At least one look is needed.", nameof(dots));
        var reach = 1.15 * Math.Max(tolerance, dots.Max(dot => Math.Abs(dot.Share) + dot.Half));
        var tall = 1.1 * Math.Max(1, dots.Max(dot => Math.Max(dot.High, dot.Low)));
        int first = start.DayNumber, last = Math.Max(dots[^1].Day.DayNumber, first + 1);
        var alarm = dots.FirstOrDefault(dot => dot.High > 1 || dot.Low > 1);
        var svg = new SvgText(
            id, Width, 450, culture.Say("Drift since the calibration"),
            string.Join("; ", dots.Select(dot => $"{Day(dot.Day)} {Signed(dot.Share)} (± {PercentText.Write(dot.Half, culture)})"))
            + ". " + culture.Say(alarm is null ? (Phrase)"No alarm." : alarm.High > 1
                ? $"Alarm on {Day(alarm.Day)}: it puts down more than at its calibration." : (Phrase)$"Alarm on {Day(alarm.Day)}: it puts down less than at its calibration."));
        svg.Text(0, 16, culture.Say("off the calibration"), bold: true);
        foreach (var level in (double[])[-tolerance, 0, tolerance])
        {
            svg.Line(Left, Y(level), Right, Y(level), level == 0 ? 1 : 0.75, level == 0 ? "" : "6 4");
            svg.Text(Left - 8, Y(level) + 4.5, level == 0 ? "0" : Signed(level), "end");
        }

        svg.Text(0, SumsTop - 12, culture.Say("sums, as a part of the limit"), bold: true);
        svg.Line(Left, Bottom, Right, Bottom);
        svg.Line(Left, Sum(1), Right, Sum(1), 1, "6 4");
        svg.Text(Left - 8, Sum(1) + 4.5, culture.Say("alarm"), "end");
        var (at, mean, high, low, labelled) = (X(start), 0.0, 0.0, 0.0, double.NegativeInfinity);
        foreach (var dot in dots)
        {
            var x = X(dot.Day);
            svg.Line(x, Y(dot.Share - dot.Half), x, Y(dot.Share + dot.Half), 2);
            if (dot.High > 1 || dot.Low > 1) svg.Dot(x, Y(dot.Share), 6);
            else svg.Ring(x, Y(dot.Share), 5);
            svg.Line(at, Y(mean), x, Y(dot.Mean), 1.5);
            svg.Line(at, Sum(high), x, Sum(dot.High), 2);
            svg.Line(at, Sum(low), x, Sum(dot.Low), 2, "2 3");
            (at, mean, high, low) = (x, dot.Mean, dot.High, dot.Low);
            if (x - labelled < 84) continue;
            svg.Text(x, Bottom + 20, Day(dot.Day), "middle");
            labelled = x;
        }

        svg.Text(Left, Bottom + 44, culture.Say("bars: 95 % interval of a look; line: weighted mean; filled: alarm; below: more (solid), less (dotted)"));
        return svg.End();

        double X(DateOnly day) => Left + 20 + ((Right - Left - 40) * (day.DayNumber - first) / (last - first));
        double Y(double share) => Middle - ((Middle - Top) * (share + reach) / (2 * reach));
        double Sum(double part) => Bottom - ((Bottom - SumsTop) * part / tall);
        string Signed(double share) => (share > 0 ? "+" : "") + PercentText.Write(share, culture);
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
