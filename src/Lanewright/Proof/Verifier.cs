using System.Globalization;
using System.Text;
using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Storage.Database;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Transfer;

namespace Lanewright.Proof;

/// <summary>
/// Says of a certificate or an export what, if anything, was changed: its seal, whose seal it is, and its figures worked out again
/// from the records as they stood at the entry it names. Whatever the file holds, the answer is words.
/// </summary>
/// <param name="source">The records to hold the file against; null for none.</param>
/// <param name="fingerprint">Fingerprint of the yard's key; null when it is not known.</param>
internal sealed class Verifier(RecordSource? source, string? fingerprint)
{
    /// <summary>Most bytes of a certificate.</summary>
    internal const int MostCertificate = 20 * 1024 * 1024;

    private const int MostShown = 20;
    private readonly List<VerifiedLine> lines = [];

    /// <summary>Looks at a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="most">Most bytes that an export may unpack to; null for no limit.</param>
    internal async Task<Verified> LookAsync(string path, long? most = null)
    {
        await using var file = new FileStream(path, FileMode.Open, FileAccess.Read);
        var head = new byte[Math.Min(5, file.Length)];
        file.ReadExactly(head);
        var kind = head.AsSpan().StartsWith("%PDF-"u8) ? "Certificate on paper (PDF)"
            : head.AsSpan().StartsWith("PK"u8) ? "Export"
            : head.AsSpan().StartsWith("<?xml"u8) ? "Certificate for machines (XML)"
            : null;
        if (kind is null)
        {
            Say(Standing.Bad, "A certificate in PDF or XML, or an export, was expected; the file begins as none of them.");
            return new("Unknown file", lines);
        }

        var sealHolds = LookAtSeal(file);
        if (kind == "Export")
        {
            file.Close();
            await LookAtExportAsync(path, most);
            return new(kind, lines);
        }

        if (file.Length > MostCertificate)
        {
            Say(Standing.Bad, $"A certificate has at most {MostCertificate / 1048576} MB; this file is longer and was not looked at.");
            return new(kind, lines);
        }

        var bytes = new byte[file.Length];
        file.Position = 0;
        file.ReadExactly(bytes);
        await LookAtStatementAsync(bytes, kind.Contains("XML", StringComparison.Ordinal), sealHolds);
        return new(kind, lines);
    }

    private bool LookAtSeal(Stream file)
    {
        if (Seal.Read(file) is not { } seal)
        {
            Say(Standing.Bad, "The file has no seal that can be read: it was never sealed, or its end was changed or cut off.");
            return false;
        }

        if (!seal.Holds)
        {
            Say(Standing.Bad, "The seal is broken: the file was changed after it was sealed.");
            return false;
        }

        Say(Standing.Good, "The seal holds: every byte is as it was when the file was sealed.");
        var own = YardKey.FingerprintOf(seal.PublicKey);
        if (fingerprint is null)
            Say(Standing.Note, $"Sealed with the key {own}. Compare this with what the yard itself says its key is: anybody can seal a file with a key of their own.");
        else if (Bare(own) == Bare(fingerprint)) Say(Standing.Good, $"Sealed with the yard's key, {own}.");
        else Say(Standing.Bad, $"Sealed with another key than the yard's: {own}; the yard's is {fingerprint}.");
        return true;
    }

    private async Task LookAtStatementAsync(byte[] bytes, bool isXml, bool sealHolds)
    {
        if (SealedStatement.Find(bytes) is not { } statement)
        {
            Say(Standing.Bad, "The file carries no statement of its figures that can be read.");
            return;
        }

        Say(Standing.Note, $"It says: number {Excerpt.Of(statement["number"])}, {Excerpt.Of(statement["kind"])} of {Excerpt.Of(statement["item"])}, {Excerpt.Of(statement["date"])}.");
        if (statement.Record is not { } record)
        {
            Say(Standing.Note, "It is from a sheet that is in no records, so there is nothing to hold it against.");
            return;
        }

        if (source is null)
        {
            Say(Standing.Note, $"It names entry {record.Entry} of the record {Excerpt.Of(record.Test)}. Name the records (--data) or an export (--export) to hold it against them.");
            return;
        }

        var all = RecordCertificates.OfTest(await source.Test(record.Test));
        var then = all.Where(entry => entry.Number <= record.Entry).ToList();
        if (then.Count == 0 || then[^1].Number != record.Entry)
        {
            Say(Standing.Bad, $"{Capital(source.Name)} have no entry {record.Entry} of the record {Excerpt.Of(record.Test)}.");
            return;
        }

        if (then.FirstOrDefault(entry => EntryHash.Of(entry) != entry.Hash) is { } changed)
            Say(Standing.Bad, $"Entry {changed.Number} in {source.Name} was changed: its hash differs.");
        if (then[^1].Hash != record.Hash)
            Say(Standing.Bad, $"Entry {record.Entry} has another hash in {source.Name} than on the certificate: one of the two was changed.");
        Compare(statement, then, bytes, isXml, sealHolds);
        if (all.Count > then.Count)
            Say(Standing.Note, $"{all.Count - then.Count} entries were added to the record since; the newest certificate may say something else.");
    }

