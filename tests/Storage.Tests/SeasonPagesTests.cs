using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Lanewright.Season;

namespace Lanewright.Storage.Tests;

/// <summary>The demo's season in the office; all invented.</summary>
public sealed class SeasonPagesTests(DemoServer server) : IClassFixture<DemoServer>
{
    [Fact]
    public async Task The_demo_has_a_truck_that_drifted_a_balance_that_does_not_close_and_a_map()
    {
        var stop = TestContext.Current.CancellationToken;
        var client = server.Client;
        Assert.Contains("There are no tickets yet.", await client.GetStringAsync("office/season", stop), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync("office/season/ledger.csv?by=route", stop)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync("office/season/salt.csv", stop)).StatusCode);
        Assert.Contains("There are no logs yet.", await client.GetStringAsync("office/season/salt", stop), StringComparison.Ordinal);
        await DemoSeason.WriteAsync(server.Store, 20260901, DemoServer.Today, stop);
        DemoSeason.Match(server.Store.Place.DataFolder!, stop);

        var list = WebUtility.HtmlDecode(await client.GetStringAsync("office/drift", stop));
        Assert.Contains("Invented data.", list, StringComparison.Ordinal);
        var first = list[list.IndexOf("/office/spreaders/", StringComparison.Ordinal)..];
        var page = WebUtility.HtmlDecode(await client.GetStringAsync(first[1..first.IndexOf('"', StringComparison.Ordinal)], stop));
        Assert.Contains("too little", page, StringComparison.Ordinal);
        Assert.Contains("Alarm since ", page, StringComparison.Ordinal);
        // Checks and tickets are looks alike.
        Assert.Contains("tickets, Storm 0", page, StringComparison.Ordinal);
        Assert.Contains("its checks, loads or sister trucks show that it has drifted by ", WebUtility.HtmlDecode(await client.GetStringAsync("office/due", stop)), StringComparison.Ordinal);

        var season = WebUtility.HtmlDecode(await client.GetStringAsync("office/season", stop));
        // Pile surveys are vague: whether a ticket is missing or the log has too much, the balance cannot always tell.
        var lost = Regex.Match(await File.ReadAllTextAsync(Path.Combine(server.Store.Place.DataFolder!, "season", "README.txt"), stop), "one load of (.+) is lost").Groups[1].Value;
        Assert.Matches($"Most likely wrong: (loads {lost}.*, too low by|logged {lost}, too high by)", season);
        var storms = WebUtility.HtmlDecode(await client.GetStringAsync("office/season/storms", stop));
        // The storm with the lost ticket does not agree, and leads the list; one alone has its ledger.
        Assert.Contains("do not agree; most likely wrong: ", storms, StringComparison.Ordinal);
        Assert.True(storms.IndexOf("do not agree;", StringComparison.Ordinal) < storms.IndexOf("<td>agree</td>", StringComparison.Ordinal));
        var storm = Regex.Match(storms, "/office/season/storm\\?of=[^\"]+").Value;
        Assert.Contains("After balancing", await client.GetStringAsync(storm[1..], stop), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync("office/season/storm?of=none", stop)).StatusCode);
        Assert.Contains("within 10 %", WebUtility.HtmlDecode(await client.GetStringAsync("office/map", stop)), StringComparison.Ordinal);

        using var map = JsonDocument.Parse(await client.GetByteArrayAsync("office/season/ledger.geojson?by=route", stop));
        Assert.All(map.RootElement.GetProperty("features").EnumerateArray(), one => Assert.StartsWith("R", one.GetProperty("properties").GetProperty("route").GetString(), StringComparison.Ordinal));
        Assert.StartsWith("name,mass_kg,u_kg,", await client.GetStringAsync("office/season/ledger.csv?by=storm", stop), StringComparison.Ordinal);
        Assert.Equal("PAR1"u8.ToArray(), (await client.GetByteArrayAsync("office/season/ledger.parquet?by=segment", stop))[..4]);
        Assert.Equal(HttpStatusCode.BadRequest, (await client.GetAsync("office/season/ledger.csv?by=day", stop)).StatusCode);

        await SaltIsThere(client, stop);
    }

    private static async Task SaltIsThere(HttpClient client, CancellationToken stop)
    {
        foreach (var by in SaltQuestion.Words)
        {
            var page = WebUtility.HtmlDecode(await client.GetStringAsync($"office/season/salt?by={by}&moisture=2%20%25", stop));
            Assert.Contains("with 2 % water", page, StringComparison.Ordinal);
            Assert.Contains("<svg", page, StringComparison.Ordinal);
            Assert.Contains("Chloride, kg/lane-km", page, StringComparison.Ordinal);
            Assert.StartsWith($"{by},spread_kg,u_spread_kg,salt_kg,", await client.GetStringAsync($"office/season/salt.csv?by={by}", stop), StringComparison.Ordinal);
        }

        Assert.Contains("creek (invented)", await client.GetStringAsync("office/season/salt", stop), StringComparison.Ordinal);
        Assert.Contains("lb/lane-mile", await client.GetStringAsync("office/season/salt?units=us", stop), StringComparison.Ordinal);
        Assert.Contains("'80 %' was read; expected a share from 0.00 % to 50 %.", WebUtility.HtmlDecode(await client.GetStringAsync("office/season/salt?moisture=80%20%25", stop)), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, (await client.GetAsync("office/season/salt.pdf?by=moon", stop)).StatusCode);
        foreach (var (form, begin) in new[] { ("pdf?paper=a4", "%PDF"), ("xlsx?by=storm", "PK"), ("parquet?by=road", "PAR1"), ("geojson?by=watershed", "{\"type\":\"FeatureCollection\"") })
            Assert.StartsWith(begin, System.Text.Encoding.Latin1.GetString(await client.GetByteArrayAsync("office/season/salt." + form, stop)), StringComparison.Ordinal);

        // What calibration saved, with a picture and for programs.
        Assert.Contains("<svg", await client.GetStringAsync("office/reports/saved", stop), StringComparison.Ordinal);
        Assert.StartsWith("PAR1", System.Text.Encoding.Latin1.GetString(await client.GetByteArrayAsync("office/reports/saved.parquet", stop)), StringComparison.Ordinal);

        Assert.Contains("Chlorure", WebUtility.HtmlDecode(await client.GetStringAsync("office/season/salt?by=storm&language=fr", stop)), StringComparison.Ordinal);
    }
}
