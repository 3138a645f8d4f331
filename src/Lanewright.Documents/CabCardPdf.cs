using System.Globalization;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Lanewright.Documents;

/// <summary>A card of a booklet.</summary>
/// <param name="Card">What it says.</param>
/// <param name="Units">Its units.</param>
public sealed record BookletCard(CabCard Card, UnitPreferences Units);

/// <summary>
/// Draws the card for the cab: one page, black on white, large enough to be read at arm's length from a cold seat. The smallest
/// type in a table is 12 pt; text that does not fit is made shorter or set smaller down to that, never cut off unseen.
/// </summary>
public static class CabCardPdf
{
    private const double SmallestTable = 12;
    private const double SmallestNote = 9;

    private static readonly Phrase[] Cautions =
    [
        "Nobody near auger, chain or spinner while it runs. Local rules and the maker's instructions come first.",
        "Another material, gate, tyres, sensor or hydraulics: calibrate again before this card is used.",
    ];

    /// <summary>The card as a PDF file.</summary>
    /// <param name="card">What it says.</param>
    /// <param name="paper">Its paper.</param>
    /// <param name="culture">Decimal mark and language.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentException">The table has more rows or columns than one page holds in 12 pt.</exception>
    public static byte[] Draw(CabCard card, CardPaper paper, TextCulture culture, UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(card);
        ArgumentNullException.ThrowIfNull(culture);
        ArgumentNullException.ThrowIfNull(units);
        OpenFonts.Use();
        using var document = new PdfDocument();
        document.Language = Flow.TagOf(culture);
        document.Info.Title = culture.Say($"Rate card, spreader {card.Spreader}");
        document.Info.Subject = card.Record;
        Page(document, card, paper, culture, units);
        return Saved(document);
    }

    /// <summary>Many cards in one PDF file, one a page, each in its own units.</summary>
    /// <param name="cards">The cards; at least one.</param>
    /// <param name="paper">Their paper.</param>
    /// <param name="culture">Decimal mark and language.</param>
    /// <exception cref="ArgumentException">A table has more rows or columns than one page holds in 12 pt.</exception>
    public static byte[] Booklet(IReadOnlyList<BookletCard> cards, CardPaper paper, TextCulture culture)
    {
        ArgumentNullException.ThrowIfNull(cards);
        ArgumentNullException.ThrowIfNull(culture);
        ArgumentOutOfRangeException.ThrowIfZero(cards.Count, nameof(cards));
        OpenFonts.Use();
        using var document = new PdfDocument();
        document.Language = Flow.TagOf(culture);
        document.Info.Title = culture.Say($"Rate cards, {cards.Count} spreaders");
        document.Info.Subject = culture.Say($"{cards[0].Card.Spreader} to {cards[^1].Card.Spreader}");
        foreach (var one in cards) Page(document, one.Card, paper, culture, one.Units);
        return Saved(document);
    }

    private static void Page(PdfDocument document, CabCard card, CardPaper paper, TextCulture culture, UnitPreferences units)
    {
        var page = document.AddPage();
        page.Width = XUnit.FromPoint(paper is CardPaper.A5 ? 595.28 : 792);
        page.Height = XUnit.FromPoint(paper is CardPaper.A5 ? 419.53 : 612);
        using var graphics = XGraphics.FromPdfPage(page);
        new Sheet(graphics, page.Width.Point, page.Height.Point, culture).Draw(card, units);
    }

    private static byte[] Saved(PdfDocument document)
    {
        document.Info.Creator = "Lanewright";
        using var stream = new MemoryStream();
        document.Save(stream, closeStream: false);
        return stream.ToArray();
    }

    private sealed class Sheet(XGraphics graphics, double width, double height, TextCulture culture)
    {
        private const double Margin = 26;
        private readonly double scale = width > 700 ? 1.35 : 1;
        private double y = Margin;

        internal void Draw(CabCard card, UnitPreferences units)
        {
            var right = width - Margin;
            var codeSize = card.Record.Length > 0 ? 76 * scale : 0;
            if (card.Record.Length > 0) QrMatrix.Draw(graphics, card.Record, right - codeSize, y, codeSize);
            var room = right - Margin - codeSize - 10;
            Heading(card, room);
            Facts(card, room);
            y = Math.Max(y, Margin + codeSize) + 4;
            Rule(2);
            Text(culture.Say(card.IsOpenLoop ? "Set this for the rate and speed" : "Can it hold the rate at this speed?"), 13 * scale, true, right - Margin);
            var below = Below(card, units);
            Table(card.Table, units, height - Margin - below);
            y = height - Margin - below + 6;
            if (card.Targets is { } targets) Lines(TargetText(targets), 11 * scale);
            Lines(Convention(card, units), 9.5 * scale);
            foreach (var caution in Cautions) Lines(culture.Say(caution), 9.5 * scale);
        }

