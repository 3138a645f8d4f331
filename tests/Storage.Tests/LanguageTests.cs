using System.Net;
using System.Text.RegularExpressions;

namespace Lanewright.Storage.Tests;

/// <summary>In which language the pages answer.</summary>
public sealed partial class LanguageTests(DemoServer server) : IClassFixture<DemoServer>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(null, "en")]
    [InlineData("fr", "fr")]
    [InlineData("fr-CA,fr;q=0.9,en;q=0.8", "fr")]
    [InlineData("sv-SE,fi;q=0.5,en;q=0.4", "fi")]
    [InlineData("en;q=0.4,fr;q=0,fi;q=0.9", "fi")]
    [InlineData("sv, *;q=0.1", "en")]
    [InlineData("nonsense;;q=x", "en")]
    public async Task A_browser_is_answered_in_the_first_of_its_languages_that_is_spoken(string? wishes, string language)
    {
        using var answer = await AskAsync("office", wishes);
        Assert.Equal(language, LanguageOf(await answer.Content.ReadAsStringAsync(Stop)));
    }

    [Fact]
    public async Task A_choice_at_the_foot_of_a_page_is_kept_and_comes_before_the_browsers_languages()
    {
        using var first = await AskAsync("office/tests?q=117&sort=day", "fr");
        var page = WebUtility.HtmlDecode(await first.Content.ReadAsStringAsync(Stop));
        Assert.Contains("<span lang=\"fr\" aria-current=\"true\">Français</span>", page, StringComparison.Ordinal);
        Assert.Contains("href=\"/office/tests?q=117&sort=day&language=fi\">Suomi</a>", page, StringComparison.Ordinal);

        using var chosen = await AskAsync("office/tests?q=117&sort=day&language=fi", "fr");
        Assert.Equal(HttpStatusCode.Found, chosen.StatusCode);
        Assert.Equal("/office/tests?q=117&sort=day", chosen.Headers.Location?.OriginalString);
        var cookie = Assert.Single(chosen.Headers.GetValues("Set-Cookie"));
        Assert.StartsWith("lanewright-language=fi; ", cookie, StringComparison.Ordinal);
        using var next = await AskAsync("office/tests", "fr", cookie.Split(';')[0]);
        Assert.Equal("fi", LanguageOf(await next.Content.ReadAsStringAsync(Stop)));
    }

    [Theory]
    [InlineData("office?language=sv", "en")]
    [InlineData("office?language=", "en")]
    public async Task A_language_that_is_not_spoken_changes_nothing(string address, string language)
    {
        using var answer = await AskAsync(address, null);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(language, LanguageOf(await answer.Content.ReadAsStringAsync(Stop)));
        Assert.False(answer.Headers.Contains("Set-Cookie"));
    }

    [Fact]
    public async Task A_choice_leads_to_no_other_server()
    {
        using var answer = await AskAsync("//elsewhere.example/?language=fr", null);
        Assert.Equal("/elsewhere.example/", answer.Headers.Location?.OriginalString);
    }

    [Fact]
    public async Task Numbers_have_the_decimal_mark_of_the_language_and_those_of_files_a_point()
    {
        var shown = new List<string>();
        var files = new List<string>();
        foreach (var language in new[] { "en", "fr", "fi" })
        {
            using var page = await AskAsync("office/reports/fleet", language);
            shown.Add(string.Join(' ', Cell().Matches(WebUtility.HtmlDecode(await page.Content.ReadAsStringAsync(Stop))).Select(match => match.Groups[1].Value).Where(cell => cell.Any(char.IsDigit))));
            using var file = await AskAsync("office/reports/fleet.csv", language);
            files.Add(string.Join(' ', Decimal().Matches(await file.Content.ReadAsStringAsync(Stop)).Select(match => match.Value)));
        }

        Assert.Contains('.', shown[0]);
        Assert.All(shown[1..], one => Assert.Equal(shown[0].Replace('.', ','), one));
        Assert.Contains('.', files[0]);
        Assert.All(files, one => Assert.Equal(files[0], one));
    }

    [Fact]
    public async Task A_form_is_read_and_shown_as_its_page_writes_numbers_and_kept_with_a_point()
    {
        using var browser = new OfficeBrowser(server.Client.BaseAddress!);
        await browser.OpenAsync("office?language=fr");
        const string form = "/office/scales/new";
        var (status, _, _) = await browser.FillAsync(form, form, ("f.id", "balance du dépôt"), ("f.kind", "floor"), ("f.capacity", "1,250 t"), ("f.division", "0,2 kg"));
        Assert.Equal(HttpStatusCode.Found, status);
        var item = (await server.Store.RegisterAsync("scale", Stop)).Single(item => item.Payload.Contains("balance du", StringComparison.Ordinal));
        Assert.Contains("\"1.25 t\"", item.Payload, StringComparison.Ordinal);
        Assert.Contains("\"0.2 kg\"", item.Payload, StringComparison.Ordinal);

        // The language is changed in another tab while the form is open.
        var edit = $"/office/scales/{item.Id}/edit";
        var (_, page) = await browser.OpenAsync(edit);
        var fields = OfficeBrowser.FormOf(page, edit);
        Assert.Equal(("1,25 t", "0,2 kg"), (fields["f.capacity"], fields["f.division"]));
        await browser.OpenAsync("office?language=en");
        fields["f.capacity"] = "1,500 t";
        fields["why"] = "new plate";
        Assert.Equal(HttpStatusCode.Found, (await browser.SendAsync(edit, fields)).Status);
        Assert.Contains("\"1.5 t\"", (await server.Store.RegisterItemAsync(item.Id, Stop))!.Payload, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("fr", null, "Il n'y a rien à cette adresse.")]
    [InlineData("fr", "fi", "Tässä osoitteessa ei ole mitään.")]
    [InlineData(null, null, "There is nothing at this address.")]
    public async Task What_the_server_refuses_is_said_in_the_language_of_the_page_that_asks(string? wishes, string? ofPage, string said)
    {
        using var answer = await AskAsync("api/nowhere", wishes, page: ofPage);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        using var problem = System.Text.Json.JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Stop));
        Assert.Equal(said, problem.RootElement.GetProperty("title").GetString());
    }

    [Theory]
    [InlineData("fr", "Le nom a 61 caractères\u00a0; 60 au plus sont admis. Utiliser des initiales.")]
    [InlineData("fi", "Nimessä on 61 merkkiä; enintään 60 sallitaan. Käytä nimikirjaimia.")]
    public async Task A_form_that_comes_back_says_why_in_the_language_of_the_page(string language, string said)
    {
        using var browser = new OfficeBrowser(server.Client.BaseAddress!, null);
        await browser.OpenAsync($"office/who?language={language}");
        var (_, page, _) = await browser.FillAsync("/office/who", "/office/who", ("who", new string('x', 61)));
        Assert.Contains(said, WebUtility.HtmlDecode(page), StringComparison.Ordinal);
    }

    private async Task<HttpResponseMessage> AskAsync(string address, string? wishes, string? cookie = null, string? page = null)
    {
        using var handler = new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false };
        using var client = new HttpClient(handler);
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(server.Client.BaseAddress!.OriginalString + address));
        if (wishes is not null) request.Headers.TryAddWithoutValidation("Accept-Language", wishes);
        if (page is not null) request.Headers.Add("x-lanewright-language", page);
        if (cookie is not null) request.Headers.Add("Cookie", cookie);
        return await client.SendAsync(request, Stop);
    }

    private static string LanguageOf(string page) => Html().Match(page).Groups[1].Value;

    [GeneratedRegex("<html lang=\"(..)\">")]
    private static partial Regex Html();

    [GeneratedRegex("<td class=\"number\">([^<]*)</td>")]
    private static partial Regex Cell();

    [GeneratedRegex(@"\d+\.\d+")]
    private static partial Regex Decimal();
}
