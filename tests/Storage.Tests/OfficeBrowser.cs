using System.Net;
using System.Text.RegularExpressions;

namespace Lanewright.Storage.Tests;

/// <summary>A browser without script: it opens a page's form, fills it in and sends it.</summary>
internal sealed partial class OfficeBrowser : IDisposable
{
    private readonly HttpClient client;

    internal OfficeBrowser(Uri address, string? person = "R.V.")
    {
        var cookies = new CookieContainer();
        if (person is not null) cookies.Add(address, new Cookie("lanewright-person", Uri.EscapeDataString(person)));
        client = new(new SocketsHttpHandler { CookieContainer = cookies, AllowAutoRedirect = false }) { BaseAddress = address };
    }

    internal async Task<(HttpStatusCode Status, string Page)> OpenAsync(string address)
    {
        using var answer = await client.GetAsync(address, TestContext.Current.CancellationToken);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    /// <summary>The fields of the form with an action, as a browser would send them.</summary>
    internal static Dictionary<string, string> FormOf(string page, string action)
    {
        var form = Forms().Matches(page).Select(match => match.Value)
            .First(text => WebUtility.HtmlDecode(text[..text.IndexOf('>', StringComparison.Ordinal)]).Contains($"action=\"{action}\"", StringComparison.Ordinal));
        var fields = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (Match input in Inputs().Matches(form))
        {
            if (Attribute(input.Value, "name") is not { } name) continue;
            if (Attribute(input.Value, "type") is "checkbox" or "radio" && !input.Value.Contains(" checked", StringComparison.Ordinal)) continue;
            fields[name] = Attribute(input.Value, "value") ?? "";
        }

        foreach (Match area in Areas().Matches(form))
            fields[Attribute(area.Groups[1].Value, "name")!] = WebUtility.HtmlDecode(area.Groups[2].Value).TrimStart('\n');
        foreach (Match select in Selects().Matches(form))
        {
            var options = Options().Matches(select.Groups[2].Value);
            var chosen = options.FirstOrDefault(option => option.Value.Contains(" selected", StringComparison.Ordinal)) ?? options.FirstOrDefault();
            fields[Attribute(select.Groups[1].Value, "name")!] = chosen is null ? "" : Attribute(chosen.Value, "value") ?? "";
        }

        return fields;
    }

    internal async Task<(HttpStatusCode Status, string Page, string? Location)> SendAsync(
        string action, IEnumerable<KeyValuePair<string, string>> fields)
    {
        using var content = new FormUrlEncodedContent(fields);
        using var answer = await client.PostAsync(action, content, TestContext.Current.CancellationToken);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), answer.Headers.Location?.ToString());
    }

    /// <summary>Opens a page, changes some fields of its form, and sends it.</summary>
    internal async Task<(HttpStatusCode Status, string Page, string? Location)> FillAsync(
        string address, string action, params (string Name, string Value)[] changes)
    {
        var fields = FormOf((await OpenAsync(address)).Page, action);
        foreach (var (name, value) in changes) fields[name] = value;
        return await SendAsync(action, fields);
    }

    internal async Task<(HttpStatusCode Status, string Page, string? Location)> UploadAsync(
        string action, IEnumerable<KeyValuePair<string, string>> fields, byte[] file, string name = "list.csv")
    {
        using var content = new MultipartFormDataContent();
        foreach (var (field, value) in fields) content.Add(new StringContent(value), field);
        content.Add(new ByteArrayContent(file), "file", name);
        using var answer = await client.PostAsync(action, content, TestContext.Current.CancellationToken);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), answer.Headers.Location?.ToString());
    }

    public void Dispose() => client.Dispose();

    private static string? Attribute(string tag, string name) =>
        Regex.Match(tag, $"\\s{name}=\"([^\"]*)\"") is { Success: true } match ? WebUtility.HtmlDecode(match.Groups[1].Value) : null;

    [GeneratedRegex("<form .*?</form>", RegexOptions.Singleline)]
    private static partial Regex Forms();

    [GeneratedRegex("<input[^>]*>")]
    private static partial Regex Inputs();

    [GeneratedRegex("(<textarea[^>]*>)(.*?)</textarea>", RegexOptions.Singleline)]
    private static partial Regex Areas();

    [GeneratedRegex("(<select[^>]*>)(.*?)</select>", RegexOptions.Singleline)]
    private static partial Regex Selects();

    [GeneratedRegex("<option[^>]*>")]
    private static partial Regex Options();
}
