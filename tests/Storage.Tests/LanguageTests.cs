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
    public async Task Numbers_are_written_alike_in_every_language()
    {
        var numbers = new List<string>();
        foreach (var language in new[] { "en", "fr", "fi" })
        {
            using var answer = await AskAsync("office/due", language);
            numbers.Add(string.Join(' ', Cell().Matches(await answer.Content.ReadAsStringAsync(Stop)).Select(match => match.Groups[1].Value).Where(cell => cell.Any(char.IsDigit))));
        }

        Assert.Contains("%", numbers[0], StringComparison.Ordinal);
        Assert.All(numbers, one => Assert.Equal(numbers[0], one));
    }

    private async Task<HttpResponseMessage> AskAsync(string address, string? wishes, string? cookie = null)
    {
        using var handler = new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false };
        using var client = new HttpClient(handler);
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(server.Client.BaseAddress!.OriginalString + address));
        if (wishes is not null) request.Headers.TryAddWithoutValidation("Accept-Language", wishes);
        if (cookie is not null) request.Headers.Add("Cookie", cookie);
        return await client.SendAsync(request, Stop);
    }

    private static string LanguageOf(string page) => Html().Match(page).Groups[1].Value;

    [GeneratedRegex("<html lang=\"(..)\">")]
    private static partial Regex Html();

    [GeneratedRegex("<td class=\"number\">([^<]*)</td>")]
    private static partial Regex Cell();
}
