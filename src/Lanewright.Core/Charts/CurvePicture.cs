using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Charts;

/// <summary>A measured point of a curve, SI.</summary>
/// <param name="X">Where it was measured.</param>
/// <param name="Y">What was found.</param>
/// <param name="Half">Half the width of its interval; 0 for none.</param>
/// <param name="Open">Whether it is drawn open: measured, but not part of the fit.</param>
public sealed record CurvePoint(double X, double Y, double Half, bool Open = false);

/// <summary>A place on a fitted curve, SI, with half the width of the interval there.</summary>
public sealed record CurvePlace(double X, double Y, double Half);

/// <summary>
/// Measured points with their intervals, the curve fitted to them, and its interval as dashed lines on both sides.
/// </summary>
/// <param name="Title">Its name.</param>
/// <param name="XName">What lies along it.</param>
/// <param name="X">Dimension along it.</param>
/// <param name="YName">What stands up.</param>
/// <param name="Y">Dimension of what stands up.</param>
/// <param name="Points">The measured points; at least one.</param>
/// <param name="Curve">The curve, from left to right; may be empty.</param>
/// <param name="XUnit">Unit along it; null for the reader's own.</param>
public sealed record CurvePicture(
    Phrase Title, Phrase XName, Dimension X, Phrase YName, Dimension Y, IReadOnlyList<CurvePoint> Points,
    IReadOnlyList<CurvePlace> Curve, Unit? XUnit = null)
{
    private const double Width = 720;
    private const double Left = 74;
    private const double Right = 700;
    private const double Top = 30;
    private const double Bottom = 300;

    /// <summary>The picture as SVG text.</summary>
    /// <param name="id">Prefix of ids; unique on the page.</param>
    /// <param name="culture">For its numbers.</param>
    /// <param name="units">For its numbers.</param>
    public string Svg(string id, TextCulture culture, UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(culture);
        ArgumentNullException.ThrowIfNull(units);
        var across = XUnit ?? units[X];
        var up = units[Y];
        var right = Round(Math.Max(Points.Max(p => p.X), Curve.Count == 0 ? 0 : Curve[^1].X), across);
        var top = Round(Math.Max(Points.Max(p => p.Y + p.Half), Curve.Count == 0 ? 0 : Curve.Max(p => p.Y)), up);
        var svg = new SvgText(
            id, Width, 350, culture.Say(Title),
            string.Join("; ", Points.Select(p =>
                $"{Number(p.X, across)} {QuantityText.Symbol(across, culture)}: {Number(p.Y, up)} {QuantityText.Symbol(up, culture)}"
                + (p.Half > 0 ? $" ± {Number(p.Half, up)}" : ""))) + ".");
        svg.Text(0, 16, $"{culture.Say(YName)}, {QuantityText.Symbol(up, culture)}", bold: true);
        svg.Text(Right, Bottom + 42, $"{culture.Say(XName)}, {QuantityText.Symbol(across, culture)}", "end", bold: true);
        for (var i = 0; i <= 5; i++)
        {
            svg.Line(Left, YAt(top * i / 5), Right, YAt(top * i / 5), 0.5, i == 0 ? "" : "2 4");
            svg.Text(Left - 8, YAt(top * i / 5) + 4.5, Number(top * i / 5, up), "end");
            svg.Line(XAt(right * i / 5), Bottom, XAt(right * i / 5), Bottom + 5);
            svg.Text(XAt(right * i / 5), Bottom + 20, Number(right * i / 5, across), "middle");
        }

        for (var i = 1; i < Curve.Count; i++)
        {
            var (a, b) = (Curve[i - 1], Curve[i]);
            svg.Line(XAt(a.X), YAt(a.Y), XAt(b.X), YAt(b.Y), 2);
            svg.Line(XAt(a.X), YAt(a.Y + a.Half), XAt(b.X), YAt(b.Y + b.Half), 0.75, "3 3");
            svg.Line(XAt(a.X), YAt(a.Y - a.Half), XAt(b.X), YAt(b.Y - b.Half), 0.75, "3 3");
        }

        foreach (var p in Points)
        {
            var x = XAt(p.X);
            svg.Line(x, YAt(p.Y - p.Half), x, YAt(p.Y + p.Half), 2);
            svg.Line(x - 5, YAt(p.Y - p.Half), x + 5, YAt(p.Y - p.Half), 2);
            svg.Line(x - 5, YAt(p.Y + p.Half), x + 5, YAt(p.Y + p.Half), 2);
            if (p.Open) svg.Ring(x, YAt(p.Y), 5);
            else svg.Dot(x, YAt(p.Y), 5);
        }

        return svg.End();

        double XAt(double si) => Left + (Math.Clamp(si / right, 0, 1) * (Right - Left));

        double YAt(double si) => Bottom - (Math.Clamp(si / top, 0, 1) * (Bottom - Top));

        string Number(double si, Unit unit) => QuantityText.WriteValue(si, unit, culture, NumberForm.Significant(3));
    }

    // The axis ends at a round number of the reader's unit: 1, 2, 2.5 or 5 times a power of ten, in steps of five.
    private static double Round(double si, Unit unit)
    {
        var value = unit.FromSi(si) * 1.02;
        if (!(value > 0)) return unit.ToSi(1);
        var power = 1.0;
        while (power * 10 < value) power *= 10;
        while (power > value) power /= 10;
        foreach (var step in (double[])[1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10])
        {
            if (value <= step * power) return unit.ToSi(step * power);
        }

        return unit.ToSi(value);
    }
}
