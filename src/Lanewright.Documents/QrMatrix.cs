using PdfSharp.Drawing;
using QRCoder;

namespace Lanewright.Documents;

/// <summary>Draws a QR code as vectors.</summary>
internal static class QrMatrix
{
    internal static void Draw(XGraphics graphics, string text, double left, double top, double size)
    {
        using var generator = new QRCodeGenerator();
        using var code = generator.CreateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var modules = code.ModuleMatrix;
        var one = size / modules.Count;
        for (var r = 0; r < modules.Count; r++)
        {
            // Runs of dark modules in one rectangle: fewer seams between them.
            for (var c = 0; c < modules.Count; c++)
            {
                var from = c;
                while (c < modules.Count && modules[r][c]) c++;
                if (c > from) graphics.DrawRectangle(XBrushes.Black, left + (from * one), top + (r * one), (c - from) * one, one);
            }
        }
    }
}
