using System.Globalization;
using Lanewright.Logs.Profiles;
using Lanewright.Logs.Store;

namespace Lanewright.Storage.Tests;

public sealed class LogPackingTests : IDisposable
{
    private const string Profile =
        """
        { "format": "lanewright-log-profile/1", "zone": "UTC", "columns": {
          "time": { "column": "time" }, "spreader": { "column": "truck" }, "depot": { "fixed": "Quarry Road" },
          "counts": { "column": "pulses", "unit": "pulse", "kind": "interval" } } }
        """;

    private readonly string root = Directory.CreateTempSubdirectory("lanewright-pack-").FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private LogFolder Folder => new(root);

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public void Many_files_become_one_with_the_same_rows_wherever_it_is_stopped()
    {
        for (var file = 0; file < 6; file++) Take(file);
        var wanted = Content();
        Assert.Equal(12, Folder.Files().Count);
        var stops = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var at = 1; ; at++)
        {
            var left = at;
            try
            {
                // A new start goes on with what is not packed yet.
                LogPacking.Pack(Folder, 2, step => { if (--left == 0) throw new Killed(step); }, Stop);
                break;
            }
            catch (Killed killed)
            {
                stops[killed.Message] = stops.GetValueOrDefault(killed.Message) + 1;
                Assert.Equal(wanted, Content());
            }
        }

        Assert.Equal(["moved", "named", "packed", "written"], stops.Keys.Order(StringComparer.Ordinal));
        Assert.Equal(wanted, Content());
        Assert.Equal(2, Directory.GetFiles(Folder.Rows, "*.parquet", SearchOption.AllDirectories).Length);
        Assert.Equal(2, Folder.Files().Count);

        // What is packed is not taken in twice, new files are, and packing goes on.
        Assert.True(Take(3).WasThere);
        Assert.Equal(6, Take(6).Accepted);
        Assert.Equal((2, 4), (LogPacking.Pack(Folder, 2, Stop) is { } more ? (more.Folders, more.Before) : default));
        Assert.Equal(42, Content().Rows);

        // A file is forgotten out of the pack, and comes in again.
        Assert.Equal(6, LogImport.Forget(Folder, PathOf(2), stop: Stop));
        Assert.Equal(36, Content().Rows);
        Assert.Equal(6, Take(2).Accepted);
        Assert.Equal(42, Content().Rows);
    }

    private string PathOf(int file) => Path.Combine(root, $"{file}.csv");

    private ImportedFile Take(int file)
    {
        if (!File.Exists(PathOf(file)))
            File.WriteAllLines(PathOf(file), new[] { "time,truck,pulses" }.Concat(Enumerable.Range(0, 6).Select(row => string.Create(
                CultureInfo.InvariantCulture, $"2026-12-{file + 1:00}T0{row}:00:00Z,HR-{101 + (row % 2)},{(100 * file) + row}"))));
        using var import = LogImport.Begin(Folder, LogProfileReader.Read(Profile));
        var taken = import.Take(PathOf(file), stop: Stop);
        Assert.Null(taken.Problem);
        return taken;
    }

    private (long Rows, string Sums) Content()
    {
        using var engine = Engine.OpenForReading();
        var content = (Rows: 0L, Sums: "");
        engine.Ask(
            $"SELECT count(*), sum(counts)::VARCHAR || bit_xor(hash(spreader, moment, counts, file, line))::VARCHAR FROM {RowTable.Read(Folder.Files())}",
            row => content = (row.GetInt64(0), row.GetString(1)));
        return content;
    }

    private sealed class Killed(string step) : Exception(step);
}
