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
/// <param name="culture">Language of the answer.</param>
internal sealed class Verifier(RecordSource? source, string? fingerprint, TextCulture culture)
{
    /// <summary>Most bytes of a certificate.</summary>
    internal const int MostCertificate = 20 * 1024 * 1024;

    private const int MostShown = 20;
    private const int MostLines = 4000;

    private const int MostPages = 12;

    // Stands for what cannot be known; nobody types it.
    private const string Unknown = "~~~~";

    private readonly List<VerifiedLine> lines = [];

    /// <summary>Looks at a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="most">Most bytes that an export may unpack to; null for no limit.</param>
    internal async Task<Verified> LookAsync(string path, long? most = null)
    {
        await using var file = new FileStream(path, FileMode.Open, FileAccess.Read);
        var head = new byte[Math.Min(5, file.Length)];
        file.ReadExactly(head);
        var isExport = head.AsSpan().StartsWith("PK"u8);
        var isXml = head.AsSpan().StartsWith("<?xml"u8);
        if (!isExport && !isXml && !head.AsSpan().StartsWith("%PDF-"u8))
        {
            Say(Standing.Bad, "A certificate in PDF or XML, or an export, was expected; the file begins as none of them.");
            return new("Unknown file", lines, culture);
        }

        Phrase kind = isExport ? "Export" : isXml ? "Certificate for machines (XML)" : "Certificate on paper (PDF)";
        var seal = LookAtSeal(file);
        if (isExport)
        {
            file.Close();
            await LookAtExportAsync(path, most);
            return new(kind, lines, culture);
        }

        if (file.Length > MostCertificate)
        {
            Say(Standing.Bad, $"A certificate has at most {MostCertificate / 1048576} MB; this file is longer and was not looked at.");
            return new(kind, lines, culture);
        }

        var bytes = new byte[file.Length];
        file.Position = 0;
        file.ReadExactly(bytes);
        await LookAtStatementAsync(bytes, isXml, seal);
        return new(kind, lines, culture);
    }

    private Trust LookAtSeal(Stream file)
    {
        if (Seal.Read(file) is not { } seal)
        {
            Say(Standing.Bad, "The file has no seal that can be read: it was never sealed, or its end was changed or cut off.");
            return Trust.None;
        }

        if (!seal.Holds)
        {
            Say(Standing.Bad, "The seal is broken: the file was changed after it was sealed.");
            return Trust.None;
        }

        Say(Standing.Good, "The seal holds: every byte is as it was when the file was sealed.");
        var own = YardKey.FingerprintOf(seal.PublicKey);
        if (fingerprint is null)
        {
            Say(Standing.Note, $"Sealed with the key {own}. Compare this with what the yard itself says its key is: anybody can seal a file with a key of their own.");
            return Trust.Somebody;
        }

        if (Bare(own) == Bare(fingerprint))
        {
            Say(Standing.Good, $"Sealed with the yard's key, {own}.");
            return Trust.Yard;
        }

        Say(Standing.Bad, $"Sealed with another key than the yard's: {own}; the yard's is {fingerprint}.");
        return Trust.Somebody;
    }

