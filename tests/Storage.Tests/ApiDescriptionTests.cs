using System.Diagnostics;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Lanewright.Host;
using Microsoft.AspNetCore.Routing;

namespace Lanewright.Storage.Tests;

/// <summary>What /api/openapi.json says, against what the server has and answers.</summary>
public sealed class ApiDescriptionTests(DemoServer server) : IClassFixture<DemoServer>
{
    private static readonly JsonNode Document = Read();

    public static TheoryData<string> Asked =>
    [
        .. Document["paths"]!.AsObject().Where(path => path.Value!["get"]?["responses"]!["200"]!["content"]!["application/json"] is not null)
            .Select(path => path.Key),
    ];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void Every_address_of_the_API_is_described_and_no_other()
    {
        var mapped = server.Endpoints.OfType<RouteEndpoint>()
            .Where(one => one.RoutePattern.RawText!.StartsWith("/api/", StringComparison.Ordinal) && !one.RoutePattern.RawText.Contains("**", StringComparison.Ordinal))
            .SelectMany(one => (one.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? []).Select(method => $"{method} {one.RoutePattern.RawText}"));
        var described = Document["paths"]!.AsObject()
            .SelectMany(path => path.Value!.AsObject().Select(method => $"{method.Key.ToUpperInvariant()} {path.Key}"));
        Assert.Equal(mapped.Order(StringComparer.Ordinal), described.Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Asked))]
    public async Task Every_answer_has_the_shape_that_is_described(string path)
    {
        var test = (await JsonAsync("/api/tests?state=all")).GetProperty("tests")[0].GetProperty("test").GetProperty("id").GetString()!;
        var spreader = (await JsonAsync("/api/register")).GetProperty("spreaders")[0];
        var id = path.Contains("spreaders", StringComparison.Ordinal) ? spreader.GetProperty("id").GetString()! : test;
        var words = path.EndsWith("{word}", StringComparison.Ordinal)
            ? (await JsonAsync("/api/reports")).GetProperty("reports").EnumerateArray().Select(one => one.GetProperty("word").GetString()!)
            : [""];
        foreach (var word in words)
        {
            var address = path.Replace("{id}", id, StringComparison.Ordinal).Replace("{word}", word, StringComparison.Ordinal);
            if (path == "/api/earlier") address += "?spreader=" + spreader.GetProperty("record").GetProperty("id").GetString();
            var answer = await JsonAsync(address);
            var result = Schema(Document["paths"]![path]!["get"]!["responses"]!["200"]!["content"]!["application/json"]!["schema"]!)
                .Evaluate(answer, new() { OutputFormat = OutputFormat.List });
            Assert.True(result.IsValid, $"{address}: {string.Join("; ", (result.Details ?? []).Where(one => one.Errors is not null).Select(one => $"{one.InstanceLocation} {string.Join(',', one.Errors!.Values)}"))}");
        }
    }

    [Theory]
    [InlineData("/api/entries?after=-1", 400)]
    [InlineData("/api/entries?most=501", 400)]
    [InlineData("/api/tests/none/fields", 404)]
    [InlineData("/api/tests/none/report", 404)]
    [InlineData("/api/reports/none", 404)]
    [InlineData("/api/tests/none/certificate.pdf", 404)]
    public async Task What_is_wrong_is_said_in_the_described_shape(string address, int status)
    {
        using var answer = await server.Client.GetAsync(new Uri(address, UriKind.Relative), Stop);
        Assert.Equal(status, (int)answer.StatusCode);
        using var json = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Stop));
        Assert.True(Schema(Document["components"]!["schemas"]!["Problem"]!).Evaluate(json.RootElement).IsValid);
    }

    [Fact]
    public async Task Entries_come_in_order_and_all_of_them()
    {
        long last = 0;
        var hash = new string('0', 64);
        while (true)
        {
            var answer = await JsonAsync($"/api/entries?most=200&after={last}");
            foreach (var entry in answer.GetProperty("entries").EnumerateArray())
            {
                Assert.Equal(++last, entry.GetProperty("number").GetInt64());
                Assert.Equal(hash, entry.GetProperty("previousHash").GetString());
                hash = entry.GetProperty("hash").GetString()!;
            }

            if (answer.GetProperty("entries").GetArrayLength() < 200) break;
        }

        Assert.Equal(await server.Store.LastAsync(Stop), (last, hash));
    }

    [Fact]
    public async Task The_example_of_a_client_copies_the_records_and_goes_on_where_it_stopped()
    {
        var folder = Directory.CreateTempSubdirectory("lanewright-client-");
        try
        {
            var file = Path.Combine(folder.FullName, "entries.jsonl");
            var first = await ClientAsync(file);
            Assert.Contains("Due list", first, StringComparison.Ordinal);
            var lines = await File.ReadAllLinesAsync(file, Stop);
            Assert.Equal((await server.Store.LastAsync(Stop)).Number, lines.Length);
            await File.WriteAllTextAsync(file, string.Join('\n', lines[..^3]) + "\n" + lines[^3][..40], Stop);
            Assert.Contains($"3 entries added to {file}, {lines.Length} in all", await ClientAsync(file), StringComparison.Ordinal);
            Assert.Equal(lines, await File.ReadAllLinesAsync(file, Stop));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private async Task<string> ClientAsync(string file)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var word in (string[])["run", Path.Combine(Kills.Root(), "examples", "client", "api-client.cs"), "--", server.Client.BaseAddress!.ToString(), file])
            start.ArgumentList.Add(word);
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync(Stop);
        var output = await process.StandardOutput.ReadToEndAsync(Stop);
        await process.WaitForExitAsync(Stop);
        Assert.True(process.ExitCode == 0, output + await error);
        return output;
    }

    private async Task<JsonElement> JsonAsync(string address)
    {
        using var json = JsonDocument.Parse(await server.Client.GetStringAsync(new Uri(address, UriKind.Relative), Stop));
        return json.RootElement.Clone();
    }

    // The schemas of the document are JSON Schema 2020-12; only the place of the shared ones differs.
    private static JsonSchema Schema(JsonNode node)
    {
        var whole = node.DeepClone().AsObject();
        whole["$defs"] = Document["components"]!["schemas"]!.DeepClone();
        return JsonSchema.FromText(whole.ToJsonString().Replace("#/components/schemas/", "#/$defs/", StringComparison.Ordinal));
    }

    private static JsonNode Read()
    {
        using var stream = OpenApiDocument.Open();
        return JsonNode.Parse(stream)!;
    }
}
