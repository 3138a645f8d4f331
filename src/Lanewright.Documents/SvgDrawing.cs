using System.Globalization;
using System.Xml.Linq;
using PdfSharp.Drawing;

namespace Lanewright.Documents;

/// <summary>
/// Draws a picture of Core as vectors: the shapes that Core's pictures are made of, in black. So paper and pages show the same
/// picture.
/// </summary>
internal sealed class SvgDrawing
{
    private const double FontSize = 13;
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private readonly XElement root;

    internal SvgDrawing(string svg)
    {
        root = XElement.Parse(svg);
        var box = root.Attribute("viewBox")!.Value.Split(' ');
        (Wide, High) = (Number(box[2]), Number(box[3]));
        Described = $"{root.Element(Svg + "title")?.Value}: {root.Element(Svg + "desc")?.Value}";
    }

    /// <summary>Width in its own units.</summary>
    internal double Wide { get; }

    /// <summary>Height in its own units.</summary>
    internal double High { get; }

    /// <summary>What it shows, in words and numbers.</summary>
    internal string Described { get; }

    internal void Draw(XGraphics graphics, double left, double top, double scale, Func<double, bool, XFont> font)
    {
        foreach (var shape in root.Elements())
        {
            switch (shape.Name.LocalName)
            {
                case "rect":
                    var box = new XRect(left + (Of(shape, "x") * scale), top + (Of(shape, "y") * scale), Of(shape, "width") * scale, Of(shape, "height") * scale);
                    if ((string?)shape.Attribute("fill") == "none") graphics.DrawRectangle(new XPen(XColors.Black, scale), box);
                    else graphics.DrawRectangle(new XSolidBrush(XColor.FromGrayScale(1 - Of(shape, "fill-opacity", 1))), box);
                    break;
                case "line":
                    var pen = new XPen(XColors.Black, Of(shape, "stroke-width", 1) * scale);
                    if ((string?)shape.Attribute("stroke-dasharray") is { } dashes)
                        pen.DashPattern = [.. dashes.Split(' ').Select(dash => Number(dash) / Math.Max(0.1, Of(shape, "stroke-width", 1)))];
                    graphics.DrawLine(
                        pen, left + (Of(shape, "x1") * scale), top + (Of(shape, "y1") * scale), left + (Of(shape, "x2") * scale), top + (Of(shape, "y2") * scale));
                    break;
                case "circle":
                    var r = Of(shape, "r") * scale;
                    var (x, y) = (left + (Of(shape, "cx") * scale) - r, top + (Of(shape, "cy") * scale) - r);
                    if ((string?)shape.Attribute("fill") == "none") graphics.DrawEllipse(new XPen(XColors.Black, 2 * scale), x, y, 2 * r, 2 * r);
                    else graphics.DrawEllipse(XBrushes.Black, x, y, 2 * r, 2 * r);
                    break;
                case "text":
                    Words(graphics, shape, left, top, scale, font);
                    break;
                case "title" or "desc":
                    break;
                default:
                    throw new NotSupportedException($"A picture holds <{shape.Name.LocalName}>, which cannot be drawn on paper.");
            }
        }
    }

    // A text wider than the picture is set smaller: on a page it would run into the margin.
    private void Words(XGraphics graphics, XElement shape, double left, double top, double scale, Func<double, bool, XFont> font)
    {
        var type = font(FontSize * scale, (string?)shape.Attribute("font-weight") == "700");
        var wide = graphics.MeasureString(shape.Value, type).Width;
        var room = scale * ((string?)shape.Attribute("text-anchor") switch
        {
            "end" => Of(shape, "x"),
            "middle" => 2 * Math.Min(Of(shape, "x"), Wide - Of(shape, "x")),
            _ => Wide - Of(shape, "x"),
        });
        if (wide > room && room > 0)
        {
            type = font(FontSize * scale * room / wide, (string?)shape.Attribute("font-weight") == "700");
            wide = room;
        }

        var x = left + (Of(shape, "x") * scale) - ((string?)shape.Attribute("text-anchor") switch { "end" => wide, "middle" => wide / 2, _ => 0 });
        graphics.DrawString(shape.Value, type, XBrushes.Black, new XPoint(x, top + (Of(shape, "y") * scale)));
    }

    private static double Of(XElement shape, string name, double otherwise = 0) =>
        (string?)shape.Attribute(name) is { } text ? Number(text) : otherwise;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
