using System.CommandLine;
using Lanewright.Core.Text;
using Lanewright.Office;
using Lanewright.Proof;
using Lanewright.Storage;
using Lanewright.Storage.Database;
using Lanewright.Storage.Transfer;

namespace Lanewright.Commands;

/// <summary>The commands that save, move, prove and mend the records.</summary>
internal static class RecordsCommands
{
    internal static Command Backup()
    {
        var to = To("The backup file to write, such as lanewright-2026-11-25.zip.");
        var data = RecordsOptions.Data();
        var keyTo = new Option<string?>("--key-to") { Description = "A new file for a copy of the yard's private key, readable by its owner only; a backup itself does not hold it." };
        var keyFolder = RecordsOptions.KeyFolder();
        var command = new Command("backup", "Save all records in one proved file; the server may be running.") { to, data, keyTo, keyFolder };
        command.SetAction((parsed, stop) => RecordsOptions.WithStoreAsync(parsed, data, null, async store =>
        {
            var file = parsed.GetValue(to)!;
            var keys = RecordsOptions.KeyFolderOf(parsed, data, keyFolder);
            if (parsed.GetValue(keyTo) is { } wanted) KeyCopies.Ready(keys, wanted);
            var report = await Storage.Transfer.Backup.WriteAsync(store, file, stop);
            var output = parsed.InvocationConfiguration.Output;
            output.WriteLine(OfficeText.Say($"Saved and proved: {file}, {(Phrase)$"{report.Entries} entry|{report.Entries} entries"}, {(Phrase)$"{report.Photos} photo|{report.Photos} photos"}, last hash {report.LastHash}."));
            if (parsed.GetValue(keyTo) is { } copy) VerifyCommand.SaySaved(copy, KeyCopies.Save(keys, copy), output);
            else if (File.Exists(YardKey.PathIn(keys))) output.WriteLine(OfficeText.Say("The yard's private key is not in it: keep a copy once with --key-to FILE."));
            return CommonOptions.Answered;
        }, stop, Opening.Existing));
        return command;
    }

    internal static Command Restore()
    {
        var from = new Argument<string>("backup") { Description = "The backup file." };
        var data = RecordsOptions.Data();
        var replace = new Option<bool>("--replace")
        {
            Description = "Use the backup although there are records in the folder; those are set aside, not deleted.",
        };
        var keyFrom = new Option<string?>("--key-from") { Description = "A copy of the yard's private key to bring back as well." };
        var keyFolder = RecordsOptions.KeyFolder();
        var command = new Command("restore", "Bring a backup back.") { from, data, replace, keyFrom, keyFolder };
        command.SetAction((parsed, stop) => RecordsOptions.ToldAsync(parsed, async () =>
        {
            var place = RecordsPlace.InFolder(parsed.GetValue(data)!);
            var keys = RecordsOptions.KeyFolderOf(parsed, data, keyFolder);
            if (parsed.GetValue(keyFrom) is { } wanted) KeyCopies.Look(wanted, keys, parsed.GetValue(replace));
            var (report, aside) = await Storage.Transfer.Backup.RestoreAsync(
                parsed.GetValue(from)!, place, parsed.GetValue(replace), stop: stop);
            var output = parsed.InvocationConfiguration.Output;
            output.WriteLine(OfficeText.Say($"Restored and proved: {place.Name}, {(Phrase)$"{report.Entries} entry|{report.Entries} entries"}, {(Phrase)$"{report.Photos} photo|{report.Photos} photos"}."));
            if (aside is not null) output.WriteLine(OfficeText.Say($"The records that were there are now in {aside}."));
            if (parsed.GetValue(keyFrom) is { } copy) VerifyCommand.SayBrought(KeyCopies.Bring(copy, keys, parsed.GetValue(replace)), output);
            else if (!File.Exists(YardKey.PathIn(keys))) output.WriteLine(OfficeText.Say("The yard's key is not here. Bring back its copy before anything is sealed: lanewright yard-key --from FILE"));
            return CommonOptions.Answered;
        }));
        return command;
    }

