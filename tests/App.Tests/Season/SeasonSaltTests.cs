using System.Globalization;
using Lanewright.App.Tests.Commands;

namespace Lanewright.App.Tests.Season;

/// <summary>An invented season with a known truth, through import, salt, drift and balance.</summary>
public sealed class SeasonSaltTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("salt-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void The_truth_of_a_season_lies_in_the_intervals_and_watersheds_add_up()
    {
        var (season, data) = (Path.Combine(folder.FullName, "season"), Path.Combine(folder.FullName, "yard"));
        Assert.Equal(0, CommandLine.Run("practice-season", "--out", season, "--spreaders", "3", "--interval", "300").Code);
        foreach (var profile in Directory.GetFiles(Path.Combine(season, "profiles")))
        {
            var kind = Path.GetFileNameWithoutExtension(profile);
            foreach (var log in Directory.GetFiles(Path.Combine(season, "logs"), kind + "-*"))
                Assert.NotEqual(1, CommandLine.Run("logs", "import", log, "--profile", profile, "--data", data).Code);
        }

        var constants = Path.Combine(season, "constants.csv");
        var salt = CommandLine.Run("season", "salt", "--data", data, "--constants", constants, "--json");
        Assert.NotEqual(1, salt.Code);
        var lines = salt.Json.GetProperty("lines").EnumerateArray().ToList();
        var total = lines[^1].GetProperty("salt_kg").GetDouble();
        Assert.Equal(total, lines.SkipLast(1).Sum(line => line.GetProperty("salt_kg").GetDouble()), total * 1e-9);
        Assert.Equal(0.6066 * total, lines[^1].GetProperty("chloride_kg").GetDouble(), total * 1e-4);

        var names = lines.SkipLast(1).Select(line => line.GetProperty("route").GetString()!).ToList();
        var routes = Path.Combine(folder.FullName, "routes.csv");
        File.WriteAllLines(routes, names.Select((name, i) => string.Create(CultureInfo.InvariantCulture, $"{name},{(i % 2 == 0 ? "Mill Creek" : "Long Pond")},{16_093.44}")).Prepend("route,watershed,lane_m"));
        var pdf = Path.Combine(folder.FullName, "salt.pdf");
        var sheds = CommandLine.Run("season", "salt", "--data", data, "--constants", constants, "--routes", routes, "--json", "--moisture", "2 %", "--pdf", pdf);
        var watersheds = sheds.Json.GetProperty("lines").EnumerateArray().ToList();
        Assert.Equal(["Long Pond", "Mill Creek", "all"], watersheds.Select(line => line.GetProperty("watershed").GetString()));
        Assert.Equal(total, watersheds[^1].GetProperty("salt_kg").GetDouble(), total * 1e-9);
        Assert.Equal(0.98 * 0.6066 * total, watersheds[^1].GetProperty("chloride_kg").GetDouble(), total * 1e-4);
        Assert.Equal("%PDF-"u8.ToArray(), File.ReadAllBytes(pdf)[..5]);

        // What truly was spread stands in the truth; the balance has tickets, piles and logs to find it.
        var applied = Path.Combine(folder.FullName, "applied.csv");
        Assert.NotEqual(1, CommandLine.Run("logs", "applied", "--data", data, "--constants", constants, "--by", "spreader", "--csv", applied).Code);
        Assert.NotEqual(1, CommandLine.Run("season", "drift", season).Code);
        var balance = CommandLine.Run("season", "balance", season, "--json");
        Assert.NotEqual(1, balance.Code);
        var found = balance.Json.GetProperty("lines").EnumerateArray().Where(line => line.GetProperty("item").GetString() is "loads" or "returns")
            .Sum(line => (line.GetProperty("item").GetString() == "loads" ? 1 : -1) * line.GetProperty("adjusted_kg").GetDouble());
        var truth = File.ReadLines(Path.Combine(season, "truth.csv")).Select(line => line.Split(',')).ToList();
        var place = Array.IndexOf(truth[0], "applied_kg");
        var spread = truth.Skip(1).Sum(cells => double.Parse(cells[place], CultureInfo.InvariantCulture));
        Assert.Equal(spread, found, 0.005 * spread);
        var byFile = CommandLine.Run("season", "balance", season, "--applied", applied, "--csv");
        var byLogs = CommandLine.Run("season", "balance", season, "--logs", data, "--csv");
        Assert.NotEqual(1, byFile.Code);
        Assert.NotEqual(1, byLogs.Code);
        Assert.Equal(byFile.Output.Split('\n').Length, byLogs.Output.Split('\n').Length);
        Assert.Equal(1, CommandLine.Run("season", "balance", season, "--logs", folder.FullName).Code);
    }
}
