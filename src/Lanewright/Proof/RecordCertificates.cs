using Lanewright.Core.Exchange;
using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Host;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Folding;

namespace Lanewright.Proof;

/// <summary>Certificates of recorded tests: of the record as it stood at one of its entries.</summary>
internal static class RecordCertificates
{
    /// <summary>The certificate of a test.</summary>
    /// <param name="entries">The test's own entries, in order of number, up to the one at which it is looked at; at least one.</param>
    /// <param name="rules">The yard's rules.</param>
    /// <param name="issued">When it is issued.</param>
    /// <param name="culture">Decimal mark.</param>
    /// <param name="address">Address of the record, for the code on paper.</param>
    internal static MadeCertificate Of(
        IReadOnlyList<Entry> entries, YardRules rules, DateTimeOffset issued, TextCulture culture, string address)
    {
        var fold = TestFold.Of(entries);
        if (fold.Conflicts > 0) return new(null, [], "There is no certificate: what is in conflict must be settled first.");
        var last = entries[^1];
        var context = new CertificateContext(rules.Yard, new(fold.Id, last.Number, last.Hash), issued, Server.Version, culture, null)
        {
            Address = address,
            YardTolerance = rules.Tolerance,
            Zone = fold.Begins.Count > 0 ? fold.Begins[0].Zone : "",
            Decision = fold.Decision is { } decision
                ? new(Text(decision, "verdict"), decision.Person, Text(decision, "why"), Text(decision, "keyed"), Text(decision, "readBack"))
                : null,
        };
        return TestComputation.Other(fold) is { } other ? CertificateRoad.Of(other, context) : CertificateRoad.Of(TestComputation.Sheet(fold), context);
    }

    /// <summary>The entries that belong to a test, of those about its subject.</summary>
    internal static IReadOnlyList<Entry> OfTest(IEnumerable<Entry> entries, long upTo = long.MaxValue) =>
        [.. entries.Where(entry => entry.Number <= upTo && entry.Kind.StartsWith(EntryKinds.TestPrefix, StringComparison.Ordinal))];

    private static string Text(Entry entry, string name) => Office.OfficeText.Member(entry.Payload, name);
}
