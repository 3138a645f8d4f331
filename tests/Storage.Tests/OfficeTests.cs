using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Lanewright.Commands;
using Lanewright.Core.Practice;
using Lanewright.Host;
using Lanewright.Storage.Database;
using Lanewright.Storage.Entries;

namespace Lanewright.Storage.Tests;

/// <summary>The demo world, served on this machine for the tests of one class.</summary>
public sealed class DemoServer : IAsyncLifetime
{
    internal static readonly DateOnly Today = new(2026, 11, 25);
    private readonly string folder = Directory.CreateTempSubdirectory("lanewright-office-").FullName;
    private Microsoft.AspNetCore.Builder.WebApplication app = null!;

    internal EntryStore Store { get; private set; } = null!;

    internal HttpClient Client { get; private set; } = null!;

    /// <summary>Everything that the server answers.</summary>
    internal IReadOnlyList<Microsoft.AspNetCore.Http.Endpoint> Endpoints =>
        [.. ((Microsoft.AspNetCore.Routing.IEndpointRouteBuilder)app).DataSources.SelectMany(source => source.Endpoints)];

    public async ValueTask InitializeAsync()
    {
        var stop = TestContext.Current.CancellationToken;
        Store = await EntryStore.OpenAsync(RecordsPlace.InFolder(folder), stop: stop);
        await DemoCommand.FillAsync(Store, Today, stop);
        app = Server.Build(new(0), Store);
        await app.StartAsync(stop);
        Client = new() { BaseAddress = new($"http://localhost:{new Uri(app.Urls.First()).Port}/") };
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await app.DisposeAsync();
        Store.Release();
        Directory.Delete(folder, recursive: true);
    }
}

