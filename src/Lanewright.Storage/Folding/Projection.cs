using System.Text.Json;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Spreading;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Records;

namespace Lanewright.Storage.Folding;

/// <summary>
/// Everything that is shown about one subject, computed from its entries and nothing else; so it can be thrown away and
/// made again at any time, and is never truth.
/// </summary>
internal sealed record Projection(
    TestRow? Test, IReadOnlyList<TestResultRow> Results, RegisterItem? Item, IReadOnlyList<SpreaderEvent> Events)
{
    private static readonly string[] SearchedFields = ["title", "spreader.id", "place", "people", "material.name"];

    /// <summary>The projection of a subject's entries, in order of number; at least one.</summary>
    internal static Projection Of(IReadOnlyList<Entry> entries)
    {
        var tests = entries.Where(e => e.Kind.StartsWith(EntryKinds.TestPrefix, StringComparison.Ordinal)).ToList();
        var items = entries.Where(e => e.Kind.StartsWith(EntryKinds.RegisterPrefix, StringComparison.Ordinal)).ToList();
        var events = entries.Where(e => e.Kind == EntryKinds.SpreaderEvent).ToList();
        var (test, results) = tests.Count == 0 ? (null, []) : TestOf(TestFold.Of(tests));
        return new(test, results, items.Count == 0 ? null : ItemOf(items), [.. Heads.Of(events).Where(Stays).Select(EventOf)]);
    }

    private static (TestRow Test, IReadOnlyList<TestResultRow> Results) TestOf(TestFold fold)
    {
        var first = fold.Begins.Count > 0 ? fold.Begins[0] : fold.Entries[0];
        var last = fold.Entries[^1];
        var (results, severity, problem) = TestComputation.Of(fold);
        var decision = fold.Decision;
        var texts = SearchedFields.Select(path => fold.Text(path) ?? "");
        var row = new TestRow
        {
            Id = fold.Id,
            Kind = fold.Kind ?? "",
            Spreader = fold.Spreader,
            SpreaderName = fold.Text("spreader.id") ?? "",
            Title = fold.Text("title") ?? "",
            Date = fold.Text("date") ?? "",
            Place = fold.Text("place") ?? "",
            Material = fold.Text("material.name") ?? "",
            State = fold.Decisions.Count > 0 ? TestRow.Decided : TestRow.Open,
            Entries = fold.Entries.Count,
            Photos = fold.Photos.Count,
            Conflicts = fold.Conflicts,
            Severity = severity is { } s ? ReportWords.Of(s) : null,
            Problem = problem,
            Verdict = decision is null ? null : Payload.Text(decision, "verdict"),
            DecidedBy = decision?.Person,
            DecidedAt = decision?.At,
            Keyed = decision is null ? null : Payload.Text(decision, "keyed"),
            ReadBack = decision is null ? null : Payload.Text(decision, "readBack"),
            BegunAt = first.At,
            BegunBy = first.Person,
            LastNumber = last.Number,
            Scale = fold.Text("scale.id") ?? "",
            Invented = fold.Text("invented") is { Length: > 0 } word && word is not ("no" or "false"),
            Search = string.Join(' ', texts.Append(fold.Id)).ToLowerInvariant(),
        };
        return (row, results);
    }

    // Among records that two offices wrote without knowing, the one that came last stands in front and the others are named.
    private static RegisterItem ItemOf(IReadOnlyList<Entry> entries)
    {
        var heads = Heads.Of(entries);
        var current = heads[^1];
        var others = heads.Where(head => head.Payload != current.Payload || head.Kind != current.Kind).Select(head => head.Id);
        return new()
        {
            Id = current.Subject,
            Kind = current.Kind[EntryKinds.RegisterPrefix.Length..],
            Payload = current.Payload,
            EntryId = current.Id,
            Number = current.Number,
            Retired = Payload.Flag(current, "retired"),
            Others = string.Join(' ', others),
        };
    }

    private static bool Stays(Entry entry) => !Payload.Flag(entry, "retired");

    private static SpreaderEvent EventOf(Entry entry) => new()
    {
        EntryId = entry.Id,
        Spreader = entry.Subject,
        Number = entry.Number,
        Event = Payload.Text(entry, "event") ?? "",
        Note = Payload.Text(entry, "note") ?? "",
        Date = Payload.Text(entry, "date") ?? "",
        Person = entry.Person,
        At = entry.At,
    };
}