    internal static Command Export()
    {
        var to = To("The file to write, such as lanewright-export.zip.");
        var keyFolder = RecordsOptions.KeyFolder();
        return OverStore("export", "Write everything as one open file, sealed with the yard's key: entries, photos, hashes.", [to, keyFolder], async (parsed, data, store, stop) =>
        {
            var output = parsed.InvocationConfiguration.Output;
            using var key = VerifyCommand.Open(RecordsOptions.KeyFolderOf(parsed, data, keyFolder), output);
            var count = await Storage.Transfer.Export.WriteAsync(store, parsed.GetValue(to)!, part => Seal.Zip(part, key), stop);
            output.WriteLine(OfficeText.Say($"Written: {parsed.GetValue(to)}, {count} entry.|Written: {parsed.GetValue(to)}, {count} entries."));
            output.WriteLine(OfficeText.Say($"Sealed with the key {key.Fingerprint}"));
            return CommonOptions.Answered;
        });
    }

    internal static Command Import()
    {
        var from = new Argument<string>("export") { Description = "A file that 'export' wrote." };
        return OverStore("import", "Bring in an export; what is there already is left alone.", [from], async (parsed, _, store, stop) =>
        {
            var report = await Storage.Transfer.Export.ReadAsync(store, parsed.GetValue(from)!, stop);
            parsed.InvocationConfiguration.Output.WriteLine(OfficeText.Say(
                $"Entries in the file: {report.Entries}, new ones: {report.Added}, new photos: {report.Photos}, in conflict with entries of the same id (kept in quarantine): {report.Conflicts}."));
            return CommonOptions.Answered;
        }, Opening.Make);
    }

    internal static Command Rebuild() =>
        OverStore("rebuild", "Compute lists and results again from the entries.", [], async (parsed, _, store, stop) =>
        {
            var (before, after) = await store.RebuildAsync(stop);
            parsed.InvocationConfiguration.Output.WriteLine(
                OfficeText.Say(before == after ? "Computed again; nothing was different." : "Computed again; something was different and is right now."));
            return CommonOptions.Answered;
        });

    internal static Command Check() =>
        OverStore("check-records", "Prove that no entry and no photo was changed, removed or moved.", [], async (parsed, _, store, stop) =>
        {
            var report = await store.CheckChainAsync(stop);
            var output = parsed.InvocationConfiguration.Output;
            foreach (var problem in report.Problems) output.WriteLine(OfficeText.Say(problem.What));
            output.WriteLine(OfficeText.Say(report.IsWhole
                ? (Phrase)$"Whole: {(Phrase)$"{report.Entries} entry|{report.Entries} entries"}, {(Phrase)$"{report.Photos} photo|{report.Photos} photos"}. Last hash: {report.LastHash}"
                : $"Not whole: {report.Problems.Count} problem in {(Phrase)$"{report.Entries} entry|{report.Entries} entries"}.|Not whole: {report.Problems.Count} problems in {(Phrase)$"{report.Entries} entry|{report.Entries} entries"}."));
            return report.IsWhole ? CommonOptions.Answered : CommonOptions.DoNotUse;
        }, Opening.Inspect);

    private static Command OverStore(
        string name, string description, IReadOnlyList<Symbol> own, Func<ParseResult, Option<string>, EntryStore, CancellationToken, Task<int>> work,
        Opening opening = Opening.Existing)
    {
        var data = RecordsOptions.Data();
        var database = RecordsOptions.Database();
        var command = new Command(name, description) { data, database };
        foreach (var argument in own.OfType<Argument>()) command.Add(argument);
        foreach (var option in own.OfType<Option>()) command.Add(option);
        command.SetAction((parsed, stop) =>
            RecordsOptions.WithStoreAsync(parsed, data, database, store => work(parsed, data, store, stop), stop, opening));
        return command;
    }

    private static Option<string> To(string description) => new("--to") { Description = description, Required = true };
}
