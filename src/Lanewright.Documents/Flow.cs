using Lanewright.Core.Text;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace Lanewright.Documents;

/// <summary>What a document says of itself.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Author">Whose it is.</param>
/// <param name="Footer">Stands at the foot of every page, with the page's number.</param>
/// <param name="Created">When it is made.</param>
/// <param name="Culture">Its language.</param>
/// <param name="Keywords">For those who search.</param>
/// <param name="Lying">Whether the paper lies on its long side.</param>
internal sealed record FlowHead(
    string Title, string Subject, string Author, string Footer, DateTimeOffset Created, TextCulture Culture, string Keywords = "", bool Lying = false);

/// <summary>
/// Sets text, tables and pictures one below another and begins a page where one is full. Text is broken into lines within its
/// room, a word that is wider than its room within the word: nothing is ever set outside the margins or cut off.
/// </summary>
internal sealed partial class Flow : IDisposable
{
    internal const double Margin = 48;
    private const double FooterRoom = 44;
    private const double LineFactor = 1.28;

    private readonly PdfDocument document;
    private readonly UAManager tags;
    private readonly (double Wide, double High) size;
    private readonly string footer;
    private readonly TextCulture culture;
    private readonly int pages;
    private readonly Dictionary<(double, bool), XFont> fonts = [];
    private XGraphics graphics = null!;
    private PdfPage page = null!;
    private bool isText = true;

    /// <summary>A document as a file. It is drawn twice: the number of its pages stands on each of them.</summary>
    /// <param name="head">What it says of itself.</param>
    /// <param name="paper">Paper.</param>
    /// <param name="draw">Draws its content.</param>
    internal static byte[] Make(FlowHead head, Paper paper, Action<Flow> draw)
    {
        using var counted = new Flow(head, paper, 0);
        draw(counted);
        counted.EndPage();
        using var flow = new Flow(head, paper, counted.document.PageCount);
        draw(flow);
        return flow.End();
    }

    /// <summary>The language of a document as RFC 5646 writes it, with the country where the culture has both.</summary>
    internal static string TagOf(TextCulture culture) =>
        culture.Name.StartsWith(culture.Language.Code + "-", StringComparison.Ordinal) ? culture.Name : culture.Language.Code;

    private Flow(FlowHead head, Paper paper, int pages)
    {
        this.pages = pages;
        OpenFonts.Use();
        document = new();
        document.Info.Title = head.Title;
        document.Info.Subject = head.Subject;
        document.Info.Author = head.Author;
        document.Info.Keywords = head.Keywords;
        document.Info.CreationDate = head.Created.UtcDateTime;
        document.Info.Creator = "Lanewright";
        tags = UAManager.ForDocument(document);
        tags.SetDocumentLanguage(TagOf(head.Culture));
        culture = head.Culture;
        footer = head.Footer;
        size = paper is Paper.A4 ? (595.28, 841.89) : (612, 792);
        if (head.Lying) size = (size.High, size.Wide);
        NewPage();
    }

    internal double Y { get; set; }

    internal double Room => size.Wide - (2 * Margin);

    internal double Bottom => size.High - Margin - FooterRoom;

    internal void NewPage()
    {
        if (page is not null) EndPage();
        page = document.AddPage();
        page.Width = XUnit.FromPoint(size.Wide);
        page.Height = XUnit.FromPoint(size.High);
        graphics = XGraphics.FromPdfPage(page);
        Y = Margin;
    }

    /// <summary>Begins a page when less than this is left of the present one.</summary>
    internal void Need(double height)
    {
        if (Y + height > Bottom && Y > Margin) NewPage();
    }

    internal void Heading(string text, double fontSize = 11)
    {
        Need((fontSize * LineFactor) + 30);
        Y += 8;
        Text(text, fontSize, true, tag: PdfBlockLevelElementTag.Heading2);
        Line(Margin, Margin + Room, Y);
        Y += 4;
    }

    /// <summary>A paragraph over the whole width, or over a part of it.</summary>
    internal void Text(
        string text, double fontSize, bool bold = false, double? room = null, double left = 0,
        PdfBlockLevelElementTag tag = PdfBlockLevelElementTag.Paragraph)
    {
        var lines = Broken(text, fontSize, bold, room ?? Room);
        foreach (var line in lines)
        {
            Need(fontSize * LineFactor);
            Tagged(tag, () => graphics.DrawString(line, Font(fontSize, bold), XBrushes.Black, new XPoint(Margin + left, Y + fontSize)));
            Y += fontSize * LineFactor;
        }
    }

    /// <summary>Names and texts in two columns of pairs.</summary>
    internal void Pairs(IReadOnlyList<(string Name, string Text)> rows, double fontSize = 9)
    {
        var known = rows.Where(row => row.Text.Length > 0).ToList();
        const double gap = 16;
        var half = (Room - gap) / 2;
        var nameRoom = known.Count == 0 ? 0 : Math.Min(half * 0.45, known.Max(row => Width(row.Name, fontSize, false)) + 8);
        for (var i = 0; i < known.Count; i += 2)
        {
            var pair = known.Skip(i).Take(2).Select(row => (
                Names: Broken(row.Name, fontSize, false, nameRoom - 6), Texts: Broken(row.Text, fontSize, true, half - nameRoom))).ToList();
            var lines = pair.Max(one => Math.Max(one.Names.Count, one.Texts.Count));
            Need(lines * fontSize * LineFactor);
            for (var column = 0; column < pair.Count; column++)
            {
                var left = Margin + (column * (half + gap));
                for (var n = 0; n < pair[column].Names.Count; n++) At(pair[column].Names[n], fontSize, false, left, Y + (n * fontSize * LineFactor));
                for (var n = 0; n < pair[column].Texts.Count; n++) At(pair[column].Texts[n], fontSize, true, left + nameRoom, Y + (n * fontSize * LineFactor));
            }

            Y += (lines * fontSize * LineFactor) + 1.5;
        }
    }