/// <summary>The office's pages over the demo world, asked for as a browser does.</summary>
public sealed partial class OfficeTests(DemoServer server) : IClassFixture<DemoServer>
{
    private readonly EntryStore store = server.Store;
    private readonly HttpClient client = server.Client;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("office", "Spreaders")]
    [InlineData("office/tests", "Tests")]
    [InlineData("office/due", "Due")]
    [InlineData("office/compare", "Compare two tests")]
    [InlineData("office/people", "People")]
    [InlineData("office/audit", "Audit")]
    [InlineData("office/scales?sort=verified&down=1", "Scales")]
    [InlineData("office/rules", "The yard&#x27;s rules")]
    [InlineData("office/import", "Import a list")]
    public async Task Every_place_answers_with_its_title(string address, string title)
    {
        var page = await client.GetStringAsync(address, Stop);
        Assert.Contains($"<h1>{title}</h1>", page, StringComparison.Ordinal);
        Assert.Contains("aria-current=\"page\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_list_has_every_spreader_of_the_demo_and_leads_to_its_history()
    {
        var page = await client.GetStringAsync("office", Stop);
        Assert.Equal(40, SpreaderLink().Count(page));
        var first = SpreaderLink().Match(page).Groups[1].Value;
        var detail = await client.GetStringAsync($"office/spreaders/{first}", Stop);
        Assert.Contains("Calibrations through time", detail, StringComparison.Ordinal);
        Assert.True(TestLink().Count(detail) >= 2);
    }

    [Fact]
    public async Task A_test_shows_the_answer_that_the_records_computed()
    {
        var listed = (await store.TestsAsync(new() { Most = 200 }, Stop)).First(one => one.Results.Count > 0 && one.Test.Kind == "drop-test");
        var page = await client.GetStringAsync($"office/tests/{listed.Test.Id}", Stop);
        Assert.Contains("Invented data.", page, StringComparison.Ordinal);
        var shown = Big().Match(page).Groups[1].Value;
        var value = Core.Quantities.Units.Find(listed.Results[0].Unit)!.FromSi(listed.Results[0].Value);
        var read = double.Parse(
            shown.Split(' ')[0].Replace(",", "", StringComparison.Ordinal), System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(value, read, value * listed.Results[0].RelativeExpanded);
    }

    [Fact]
    public async Task Comparing_a_test_with_itself_finds_no_difference_and_with_another_the_ratio_of_their_constants()
    {
        var spreader = DemoWorld.Make(20260901, DemoServer.Today).First(e => e.Kind == "register.spreader").Subject;
        var tests = (await store.TestsAsync(new() { Spreader = spreader }, Stop)).Where(t => t.Results.Count == 1).ToList();
        var same = await client.GetStringAsync($"office/compare?a={tests[0].Test.Id}&b={tests[0].Test.Id}", Stop);
        Assert.Contains("0.00 % higher than the first, &#xB1; 0.00 %", same, StringComparison.Ordinal);
        var other = await client.GetStringAsync($"office/compare?a={tests[0].Test.Id}&b={tests[1].Test.Id}", Stop);
        var change = (tests[1].Results[0].Value / tests[0].Results[0].Value) - 1;
        Assert.Contains(change >= 0 ? "higher than the first" : "lower than the first", other, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_people_typed_is_text_on_the_page_and_in_the_spreadsheet_never_a_tag_or_a_formula()
    {
        await store.AppendAsync(
        [
            new EntryDraft
            {
                Id = Guid.CreateVersion7().ToString("D"), Kind = "test.begin", Subject = Guid.CreateVersion7().ToString("D"),
                Person = "<b>x</b>", Device = Guid.CreateVersion7().ToString("D"), Seq = 1, At = DateTimeOffset.UnixEpoch,
                Zone = "UTC",
                Payload = JsonSerializer.Serialize(new
                {
                    kind = "drop-test",
                    fields = new Dictionary<string, string> { ["title"] = "<script>alert(1)</script>", ["spreader.id"] = "=1+1" },
                }),
            },
        ], Stop);
        var page = await client.GetStringAsync("office/tests", Stop);
        Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;alert(1)", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Tables_filter_sort_and_page_on_the_server_over_all_rows()
    {
        var page = await client.GetStringAsync("office?q=fjellmark&sort=number&down=1", Stop);
        Assert.Equal(8, SpreaderLink().Count(page));
        Assert.Contains("8 of 8 shown", page, StringComparison.Ordinal);
        Assert.True(page.IndexOf("FM-08", StringComparison.Ordinal) < page.IndexOf("FM-01", StringComparison.Ordinal));
        var all = (await store.TestsAsync(new() { Most = 500 }, Stop)).Count;
        Assert.True(all > 100, "The demo no longer fills two pages.");
        Assert.Contains($"1 to 100 of {all} shown", await client.GetStringAsync("office/tests", Stop), StringComparison.Ordinal);
        var second = await client.GetStringAsync("office/tests?page=2&sort=day", Stop);
        Assert.Contains($"of {all} shown", second, StringComparison.Ordinal);
        Assert.Contains("rel=\"prev\"", second, StringComparison.Ordinal);
        Assert.Contains("0 of 0 shown", await client.GetStringAsync("office/tests?q=nothing+like+it", Stop), StringComparison.Ordinal);
        var lines = (await client.GetStringAsync("office/spreaders.csv?q=fjellmark", Stop)).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(9, lines.Length);
    }

    [Theory]
    [InlineData("HR-104", "/office/spreaders/")]
    [InlineData("alder flat", "/office/spreaders/")]
    [InlineData("m.o.", ">M.O.</a>, technician")]
    [InlineData("nothing like it", "Nothing was found for")]
    public async Task The_search_finds_spreaders_tests_and_people(string words, string expected)
    {
        var page = await client.GetStringAsync($"office/search?q={Uri.EscapeDataString(words)}", Stop);
        Assert.Contains(expected, page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_search_finds_the_tests_of_a_day()
    {
        // Another test of this class leaves one without a day.
        var test = (await store.TestsAsync(new() { Most = 50 }, Stop)).First(one => one.Test.Date.Length > 0).Test;
        var page = await client.GetStringAsync($"office/search?q={test.Date}", Stop);
        Assert.Contains($"/office/tests/{test.Id}", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_chain_is_checked_when_somebody_asks_and_the_page_says_when()
    {
        using var browser = new OfficeBrowser(client.BaseAddress!);
        Assert.DoesNotContain("chain is whole", (await browser.OpenAsync("office/audit")).Page, StringComparison.Ordinal);
        var answer = await browser.FillAsync("office/audit", "/office/audit/check");
        Assert.Equal(HttpStatusCode.Found, answer.Status);
        Assert.Contains("the chain is whole. Last hash:", (await browser.OpenAsync("office/audit")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_spreadsheets_have_a_row_for_each_spreader_and_result()
    {
        var lines = (await client.GetStringAsync("office/spreaders.csv", Stop)).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(41, lines.Length);
        Assert.StartsWith("number,depot,", lines[0], StringComparison.Ordinal);
        var tests = await client.GetAsync("office/tests.csv", Stop);
        Assert.Equal("text/csv", tests.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task Every_table_that_sorts_and_filters_is_downloaded_in_the_same_order_with_its_own_columns()
    {
        // The due list: the dearest to wait for first, and what that costs.
        var due = await LinesAsync("office/due.csv");
        Assert.Equal("number,depot,due,error_percent,season_tonnes,cost_of_waiting", due[0]);
        var costs = due.Skip(1).Select(line => line.Split(',')[^1]).Where(text => text.Length > 0)
            .Select(text => double.Parse(text, CultureInfo.InvariantCulture)).ToList();
        Assert.True(costs.Count > 3);
        Assert.Equal(costs.OrderDescending(), costs);
        var page = await client.GetStringAsync("office/due", Stop);
        Assert.Equal(SpreaderLink().Count(page), due.Length - 1);
        var numbers = (await LinesAsync("office/due.csv?sort=number&down=1")).Skip(1).Select(line => line.Split(',')[0]).ToList();
        Assert.Equal(numbers.OrderDescending(StringComparer.Ordinal), numbers);

        Assert.Equal(6, (await LinesAsync("office/register/depots.csv")).Length);
        Assert.Contains("/office/register/depots.csv", await client.GetStringAsync("office/depots", Stop), StringComparison.Ordinal);

        // A test without a result, as one just begun, is a row too.
        var make = new Drafts("phone-rows", 8);
        await store.AppendAsync([make.Begin(make.Id(), new Dictionary<string, string>(StringComparer.Ordinal) { ["title"] = "Only begun" })], Stop);
        Assert.Contains(await LinesAsync("office/tests.csv"), line => line.Contains("Only begun", StringComparison.Ordinal));

        async Task<string[]> LinesAsync(string address) =>
            (await client.GetStringAsync(address, Stop)).TrimStart('\uFEFF').Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
    }

    [Theory]
    [InlineData("office/spreaders/none")]
    [InlineData("office/tests/none")]
    public async Task What_is_not_there_is_not_found(string address) =>
        Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync(address, Stop)).StatusCode);

    [GeneratedRegex("/office/spreaders/([0-9a-f-]{36})\"")]
    private static partial Regex SpreaderLink();

    [GeneratedRegex("/office/tests/[0-9a-f-]{36}\"")]
    private static partial Regex TestLink();

    [GeneratedRegex("<p class=\"big\">([^<]*)</p>")]
    private static partial Regex Big();
}
