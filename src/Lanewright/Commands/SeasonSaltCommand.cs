using System.CommandLine;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Logs;
using Lanewright.Logs.Applied;
using Lanewright.Logs.Roads;
using Lanewright.Logs.Store;
using Lanewright.Print;
using Lanewright.Season;

namespace Lanewright.Commands;

/// <summary><c>lanewright season salt</c>: salt and chloride of a season from the stored logs.</summary>
internal static class SeasonSaltCommand
{
    internal static Command Make()
    {
        var by = new Option<string?>("--by") { Description = "Lines for each: " + string.Join(", ", SaltQuestion.Words) + ". Without it watershed where routes are given, else route." };
        var routes = new Option<string?>("--routes") { Description = "Routes as CSV (route, watershed, lane_m): watersheds, and rates by lane length." };
        var season = new Option<string?>("--season") { Description = "Only this season, such as 2026-27." };
        var constants = new Option<string>("--constants") { Description = "Constants of the spreaders as CSV (docs/formats/season.md).", Required = true };
        var moisture = new Option<string>("--moisture") { Description = "Water in the salt, as a share of the whole.", DefaultValueFactory = _ => "0 %" };
        var materials = new Option<string?>("--materials") { Description = "Materials as CSV (material, salt, salt_share): brine, salted sand, other salts than sodium chloride." };
        var storms = new Option<string?>("--storms") { Description = "Storms as CSV, for lines by storm; without it found from pauses of 12 hours." };
        var purity = new Option<string>("--purity") { Description = "Sodium chloride, as a share of what is not water.", DefaultValueFactory = _ => "100 %" };
        var pdf = new Option<string?>("--pdf") { Description = "Also write the report as PDF." };
        var xlsx = new Option<string?>("--xlsx") { Description = "Also write the report as a spreadsheet." };
        var parquet = new Option<string?>("--parquet") { Description = "Also write the lines as Parquet, in SI." };
        var geo = new Option<string?>("--geojson") { Description = "Also write the lines as GeoJSON, in SI, each on the roads that its rows lie on." };
        var units = CommonOptions.UnitsShown();
        var culture = CommonOptions.Culture();
        var json = CommonOptions.Json();
        var csv = new Option<bool>("--csv") { Description = "Write the result as CSV, in SI." };
        var data = RecordsOptions.Data();
        var command = new Command("salt", "Salt and chloride by watershed, route, road, storm or depot, from the logs taken in.")
        {
            by, routes, season, constants, materials, storms, moisture, purity, pdf, xlsx, parquet, geo, units, culture, json, csv, data,
        };
        command.SetAction((parsed, stop) => LogsCommand.ToldAsync(parsed, async () =>
        {
            var (output, error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            if (CommonOptions.UnitsOf(parsed.GetValue(units), UnitPreferences.UnitedStates, c, error) is not { } shown) return CommonOptions.CouldNotRead;
            var about = parsed.GetValue(by) ?? (parsed.GetValue(routes) is null ? "route" : "watershed");
            if (!SaltQuestion.TryReadBy(about, out var group))
                throw new LogException($"--by: '{Excerpt.Of(about)}' was read; expected one of {string.Join(", ", SaltQuestion.Words)}.");
            var refused = new List<RefusedRow>();
            var lanes = parsed.GetValue(routes) is { } file ? SeasonFolder.Routes(file, c, refused) : null;
            var salts = parsed.GetValue(materials) is { } list ? SeasonFolder.Materials(list, c, refused) : [];
            foreach (var row in refused) error.WriteLine(c.Say(row.Said));
            if (refused.Any(row => row.IsFile)) return CommonOptions.CouldNotRead;
            var folder = new LogFolder(parsed.GetValue(data)!);
            var facts = new SaltFacts(Share("--moisture", parsed.GetValue(moisture), SaltFacts.Moistures), Share("--purity", parsed.GetValue(purity), SaltFacts.Purities));
            var question = new SaltQuestion(group, facts, salts, lanes, group is SaltBy.Road or SaltBy.Segment || parsed.GetValue(geo) is not null ? RoadStore.Read(folder) : null);
            if ((question.Lacks ?? (parsed.GetValue(geo) is not null && question.Roads is null ? SaltQuestion.LacksRoads : null)) is { } lacks) throw new LogException(lacks);
            var applied = AppliedLedger.Compute(folder, question.Ledger(
                new()
                {
                    Season = parsed.GetValue(season), Constants = ConstantTable.Read(parsed.GetValue(constants)!),
                    Storms = parsed.GetValue(storms) is { } named ? Storm.Read(named) : null,
                },
                onMap: parsed.GetValue(geo) is not null));
            var answer = SaltAnswer.Of(applied, question);
            var report = answer.Report(new Show(c, shown));
            if (parsed.GetValue(json)) output.Write(answer.Paper().Json("lines", refused));
            else if (parsed.GetValue(csv)) output.Write(answer.Paper().Csv());
            else ReportFiles.Print(report, output);
            if (!await ReportFiles.WriteAsync(report, parsed.GetValue(pdf), parsed.GetValue(xlsx), shown == UnitPreferences.Metric ? Paper.A4 : Paper.Letter, error, stop))
                return CommonOptions.CouldNotRead;
            if (parsed.GetValue(parquet) is { } table) answer.WriteParquet(table);
            if (parsed.GetValue(geo) is { } map && !WholeFile.Write(map, ReportFiles.Bytes(to => answer.WriteGeoJson(to, question.Roads!)), error, "--geojson")) return CommonOptions.CouldNotRead;
            return refused.Count > 0 || applied.Total.CountsWithoutConstant > 0 ? CommonOptions.DoNotUse : CommonOptions.Answered;

            double Share(string option, string? text, (double Least, double Most) limits) => SaltFacts.Read(text, c, limits)
                ?? throw new LogException($"{option}: '{Excerpt.Of(text)}' was read; a share from {PercentText.Write(limits.Least, c)} to {PercentText.Write(limits.Most, c)} was expected.");
        }));
        return command;
    }
}
