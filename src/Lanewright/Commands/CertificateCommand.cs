using System.CommandLine;
using Lanewright.Core.Quantities;
using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Files;
using Lanewright.Host;
using Lanewright.Office;
using Lanewright.Print;
using Lanewright.Proof;
using Lanewright.Storage;
using Lanewright.Storage.Database;

namespace Lanewright.Commands;

/// <summary><c>lanewright certificate</c>: the certificate of a sheet, on paper or as XML.</summary>
internal static class CertificateCommand
{
    internal static Command Make()
    {
        var file = new Argument<string>("sheet") { Description = "The sheet of a test or of another calibration; with --data the identity of a recorded test." };
        var target = new Option<string>("--out") { Description = "The file to write; its ending says which: .pdf or .xml.", Required = true };
        var paper = new Option<string>("--paper") { Description = "a4 or letter.", DefaultValueFactory = _ => "letter" };
        paper.AcceptOnlyFromAmong("a4", "letter");
        var yard = new Option<string?>("--yard") { Description = "Name of the yard or agency." };
        var address = new Option<string?>("--address") { Description = "Its address." };
        var country = new Option<string?>("--country") { Description = "Its country, two letters of ISO 3166-1." };
        var data = new Option<string?>("--data") { Description = "Folder of the records: whose key seals the certificate, and whose test it is." };
        var keyFolder = RecordsOptions.KeyFolder();
        var culture = CommonOptions.Culture();
        var units = CommonOptions.Units();
        var command = new Command("certificate", "Write the certificate of a sheet as a PDF or XML file.")
        {
            file, target, paper, yard, address, country, data, keyFolder, culture, units,
        };
        command.SetAction((parsed, stop) => RecordsOptions.ToldAsync(parsed, async () =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var error = parsed.InvocationConfiguration.Error;
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            if (CommonOptions.UnitsOf(parsed.GetValue(units), UnitPreferences.UnitedStates, c, error) is not { } u) return CommonOptions.CouldNotRead;
            var facts = new YardFacts
            {
                Name = parsed.GetValue(yard) ?? "", Address = parsed.GetValue(address) ?? "",
                Country = (parsed.GetValue(country) ?? "").ToUpperInvariant(),
            };
            if (facts.Country.Length > 0 && !(facts.Country.Length == 2 && facts.Country.All(char.IsAsciiLetter)))
            {
                error.WriteLine(c.Say($"--country: '{Excerpt.Of(facts.Country)}' was read; two letters of ISO 3166-1 were expected, such as US."));
                return CommonOptions.CouldNotRead;
            }

            var to = parsed.GetValue(target)!;
            if (Path.GetExtension(to).ToUpperInvariant() is not (".PDF" or ".XML"))
            {
                error.WriteLine(c.Say($"--out: '{Excerpt.Of(to, 200)}' was read; a name that ends in .pdf or .xml was expected."));
                return CommonOptions.CouldNotRead;
            }

            var own = parsed.GetValue(units) is null ? null : u;
            var name = parsed.GetValue(file)!;
            var made = parsed.GetValue(data) is { } folder && !File.Exists(name)
                ? await RecordedAsync(folder, name, c, stop)
                : CertificateRoad.Of(SheetFile.Read(name), new(facts, null, DateTimeOffset.UtcNow, Server.Version, c, own));
            var show = new Show(c, own ?? UnitPreferences.UnitedStates);
            if (!made.IsRead) return CommonOptions.Refuse(name, made.Findings, false, show, output, error);
            CommonOptions.Print(FindingLines.Of(made.Findings, show), error);
            if (made.Certificate is not { } certificate)
            {
                error.WriteLine(c.Say(made.Refusal!));
                return CommonOptions.DoNotUse;
            }

            using var key = (parsed.GetValue(keyFolder) ?? (parsed.GetValue(data) is { } records ? YardKey.FolderOf(records) : null)) is { } keys
                ? VerifyCommand.Open(keys, output) : null;
            var bytes = Path.GetExtension(to).Equals(".xml", StringComparison.OrdinalIgnoreCase)
                ? SealedFiles.Xml(certificate, key)
                : SealedFiles.Pdf(certificate, parsed.GetValue(paper) == "a4" ? Paper.A4 : Paper.Letter, key);
            if (!WholeFile.Write(to, bytes, error)) return CommonOptions.CouldNotRead;
            output.WriteLine(c.Say($"{to}: {certificate.Title.ToLowerInvariant()} {certificate.Number} of {certificate.Item}, {bytes.Length / 1024} kB"));
            output.WriteLine(c.Say(key is null ? "Not sealed: name the records with --data to seal it with the yard's key." : (Phrase)$"Sealed with the key {key.Fingerprint}"));
            return CommonOptions.Answered;
        }));
        return command;
    }

    // The yard's own rules say who the yard is, and the units are those of the test.
    private static async Task<MadeCertificate> RecordedAsync(string folder, string test, TextCulture culture, CancellationToken stop)
    {
        var store = await EntryStore.OpenAsync(RecordsPlace.InFolder(folder), stop: stop, opening: Opening.Existing);
        using var data = new OfficeData(store, TimeProvider.System);
        var entries = RecordCertificates.OfTest(await store.ReadAsync(subject: test, stop: stop));
        return entries.Count == 0
            ? new(null, [], $"'{Excerpt.Of(test)}' is neither a file nor a test in {store.Place.Name}.")
            : RecordCertificates.Of(entries, await data.RulesAsync(stop), DateTimeOffset.UtcNow, culture, "");
    }
}