        // Number large, material beside it, for a driver who climbs into any of the trucks.
        private void Heading(CabCard card, double room)
        {
            var number = card.Spreader.Length > 0 ? card.Spreader : culture.Say("Spreader");
            var size = Fitting(number, true, 36 * scale, room * 0.6);
            graphics.DrawString(number, Font(size, true), XBrushes.Black, new XPoint(Margin, y + size));
            var at = Margin + graphics.MeasureString(number, Font(size, true)).Width + 14;
            var beside = card.Invented ? $"{card.Material} {culture.Say("(invented data)")}" : card.Material;
            var small = Fitting(beside, false, 18 * scale, room - at + Margin);
            if (small < SmallestNote) (small, beside) = (SmallestNote, Shortened(beside, SmallestNote, false, room - at + Margin));
            graphics.DrawString(beside, Font(small, false), XBrushes.Black, new XPoint(at, y + size));
            y += size * 1.2;
        }

        // What is keyed in and the gate in 36 pt; who and when beside them.
        private void Facts(CabCard card, double room)
        {
            List<(string Name, string Value)> large = [];
            if (card.Constant.Length > 0) large.Add((culture.Say("In the controller"), culture.Say($"{new Reading(card.Constant)}")));
            if (card.Gate.Length > 0) large.Add((culture.Say("Gate"), card.Gate));
            List<string> small = [];
            if (card.PlusMinus is { } sure) small.Add(culture.Say($"Sure to ± {PercentText.Write(sure, culture)}"));
            if (card.Calibrated is { } day) small.Add(culture.Say(card.By.Length > 0 ? (Phrase)$"Calibrated {Day(day)}, {card.By}" : $"Calibrated {Day(day)}"));
            if (card.NextDue is { } due) small.Add(culture.Say($"Due again {Day(due)}"));
            var smallRoom = Math.Min(room * 0.4, 170 * scale);
            var wide = large.ConvertAll(one => graphics.MeasureString(one.Value, Font(36, true)).Width);
            var size36 = 36 * Math.Min(1, (room - smallRoom - (16 * large.Count)) / Math.Max(1, wide.Sum()));
            var left = Margin;
            for (var i = 0; i < large.Count; i++)
            {
                var size = size36;
                graphics.DrawString(large[i].Name, Font(11 * scale, false), XBrushes.Black, new XPoint(left, y + (11 * scale)));
                graphics.DrawString(large[i].Value, Font(size, true), XBrushes.Black, new XPoint(left, y + (13 * scale) + (size * 0.92)));
                left += Math.Max(wide[i] * size36 / 36, graphics.MeasureString(large[i].Name, Font(11 * scale, false)).Width) + 16;
            }

            var note = y;
            foreach (var one in small)
            {
                var size = Math.Max(SmallestNote, Fitting(one, true, 13 * scale, smallRoom));
                var line = Fitting(one, true, size, smallRoom) < size ? Shortened(one, size, true, smallRoom) : one;
                graphics.DrawString(line, Font(size, true), XBrushes.Black, new XPoint(Margin + room - smallRoom, note + size));
                note += 17 * scale;
            }

            y = Math.Max(note, large.Count > 0 ? y + (13 * scale) + 40 : y);
        }

        private string TargetText(ReportTable targets) =>
            culture.Say($"{targets.Title}: {string.Join("; ", targets.Rows.Select(row => $"{row[0].Word} {row[1].Word}"))}.");

        private string Convention(CabCard card, UnitPreferences units)
        {
            var lane = QuantityText.Write(card.LaneWidth, units[Dimension.Length], culture, NumberForm.Significant(3));
            return culture.Say(card.Lanes == 1
                ? (Phrase)$"Rates are for one lane, {lane} wide; one pass covers one lane."
                : $"Rates are for one lane, {lane} wide; one pass covers {QuantityText.WriteNumber(card.Lanes, culture, NumberForm.RoundTrip)} lanes.");
        }

        // What stands under the table, measured before the table is drawn.
        private double Below(CabCard card, UnitPreferences units)
        {
            var lines = Cautions.Sum(caution => Broken(culture.Say(caution), 9.5 * scale).Count) + Broken(Convention(card, units), 9.5 * scale).Count;
            var targets = card.Targets is { } t ? Broken(TargetText(t), 11 * scale).Count : 0;
            return (lines * 9.5 * scale * 1.25) + (targets * 11 * scale * 1.25) + 12;
        }

