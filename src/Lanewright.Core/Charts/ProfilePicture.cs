using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Charts;

/// <summary>What was caught across the road, strip by strip, with the edges of lane and shoulders.</summary>
/// <param name="Strips">The strips, from left to right; at least one.</param>
/// <param name="Edges">Edges to mark, m, with their names.</param>
public sealed record ProfilePicture(IReadOnlyList<PatternStrip> Strips, IReadOnlyList<(double At, Phrase Name)> Edges)
{
    private const double Width = 720;
    private const double Left = 20;
    private const double Right = 700;
    private const double Top = 40;
    private const double Bottom = 230;

    /// <summary>Its name.</summary>
    public const string Title = "What lies across the road";

    /// <summary>The picture as SVG text.</summary>
    public string Svg(string id, TextCulture culture, UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(culture);
        ArgumentNullException.ThrowIfNull(units);
        var unit = units[Dimension.Length];
        var low = Math.Min(Strips[0].From, Edges.Count == 0 ? 0 : Edges.Min(e => e.At));
        var high = Math.Max(Strips[^1].To, Edges.Count == 0 ? 0 : Edges.Max(e => e.At));
        var most = Math.Max(Strips.Max(s => s.Height), double.Epsilon);
        var mass = Strips.Sum(s => s.Height * (s.To - s.From));
        var symbol = QuantityText.Symbol(unit, culture);
        var svg = new SvgText(
            id, Width, 290, culture.Say(Title),
            string.Join("; ", Strips.Select(s =>
                culture.Say($"{Number(s.From)} to {Number(s.To)} {symbol}: {PercentText.Write(mass > 0 ? s.Height * (s.To - s.From) / mass : 0, culture)}"))) + ".");
        svg.Text(0, 16, culture.Say("share of the catch by width; left and right as the truck drives"), bold: true);
        foreach (var s in Strips)
        {
            var height = s.Height / most * (Bottom - Top);
            svg.Box(XAt(s.From), Bottom - height, XAt(s.To) - XAt(s.From), height, 0.35);
            svg.Frame(XAt(s.From), Bottom - height, Math.Max(0, XAt(s.To) - XAt(s.From)), height);
        }

        svg.Line(Left, Bottom, Right, Bottom, 1.5);
        foreach (var (at, name) in Edges.OrderBy(e => e.At))
        {
            svg.Line(XAt(at), Top - 10, XAt(at), Bottom + 6, 1, "4 3");
            svg.Text(XAt(at), Bottom + 22, Number(at), "middle");
            svg.Text(XAt(at), Bottom + 38, culture.Say(name), "middle");
        }

        svg.Text(Right, 286, symbol, "end");
        return svg.End();

        double XAt(double si) => Left + ((si - low) / (high - low) * (Right - Left));

        string Number(double si) => QuantityText.WriteNumber(Math.Round(unit.FromSi(si), 2), culture);
    }
}
