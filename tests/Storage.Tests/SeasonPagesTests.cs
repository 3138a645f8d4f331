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
        Assert.Contains("its checks show that it has drifted by ", WebUtility.HtmlDecode(await client.GetStringAsync("office/due", stop)), StringComparison.Ordinal);

        var season = WebUtility.HtmlDecode(await client.GetStringAsync("office/season", stop));
        // Pile surveys are vague: whether a ticket is missing or the log has too much, the balance cannot always tell.
        var lost = Regex.Match(await File.ReadAllTextAsync(Path.Combine(server.Store.Place.DataFolder!, "season", "README.txt"), stop), "one load of (.+) is lost").Groups[1].Value;
        Assert.Matches($"Most likely wrong: (loads {lost}.*, too low by|logged {lost}, too high by)", season);
        Assert.Contains("within 10 %", WebUtility.HtmlDecode(await client.GetStringAsync("office/map", stop)), StringComparison.Ordinal);

        using var map = JsonDocument.Parse(await client.GetByteArrayAsync("office/season/ledger.geojson?by=route", stop));
        Assert.All(map.RootElement.GetProperty("features").EnumerateArray(), one => Assert.StartsWith("R", one.GetProperty("properties").GetProperty("route").GetString(), StringComparison.Ordinal));
        Assert.StartsWith("name,mass_kg,u_kg,", await client.GetStringAsync("office/season/ledger.csv?by=storm", stop), StringComparison.Ordinal);
        Assert.Equal("PAR1"u8.ToArray(), (await client.GetByteArrayAsync("office/season/ledger.parquet?by=segment", stop))[..4]);
        Assert.Equal(HttpStatusCode.BadRequest, (await client.GetAsync("office/season/ledger.csv?by=day", stop)).StatusCode);
    }
}