    private async Task LookAtStatementAsync(byte[] bytes, bool isXml, Trust seal)
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
            Say(Standing.Bad, $"There is no entry {record.Entry} of the record {Excerpt.Of(record.Test)} in {source.Name}.");
            return;
        }

        if (then.FirstOrDefault(entry => EntryHash.Of(entry) != entry.Hash) is { } changed)
            Say(Standing.Bad, $"Entry {changed.Number} in {source.Name} was changed: its hash differs.");
        if (then[^1].Hash != record.Hash)
            Say(Standing.Bad, $"Entry {record.Entry} has another hash in {source.Name} than on the certificate: one of the two was changed.");
        Compare(statement, then, bytes, isXml, seal);
        if (all.Count > then.Count)
            Say(Standing.Note, $"{all.Count - then.Count} entry was added to the record since; the newest certificate may say something else.|{all.Count - then.Count} entries were added to the record since; the newest certificate may say something else.");
    }

    private void Compare(Statement statement, IReadOnlyList<Entry> entries, byte[] bytes, bool isXml, Trust seal)
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
        var isOtherVersion = statement["program"] != again["program"];
        if (differences.Count > 0 && isOtherVersion)
            Say(Standing.Note, $"The file was made by version {Excerpt.Of(statement["program"])}, this is {again["program"]}: another method may give other figures.");
        if (differences.Count == 0) Say(Standing.Good, $"All {statement.Values.Count} statements for machines follow from {source!.Name} as they stood at entry {entries[^1].Number}.");
        if (seal is Trust.Yard) return;
        // What people read may have been changed even where the statement was not.
        CompareText(bytes, isXml, entries, statement, issued, isOtherVersion);
        if (seal is not Trust.None) return;
        foreach (var result in now.Results)
            Say(Standing.Note, $"The record says: {result.Name} {result.Text}.");
    }

    private void CompareText(byte[] bytes, bool isXml, IReadOnlyList<Entry> entries, Statement statement, DateTimeOffset issued, bool isOtherVersion)
    {
        var said = isXml ? XmlLines(bytes) : PaperText.Lines(bytes);
        if (said.Count == 0)
        {
            Say(Standing.Note, "The text of the paper cannot be read here, so its words were not compared.");
            return;
        }

        // The marks of numbers are not known where the language does not tell them: the reading that fits best is the file's.
        var changed = CulturesOf(isXml ? XmlLanguage(bytes) : PaperText.LanguageOf(bytes))
            .Select(own => Changed(said, Again(bytes, isXml, entries, statement, issued, own, said), isXml ? null : own)).MinBy(lines => lines.Count)!;
        if (changed.Count == 0) Say(Standing.Good, $"All {said.Count} lines of text follow from {source!.Name}, but for what the yard says of itself.");
        foreach (var one in changed.Take(MostShown))
        {
            Say(
                isOtherVersion ? Standing.Note : Standing.Bad,
                $"In the text: the file says {Named(one.Said)}; from the record follows {Named(one.Real)} ({Excerpt.Of(one.Line, 120)}).");
        }
    }

    // What stands at the foot of every page stands elsewhere among the lines when the yard's address is longer.
    private static IReadOnlyList<ChangedLine> Changed(IReadOnlyList<string> said, IReadOnlyList<string> real, TextCulture? paper)
    {
        if (paper is null) return ChangedLines.Between(said, real, Unknown);
        var numbers = Enumerable.Range(1, MostPages).SelectMany(of => Enumerable.Range(1, of).Select(page => paper.Say($"Page {page} of {of}"))).ToHashSet(StringComparer.Ordinal);
        var pages = real.Count(numbers.Contains);
        var feet = real.CountBy(line => line).Where(line => pages > 1 && line.Value == pages && line.Key != Unknown).Select(line => line.Key).Concat(numbers).ToHashSet(StringComparer.Ordinal);
        return ChangedLines.Between([.. said.Where(line => !feet.Contains(line))], [.. real.Where(line => !feet.Contains(line))], Unknown);
    }

    private static IReadOnlyList<string> Again(
        byte[] bytes, bool isXml, IReadOnlyList<Entry> entries, Statement statement, DateTimeOffset issued, TextCulture own, IReadOnlyList<string> said)
    {
        // What the yard says of itself is in no test's record. A line of it stands for itself; only whether there is an accreditation shows.
        var yard = new YardFacts { Name = Unknown, Address = Unknown, Customer = Unknown };
        var made = RecordCertificates.Of(entries, new YardRules { Yard = yard }, issued, own, "").Certificate!;
        if (!said.Any(line => line.Contains(made.Title, StringComparison.Ordinal)))
            made = RecordCertificates.Of(entries, new YardRules { Yard = yard with { Accreditation = Unknown } }, issued, own, "").Certificate!;
        made = made with
        {
            Context = made.Context with { Version = statement["program"] },
            Conformity = made.Conformity is { } conformity ? conformity with { Rule = Unknown } : null,
        };
        return isXml ? XmlLines(DigitalCertificate.Write(made)) : PaperText.Lines(CertificatePdf.Draw(made, PaperText.IsA4(bytes) ? Paper.A4 : Paper.Letter));
    }

    private static IReadOnlyList<TextCulture> CulturesOf(string tag)
    {
        if (TextCulture.TryFind(tag, out var culture)) return [culture];
        Language.TryFind(tag, out var language);
        return [.. new[] { TextCulture.UnitedStates, TextCulture.German, TextCulture.Invariant }.Select(one => one.In(language))];
    }

    private static List<string> XmlLines(byte[] bytes) =>
    [
        .. Encoding.UTF8.GetString(bytes).Split('\n').Select(line => line.Trim())
            .Where(line => line.StartsWith("<dcc:", StringComparison.Ordinal) || line.StartsWith("<si:", StringComparison.Ordinal))
            .Where(line => !line.StartsWith("<dcc:countryCode", StringComparison.Ordinal)).Take(MostLines),
    ];

    private static string XmlLanguage(byte[] bytes)
    {
        const string before = "<dcc:usedLangCodeISO639_1>";
        var at = bytes.AsSpan().IndexOf(Encoding.ASCII.GetBytes(before));
        return at < 0 || at + before.Length + 2 > bytes.Length ? "" : Encoding.ASCII.GetString(bytes, at + before.Length, 2);
    }

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
            Say(Standing.Bad, wrong.Said);
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
        if (missing > 0) Say(Standing.Bad, $"{missing} entry of the export is not in {source.Name}: something was taken off their end.|{missing} entries of the export are not in {source.Name}: something was taken off their end.");
        if (differ > 1) Say(Standing.Bad, $"{differ} entries differ in all.");
        if (differ == 0 && missing == 0) Say(Standing.Good, $"All {hashes.Count} entries are those of {source.Name}.");
    }

    private void Say(Standing standing, Phrase text) => lines.Add(new(standing, culture.Say(text)));

    private static Phrase Named(string value) => value.Length == 0 ? "nothing" : (Phrase)$"{Excerpt.Of(value)}";

    private static string Bare(string fingerprint) => fingerprint.Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant();

    // Whose seal holds.
    private enum Trust
    {
        None,
        Somebody,
        Yard,
    }
}
