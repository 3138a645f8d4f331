using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Lanewright.Host;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Records;
using Microsoft.AspNetCore.Builder;

namespace Lanewright.Storage.Tests;

public sealed class HostTests : IAsyncLifetime
{
    private readonly TestRecords records = TestRecords.InFolder();
    private readonly string pages = Directory.CreateTempSubdirectory("lanewright-pages-").FullName;
    private readonly HttpClient client = new();
    private WebApplication? app;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        File.WriteAllText(Path.Combine(pages, "index.html"), "<!doctype html><title>page</title>");
        Directory.CreateDirectory(Path.Combine(pages, "core"));
        File.WriteAllText(Path.Combine(pages, "core", "dotnet.abcdefghij.js"), "plain");
        File.WriteAllText(Path.Combine(pages, "core", "dotnet.abcdefghij.js.br"), "compressed");
        app = Server.Build(new(0, pages), await records.OpenAsync());
        await app.StartAsync(Stop);
        client.BaseAddress = new(app.Urls.First());
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        await app!.DisposeAsync();
        await records.DisposeAsync();
        Directory.Delete(pages, recursive: true);
    }

    [Fact]
    public async Task Entries_sent_are_answered_one_by_one_and_are_there_afterwards()
    {
        var make = new Drafts();
        var test = make.Id();
        EntryDraft[] sent = [make.Begin(test), make.Spreader("sp-1", "HR-104")];
        var body = $$"""{"entries":[{{EntryWriter.Text(sent[0])}},{"id":"poison"},{{EntryWriter.Text(sent[1])}}]}""";

        foreach (var expected in new[] { "accepted", "have" })
        {
            using var answer = await PostAsync(body);
            var json = await JsonAsync(answer);
            Assert.Equal(
                [expected, "rejected", expected], json.GetProperty("results").EnumerateArray().Select(one => one.GetProperty("status").GetString()));
            Assert.Equal(2, json.GetProperty("last").GetInt64());
            Assert.Equal(Server.Version, answer.Headers.GetValues(Server.VersionHeader).Single());
        }

        var tests = await JsonAsync(await client.GetAsync("/api/tests?state=open&spreader=sp-1&q=hr-104", Stop));
        Assert.Equal(test, tests.GetProperty("tests")[0].GetProperty("test").GetProperty("id").GetString());
        var one = await JsonAsync(await client.GetAsync($"/api/tests/{test}/entries", Stop));
        Assert.Equal("HR-104", one.GetProperty("entries")[0].GetProperty("payload").GetProperty("fields").GetProperty("spreader.id").GetString());
        Assert.Equal(64, one.GetProperty("entries")[0].GetProperty("hash").GetString()!.Length);
        var register = await JsonAsync(await client.GetAsync("/api/register", Stop));
        Assert.Equal(sent[1].Id, register.GetProperty("spreaders")[0].GetProperty("entry").GetString());
        Assert.Equal("HR-104", register.GetProperty("spreaders")[0].GetProperty("record").GetProperty("name").GetString());
        var aside = await JsonAsync(await client.GetAsync("/api/quarantine", Stop));
        Assert.Contains("poison", aside.GetProperty("entries")[0].GetProperty("raw").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Reasons_in_quarantine_are_said_in_the_readers_language()
    {
        var make = new Drafts();
        var first = make.Spreader("sp-1", "HR-104");
        var deep = EntryWriter.Text(make.Spreader("sp-2", "HR-105")).Replace("{\"name\"", "{\"deep\":" + new string('[', 300) + new string(']', 300) + ",\"name\"", StringComparison.Ordinal);
        using var _ = await PostAsync($$"""{"entries":[{{EntryWriter.Text(first)}},{{EntryWriter.Text(first with { Person = "Somebody else" })}},{"id":"x"},{{deep}}]}""");

        var (english, french) = (await ReasonsAsync("en"), await ReasonsAsync("fr"));
        Assert.Equal(3, english.Count);
        Assert.Contains("Entry 1 has this id and says something else.", english);
        Assert.Contains("L'entrée 1 a cet identifiant et dit autre chose.", french);
        Assert.All(english, reason => Assert.DoesNotContain(reason, french));

        async Task<List<string?>> ReasonsAsync(string language) =>
            [.. (await JsonAsync(await client.GetAsync($"/api/quarantine?language={language}", Stop))).GetProperty("entries").EnumerateArray().Select(one => one.GetProperty("reason").GetString())];
    }

    [Fact]
    public async Task An_answer_that_gets_lost_and_is_asked_for_again_leaves_one_copy()
    {
        var make = new Drafts();
        for (var i = 0; i < 15; i++)
        {
            var body = $$"""{"entries":[{{EntryWriter.Text(make.Spreader($"sp-{i}", "HR"))}}]}""";
            using var lost = new CancellationTokenSource(i);
            try
            {
                using var _ = await client.PostAsync("/api/entries", Json(body), lost.Token);
            }
            catch (OperationCanceledException)
            {
                // The link broke; the page does not know what became of it and sends again.
            }

            var again = (await JsonAsync(await PostAsync(body))).GetProperty("results")[0];
            Assert.Contains(again.GetProperty("status").GetString(), new[] { "accepted", "have" });
        }

        var store = await records.OpenAsync();
        Assert.Equal(15, (await store.LastAsync(Stop)).Number);
    }

    [Theory]
    [InlineData("{", 400, "body")]
    [InlineData("[]", 400, "entries")]
    [InlineData("{\"entries\":7}", 400, "entries")]
    public async Task A_body_that_is_not_understood_is_a_problem_with_its_field(string body, int status, string field)
    {
        using var answer = await PostAsync(body);
        Assert.Equal(status, (int)answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        var problem = await JsonAsync(answer);
        Assert.Equal(field, problem.GetProperty("field").GetString());
        Assert.False(string.IsNullOrEmpty(problem.GetProperty("expected").GetString()));
    }

    [Fact]
    public async Task Too_many_entries_or_bytes_are_refused_whole()
    {
        using var many = await PostAsync($$"""{"entries":[{{string.Join(',', Enumerable.Repeat("1", 501))}}]}""");
        Assert.Equal(413, (int)many.StatusCode);
        using var large = await PostAsync("{\"entries\":[\"" + new string('x', 1_100_000) + "\"]}");
        Assert.Equal(413, (int)large.StatusCode);
        Assert.Empty(await (await records.OpenAsync()).QuarantineAsync(Stop));
    }

    [Theory]
    [InlineData("/api/tests?state=shut", 400)]
    [InlineData("/api/tests?after=x", 400)]
    [InlineData("/api/tests?most=0", 400)]
    [InlineData("/api/tests/none/entries", 404)]
    [InlineData("/api/photos/none", 404)]
    [InlineData("/api/none", 404)]
    public async Task Questions_that_cannot_be_answered_are_problems(string path, int status)
    {
        using var answer = await client.GetAsync(path, Stop);
        Assert.Equal(status, (int)answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task A_photo_is_put_once_and_given_back_with_its_tag()
    {
        var make = new Drafts();
        byte[] bytes = [.. Enumerable.Range(0, 3000).Select(i => (byte)i)];
        var entry = make.Draft(EntryKinds.TestPhoto, make.Id(),
            $$"""{"slot":"runs[0]","name":"a.jpg","mime":"text/html","bytes":3000,"sha256":"{{PhotoHash.Of(bytes)}}"}""");
        Assert.Equal(404, (int)(await PutAsync(entry.Id, bytes)).StatusCode);
        using var sent = await PostAsync($$"""{"entries":[{{EntryWriter.Text(entry)}}]}""");
        Assert.Equal(422, (int)(await PutAsync(entry.Id, [1])).StatusCode);
        Assert.Equal(413, (int)(await PutAsync(entry.Id, new byte[EntryStore.MostPhotoBytes + 1])).StatusCode);
        Assert.Equal("accepted", (await JsonAsync(await PutAsync(entry.Id, bytes))).GetProperty("status").GetString());
        Assert.Equal("have", (await JsonAsync(await PutAsync(entry.Id, bytes))).GetProperty("status").GetString());
        using var back = await client.GetAsync($"/api/photos/{entry.Id}", Stop);
        Assert.Equal(bytes, await back.Content.ReadAsByteArrayAsync(Stop));
        // What a device calls HTML is not shown as a page of ours.
        Assert.Equal("application/octet-stream", back.Content.Headers.ContentType!.MediaType);
        Assert.NotNull(back.Headers.ETag);
    }

    [Theory]
    [InlineData("Host", "yard.example", 421)]
    [InlineData("Origin", "http://yard.example", 403)]
    [InlineData("Origin", "null", 403)]
    [InlineData("Sec-Fetch-Site", "cross-site", 403)]
    [InlineData("Content-Type", "text/plain", 415)]
    public async Task What_a_foreign_page_could_make_a_browser_send_is_refused(string header, string value, int status)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/entries") { Content = Json("{\"entries\":[]}") };
        if (header == "Content-Type") request.Content.Headers.ContentType = new(value);
        else request.Headers.TryAddWithoutValidation(header, value);
        using var answer = await client.SendAsync(request, Stop);
        Assert.Equal(status, (int)answer.StatusCode);
    }

    [Fact]
    public async Task The_page_s_own_requests_pass()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/entries") { Content = Json("{\"entries\":[]}") };
        request.Headers.Add("Origin", client.BaseAddress!.GetLeftPart(UriPartial.Authority));
        request.Headers.Add("Sec-Fetch-Site", "same-origin");
        using var answer = await client.SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task Every_answer_carries_the_security_headers()
    {
        foreach (var path in new[] { "/", "/api/hello", "/api/none", "/none.js" })
        {
            using var answer = await client.GetAsync(path, Stop);
            var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
            Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe-inline", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("'unsafe-eval'", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
            // Not no-referrer: browsers then send a form's Origin as null, which is refused.
            Assert.Equal("same-origin", answer.Headers.GetValues("Referrer-Policy").Single());
        }
    }

    [Fact]
    public async Task Pages_are_asked_for_again_by_their_tag_and_hashed_files_are_kept_for_good()
    {
        using var page = await client.GetAsync("/", Stop);
        Assert.True(page.Headers.CacheControl!.NoCache);
        using var again = new HttpRequestMessage(HttpMethod.Get, "/");
        again.Headers.IfNoneMatch.Add(page.Headers.ETag!);
        Assert.Equal(HttpStatusCode.NotModified, (await client.SendAsync(again, Stop)).StatusCode);

        using var plain = await client.GetAsync("/core/dotnet.abcdefghij.js", Stop);
        Assert.Equal("plain", await plain.Content.ReadAsStringAsync(Stop));
        Assert.Contains("immutable", plain.Headers.GetValues("Cache-Control").Single(), StringComparison.Ordinal);
        Assert.Contains("Accept-Encoding", plain.Headers.Vary);

        using var wanted = new HttpRequestMessage(HttpMethod.Get, "/core/dotnet.abcdefghij.js");
        wanted.Headers.AcceptEncoding.Add(new StringWithQualityHeaderValue("br"));
        using var packed = await client.SendAsync(wanted, Stop);
        Assert.Equal("compressed", await packed.Content.ReadAsStringAsync(Stop));
        Assert.Equal("br", packed.Content.Headers.ContentEncoding.Single());
        Assert.Equal("text/javascript", packed.Content.Headers.ContentType!.MediaType);
        Assert.NotEqual(plain.Headers.ETag, packed.Headers.ETag);
    }

    private static StringContent Json(string body) => new(body, Encoding.UTF8, "application/json");

    private Task<HttpResponseMessage> PostAsync(string body) => client.PostAsync("/api/entries", Json(body), Stop);

    private Task<HttpResponseMessage> PutAsync(string id, byte[] bytes)
    {
        var request = new HttpRequestMessage(HttpMethod.Put, $"/api/photos/{id}") { Content = new ByteArrayContent(bytes) };
        // The answer to one that is too large comes before its bytes are sent.
        request.Headers.ExpectContinue = true;
        return client.SendAsync(request, Stop);
    }

    private static async Task<JsonElement> JsonAsync(HttpResponseMessage answer)
    {
        using var json = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Stop));
        return json.RootElement.Clone();
    }
}
