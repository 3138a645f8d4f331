using System.Text;
using System.Text.Json;
using Lanewright.App.Tests.Commands;
using Lanewright.Core.Season;
using Lanewright.Core.Statistics;
using Lanewright.Core.Tests;
using Lanewright.Core.Text;
using Lanewright.Season;

namespace Lanewright.App.Tests.Season;

/// <summary>The season's commands on the invented season in examples/season, whose README says what is wrong in it.</summary>
public sealed class SeasonCommandTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("season-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void Only_the_worn_spreader_raises_an_alarm()
    {
        var run = CommandLine.Run("season", "drift", Example(), "--json");
        Assert.Equal((0, ""), (run.Code, run.Errors));
        var spreaders = run.Json.GetProperty("spreaders").EnumerateArray().ToList();
        Assert.Equal(4, spreaders.Count);
        Assert.Equal("N-12", spreaders[0].GetProperty("spreader").GetString());
        Assert.Equal("less", spreaders[0].GetProperty("alarm_direction").GetString());
        // On the last day it has worn by 6 % times 1.14; beside that stands what its calibration was off.
        Assert.InRange(spreaders[0].GetProperty("share_off").GetDouble(), -0.085, -0.045);
        Assert.All(spreaders.Skip(1), one => Assert.Equal(JsonValueKind.Null, one.GetProperty("alarm").ValueKind));
        Assert.All(spreaders, one => Assert.InRange(one.GetProperty("false_alarm").GetDouble(), 0.04, 0.0501));
    }

    [Fact]
    public void The_balance_names_the_log_with_a_hole()
    {
        var run = CommandLine.Run("season", "balance", Example(), "--applied", Example("applied.csv"));
        Assert.Equal(2, run.Code);
        Assert.Contains("Most likely wrong: logged N-14, too low by", run.Output, StringComparison.Ordinal);
        var without = CommandLine.Run("season", "balance", Example(), "--csv");
        Assert.Equal(0, without.Code);
        Assert.Contains("North,N-14,loads,538110,", without.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Decimal_commas_and_semicolons_say_the_same()
    {
        foreach (var file in Directory.GetFiles(Example(), "*.csv"))
            File.WriteAllText(Path.Combine(folder.FullName, Path.GetFileName(file)), File.ReadAllText(file).Replace(',', ';').Replace('.', ','));
        var ours = Run("balance", "--applied", Path.Combine(folder.FullName, "applied.csv"), "--json", "--culture", "de-DE");
        var plain = CommandLine.Run("season", "balance", Example(), "--applied", Example("applied.csv"), "--json");
        Assert.Equal((plain.Code, plain.Output), (ours.Code, ours.Output));
    }

    [Fact]
    public void A_wrong_row_is_named_with_its_column_and_the_others_are_used()
    {
        Copy("constants.csv", text => text);
        Copy("verifications.csv", text => text.Replace("V-002,2026-11-12T08:00:00Z", "V-002,12.11.2026", StringComparison.Ordinal));
        var run = Run("drift");
        Assert.Equal(2, run.Code);
        Assert.Contains("verifications.csv, line 3: at: '12.11.2026' was read; a moment in UTC such as 2026-12-03T06:15:00Z was expected.", run.Errors, StringComparison.Ordinal);
        Assert.Contains("N-12", run.Output, StringComparison.Ordinal);

        Copy("verifications.csv", text => text.Replace("weighed_kg", "weight", StringComparison.Ordinal));
        run = Run("drift");
        Assert.Equal((1, ""), (run.Code, run.Output));
        Assert.Contains("the column weighed_kg is missing", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pile_that_was_surveyed_after_the_first_tickets_is_left_out_of_the_balance()
    {
        Copy("tickets.csv", text => text);
        Copy("piles.csv", text => text.Replace("2026-11-01T09:00:00Z", "2026-12-01T09:00:00Z", StringComparison.Ordinal));
        var run = Run("balance", "--csv");
        Assert.Contains("North has tickets before its first or after its last survey; its pile is left out.", run.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("pile at the begin", run.Output, StringComparison.Ordinal);
        Assert.Contains("N-11,loads", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Mutated_files_never_crash_and_their_rows_are_refused()
    {
        var random = new RandomSource(99);
        string[] names = ["constants.csv", "verifications.csv", "tickets.csv", "piles.csv", "applied.csv"];
        var refused = 0;
        for (var trial = 0; trial < 40; trial++)
        {
            foreach (var name in names)
            {
                var whole = File.ReadAllBytes(Example(name));
                var bytes = whole[..Math.Min(whole.Length, 1500)];
                for (var n = random.NextInt(6); n >= 0; n--) bytes[random.NextInt(bytes.Length)] = "-,;\"\n.eE9\0\u007fx"u8[random.NextInt(12)];
                File.WriteAllBytes(Path.Combine(folder.FullName, name), bytes);
            }

            var season = new SeasonFolder(folder.FullName, TextCulture.Invariant);
            var (constants, checks) = (season.Constants(), season.Checks());
            if (constants.Count > 0) _ = DriftAnswer.Of(constants, checks, new(), new(2027, 3, 1)).Paper().Csv();
            var ledgers = SeasonLedger.Of(season.Tickets(), season.Piles(), season.Applied(Path.Combine(folder.FullName, "applied.csv"), constants));
            _ = new BalanceAnswer(ledgers).Paper().Json("lines", season.Refused);
            refused += season.Refused.Count;
        }

        Assert.True(refused > 40);
    }

    private static string Example(string name = "") => Repository.File("examples", "season", name);

    private void Copy(string name, Func<string, string> change) =>
        File.WriteAllText(Path.Combine(folder.FullName, name), change(File.ReadAllText(Example(name))), Encoding.UTF8);

    private Answer Run(string command, params string[] more) => CommandLine.Run(["season", command, folder.FullName, .. more]);
}
