using System.Globalization;
using System.Net;

namespace Lanewright.Storage.Tests;

/// <summary>The drift of spreaders in the office, over the demo world with checks of its own; all invented.</summary>
public sealed class DriftPagesTests(DemoServer server) : IClassFixture<DemoServer>
{
    private readonly EntryStore store = server.Store;
    private readonly HttpClient client = server.Client;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Checks_that_find_too_little_lead_to_an_alarm_a_date_and_the_due_list()
    {
        Assert.Contains("No spreader has a check, a load ticket or a comparison with sister trucks since its calibration.", await client.GetStringAsync("office/drift", Stop), StringComparison.Ordinal);
        // The two calibrated last have been calibrated in this season.
        var latest = (await store.LatestAdoptedAsync(Stop)).Where(one => one.Results.Count == 1)
            .OrderByDescending(one => one.Date, StringComparer.Ordinal).Take(2).ToList();
        var drafts = new Drafts("phone-drift", 7);
        string[] nets = ["62.5", "61.2", "61.7"];
        foreach (var (calibration, delivered) in latest.Zip([0.90, 1.0]))
        {
            var day = DateOnly.ParseExact(calibration.Date, "yyyy-MM-dd", CultureInfo.InvariantCulture);
            for (var check = 0; check < 4; check++)
            {
                var fields = new Dictionary<string, string>(Drafts.Verification, StringComparer.Ordinal)
                {
                    ["date"] = day.AddDays(check * (DemoServer.Today.DayNumber - day.DayNumber) / 4).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                    ["title"] = $"Check {check + 1}",
                };
                for (var run = 0; run < 3; run++)
                {
                    fields[$"runs[{run}].containers[0].tare"] = "2.5";
                    fields[$"runs[{run}].containers[0].gross"] = (2.5 + double.Parse(nets[run], CultureInfo.InvariantCulture)).ToString("0.0", CultureInfo.InvariantCulture);
                    fields[$"runs[{run}].delivered"] = (double.Parse(nets[run], CultureInfo.InvariantCulture) / delivered).ToString("0.0", CultureInfo.InvariantCulture);
                }

                await store.AppendAsync([drafts.Begin(drafts.Id(), fields, calibration.Spreader)], Stop);
            }
        }

        var list = await client.GetStringAsync("office/drift", Stop);
        Assert.Contains("2 spreaders with looks since the calibration", list, StringComparison.Ordinal);
        // The one that puts down 10 % too little comes first, whatever the other is worth.
        Assert.True(
            list.IndexOf(latest[0].Spreader, StringComparison.Ordinal) < list.IndexOf(latest[1].Spreader, StringComparison.Ordinal),
            "The worn spreader stands first.");

        // The list filters, orders and is downloaded as the others.
        var rows = (await client.GetStringAsync("office/drift.csv?sort=off&down=1", Stop)).TrimStart('\uFEFF').Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("number,depot,looks,off_percent,cost_of_waiting", rows[0]);
        Assert.Equal(3, rows.Length);
        // A negative number stays one: no apostrophe keeps a spreadsheet from reckoning with it.
        Assert.True(double.Parse(rows[2].Split(',')[3], CultureInfo.InvariantCulture) < 0);
        Assert.Contains("sort=off", list, StringComparison.Ordinal);
        var none = await client.GetStringAsync("office/drift?q=nothing+like+it", Stop);
        Assert.Contains("name=\"q\"", none, StringComparison.Ordinal);

        var worn = WebUtility.HtmlDecode(await client.GetStringAsync($"office/spreaders/{latest[0].Spreader}/drift", Stop));
        Assert.Contains("too little", worn, StringComparison.Ordinal);
        Assert.Contains("Alarm since ", worn, StringComparison.Ordinal);
        Assert.Contains("it puts down less than at its calibration.</desc>", worn, StringComparison.Ordinal);
        var sound = WebUtility.HtmlDecode(await client.GetStringAsync($"office/spreaders/{latest[1].Spreader}/drift", Stop));
        Assert.Contains("No alarm: its looks agree with its calibration.", sound, StringComparison.Ordinal);

        var due = WebUtility.HtmlDecode(await client.GetStringAsync("office/due", Stop));
        Assert.Contains("its checks, loads or sister trucks show that it has drifted by ", due, StringComparison.Ordinal);
        Assert.Equal(1, due.Split("its checks, loads or sister trucks show that it has drifted by ").Length - 1);
    }

    [Fact]
    public async Task A_spreader_without_checks_says_so_and_an_unknown_one_is_not_found()
    {
        // Nobody checks the one whose calibration is the oldest.
        var never = (await store.LatestAdoptedAsync(Stop)).OrderBy(one => one.Date, StringComparer.Ordinal).First().Spreader;
        Assert.Contains("nothing can be said of drift", await client.GetStringAsync($"office/spreaders/{never}/drift", Stop), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync("office/spreaders/none/drift", Stop)).StatusCode);
    }

    [Fact]
    public async Task The_balance_names_what_is_wrong_in_the_files_of_the_data_folder()
    {
        Assert.Contains("There are no tickets yet.", await client.GetStringAsync("office/season", Stop), StringComparison.Ordinal);
        var folder = Directory.CreateDirectory(Path.Combine(store.Place.DataFolder!, "season")).FullName;
        foreach (var file in Directory.GetFiles(Path.Combine(Kills.Root(), "examples", "season"), "*.csv"))
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)));
        var page = WebUtility.HtmlDecode(await client.GetStringAsync("office/season", Stop));
        Assert.Contains("Most likely wrong: logged N-14, too low by", page, StringComparison.Ordinal);
        Assert.Contains("logged, most likely wrong", page, StringComparison.Ordinal);
        await File.AppendAllTextAsync(Path.Combine(folder, "tickets.csv"), "T-x,never,North,N-11,gift,,,,,,,\n", Stop);
        Assert.Contains("1 row was not taken", await client.GetStringAsync("office/season", Stop), StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);
    }
}
