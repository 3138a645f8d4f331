using System.Globalization;
using System.Text;
using Lanewright.Core.Findings;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>Reads one scalar of a sheet; reports what is wrong with it and then returns null.</summary>
internal sealed class ScalarReader(FindingList findings)
{
    internal FindingList Findings => findings;

    internal string? Text(SheetNode node, string doc, int maxLength, bool severalLines)
    {
        if (node.Kind != NodeKind.Text) return Refuse<string>(node, "a text", doc);

        var text = node.Literal.Trim();
        var length = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            length++;
            if (Excerpt.IsPrintable(rune) || (severalLines && rune.Value is '\n' or '\r' or '\t')) continue;
            Report(
                ReadFindings.Unprintable, node,
                Read(text), FindingValue.Text("character", rune.Value.ToString("X4", CultureInfo.InvariantCulture)));
            return null;
        }

        if (length <= maxLength) return text;
        Report(ReadFindings.TooLong, node, Place.Count("count", length), Place.Count("limit", maxLength));
        return null;
    }

    internal bool? YesNo(SheetNode node, string doc)
    {
        const string expected = "yes or no";
        if (node.Kind is not (NodeKind.Text or NodeKind.Flag)) return RefuseValue<bool>(node, expected, doc);

        var word = node.Literal.Trim();
        if (Same(word, "yes") || Same(word, "true")) return true;
        if (Same(word, "no") || Same(word, "false")) return false;
        Report(ReadFindings.UnknownWord, node, Read(word), FindingValue.Text("words", "yes, no"));
        return null;
    }

    internal T? Choice<T>(SheetNode node, string doc, IReadOnlyList<Word<T>> words)
        where T : struct
    {
        var listed = string.Join(", ", words.Select(word => word.Text));
        if (node.Kind != NodeKind.Text) return RefuseValue<T>(node, $"one of the words {listed}", doc);

        var typed = node.Literal.Trim();
        foreach (var word in words)
            if (Same(typed, word.Text)) return word.Value;
        Report(ReadFindings.UnknownWord, node, Read(typed), FindingValue.Text("words", listed));
        return null;
    }

    internal DateOnly? Date(SheetNode node, string doc)
    {
        if (node.Kind != NodeKind.Text) return RefuseValue<DateOnly>(node, "a date such as 2026-01-31", doc);

        var date = IsoText.Date(node.Literal.Trim());
        if (date is null) Report(ReadFindings.NotADate, node, Read(node.Literal));
        return date;
    }

    internal DateTimeOffset? Moment(SheetNode node, string doc)
    {
        if (node.Kind != NodeKind.Text)
            return RefuseValue<DateTimeOffset>(node, "a date and time such as 2026-01-31T07:45:00Z", doc);

        var moment = IsoText.Moment(node.Literal.Trim());
        if (moment is null) Report(ReadFindings.NotAMoment, node, Read(node.Literal));
        return moment;
    }

    /// <summary>Reports a node of the wrong kind.</summary>
    internal void WrongShape(SheetNode node, Phrase expected, string doc) =>
        Report(
            ReadFindings.WrongShape, node,
            FindingValue.Said("found", Found(node)), FindingValue.Said("expected", expected),
            FindingValue.Said("doc", doc));

    internal void Report(FindingKind kind, SheetNode node, params FindingValue[] values) =>
        findings.Add(kind.At(node.Path, [.. values, .. Place.Of(node)]));

    private static Phrase Found(SheetNode node) => node.Kind switch
    {
        NodeKind.Map => "a group of fields",
        NodeKind.List => "a list",
        NodeKind.Number => (Phrase)$"the number {Excerpt.Of(node.Literal, 30)}",
        NodeKind.Text => $"the text \"{Excerpt.Of(node.Literal, 30)}\"",
        NodeKind.Flag => $"{node.Literal}",
        _ => "nothing",
    };

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);

    private static FindingValue Read(string text) => FindingValue.Text("read", Excerpt.Of(text.Trim()));

    private T? Refuse<T>(SheetNode node, Phrase expected, string doc)
        where T : class
    {
        WrongShape(node, expected, doc);
        return null;
    }

    private T? RefuseValue<T>(SheetNode node, Phrase expected, string doc)
        where T : struct
    {
        WrongShape(node, expected, doc);
        return null;
    }
}
