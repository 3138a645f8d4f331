using System.Security.Cryptography;
using System.Text;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Office;
using Lanewright.Storage.Records;

namespace Lanewright.Lists;

/// <summary>What becomes of a row.</summary>
internal enum RowFate
{
    /// <summary>It is a new record.</summary>
    New,

    /// <summary>It changes a record.</summary>
    Changed,

    /// <summary>The register says the same already.</summary>
    Unchanged,

    /// <summary>It cannot be used.</summary>
    Refused,
}

/// <summary>A row with what becomes of it.</summary>
/// <param name="Row">The row.</param>
/// <param name="Name">The name or number of its record.</param>
/// <param name="Fate">What becomes of it.</param>
internal sealed record PlannedRow(ListRow Row, string Name, RowFate Fate)
{
    /// <summary>Why it is refused.</summary>
    internal IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>What changes: field, before, after.</summary>
    internal IReadOnlyList<(string Path, string Before, string After)> Changes { get; init; } = [];

    /// <summary>The record; null for a new one.</summary>
    internal RegisterItem? Item { get; init; }

    /// <summary>What is written; null when nothing is.</summary>
    internal string? Payload { get; init; }
}

/// <summary>What taking in a list would do to the register.</summary>
internal sealed record ListPlan(RegisterKind Kind, ListFile File, IReadOnlyList<PlannedRow> Rows)
{
    /// <summary>What keeps the whole file from being used; null for nothing.</summary>
    internal Finding? Problem => File.Problem;

    /// <summary>Tells this plan from that of another file or another state of the register.</summary>
    internal string Mark => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(
        string.Join('\n', Rows.Select(row => $"{row.Row.Line} {row.Fate} {row.Item?.EntryId} {row.Payload}")))));

    internal int Count(RowFate fate) => Rows.Count(row => row.Fate == fate);

    /// <summary>Works out what a file would do.</summary>
    internal static ListPlan Of(byte[] bytes, RegisterKind kind, IReadOnlyList<RegisterRow> register, TextCulture culture)
    {
        var file = ListFile.Read(bytes, kind);
        var known = register.ToLookup(row => row.Texts.GetValueOrDefault(kind.Key, "").Trim(), StringComparer.OrdinalIgnoreCase);
        var seen = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        return new(kind, file, [.. file.Rows.Select(row => Plan(row, file, kind, known, seen, culture))]);
    }

    /// <summary>The changes that the register needs.</summary>
    internal IReadOnlyList<OfficeChange> ChangesOf(string why) =>
    [
        .. Rows.Where(row => row.Payload is not null).Select(row => new OfficeChange(
            Kind.Entry, row.Item?.Id ?? OfficeChange.NewId(), row.Payload!, row.Item?.EntryId, row.Item is null ? null : why)),
    ];

    /// <summary>The refused rows as they were, with the reason in a column of its own.</summary>
    internal IEnumerable<string[]> Refused()
    {
        var width = File.Headings.Count;
        yield return [.. File.Headings.Where((_, i) => !IsReason(i)), ListFile.Reason];
        foreach (var row in Rows.Where(row => row.Fate is RowFate.Refused))
        {
            var cells = Enumerable.Range(0, Math.Max(width, row.Row.Cells.Count)).Where(i => !IsReason(i))
                .Select(i => i < row.Row.Cells.Count ? row.Row.Cells[i] : "");
            yield return [.. cells, OfficeText.Say($"line {row.Row.Line}: {string.Join(" ", row.Findings.Select(Say))}")];
        }

        bool IsReason(int i) => i < File.Columns.Count && File.Columns[i] is null && File.Headings[i].Equals(ListFile.Reason, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>A finding about a row, with its field.</summary>
    internal static string Say(Finding finding) =>
        finding.Field.Length > 0 ? $"{finding.Field}: {OfficeText.Say(finding)}" : OfficeText.Say(finding);

    private static PlannedRow Plan(
        ListRow row, ListFile file, RegisterKind kind, ILookup<string, RegisterRow> known, Dictionary<string, int> seen, TextCulture culture)
    {
        var texts = new Dictionary<string, string>(StringComparer.Ordinal);
        for (var i = 0; i < file.Columns.Count && i < row.Cells.Count; i++)
        {
            if (file.Columns[i] is { } column) texts[column.Path] = column.Text(row.Cells[i]);
        }

        var name = texts.GetValueOrDefault(kind.Key, "").Trim();
        var named = FindingValue.Text("read", Excerpt.Of(name));
        var there = known[name].ToList();
        if (row.Surplus is not null) return Refuse(RegisterFindings.CellSurplus.At("", FindingValue.Text("read", Excerpt.Of(row.Surplus))));
        if (name.Length > 0 && !seen.TryAdd(name, row.Line)) return Refuse(RegisterFindings.RowTwice.At(kind.Key, named, Place.Count("line", seen[name])));
        if (name.Length > 0 && there.Count > 1) return Refuse(RegisterFindings.SeveralRecords.At(kind.Key, named));
        if (there is [{ Item.Others.Length: > 0 }]) return Refuse(RegisterFindings.Unsettled.At(kind.Key, named));
        var item = name.Length > 0 && there.Count == 1 ? there[0] : null;

        // What has no column stays as it is in the register; the cells alone are in the writer's culture.
        var typed = kind.Take(texts, culture);
        var wrong = typed.Findings.Where(one => one.Severity is Severity.Stop && (one.Field.Length == 0 || texts.ContainsKey(one.Field))).ToList();
        if (wrong.Count > 0) return Refuse([.. wrong]);
        var before = item is null ? [] : Texts(kind.Take(KnownTexts(item, kind), TextCulture.Invariant));
        var after = new Dictionary<string, string>(before, StringComparer.Ordinal);
        var written = Texts(typed);
        foreach (var path in texts.Keys)
        {
            if (written.TryGetValue(path, out var text)) after[path] = text;
            else after.Remove(path);
        }

        var whole = kind.Take(after, TextCulture.Invariant);
        if (!whole.IsUsable) return Refuse([.. whole.Findings.Where(one => one.Severity is Severity.Stop)]);
        var changes = kind.Fields.Select(field => (field.Path, before.GetValueOrDefault(field.Path, ""), after.GetValueOrDefault(field.Path, "")))
            .Where(change => change.Item2 != change.Item3).ToList();
        if (item is not null && changes.Count == 0) return new(row, name, RowFate.Unchanged) { Item = item.Item };
        return new(row, name, item is null ? RowFate.New : RowFate.Changed)
        {
            Item = item?.Item,
            Changes = changes,
            Payload = RegisterPayload.Write(whole.Fields, item?.Item.Payload),
        };

        PlannedRow Refuse(params Finding[] findings) => new(row, name, RowFate.Refused) { Findings = findings };
    }

    private static Dictionary<string, string> KnownTexts(RegisterRow row, RegisterKind kind) =>
        row.Texts.Where(text => kind.Fields.Any(field => field.Path == text.Key)).ToDictionary(StringComparer.Ordinal);

    // "no" to "no longer in use" is what holds without a word.
    private static Dictionary<string, string> Texts(RegisterTexts read) =>
        read.Fields.Where(field => field.Text is not null && !(field.Path == "retired" && field.Text == "no"))
            .ToDictionary(field => field.Path, field => field.Text!, StringComparer.Ordinal);
}
