using System.CommandLine;
using Lanewright.Core.Text;
using Lanewright.Office;
using Lanewright.Proof;
using Lanewright.Storage;

namespace Lanewright.Commands;

/// <summary><c>lanewright verify</c> and <c>lanewright yard-key</c>: what, if anything, was changed in a file, and by whose key it is sealed.</summary>
internal static class VerifyCommand
{
    internal static Command Make()
    {
        var file = new Argument<string>("file") { Description = "A certificate in PDF or XML, or an export." };
        var data = new Option<string?>("--data") { Description = "Folder of the records to hold it against." };
        var database = RecordsOptions.Database();
        var keyFolder = RecordsOptions.KeyFolder();
        var export = new Option<string?>("--export") { Description = "An export to hold a certificate against, instead of a folder." };
        var key = new Option<string?>("--key") { Description = "Fingerprint of the yard's key, as yard-key prints it." };
        var culture = CommonOptions.Culture();
        var command = new Command("verify", "Say what, if anything, was changed in a certificate or an export.") { file, data, database, keyFolder, export, key, culture };
        command.SetAction((parsed, stop) => RecordsOptions.ToldAsync(parsed, async () =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var error = parsed.InvocationConfiguration.Error;
            var path = parsed.GetValue(file)!;
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            if (!File.Exists(path))
            {
                error.WriteLine(c.Say($"{Excerpt.Of(path, 200)} was not found."));
                return CommonOptions.CouldNotRead;
            }

            RecordSource? source = null;
            EntryStore? store = null;
            var fingerprint = parsed.GetValue(key);
            if (parsed.GetValue(export) is { } other)
            {
                (source, var problem) = RecordSource.OfExport(other);
                if (source is null)
                {
                    error.WriteLine(c.Say(problem!));
                    return CommonOptions.CouldNotRead;
                }
            }
            else if ((parsed.GetValue(data) ?? parsed.GetValue(database)) is not null)
            {
                if (RecordsOptions.PlaceOf(parsed, parsed.GetValue(data), parsed.GetValue(database)) is not { } place) return CommonOptions.CouldNotRead;
                store = await EntryStore.OpenAsync(place, stop: stop, opening: Opening.Inspect);
                source = RecordSource.Of(store, stop);
            }

            if ((parsed.GetValue(keyFolder) ?? FolderOf(parsed.GetValue(data) ?? (parsed.GetValue(database) is null ? null : RecordsOptions.UsualFolder))) is { } keys)
            {
                using var own = YardKey.Find(keys);
                fingerprint ??= own?.Fingerprint;
            }

            var verified = await LookAsync(path, source, fingerprint, c, error);
            if (verified is null) return CommonOptions.CouldNotRead;
            List<VerifiedLine> lines = [.. verified.Lines];
            if (store is not null && await store.CheckChainAsync(stop) is { IsWhole: false } broken)
                lines.AddRange(broken.Problems.Take(20).Select(problem => new VerifiedLine(Standing.Bad, c.Say($"The records themselves: {problem.What}"))));
            verified = verified with { Lines = lines };
            foreach (var line in verified.Lines) output.WriteLine($"  {c.Say(Word(line.Standing)),-6}{line.Text}");
            output.WriteLine(verified.Sentence);
            return verified.Holds ? CommonOptions.Answered : CommonOptions.DoNotUse;
        }));
        return command;
    }

    internal static Command Key()
    {
        var data = RecordsOptions.Data();
        var keyFolder = RecordsOptions.KeyFolder();
        var to = new Option<string?>("--to") { Description = "A new file for a copy of the private key, readable by its owner only." };
        var from = new Option<string?>("--from") { Description = "A copy of the private key to bring back." };
        var replace = new Option<bool>("--replace") { Description = "With --from: use that key although another one is there; the other is set aside, not deleted." };
        var command = new Command("yard-key", "Show the public key with which the yard seals its certificates and exports, or keep and bring back the private one.")
        {
            data, keyFolder, to, from, replace,
        };
        command.SetAction((parsed, _) => RecordsOptions.ToldAsync(parsed, () =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var folder = RecordsOptions.KeyFolderOf(parsed, data, keyFolder);
            if (parsed.GetValue(from) is { } copy) SayBrought(KeyCopies.Bring(copy, folder, parsed.GetValue(replace)), output);
            using var key = Open(folder, output);
            output.WriteLine(OfficeText.Say($"Fingerprint: {key.Fingerprint}"));
            output.Write(key.PublicPem);
            if (parsed.GetValue(to) is { } file) SaySaved(file, KeyCopies.Save(folder, file), output);
            return Task.FromResult(CommonOptions.Answered);
        }));
        return command;
    }

    /// <summary>Opens the yard's key; says so when it had to be made, since nobody knows its fingerprint yet.</summary>
    internal static YardKey Open(string folder, TextWriter output)
    {
        var isNew = !File.Exists(YardKey.PathIn(folder));
        var key = YardKey.Open(folder);
        if (isNew) output.WriteLine(OfficeText.Say($"A new key of the yard was made in {folder}. Keep a copy of it, and give its fingerprint to those who will check files."));
        return key;
    }

    internal static void SaySaved(string file, string fingerprint, TextWriter output)
    {
        output.WriteLine(OfficeText.Say($"The yard's private key {fingerprint} is now also in {file}."));
        output.WriteLine(OfficeText.Say("Keep that file apart from backups and exports: whoever has it can seal in the yard's name."));
    }

    internal static void SayBrought(string? aside, TextWriter output)
    {
        output.WriteLine(OfficeText.Say("The yard's key is back."));
        if (aside is not null) output.WriteLine(OfficeText.Say($"The key that was there is now in {aside}."));
    }

    private static string? FolderOf(string? data) => data is null ? null : YardKey.FolderOf(data);

    private static async Task<Verified?> LookAsync(string path, RecordSource? source, string? fingerprint, TextCulture culture, TextWriter error)
    {
        try
        {
            return await new Verifier(source, fingerprint, culture).LookAsync(path);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            error.WriteLine(culture.Say($"{Excerpt.Of(path, 200)} cannot be read: {wrong.Message}"));
            return null;
        }
    }

    private static Phrase Word(Standing standing) => standing switch { Standing.Good => "good", Standing.Note => "note", _ => "BAD" };
}
