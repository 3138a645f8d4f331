using System.Net;

namespace Lanewright.Storage.Tests;

/// <summary>The other calibrations in the records and the office.</summary>
public sealed class CalibrationTests(DemoServer server) : IClassFixture<DemoServer>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_rate_card_of_the_demo_is_computed_shown_and_drawn()
    {
        var listed = await server.Store.TestsAsync(new() { Words = "rate card", Most = 100 }, Stop);
        Assert.NotEmpty(listed);
        Assert.All(listed, one => Assert.Equal("rate-card", one.Test.Kind));
        Assert.All(listed, one => Assert.Null(one.Test.Problem));
        Assert.All(listed, one => Assert.NotEmpty(one.Results));
        var id = listed[0].Test.Id;

        var page = await server.Client.GetStringAsync($"office/tests/{id}", Stop);
        Assert.Contains("Whether it can hold the rate at each speed", page, StringComparison.Ordinal);
        Assert.Contains("highest speed at", page, StringComparison.Ordinal);
        Assert.Contains($"/office/tests/{id}/card.pdf", page, StringComparison.Ordinal);

        foreach (var paper in new[] { "a5", "letter" })
        {
            using var answer = await server.Client.GetAsync($"office/tests/{id}/card.pdf?paper={paper}", Stop);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Equal("application/pdf", answer.Content.Headers.ContentType?.MediaType);
            var bytes = await answer.Content.ReadAsByteArrayAsync(Stop);
            Assert.Equal("%PDF-"u8.ToArray(), bytes[..5]);
        }
    }

    [Fact]
    public async Task A_course_of_the_demo_is_kept_with_its_interval()
    {
        var listed = await server.Store.TestsAsync(new() { Words = "ground speed", Most = 10 }, Stop);
        var result = Assert.Single(listed[0].Results);
        Assert.Equal("pulse/mile", result.Unit);
        Assert.InRange(result.RelativeExpanded, 1e-4, 0.05);
        Assert.InRange(result.Value * 1609.344, 15_000, 30_000);
    }

    [Fact]
    public async Task What_is_no_rate_card_makes_no_card_and_says_so()
    {
        var page = await server.Client.GetStringAsync("office/tests", Stop);
        var drop = (await server.Store.TestsAsync(new() { Most = 200 }, Stop)).First(one => one.Test.Kind == "drop-test").Test.Id;
        Assert.Contains("<table", page, StringComparison.Ordinal);
        using var none = await server.Client.GetAsync($"office/tests/{drop}/card.pdf", Stop);
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
        using var wrong = await server.Client.GetAsync($"office/tests/{drop}/card.pdf?paper=wall", Stop);
        Assert.Equal(HttpStatusCode.BadRequest, wrong.StatusCode);
    }

    [Fact]
    public async Task Every_decided_test_of_the_demo_has_its_certificate_and_what_has_no_answer_says_why()
    {
        List<ListedTest> tests = [.. await server.Store.TestsAsync(new() { Most = 200 }, Stop)];
        foreach (var words in (string[])["rate card", "ground speed", "check"]) tests.AddRange(await server.Store.TestsAsync(new() { Words = words, Most = 50 }, Stop));
        var kinds = tests.Where(one => one.Results.Count > 0).GroupBy(one => one.Test.Kind).Select(group => group.First().Test).ToList();
        Assert.Superset(new HashSet<string> { "drop-test", "rate-card", "ground-speed" }, kinds.Select(test => test.Kind).ToHashSet());
        foreach (var test in kinds)
        {
            var page = await server.Client.GetStringAsync($"office/tests/{test.Id}", Stop);
            Assert.Equal(test.Severity != "stop", page.Contains("certificate.pdf?paper=a4", StringComparison.Ordinal));
            using var answer = await server.Client.GetAsync($"office/tests/{test.Id}/certificate.pdf", Stop);
            Assert.Equal(test.Severity == "stop" ? HttpStatusCode.Conflict : HttpStatusCode.OK, answer.StatusCode);
        }

        using var none = await server.Client.GetAsync("office/tests/nobody/certificate.pdf", Stop);
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
        using var wrong = await server.Client.GetAsync($"office/tests/{kinds[0].Id}/certificate.pdf?paper=wall", Stop);
        Assert.Equal(HttpStatusCode.BadRequest, wrong.StatusCode);
    }
}