    private void Compare(Statement statement, IReadOnlyList<Entry> entries, byte[] bytes, bool isXml, bool sealHolds)
    {
        var issued = DateTimeOffset.TryParse(statement["issued"], CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at) ? at : DateTimeOffset.UnixEpoch;
        if (RecordCertificates.Of(entries, new YardRules(), issued, TextCulture.UnitedStates, "").Certificate is not { } now)
        {
            Say(Standing.Bad, $"No certificate follows from {source!.Name} as they stood then.");
            return;
        }

        var again = Statement.Read(Statement.Write(now))!;
        var differences = Statement.Differences(statement, again);
        foreach (var (path, said, is_) in differences.Take(MostShown))
            Say(Standing.Bad, $"{Excerpt.Of(path)}: the file says {Named(said)}; from {source!.Name} follows {Named(is_)}.");
        if (differences.Count > 0 && statement["program"] != again["program"])
            Say(Standing.Note, $"The file was made by version {Excerpt.Of(statement["program"])}, this is {again["program"]}: another method may give other figures.");
        if (differences.Count == 0) Say(Standing.Good, $"All {statement.Values.Count} statements for machines follow from {source!.Name} as they stood at entry {entries[^1].Number}.");
        if (sealHolds) return;
        // What people read may have been changed even where the statement was not.
        if (isXml) CompareLines(bytes, now with { Context = now.Context with { Version = statement["program"] } });
        foreach (var result in now.Results)
            Say(Standing.Note, $"The record says: {result.Name} {result.Text}.");
    }

    private void CompareLines(byte[] bytes, Certificate now)
    {
        var said = Figures(Encoding.UTF8.GetString(bytes));
        var real = Figures(Encoding.UTF8.GetString(DigitalCertificate.Write(now)));
        var shown = 0;
        for (var i = 0; i < Math.Max(said.Count, real.Count) && shown < MostShown; i++)
        {
            var (a, b) = (i < said.Count ? said[i] : "nothing", i < real.Count ? real[i] : "nothing");
            if (a == b) continue;
            Say(Standing.Bad, $"Number {i + 1} of the XML: the file says {Excerpt.Of(a)}; from the record follows {b}.");
            shown++;
        }
    }

    private static List<string> Figures(string xml) =>
        [.. xml.Split('\n').Select(line => line.Trim()).Where(line => line.StartsWith("<si:", StringComparison.Ordinal) && line.Contains("</si:", StringComparison.Ordinal))];

    private async Task LookAtExportAsync(string path, long? most)
    {
        List<(long Number, string Hash)> hashes = [];
        try
        {
            var report = Export.Check(path, entry => hashes.Add((entry.Number, entry.Hash)), most);
            foreach (var problem in report.Problems.Take(MostShown)) Say(Standing.Bad, problem.What);
            if (report.IsWhole) Say(Standing.Good, $"The chain is whole: {report.Entries} entries, last hash {report.LastHash}.");
        }
        catch (RecordsException wrong)
        {
            Say(Standing.Bad, wrong.Message);
            return;
        }
        catch (Exception wrong) when (wrong is IOException or InvalidDataException or ArgumentException or NotSupportedException or FormatException or InvalidOperationException)
        {
            Say(Standing.Bad, $"The file cannot be unpacked: {wrong.Message}");
            return;
        }

        if (source is null)
        {
            Say(Standing.Note, "Name the records (--data) to hold the export against them.");
            return;
        }

        var (at, differ) = (0, 0);
        for (long after = 0; at < hashes.Count;)
        {
            var some = await source.After(after, 2000);
            if (some.Count == 0) break;
            foreach (var entry in some)
            {
                if (at == hashes.Count) break;
                if (hashes[at] != (entry.Number, EntryHash.Of(entry)) && ++differ == 1)
                    Say(Standing.Bad, $"Entry {hashes[at].Number} differs between the export and {source.Name}.");
                at++;
            }

            after = some[^1].Number;
        }

        var missing = hashes.Count - at;
        if (missing > 0) Say(Standing.Bad, $"{missing} entries of the export are not in {source.Name}: something was taken off their end.");
        if (differ > 1) Say(Standing.Bad, $"{differ} entries differ in all.");
        if (differ == 0 && missing == 0) Say(Standing.Good, $"All {hashes.Count} entries are those of {source.Name}.");
    }

    private void Say(Standing standing, string text) => lines.Add(new(standing, text));

    private static string Named(string value) => value.Length == 0 ? "nothing" : Excerpt.Of(value);

    private static string Bare(string fingerprint) => fingerprint.Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant();

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
