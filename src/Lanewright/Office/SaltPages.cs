using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Host;
using Lanewright.Logs;
using Lanewright.Print;
using Lanewright.Season;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>Salt and chloride of the season, from the logs: a page with its picture, and the same as files.</summary>
internal sealed class SaltPages(OfficeData data)
{
    internal void Map(WebApplication app)
    {
        app.MapGet("/office/season/salt", context => Show(context, "").Send(context));
        app.MapGet("/office/season/salt.{form}", (string form, HttpContext context) => Show(context, form));
    }

    private async Task<IResult> Show(HttpContext context, string form)
    {
        var (query, stop) = (context.Request.Query, context.RequestAborted);
        if (form is not ("" or "csv" or "xlsx" or "pdf" or "parquet" or "geojson") || data.Season.Ledgers is not { } ledgers)
            return Problems.Answer(404, "There is no ledger at this address.");
        var refused = new List<RefusedRow>();
        var routes = data.Season.Has("routes.csv") ? SeasonFolder.Routes(Path.Combine(data.Season.Place!, "routes.csv"), OfficeLanguage.Files(OfficeText.Culture.Language), refused) : null;
        if (routes is { Count: 0 }) routes = null;
        var materials = data.Season.Has("materials.csv") ? SeasonFolder.Materials(Path.Combine(data.Season.Place!, "materials.csv"), OfficeLanguage.Files(OfficeText.Culture.Language), refused) : [];
        var wanted = new SaltWish(Text("by", routes is null ? "route" : "watershed"), Text("moisture", "0 %"), Text("purity", "100 %"), Text("units", "si"));
        try
        {
            if (!SaltQuestion.TryReadBy(wanted.By, out var by)) return Wrong("by", wanted.By, $"{string.Join(", ", SaltQuestion.Words)}");
            if (wanted.Units is not ("si" or "us")) return Wrong("units", wanted.Units, "si or us");
            if (Share(wanted.Moisture, SaltFacts.Moistures) is not { } moisture) return Wrong("moisture", wanted.Moisture, Limits(SaltFacts.Moistures));
            if (Share(wanted.Purity, SaltFacts.Purities) is not { } purity) return Wrong("purity", wanted.Purity, Limits(SaltFacts.Purities));
            var roads = form == "geojson" || by is SaltBy.Road or SaltBy.Segment ? await ledgers.RoadsAsync(stop) : null;
            var question = new SaltQuestion(by, new(moisture, purity), materials, routes, roads);
            if ((question.Lacks ?? (form == "geojson" && roads is null ? SaltQuestion.LacksRoads : null)) is { } lacks) return Without(lacks);
            if (!ledgers.HasRows) return Without("There are no logs yet. 'lanewright logs import' takes some in.");
            var answer = SaltAnswer.Of(await ledgers.OfAsync(ledger => question.Ledger(ledger, form == "geojson"), stop), question);
            var report = answer.Report(new(OfficeText.Culture, wanted.Units == "us" ? UnitPreferences.UnitedStates : UnitPreferences.Metric));
            if (data.Season.IsInvented) report = report with { About = $"{OfficeText.Say("Invented data.")} {report.About}" };
            return form.Length == 0 ? Page(report, null) : await FileAsync(answer, report, question, form, query["paper"], stop);
        }
        catch (LogException wrong)
        {
            return Without(wrong.Said);
        }

        // As the reader writes numbers; or, in an address that was passed on, with a point.
        double? Share(string typed, (double Least, double Most) limits) => SaltFacts.Read(typed, OfficeLanguage.Of(OfficeText.Culture.Language), limits) ?? SaltFacts.Read(typed, TextCulture.Invariant, limits);

        string Text(string name, string usual) => query[name].ToString() is { Length: > 0 } text ? text : usual;

        IResult Wrong(string field, string read, Phrase expected) =>
            form.Length > 0 ? Problems.Wrong(400, field, read, expected) : Page(null, OfficeText.Say($"'{Excerpt.Of(read)}' was read; expected {OfficeText.Say(expected)}."));

        IResult Without(Phrase why) => form.Length > 0 ? Problems.Answer(404, why) : Page(null, OfficeText.Say(why));

        RazorComponentResult<SaltPage> Page(ReportSheet? report, string? why) => new(new Dictionary<string, object?>
        {
            ["Report"] = report, ["Why"] = why, ["Wanted"] = wanted, ["Refused"] = refused.Select(row => OfficeText.Say(row.Said)).ToList(), ["Invented"] = data.Season.IsInvented,
        });
    }

    private async Task<IResult> FileAsync(SaltAnswer answer, ReportSheet report, SaltQuestion question, string form, string? paper, CancellationToken stop)
    {
        var name = $"salt-by-{SaltQuestion.Words[(int)question.By]}.{form}";
        switch (form)
        {
            case "csv": return Results.Text(answer.Paper().Csv(), "text/csv; charset=utf-8");
            case "geojson":
                using (var map = new MemoryStream())
                {
                    answer.WriteGeoJson(map, question.Roads!);
                    return Results.File(map.ToArray(), "application/geo+json", name);
                }

            case "parquet":
                var file = Path.Combine(Path.GetTempPath(), $"lanewright-salt-{Guid.NewGuid():N}.parquet");
                try
                {
                    answer.WriteParquet(file);
                    return Results.File(await File.ReadAllBytesAsync(file, stop), "application/vnd.apache.parquet", name);
                }
                finally
                {
                    File.Delete(file);
                }

            case "xlsx":
                using (var workbook = new MemoryStream())
                {
                    await ReportWorkbook.WriteAsync(report, workbook, stop);
                    return Results.File(workbook.ToArray(), "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", name);
                }

            default:
                if (paper is not (null or "" or "a4" or "letter")) return Problems.Wrong(400, "paper", paper, "a4 or letter");
                var yard = (await data.RulesAsync(stop)).Yard.Name;
                return Results.Bytes(ReportPdf.Draw(report, yard, DateTimeOffset.UtcNow, paper == "a4" ? Paper.A4 : Paper.Letter), "application/pdf");
        }
    }

    private static Phrase Limits((double Least, double Most) limits) => $"a share from {OfficeText.Percent(limits.Least)} to {OfficeText.Percent(limits.Most)}";
}
