using Lanewright.Core.Text;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Folding;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Storage.Database;

/// <summary>Looks at records before anything is written to them, and brings their tables up to date.</summary>
internal static class RecordsOpening
{
    internal static async Task PrepareAsync(RecordsDatabase database, Opening opening, CancellationToken stop)
    {
        var place = database.Place;
        if (place.File is { } file)
        {
            if (opening is not Opening.Make && !File.Exists(file) && !File.Exists(file + "-wal")) throw TableVersions.None(place);
            ProveWritable(place);
            Inspect(place, file);
        }

        var context = database.Context();
        await using (context)
        {
            await TableVersions.UpdateAsync(context, place, opening is Opening.Make, stop);
            await RefillAsync(context, stop);
        }
    }

    // A migration that changes what is computed leaves the list of tests empty; it is filled again here, wholly or not at all,
    // so that a program killed meanwhile does it at its next start.
    private static async Task RefillAsync(RecordsContext context, CancellationToken stop)
    {
        if (!await LacksTestsAsync(context, stop)) return;
        await using var whole = await RecordsDatabase.BeginWriteAsync(context, stop);
        // Another program that was just writing its first test has them now.
        if (!await LacksTestsAsync(context, stop)) return;
        await Projector.RebuildAsync(context, stop);
        await whole.CommitAsync(stop);
    }

    private static async Task<bool> LacksTestsAsync(RecordsContext context, CancellationToken stop) =>
        !await context.Tests.AnyAsync(stop) && await context.Entries.AnyAsync(entry => entry.Kind.StartsWith(EntryKinds.TestPrefix), stop);

    /// <summary>What is wrong with a SQLite file, found without writing to it; null for a whole file of ours.</summary>
    internal static Phrase? Fault(string file)
    {
        var connection = new SqliteConnectionStringBuilder { DataSource = file, Mode = SqliteOpenMode.ReadOnly, Pooling = false };
        using var reader = new SqliteConnection(connection.ToString());
        try
        {
            reader.Open();
            var answer = Scalar(reader, "PRAGMA quick_check(1)") as string;
            if (answer != "ok") return answer is null ? (Phrase)"the check gave no answer" : answer;
            return Convert.ToInt64(Scalar(reader, "PRAGMA application_id"), null) == RecordsDatabase.ApplicationId
                ? null
                : (Phrase)"it is a database, but not one of Lanewright's";
        }
        catch (SqliteException wrong) when (wrong.SqliteErrorCode is 11 or 26)
        {
            return wrong.SqliteErrorCode == 26 ? (Phrase)"the file is not a database" : "the file's contents are inconsistent";
        }
    }

    private static void Inspect(RecordsPlace place, string file)
    {
        if (!File.Exists(file))
        {
            // SQLite would quietly begin anew and throw the log away.
            if (File.Exists(file + "-wal") && new FileInfo(file + "-wal").Length > 0)
                throw Faults.Damaged(place.Name, "the file is missing, but its log (-wal) is there", place.RestoreCommand);
            return;
        }

        // An empty file would be taken for a new database.
        if (new FileInfo(file).Length == 0) throw Faults.Damaged(place.Name, "the file is empty", place.RestoreCommand);
        if (Fault(file) is { } fault) throw Faults.Damaged(place.Name, fault, place.RestoreCommand);
    }

    private static void ProveWritable(RecordsPlace place)
    {
        try
        {
            Directory.CreateDirectory(place.DataFolder!);
            var probe = Path.Combine(place.DataFolder!, $".write-test-{Guid.NewGuid():N}");
            File.WriteAllBytes(probe, []);
            File.Delete(probe);
            if (File.Exists(place.File)) File.Open(place.File, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite).Dispose();
        }
        catch (Exception wrong) when (wrong is UnauthorizedAccessException || (wrong is IOException && !Directory.Exists(place.DataFolder)))
        {
            throw Faults.Denied(place.Name, wrong);
        }
    }

    // The tables are about to change: keep the file as it is beside it.
    internal static void Copy(RecordsPlace place, string migration)
    {
        var copy = $"{place.File}.before-{migration}";
        if (File.Exists(copy)) return;
        using var connection = new SqliteConnection($"Data Source={place.File};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "VACUUM INTO $copy";
        command.Parameters.AddWithValue("$copy", copy);
        command.ExecuteNonQuery();
    }

    internal static object? Scalar(SqliteConnection connection, string text)
    {
        using var command = connection.CreateCommand();
        command.CommandText = text;
        return command.ExecuteScalar();
    }
}