        private void Table(ReportTable table, UnitPreferences units, double bottom)
        {
            var columns = table.Columns.Count;
            // The rates' column is wider: its heading has the unit.
            var across = (width - (2 * Margin)) / (columns + 0.5);
            double Left(int c) => c == 0 ? Margin : Margin + ((c + 0.5) * across);
            double Wide(int c) => c == 0 ? across * 1.5 : across;
            // The heading has two lines, so it counts as a row and a half.
            var rowHeight = Math.Min(32 * scale, (bottom - y) / (table.Rows.Count + 1.5));
            var size = Math.Min(22 * scale, rowHeight * 0.62);
            string[][] rows = [[.. table.Columns.Select(c => c.Heading(culture, units))], .. table.Rows.Select(row => row.Select((cell, i) => cell.Text(table.Columns[i], culture, units)).ToArray())];
            var body = rows.Skip(1).SelectMany(row => row.Select((text, c) => Fitting(text, true, size, Wide(c) - 6))).Min();
            var heading = rows[0].SelectMany((text, c) => Halves(text).Select(half => Fitting(half, true, size, Wide(c) - 6))).Min();
            if (body < SmallestTable || heading < SmallestTable || rowHeight < SmallestTable * 1.25)
            {
                throw new ArgumentException(
                    culture.Say($"{table.Rows.Count} rates and {columns - 1} speeds do not fit one page in {SmallestTable} pt; take fewer, or larger paper."),
                    nameof(table));
            }

            for (var r = 0; r < rows.Length; r++)
            {
                var top = r == 0 ? y : y + ((r + 0.5) * rowHeight);
                var tall = r == 0 ? rowHeight * 1.5 : rowHeight;
                if (r > 0 && r % 2 == 0) graphics.DrawRectangle(new XSolidBrush(XColor.FromGrayScale(0.9)), Margin, top, width - (2 * Margin), tall);
                graphics.DrawLine(new XPen(XColors.Black, r < 2 ? 1.5 : 0.5), Margin, top, width - Margin, top);
                for (var c = 0; c < columns; c++) Cell(rows[r][c], c == 0, new XRect(Left(c), top, Wide(c) - 4, tall), r == 0 ? heading : body, r == 0);
            }

            var end = y + ((rows.Length + 0.5) * rowHeight);
            graphics.DrawLine(new XPen(XColors.Black, 1.5), Margin, end, width - Margin, end);
            y = end;
        }

        private void Cell(string text, bool isFirst, XRect box, double size, bool isHeading)
        {
            var format = isFirst ? XStringFormats.CenterLeft : XStringFormats.Center;
            var parts = isHeading ? Halves(text) : [text];
            var font = Font(parts.Length > 1 ? Math.Max(SmallestTable, Math.Min(size, box.Height * 0.45)) : size, isHeading || isFirst);
            for (var i = 0; i < parts.Length; i++)
                graphics.DrawString(parts[i], font, XBrushes.Black, new XRect(box.X, box.Y + (i * box.Height / parts.Length), box.Width, box.Height / parts.Length), format);
        }

        // "20 mph" and "Rate, lb/lane-mile" stand on two lines.
        private static string[] Halves(string heading)
        {
            var at = heading.IndexOf(' ', StringComparison.Ordinal);
            return at < 0 ? [heading] : [heading[..at].TrimEnd(','), heading[(at + 1)..]];
        }

        private void Text(string text, double size, bool bold, double room)
        {
            var own = Fitting(text, bold, size, room);
            if (own < SmallestNote) (own, text) = (SmallestNote, Shortened(text, SmallestNote, bold, room));
            graphics.DrawString(text, Font(own, bold), XBrushes.Black, new XPoint(Margin, y + own));
            y += own * 1.25;
        }

        private void Lines(string text, double size)
        {
            foreach (var line in Broken(text, size))
            {
                graphics.DrawString(line, Font(size, false), XBrushes.Black, new XPoint(Margin, y + size));
                y += size * 1.25;
            }
        }

        private List<string> Broken(string text, double size)
        {
            var font = Font(size, false);
            List<string> lines = [];
            var line = "";
            foreach (var word in text.Split(' '))
            {
                var longer = line.Length == 0 ? word : line + " " + word;
                if (line.Length > 0 && graphics.MeasureString(longer, font).Width > width - (2 * Margin))
                {
                    lines.Add(line);
                    line = word;
                }
                else
                {
                    line = longer;
                }
            }

            if (line.Length > 0) lines.Add(line);
            return lines;
        }

        private double Fitting(string text, bool bold, double size, double room)
        {
            var wide = text.Length == 0 ? 0 : graphics.MeasureString(text, Font(size, bold)).Width;
            return wide <= room ? size : size * room / wide;
        }

        private string Shortened(string text, double size, bool bold, double room)
        {
            while (text.Length > 1 && graphics.MeasureString(text + "…", Font(size, bold)).Width > room) text = text[..^1];
            return text + "…";
        }

        private void Rule(double thick)
        {
            graphics.DrawLine(new XPen(XColors.Black, thick), Margin, y, width - Margin, y);
            y += 6;
        }

        private static XFont Font(double size, bool bold) => new(OpenFonts.Family, size, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular);

        private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
    }
}
