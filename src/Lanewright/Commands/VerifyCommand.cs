using System.CommandLine;
using Lanewright.Core.Text;
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
        var export = new Option<string?>("--export") { Description = "An export to hold a certificate against, instead of a folder." };
        var key = new Option<string?>("--key") { Description = "Fingerprint of the yard's key, as yard-key prints it." };
        var culture = CommonOptions.Culture();
        var command = new Command("verify", "Say what, if anything, was changed in a certificate or an export.") { file, data, export, key, culture };
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
            else if (parsed.GetValue(data) is { } folder)
            {
                store = await EntryStore.OpenAsync(Storage.Database.RecordsPlace.InFolder(folder), stop: stop, opening: Opening.Inspect);
                source = RecordSource.Of(store, stop);
                using var own = YardKey.Find(YardKey.FolderOf(folder));
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
        var command = new Command("yard-key", "Show the public key with which the yard seals its certificates and exports.") { data };
        command.SetAction(parsed =>
        {
            using var key = YardKey.Open(YardKey.FolderOf(parsed.GetValue(data)!));
            parsed.InvocationConfiguration.Output.WriteLine($"Fingerprint: {key.Fingerprint}");
            parsed.InvocationConfiguration.Output.Write(key.PublicPem);
            return CommonOptions.Answered;
        });
        return command;
    }

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