    /// <summary>Pictures side by side, each at most as wide as half the page; a wide one alone.</summary>
    internal void Pictures(IReadOnlyList<string> svgs)
    {
        var drawings = svgs.Select(svg => new SvgDrawing(svg)).ToList();
        for (var i = 0; i < drawings.Count;)
        {
            var pair = drawings[i].Wide < 480 && i + 1 < drawings.Count && drawings[i + 1].Wide < 480;
            var row = drawings.Skip(i).Take(pair ? 2 : 1).ToList();
            var room = pair ? (Room - 20) / 2 : Math.Min(Room, row[0].Wide < 480 ? Room * 0.55 : Room);
            var scale = row.Min(one => Math.Min(room / one.Wide, (Bottom - Margin) * 0.5 / one.High));
            Need((row.Max(one => one.High) * scale) + 6);
            for (var n = 0; n < row.Count; n++)
            {
                var drawing = row[n];
                var left = Margin + (n * (room + 20));
                Graphic(
                    drawing.Described, new XRect(left, Y, drawing.Wide * scale, drawing.High * scale),
                    () => drawing.Draw(graphics, left, Y, scale, (points, bold) => Font(points, bold)));
            }

            Y += (row.Max(one => one.High) * scale) + 8;
            i += row.Count;
        }
    }

    /// <summary>Something drawn at a place of its own, with words for those who do not see it.</summary>
    internal void Graphic(string described, XRect box, Action draw) =>
        Switched(false, () =>
        {
            tags.StructureBuilder.BeginElement(PdfIllustrationElementTag.Figure, described, box);
            draw();
            tags.StructureBuilder.End();
        });

    internal XGraphics Graphics => graphics;

    /// <summary>One line at a place of its own.</summary>
    internal void At(string text, double fontSize, bool bold, double left, double top) => Tagged(
        PdfBlockLevelElementTag.Paragraph, () => graphics.DrawString(text, Font(fontSize, bold), XBrushes.Black, new XPoint(left, top + fontSize)));

    /// <summary>A line, which means nothing to those who do not see it.</summary>
    internal void Line(double from, double to, double at, double thick = 0.6) => Artifact(
        false, () => graphics.DrawLine(new XPen(XColors.Black, thick), from, at, to, at));

    private byte[] End()
    {
        EndPage();
        using var stream = new MemoryStream();
        document.Save(stream, closeStream: false);
        return stream.ToArray();
    }

    public void Dispose() => document.Dispose();

    /// <summary>Text in lines that fit.</summary>
    internal List<string> Broken(string text, double fontSize, bool bold, double room)
    {
        var font = Font(fontSize, bold);
        List<string> lines = [];
        foreach (var paragraph in Clean(text).Split('\n'))
        {
            var line = "";
            foreach (var word in paragraph.Split(' '))
            {
                var rest = word;
                var longer = line.Length == 0 ? rest : line + " " + rest;
                if (graphics.MeasureString(longer, font).Width <= room)
                {
                    line = longer;
                    continue;
                }

                if (line.Length > 0) lines.Add(line);
                while (rest.Length > 1 && graphics.MeasureString(rest, font).Width > room)
                {
                    var take = rest.Length - 1;
                    while (take > 1 && graphics.MeasureString(rest[..take], font).Width > room) take--;
                    if (char.IsHighSurrogate(rest[take - 1]) && take > 1) take--;
                    lines.Add(rest[..take]);
                    rest = rest[take..];
                }

                line = rest;
            }

            lines.Add(line);
        }

        return lines;
    }

    private static string Clean(string text) =>
        text.Any(c => char.IsControl(c) && c != '\n') ? new([.. text.Select(c => char.IsControl(c) && c != '\n' ? ' ' : c)]) : text;

    private double Width(string text, double fontSize, bool bold) => graphics.MeasureString(Clean(text).Replace('\n', ' '), Font(fontSize, bold)).Width;

    private void EndPage()
    {
        var number = culture.Say($"Page {document.PageCount} of {pages}");
        var font = Font(8, false);
        var right = graphics.MeasureString(number, font).Width;
        var at = size.High - Margin - FooterRoom + 23;
        Line(Margin, Margin + Room, at - 11);
        Artifact(true, () =>
        {
            graphics.DrawString(number, font, XBrushes.Black, new XPoint(Margin + Room - right, at));
            foreach (var line in Broken(footer, 8, false, Room - right - 12).Take(3))
            {
                graphics.DrawString(line, font, XBrushes.Black, new XPoint(Margin, at));
                at += 10;
            }
        });
        graphics.Dispose();
    }

    private void Artifact(bool text, Action draw) => Switched(text, () =>
    {
        tags.StructureBuilder.BeginArtifact();
        draw();
        tags.StructureBuilder.End();
    });

    private void Tagged(PdfBlockLevelElementTag tag, Action draw) => Switched(true, () =>
    {
        tags.StructureBuilder.BeginElement(tag);
        draw();
        tags.StructureBuilder.End();
    });

    private void Switched(bool toText, Action work)
    {
        if (toText != isText)
        {
            if (toText) tags.BeginTextMode();
            else tags.BeginGraphicMode();
            isText = toText;
        }

        work();
    }

    private XFont Font(double points, bool bold)
    {
        if (!fonts.TryGetValue((points, bold), out var font))
            fonts.Add((points, bold), font = new(OpenFonts.Family, points, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular));
        return font;
    }
}
