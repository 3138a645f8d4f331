using System.Globalization;
using System.Text;

namespace Lanewright.Core.Charts;

/// <summary>
/// Builds a picture as SVG text. It draws in the colour of the text around it (<c>currentColor</c>), so it fits light
/// and dark pages and black-and-white print, and it carries its name and description for those who do not see it.
/// Lengths are in units of the view box. No style attributes: a strict content security policy would drop them.
/// </summary>
internal sealed class SvgText
{
    private readonly StringBuilder text = new();

    /// <summary>Begins a picture.</summary>
    /// <param name="id">Prefix of the ids of title and description; unique on the page.</param>
    /// <param name="width">Width of the view box.</param>
    /// <param name="height">Height of the view box.</param>
    /// <param name="title">Its name.</param>
    /// <param name="description">What it shows, in words and numbers.</param>
    internal SvgText(string id, double width, double height, string title, string description)
    {
        text.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" ");
        text.Append(CultureInfo.InvariantCulture, $"role=\"img\" aria-labelledby=\"{id}-title {id}-desc\" ");
        text.Append("font-family=\"inherit\" font-size=\"13\" fill=\"currentColor\" stroke=\"none\">");
        text.Append(CultureInfo.InvariantCulture, $"<title id=\"{id}-title\">").Append(Escaped(title)).Append("</title>");
        text.Append(CultureInfo.InvariantCulture, $"<desc id=\"{id}-desc\">").Append(Escaped(description)).Append("</desc>");
    }

    /// <summary>A text; <paramref name="anchor"/> is start, middle or end.</summary>
    internal void Text(double x, double y, string words, string anchor = "start", bool bold = false)
    {
        text.Append(CultureInfo.InvariantCulture, $"<text x=\"{N(x)}\" y=\"{N(y)}\" text-anchor=\"{anchor}\"");
        if (bold) text.Append(" font-weight=\"700\"");
        text.Append('>').Append(Escaped(words)).Append("</text>");
    }

    /// <summary>A line; dashed when <paramref name="dashes"/> says how.</summary>
    internal void Line(double x1, double y1, double x2, double y2, double width = 1, string dashes = "")
    {
        text.Append(
            CultureInfo.InvariantCulture,
            $"<line x1=\"{N(x1)}\" y1=\"{N(y1)}\" x2=\"{N(x2)}\" y2=\"{N(y2)}\" stroke=\"currentColor\" stroke-width=\"{N(width)}\"");
        if (dashes.Length > 0) text.Append(" stroke-dasharray=\"").Append(dashes).Append('"');
        text.Append("/>");
    }

    /// <summary>A rectangle filled to a part of full strength, 0 to 1; 1 also draws its edge.</summary>
    internal void Box(double x, double y, double width, double height, double strength) => text.Append(
        CultureInfo.InvariantCulture,
        $"<rect x=\"{N(x)}\" y=\"{N(y)}\" width=\"{N(Math.Max(0, width))}\" height=\"{N(height)}\" fill-opacity=\"{N(strength)}\"/>");

    /// <summary>An empty rectangle.</summary>
    internal void Frame(double x, double y, double width, double height) => text.Append(
        CultureInfo.InvariantCulture,
        $"<rect x=\"{N(x)}\" y=\"{N(y)}\" width=\"{N(width)}\" height=\"{N(height)}\" fill=\"none\" stroke=\"currentColor\"/>");

    /// <summary>A dot.</summary>
    internal void Dot(double x, double y, double radius) => text.Append(
        CultureInfo.InvariantCulture, $"<circle cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"{N(radius)}\"/>");

    /// <summary>An open dot.</summary>
    internal void Ring(double x, double y, double radius) => text.Append(
        CultureInfo.InvariantCulture,
        $"<circle cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"{N(radius)}\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2\"/>");

    /// <summary>The picture.</summary>
    internal string End() => text.Append("</svg>").ToString();

    private static string N(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Escaped(string words) => words
        .Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal).Replace("\"", "&quot;", StringComparison.Ordinal);
}
