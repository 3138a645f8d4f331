using System.Globalization;
using System.Text;
using QRCoder;

namespace Lanewright.Network;

/// <summary>An address as a QR code, for a phone's camera.</summary>
internal static class QrPicture
{
    /// <summary>As SVG; black on white whatever the page's colours, or cameras do not read it.</summary>
    internal static string Svg(string text)
    {
        var rows = Rows(text);
        var path = new StringBuilder();
        for (var y = 0; y < rows.Count; y++)
        {
            for (var x = 0; x < rows.Count; x++)
            {
                if (rows[y][x]) path.Append(CultureInfo.InvariantCulture, $"M{x} {y}h1v1h-1z");
            }
        }

        return string.Create(
            CultureInfo.InvariantCulture,
            $"""<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {rows.Count} {rows.Count}" role="img" aria-label="{Office.OfficeText.Say("QR code")}" shape-rendering="crispEdges"><rect width="{rows.Count}" height="{rows.Count}" fill="#fff"/><path d="{path}" fill="#000"/></svg>""");
    }

    /// <summary>As lines of half blocks for a terminal, light on dark.</summary>
    internal static IEnumerable<string> Lines(string text)
    {
        var rows = Rows(text);
        for (var y = 0; y < rows.Count; y += 2)
        {
            var line = new StringBuilder();
            for (var x = 0; x < rows.Count; x++)
            {
                // On a dark terminal the letters are light: what is white in the code is drawn.
                var (upper, lower) = (!rows[y][x], y + 1 >= rows.Count || !rows[y + 1][x]);
                line.Append((upper, lower) switch { (true, true) => '█', (true, false) => '▀', (false, true) => '▄', _ => ' ' });
            }

            yield return line.ToString();
        }
    }

    // The matrix has its quiet zone around it.
    private static List<System.Collections.BitArray> Rows(string text)
    {
        using var code = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        return code.ModuleMatrix;
    }
}
