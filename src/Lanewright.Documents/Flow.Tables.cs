namespace Lanewright.Documents;

/// <summary>Tables: how wide columns are, and rows.</summary>
internal sealed partial class Flow
{
    /// <summary>A table; its headings stand again on every page it reaches.</summary>
    internal void Table(CertificateTable table, double fontSize = 8.5)
    {
        const double pad = 5;
        var columns = table.Headings.Count;
        if (columns == 0) return;
        var (natural, least) = (new double[columns], new double[columns]);
        for (var c = 0; c < columns; c++)
        {
            natural[c] = Width(table.Headings[c], fontSize, true);
            least[c] = Longest(table.Headings[c], fontSize, true);
            foreach (var row in table.Rows.Where(row => c < row.Count))
            {
                natural[c] = Math.Max(natural[c], Width(row[c], fontSize, false));
                least[c] = Math.Max(least[c], Longest(row[c], fontSize, false));
            }

            natural[c] += 2 * pad;
            least[c] += 2 * pad;
        }

        var wide = Widths(natural, least, Room);
        var head = Cells(table.Headings, fontSize, true, wide, pad);
        // A heading with one row under it looks lost: three stay together.
        var first = table.Rows.Take(3).Sum(row => High(Cells(row, fontSize, false, wide, pad), fontSize));
        if (table.Caption.Length > 0)
        {
            Need(((fontSize + 1) * LineFactor) + High(head, fontSize) + first + 10);
            Y += 3;
            Text(table.Caption, fontSize + 0.5, true);
        }

        Row(head, table.Numeric, wide, pad, fontSize, true, table.Caption.Length > 0);
        foreach (var row in table.Rows)
        {
            var cells = Cells(row, fontSize, false, wide, pad);
            if (Y + High(cells, fontSize) > Bottom && Y > Margin)
            {
                NewPage();
                Row(head, table.Numeric, wide, pad, fontSize, true);
            }

            Row(cells, table.Numeric, wide, pad, fontSize, false);
        }

        Line(Margin, Margin + wide.Sum(), Y, 0.8);
        Y += 6;
    }

    private double Longest(string text, double fontSize, bool bold) => text.Split((char[])[' ', '\n']).Max(word => Width(word, fontSize, bold));

    // Every column has room for its longest word, where all of them can have it; what is left over is shared.
    private static double[] Widths(double[] natural, double[] least, double room)
    {
        if (natural.Sum() <= room || least.Sum() >= room) return Fair(natural, room);
        var more = Fair([.. natural.Zip(least, (full, word) => full - word)], room - least.Sum());
        return [.. least.Zip(more, (word, rest) => word + rest)];
    }

    // Narrow columns keep their width; the wide ones share what is left.
    private static double[] Fair(double[] natural, double room)
    {
        var total = natural.Sum();
        if (total <= room) return [.. natural.Select(one => one * Math.Min(room / total, 1.6))];
        var wide = new double[natural.Length];
        var left = room;
        var open = Enumerable.Range(0, natural.Length).OrderBy(c => natural[c]).ToList();
        for (var i = 0; i < open.Count; i++)
        {
            wide[open[i]] = Math.Min(natural[open[i]], left / (open.Count - i));
            left -= wide[open[i]];
        }

        return wide;
    }

    private List<string>[] Cells(IReadOnlyList<string> row, double fontSize, bool bold, double[] wide, double pad) =>
        [.. wide.Select((room, c) => c < row.Count ? Broken(row[c], fontSize, bold, Math.Max(4, room - (2 * pad) + 0.01)) : [])];

    private static double High(List<string>[] cells, double fontSize) => (cells.Max(cell => cell.Count) * fontSize * LineFactor) + 4;

    private void Row(List<string>[] cells, IReadOnlyList<bool> numeric, double[] wide, double pad, double fontSize, bool isHead, bool lined = true)
    {
        var high = High(cells, fontSize);
        Need(high);
        if (lined) Line(Margin, Margin + wide.Sum(), Y, isHead ? 0.8 : 0.3);
        var left = Margin;
        for (var c = 0; c < cells.Length; c++)
        {
            for (var n = 0; n < cells[c].Count; n++)
            {
                var line = cells[c][n];
                var x = c < numeric.Count && numeric[c]
                    ? left + wide[c] - pad - graphics.MeasureString(line, Font(fontSize, isHead)).Width
                    : left + pad;
                At(line, fontSize, isHead, x, Y + 1.5 + (n * fontSize * LineFactor));
            }

            left += wide[c];
        }

        Y += high;
    }
}
