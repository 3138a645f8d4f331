using System.Globalization;
using System.Net;
using System.Text;
using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Proof;
using Lanewright.Storage.Database;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Transfer;

namespace Lanewright.Storage.Tests;

/// <summary>Seals and what is found when a sealed file, or the record behind it, was changed.</summary>
public sealed class ProofTests : IAsyncLifetime
{
    private static readonly DateTimeOffset Issued = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);
    private readonly TestRecords records = TestRecords.InFolder();
    private readonly string folder = Directory.CreateTempSubdirectory("lanewright-proof-").FullName;
    private EntryStore store = null!;
    private YardKey key = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        store = await records.OpenAsync();
        key = YardKey.Open(Path.Combine(folder, "keys"));
        var drafts = new Drafts();
        await store.AppendAsync([drafts.Begin("t-1"), drafts.Decide("t-1", "adopt"), drafts.Spreader("sp-1", "HR-104")], Stop);
    }

    public async ValueTask DisposeAsync()
    {
        key.Dispose();
        await records.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Whole_files_of_each_kind_hold_against_the_records_and_against_an_export()
    {
        foreach (var (name, bytes) in await FilesAsync())
        {
            var verified = await LookAsync(name, bytes);
            Assert.True(verified.Holds, Text(verified));
            Assert.Contains("seal holds", Text(verified), StringComparison.Ordinal);
            Assert.Contains("Sealed with the yard's key", Text(verified), StringComparison.Ordinal);
            Assert.Matches("All \\d+ (statements for machines follow|entries are those)", Text(verified));
        }

        var (source, problem) = RecordSource.OfExport(Path.Combine(folder, "made.zip"));
        Assert.Null(problem);
        foreach (var (name, bytes) in await FilesAsync())
        {
            var path = Named(name);
            await File.WriteAllBytesAsync(path, bytes, Stop);
            Assert.True((await new Verifier(source, key.Fingerprint, TextCulture.UnitedStates).LookAsync(path)).Holds);
        }
    }

    // 1,000 changes in each kind of file, spread over all of it, the seal and the statement included.
    [Theory]
    [InlineData("a.pdf")]
    [InlineData("a.xml")]
    [InlineData("a.zip")]
    public async Task Every_change_of_a_single_byte_is_found(string name)
    {
        var bytes = (await FilesAsync())[name];
        var random = new Random(20261125);
        for (var i = 0; i < 1000; i++)
        {
            var at = i < 600 ? random.Next(bytes.Length) : bytes.Length - 1 - random.Next(Math.Min(bytes.Length, 900));
            var changed = (byte[])bytes.Clone();
            changed[at] = (byte)(changed[at] ^ (1 + random.Next(255)));
            using var stream = new MemoryStream(changed);
            Assert.False(Seal.Read(stream) is { Holds: true } seal && seal.PublicKey == key.Public, $"byte {at} of {bytes.Length}, {bytes[at]:x2} to {changed[at]:x2}");
            if (i % 10 != 0) continue;
            var verified = await LookAsync(name, changed);
            Assert.False(verified.Holds, $"byte {at}: {Text(verified)}");
        }
    }

    [Fact]
    public async Task A_byte_more_or_less_and_a_seal_of_another_file_are_found()
    {
        foreach (var (name, bytes) in await FilesAsync())
        {
            foreach (var changed in (byte[][])[[.. bytes, 10], bytes[..^1], bytes[1..], [10, .. bytes], [.. bytes[..100], .. bytes[101..]], [.. bytes, .. bytes]])
                Assert.False((await LookAsync(name, changed)).Holds);
        }
    }

    [Fact]
    public async Task One_altered_digit_is_named_even_when_the_file_was_wholeagain_with_another_key()
    {
        using var thief = YardKey.Open(Path.Combine(folder, "thief"));
        var made = await MadeAsync();
        var result = made.Results[0];
        var forged = made with { Results = [result with { Value = result.Value * 1.001 }, .. made.Results.Skip(1)] };
        foreach (var (name, bytes) in new (string, byte[])[] { ("f.pdf", SealedFiles.Pdf(forged, Paper.A4, thief)), ("f.xml", SealedFiles.Xml(forged, thief)) })
        {
            var verified = await LookAsync(name, bytes);
            Assert.False(verified.Holds);
            Assert.Contains("another key than the yard's", Text(verified), StringComparison.Ordinal);
            Assert.Contains("results[0].si", Text(verified), StringComparison.Ordinal);
            // Without the yard's key at hand the figures still give it away.
            var path = Named(name);
            Assert.False((await new Verifier(RecordSource.Of(store, Stop), null, TextCulture.UnitedStates).LookAsync(path)).Holds);
        }

        var xml = Encoding.UTF8.GetString(SealedFiles.Xml(made, key));
        var value = result.Value.ToString("R", CultureInfo.InvariantCulture);
        var digit = xml.IndexOf($"<si:value>{value}", StringComparison.Ordinal) + "<si:value>".Length + value.Length - 1;
        var altered = xml[..digit] + (xml[digit] == '7' ? '8' : '7') + xml[(digit + 1)..];
        var found = await LookAsync("d.xml", Encoding.UTF8.GetBytes(altered));
        Assert.False(found.Holds);
        Assert.Contains("seal is broken", Text(found), StringComparison.Ordinal);
        Assert.Contains($"from the record follows <si:value>{value}</si:value>", Text(found), StringComparison.Ordinal);
    }

    public static TheoryData<string, string> Readers => new()
    {
        { "en-US", "en" }, { "fr-CA", "fr" }, { "fi-FI", "fi" }, { "en-US", "fr" }, { "de-DE", "en" }, { "fi-FI", "en" },
    };

    [Theory]
    [MemberData(nameof(Readers))]
    public async Task A_certificate_in_any_language_is_accepted_and_one_altered_word_on_it_is_named(string numbers, string words)
    {
        Assert.True(TextCulture.TryFind(numbers, out var culture));
        Assert.True(Language.TryFind(words, out var language));
        culture = culture.In(language);
        foreach (var yard in (YardFacts[])[new(), new() { Name = new('y', 70), Address = string.Concat(Enumerable.Repeat("14 Quarry Road, ", 20)), Customer = "The county", Country = "US", Accreditation = "A body, 17" }])
        {
            var made = await MadeAsync(culture, yard);
            Assert.Equal((await MadeAsync()).Number, made.Number);
            using var thief = YardKey.Open(Path.Combine(folder, "thief"));
            foreach (var (name, seal) in new (string, Func<Certificate, YardKey, byte[]>)[] { ("t.pdf", (one, by) => SealedFiles.Pdf(one, Paper.A4, by)), ("t.pdf", (one, by) => SealedFiles.Pdf(one, Paper.Letter, by)), ("t.xml", SealedFiles.Xml) })
            {
                var whole = await LookAsync(name, seal(made, key), culture);
                Assert.True(whole.Holds, Text(whole));

                // The figures for machines are right, what a person reads is not, and somebody else sealed it.
                var result = made.Results[0];
                var at = result.Text.IndexOfAny(['1', '2', '3', '4', '5', '6', '7', '8', '9']);
                var forgedText = result.Text[..at] + (char)('0' + (result.Text[at] - '0' + 1) % 10) + result.Text[(at + 1)..];
                var forged = made with { Results = [result with { Text = forgedText }, .. made.Results.Skip(1)] };
                var path = Named(name);
                await File.WriteAllBytesAsync(path, seal(forged, thief), Stop);
                var found = await new Verifier(RecordSource.Of(store, Stop), null, culture).LookAsync(path);
                Assert.False(found.Holds, Text(found));
                var line = Assert.Single(found.Lines, line => line.Standing == Standing.Bad).Text;
                Assert.Contains(forgedText.Split(' ')[0], line, StringComparison.Ordinal);
                Assert.Contains(result.Text.Split(' ')[0], line, StringComparison.Ordinal);

                // A seal that anybody could make around the true text is no ground for an alarm.
                await File.WriteAllBytesAsync(path, seal(made, thief), Stop);
                var same = await new Verifier(RecordSource.Of(store, Stop), null, culture).LookAsync(path);
                Assert.True(same.Holds, Text(same));
            }
        }
    }

    [Fact]
    public async Task A_digit_altered_in_the_french_paper_breaks_the_seal_and_is_named()
    {
        var made = await MadeAsync(TextCulture.CanadianFrench);
        var result = made.Results[0];
        var forged = made with { Results = [result with { Text = result.Text.Replace(',', '.') }, .. made.Results.Skip(1)] };
        // The drawing of the forged one with the statement and the seal of the true one.
        var (paper, whole) = (CertificatePdf.Draw(forged, Paper.A4), SealedFiles.Pdf(made, Paper.A4, key));
        var comments = whole.AsSpan(whole.AsSpan().LastIndexOf("%lanewright-statement/1 "u8)..whole.AsSpan().LastIndexOf("startxref"u8));
        var at = paper.AsSpan().LastIndexOf("startxref"u8);
        byte[] bytes = [.. paper.AsSpan(0, at), .. comments, .. paper.AsSpan(at)];
        var found = await LookAsync("french.pdf", bytes, TextCulture.CanadianFrench);
        Assert.False(found.Holds);
        Assert.Contains("Le sceau est brisé", Text(found), StringComparison.Ordinal);
        Assert.Contains(result.Text.Split(' ')[0].Replace(',', '.'), Text(found), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_record_that_was_changed_behind_the_program_or_grew_is_told_from_a_changed_certificate()
    {
        var files = await FilesAsync();
        await store.AppendAsync([new Drafts("phone-2", 7).Field("t-1", "place", "Alder Flat")], Stop);
        var grown = await LookAsync("a.pdf", files["a.pdf"]);
        Assert.True(grown.Holds, Text(grown));
        Assert.Contains("1 entry was added", Text(grown), StringComparison.Ordinal);
        await records.TamperAsync("DROP TRIGGER entries_stay_1");
        await TamperedAsync();
        var tampered = await LookAsync("a.pdf", files["a.pdf"]);
        Assert.False(tampered.Holds);
        Assert.Contains("Entry 1 in the records was changed", Text(tampered), StringComparison.Ordinal);
        Assert.Contains("differs between the export and the records", Text(await LookAsync("a.zip", files["a.zip"])), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("%PDF-1.7\n")]
    [InlineData("%PDF-1.7\nlanewright-seal/1 key=")]
    [InlineData("<?xml version=\"1.0\"?><!DOCTYPE x [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;&a;\">]><x>&b;</x>")]
    [InlineData("<?xml?><!--lanewright-statement/1 e30=-->")]
    [InlineData("<?xml?><!--lanewright-statement/1 !!!-->")]
    [InlineData("PK\u0003\u0004garbage")]
    [InlineData("GIF89a")]
    public async Task Hostile_files_get_words(string text)
    {
        var verified = await LookAsync("h.bin", Encoding.Latin1.GetBytes(text));
        Assert.False(verified.Holds);
        Assert.NotEmpty(verified.Lines);
    }

    [Fact]
    public void The_key_is_made_once_and_only_its_owner_may_read_it()
    {
        using var again = YardKey.Open(Path.Combine(folder, "keys"));
        Assert.Equal(key.Public, again.Public);
        Assert.NotEqual(key.Public, YardKeyElsewhere());
        Assert.DoesNotContain("PRIVATE", key.PublicPem, StringComparison.Ordinal);
        // Windows has no owner-only mode of a file: there the folder's own rights hold.
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(folder, "keys", "yard-seal.pem")));

        string YardKeyElsewhere()
        {
            using var other = YardKey.Open(Path.Combine(folder, "other"));
            return other.Public;
        }
    }

    // Outside check: OpenSSL, the system's own, agrees that the public key is one on P-256.
    [Fact]
    public void The_public_key_is_what_others_read_as_one_on_p256()
    {
        using var other = System.Security.Cryptography.ECDsa.Create();
        other.ImportFromPem(key.PublicPem);
        Assert.Equal(256, other.KeySize);
        Assert.Equal("1.2.840.10045.3.1.7", other.ExportParameters(false).Curve.Oid.Value);
    }

    private async Task<Certificate> MadeAsync(TextCulture? culture = null, YardFacts? yard = null)
    {
        var entries = RecordCertificates.OfTest(await store.ReadAsync(subject: "t-1", stop: Stop));
        return RecordCertificates.Of(entries, new YardRules { Yard = yard ?? new() }, Issued, culture ?? TextCulture.UnitedStates, "").Certificate!;
    }

    private async Task<Dictionary<string, byte[]>> FilesAsync()
    {
        var made = await MadeAsync();
        var export = Path.Combine(folder, "made.zip");
        if (!File.Exists(export)) await Export.WriteAsync(store, export, part => Seal.Zip(part, key), Stop);
        return new(StringComparer.Ordinal)
        {
            ["a.pdf"] = SealedFiles.Pdf(made, Paper.A4, key), ["a.xml"] = SealedFiles.Xml(made, key), ["a.zip"] = await File.ReadAllBytesAsync(export, Stop),
        };
    }

    private async Task<Verified> LookAsync(string name, byte[] bytes, TextCulture? culture = null)
    {
        var path = Named(name);
        await File.WriteAllBytesAsync(path, bytes, Stop);
        return await new Verifier(RecordSource.Of(store, Stop), key.Fingerprint, culture ?? TextCulture.UnitedStates).LookAsync(path);
    }

    private Task TamperedAsync() => records.TamperAsync("UPDATE entries SET Payload = replace(Payload, '63.0', '63.1') WHERE Number = 1");

    private string Named(string name) => Path.Combine(folder, name);

    private static string Text(Verified verified) => verified.Sentence + "\n" + string.Join('\n', verified.Lines.Select(line => $"{line.Standing} {line.Text}"));
}

/// <summary>The page that looks at files, over the demo world.</summary>
public sealed class VerifyPageTests(DemoServer server) : IClassFixture<DemoServer>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_certificate_from_the_office_is_taken_back_whole_and_refused_when_changed()
    {
        using var browser = new OfficeBrowser(server.Client.BaseAddress!);
        var test = (await server.Store.TestsAsync(new() { Most = 200 }, Stop)).First(one => one.Results.Count > 0 && one.Test.Severity != "stop").Test.Id;
        foreach (var ending in (string[])["pdf", "xml"])
        {
            var bytes = await server.Client.GetByteArrayAsync($"office/tests/{test}/certificate.{ending}", Stop);
            var fields = OfficeBrowser.FormOf((await browser.OpenAsync("/office/verify")).Page, "/office/verify");
            fields.Remove("file");
            var (status, page, _) = await browser.UploadAsync("/office/verify", fields, bytes, "certificate." + ending);
            Assert.Equal(HttpStatusCode.OK, status);
            Assert.Contains("nothing was found changed", page, StringComparison.Ordinal);
            bytes[bytes.Length / 2] ^= 1;
            (_, page, _) = await browser.UploadAsync("/office/verify", fields, bytes, "certificate." + ending);
            Assert.Contains("DO NOT RELY ON THIS FILE", page, StringComparison.Ordinal);
        }

        Assert.Contains("BEGIN PUBLIC KEY", await server.Client.GetStringAsync("office/verify/key.pem", Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Too_long_empty_and_unasked_files_are_refused_in_words()
    {
        using var browser = new OfficeBrowser(server.Client.BaseAddress!);
        var fields = OfficeBrowser.FormOf((await browser.OpenAsync("/office/verify")).Page, "/office/verify");
        fields.Remove("file");
        var (empty, page, _) = await browser.UploadAsync("/office/verify", fields, [], "nothing.pdf");
        Assert.Equal(HttpStatusCode.BadRequest, empty);
        Assert.Contains("it is empty", page, StringComparison.Ordinal);
        var (unasked, _, _) = await browser.UploadAsync("/office/verify", [], "%PDF-"u8.ToArray(), "x.pdf");
        Assert.Equal(HttpStatusCode.BadRequest, unasked);
    }
}
