using System.CommandLine;
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
        var command = new Command("backup", "Save all records in one proved file; the server may be running.") { to, data };
        command.SetAction((parsed, stop) => RecordsOptions.WithStoreAsync(parsed, data, null, async store =>
        {
            var file = parsed.GetValue(to)!;
            var report = await Storage.Transfer.Backup.WriteAsync(store, file, stop);
            parsed.InvocationConfiguration.Output.WriteLine(
                $"Saved and proved: {file}, {report.Entries} entries, {report.Photos} photos, last hash {report.LastHash}.");
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
        var command = new Command("restore", "Bring a backup back.") { from, data, replace };
        command.SetAction((parsed, stop) => RecordsOptions.ToldAsync(parsed, async () =>
        {
            var place = RecordsPlace.InFolder(parsed.GetValue(data)!);
            var (report, aside) = await Storage.Transfer.Backup.RestoreAsync(
                parsed.GetValue(from)!, place, parsed.GetValue(replace), stop: stop);
            var output = parsed.InvocationConfiguration.Output;
            output.WriteLine($"Restored and proved: {place.Name}, {report.Entries} entries, {report.Photos} photos.");
            if (aside is not null) output.WriteLine($"The records that were there are now in {aside}.");
            return CommonOptions.Answered;
        }));
        return command;
    }

    internal static Command Export()
    {
        var to = To("The file to write, such as lanewright-export.zip.");
        return OverStore("export", "Write everything as one open file, sealed with the yard's key: entries, photos, hashes.", to, async (parsed, store, stop) =>
        {
            // Records on a server have no folder of their own, and so no key here.
            using var key = store.Place.DataFolder is { } folder ? YardKey.Open(YardKey.FolderOf(folder)) : null;
            var count = await Storage.Transfer.Export.WriteAsync(
                store, parsed.GetValue(to)!, key is null ? null : part => Seal.Zip(part, key), stop);
            parsed.InvocationConfiguration.Output.WriteLine($"Written: {parsed.GetValue(to)}, {count} entries.");
            if (key is not null) parsed.InvocationConfiguration.Output.WriteLine($"Sealed with the key {key.Fingerprint}");
            return CommonOptions.Answered;
        });
    }

    internal static Command Import()
    {
        var from = new Argument<string>("export") { Description = "A file that 'export' wrote." };
        return OverStore("import", "Bring in an export; what is there already is left alone.", from, async (parsed, store, stop) =>
        {
            var report = await Storage.Transfer.Export.ReadAsync(store, parsed.GetValue(from)!, stop);
            parsed.InvocationConfiguration.Output.WriteLine(
                $"{report.Entries} entries in the file, {report.Added} of them new; {report.Photos} new photos; "
                + $"{report.Conflicts} in conflict with entries of the same id (kept in quarantine).");
            return CommonOptions.Answered;
        }, Opening.Make);
    }

    internal static Command Rebuild() =>
        OverStore("rebuild", "Compute lists and results again from the entries.", null, async (parsed, store, stop) =>
        {
            var (before, after) = await store.RebuildAsync(stop);
            parsed.InvocationConfiguration.Output.WriteLine(
                before == after ? "Computed again; nothing was different." : "Computed again; something was different and is right now.");
            return CommonOptions.Answered;
        });

    internal static Command Check() =>
        OverStore("check-records", "Prove that no entry and no photo was changed, removed or moved.", null, async (parsed, store, stop) =>
        {
            var report = await store.CheckChainAsync(stop);
            var output = parsed.InvocationConfiguration.Output;
            foreach (var problem in report.Problems) output.WriteLine(problem.What);
            output.WriteLine(report.IsWhole
                ? $"Whole: {report.Entries} entries, {report.Photos} photos. Last hash: {report.LastHash}"
                : $"Not whole: {report.Problems.Count} problems in {report.Entries} entries.");
            return report.IsWhole ? CommonOptions.Answered : CommonOptions.DoNotUse;
        }, Opening.Inspect);

    private static Command OverStore(
        string name, string description, Symbol? own, Func<ParseResult, EntryStore, CancellationToken, Task<int>> work,
        Opening opening = Opening.Existing)
    {
        var data = RecordsOptions.Data();
        var database = RecordsOptions.Database();
        var command = new Command(name, description) { data, database };
        if (own is Argument argument) command.Add(argument);
        if (own is Option option) command.Add(option);
        command.SetAction((parsed, stop) =>
            RecordsOptions.WithStoreAsync(parsed, data, database, store => work(parsed, store, stop), stop, opening));
        return command;
    }

    private static Option<string> To(string description) => new("--to") { Description = description, Required = true };
}
