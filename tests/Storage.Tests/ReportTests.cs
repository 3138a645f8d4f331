using System.IO.Compression;
using System.Net;
using System.Xml.Linq;
using Lanewright.Documents;
using Lanewright.Office;
using Lanewright.Proof;

namespace Lanewright.Storage.Tests;

/// <summary>The office's reports and booklets over the demo world.</summary>
public sealed class ReportTests(DemoServer server) : IClassFixture<DemoServer>
{
    private static readonly XNamespace Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

    public static TheoryData<string> Words => [.. OfficeReports.All.Select(report => report.Word)];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(Words))]
    public async Task Page_csv_spreadsheet_and_paper_of_a_report_say_the_same(string word)
    {
        using var data = new OfficeData(server.Store, TimeProvider.System);
        var report = (await new OfficeReports(data).MakeAsync(word, Stop))!;
        Assert.NotEmpty(report.Rows);
        Assert.All(report.Rows, row => Assert.Equal(report.Columns.Count, row.Count));
        var page = WebUtility.HtmlDecode(await server.Client.GetStringAsync($"office/reports/{word}", Stop));
        foreach (var cell in report.Rows.SelectMany(row => row)) Assert.Contains($">{cell.Text}</td>", page, StringComparison.Ordinal);

        var csv = await server.Client.GetStringAsync($"office/reports/{word}.csv", Stop);
        Assert.Equal(report.Rows.Count + 1, csv.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);

        await using var workbook = new MemoryStream(await server.Client.GetByteArrayAsync($"office/reports/{word}.xlsx", Stop));
        using var zip = new ZipArchive(workbook);
        await using var sheet = zip.GetEntry("xl/worksheets/sheet1.xml")!.Open();
        var rows = (await XDocument.LoadAsync(sheet, LoadOptions.None, Stop)).Descendants(Main + "row").ToList();
        Assert.Equal(report.Rows.Count + 1, rows.Count);
        foreach (var (row, cells) in rows.Skip(1).Zip(report.Rows))
        {
            Assert.Empty(row.Descendants(Main + "f"));
            var values = row.Elements(Main + "c").Select(cell => (string?)cell.Element(Main + "v") ?? cell.Value).ToList();
            foreach (var (value, cell) in values.Zip(cells))
            {
                if (cell.Number is { } number) Assert.Equal(number, double.Parse(value, System.Globalization.CultureInfo.InvariantCulture), Math.Abs(number) * 1e-12);
                else Assert.Equal(cell.Text, value);
            }
        }

        foreach (var paper in (string[])["a4", "letter"])
        {
            var pdf = await server.Client.GetByteArrayAsync($"office/reports/{word}.pdf?paper={paper}", Stop);
            Assert.Equal("%PDF-"u8.ToArray(), pdf[..5]);
        }
    }

    [Theory]
    [InlineData("fr", "fr-FR", "Numéro", "Procès-verbal d'étalonnage")]
    [InlineData("fi", "fi-FI", "Numero", "Kalibrointipöytäkirja")]
    [InlineData("en", "en-US", "Number", "Calibration record")]
    public async Task Reports_cards_and_certificates_are_in_the_language_of_the_request(string language, string named, string number, string certificate)
    {
        using var client = new HttpClient { BaseAddress = server.Client.BaseAddress };
        client.DefaultRequestHeaders.Add("Accept-Language", language);
        var csv = await client.GetStringAsync("office/reports/fleet.csv", Stop);
        Assert.StartsWith(number + ",", csv.TrimStart('\uFEFF'), StringComparison.Ordinal);
        foreach (var word in Words.Select(row => row.Data))
        {
            var pdf = await client.GetByteArrayAsync($"office/reports/{word}.pdf", Stop);
            Assert.Equal(language, PaperText.LanguageOf(pdf)[..2]);
            var workbook = await client.GetByteArrayAsync($"office/reports/{word}.xlsx", Stop);
            Assert.Equal("PK"u8.ToArray(), workbook[..2]);
        }

        var tests = await server.Store.TestsAsync(new() { Most = 200 }, Stop);
        var one = tests.First(test => test.Results.Count > 0 && test.Test.Severity != "stop" && test.Test.Kind == "drop-test").Test.Id;
        var paper = await client.GetByteArrayAsync($"office/tests/{one}/certificate.pdf", Stop);
        Assert.Equal(named, PaperText.LanguageOf(paper));
        Assert.Contains(PaperText.Lines(paper), line => line == certificate);
        Assert.Contains($"<dcc:usedLangCodeISO639_1>{language}<", await client.GetStringAsync($"office/tests/{one}/certificate.xml", Stop), StringComparison.Ordinal);
        using var data = new OfficeData(server.Store, TimeProvider.System);
        foreach (var depot in (await data.SpreadersAsync(Stop)).InUse.Select(spreader => spreader.Record.Depot).Distinct())
        {
            using var answer = await client.GetAsync($"office/booklet.pdf?depot={Uri.EscapeDataString(depot)}", Stop);
            if (!answer.IsSuccessStatusCode) continue;
            var booklet = await answer.Content.ReadAsByteArrayAsync(Stop);
            Assert.Equal(named, PaperText.LanguageOf(booklet));
            return;
        }

        Assert.Fail("No depot has a booklet.");
    }

    [Fact]
    public async Task The_use_of_the_scales_is_what_the_tests_themselves_say_and_invented_data_are_called_so()
    {
        using var data = new OfficeData(server.Store, TimeProvider.System);
        var report = (await new OfficeReports(data).MakeAsync("scales", Stop))!;
        Assert.Contains("invented", report.About, StringComparison.Ordinal);
        var start = (await data.RulesAsync(Stop)).SeasonStart((await data.SpreadersAsync(Stop)).Day);
        var uses = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var test in await server.Store.TestsSinceAsync(start, Stop))
        {
            if ((await server.Store.FoldAsync(test.Test.Id, Stop))!.Text("scale.id") is not { Length: > 0 } scale) continue;
            uses[scale] = uses.GetValueOrDefault(scale) + 1;
        }

        Assert.NotEmpty(uses);
        Assert.Equal(
            uses.OrderBy(use => use.Key, StringComparer.Ordinal).Select(use => (use.Key, (double?)use.Value)),
            report.Rows.Where(row => row[4].Number > 0).Select(row => (row[0].Text, row[4].Number)).OrderBy(row => row.Text, StringComparer.Ordinal));
    }

    [Fact]
    public async Task The_fleet_is_the_spreaders_in_use_and_the_season_counts_them_once()
    {
        using var data = new OfficeData(server.Store, TimeProvider.System);
        var state = await data.SpreadersAsync(Stop);
        var reports = new OfficeReports(data);
        Assert.Equal(state.InUse.Select(one => one.Number), (await reports.MakeAsync("fleet", Stop))!.Rows.Select(row => row[0].Text));
        Assert.Equal(state.Due.Count, (await reports.MakeAsync("due", Stop))!.Rows.Count);
        var season = (await reports.MakeAsync("season", Stop))!;
        Assert.Equal(state.InUse.Count, season.Rows.Sum(row => row[1].Number));
        Assert.Equal(state.Due.Count, season.Rows.Sum(row => row[4].Number));
    }

    [Fact]
    public async Task A_cell_that_looks_like_a_formula_stays_text()
    {
        var report = new ReportSheet("x", "X", "", [new("A"), new("B", true)], [["=HYPERLINK(\"http://x\")", new ReportSheetCell("1", 1)], ["+1\u0001", ""]]);
        using var stream = new MemoryStream();
        await ReportWorkbook.WriteAsync(report, stream, Stop);
        stream.Position = 0;
        using var zip = new ZipArchive(stream);
        await using var sheet = zip.GetEntry("xl/worksheets/sheet1.xml")!.Open();
        var xml = await XDocument.LoadAsync(sheet, LoadOptions.None, Stop);
        Assert.Empty(xml.Descendants(Main + "f"));
        Assert.Contains("=HYPERLINK", xml.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_booklet_holds_the_card_of_every_spreader_of_a_depot_that_has_one()
    {
        using var data = new OfficeData(server.Store, TimeProvider.System);
        var depots = (await data.SpreadersAsync(Stop)).InUse.Select(one => one.Record.Depot).Distinct().ToList();
        var printed = 0;
        foreach (var depot in depots)
        {
            var cards = await DepotCards.OfAsync(data, depot, "lanewright:", Core.Text.TextCulture.UnitedStates, Stop);
            Assert.Equal((await data.SpreadersAsync(Stop)).InUse.Count(one => one.Record.Depot == depot), cards.Cards.Count + cards.Without.Count);
            using var answer = await server.Client.GetAsync($"office/booklet.pdf?depot={Uri.EscapeDataString(depot)}&paper=letter", Stop);
            Assert.Equal(cards.Cards.Count > 0 ? HttpStatusCode.OK : HttpStatusCode.NotFound, answer.StatusCode);
            if (cards.Cards.Count == 0) continue;
            printed += cards.Cards.Count;
            Assert.Equal("application/pdf", answer.Content.Headers.ContentType?.MediaType);
        }

        Assert.True(printed > 0);
        Assert.Contains("booklet.pdf", await server.Client.GetStringAsync("office/reports", Stop), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("office/reports/nothing", HttpStatusCode.NotFound)]
    [InlineData("office/reports/fleet.exe", HttpStatusCode.NotFound)]
    [InlineData("office/reports/fleet.pdf?paper=wall", HttpStatusCode.BadRequest)]
    [InlineData("office/booklet.pdf?depot=Nowhere", HttpStatusCode.NotFound)]
    public async Task What_is_not_there_is_said(string address, HttpStatusCode status)
    {
        using var answer = await server.Client.GetAsync(address, Stop);
        Assert.Equal(status, answer.StatusCode);
    }
}
