using System.CommandLine;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Logs;
using Lanewright.Logs.Applied;
using Lanewright.Logs.Store;
using Lanewright.Print;
using Lanewright.Season;

namespace Lanewright.Commands;

/// <summary><c>lanewright season salt</c>: salt and chloride of a season from the stored logs.</summary>
internal static class SeasonSaltCommand
{
    private static readonly (string Text, AppliedBy By)[] Groups =
    [
        ("route", AppliedBy.Route), ("depot", AppliedBy.Depot), ("storm", AppliedBy.Storm), ("segment", AppliedBy.Segment),
    ];

    internal static Command Make()
    {
        var by = new Option<string>("--by") { Description = "Lines for each: " + string.Join(", ", Groups.Select(group => group.Text)) + ".", DefaultValueFactory = _ => "route" };
        var routes = new Option<string?>("--routes") { Description = "Routes as CSV (route, watershed, lane_m): lines for each watershed, and rates by lane length." };
        var season = new Option<string?>("--season") { Description = "Only this season, such as 2026-27." };
        var constants = new Option<string>("--constants") { Description = "Constants of the spreaders as CSV (docs/formats/season.md).", Required = true };
        var moisture = new Option<string>("--moisture") { Description = "Water in the salt, as a share of the whole.", DefaultValueFactory = _ => "0 %" };
        var materials = new Option<string?>("--materials") { Description = "Materials as CSV (material, salt, salt_share): brine, salted sand, other salts than sodium chloride." };
        var storms = new Option<string?>("--storms") { Description = "Storms as CSV, for lines by storm; without it found from pauses of 12 hours." };
        var purity = new Option<string>("--purity") { Description = "Sodium chloride, as a share of what is not water.", DefaultValueFactory = _ => "100 %" };
        var pdf = new Option<string?>("--pdf") { Description = "Also write the report as PDF." };
        var units = CommonOptions.Units();
        var culture = CommonOptions.Culture();
        var json = CommonOptions.Json();
        var csv = new Option<bool>("--csv") { Description = "Write the result as CSV, in SI." };
        var data = RecordsOptions.Data();
        var command = new Command("salt", "Salt and chloride by route, watershed or storm, from the logs taken in.")
        {
            by, routes, season, constants, materials, storms, moisture, purity, pdf, units, culture, json, csv, data,
        };
        command.SetAction(parsed =>
        {
            var (output, error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            if (CommonOptions.UnitsOf(parsed.GetValue(units), UnitPreferences.UnitedStates, error) is not { } shown) return CommonOptions.CouldNotRead;
            if (Array.FindIndex(Groups, group => group.Text == parsed.GetValue(by)) is not (>= 0 and var place))
            {
                error.WriteLine($"--by: '{Excerpt.Of(parsed.GetValue(by))}' was read; expected one of {string.Join(", ", Groups.Select(group => group.Text))}.");
                return CommonOptions.CouldNotRead;
            }

            if (Share("--moisture", parsed.GetValue(moisture), 0, 0.5) is not { } water || Share("--purity", parsed.GetValue(purity), 0.5, 1) is not { } pure)
                return CommonOptions.CouldNotRead;
            var refused = new List<RefusedRow>();
            var lanes = parsed.GetValue(routes) is { } file ? SeasonFolder.Routes(file, c, refused) : null;
            var salts = parsed.GetValue(materials) is { } list ? SeasonFolder.Materials(list, c, refused) : [];
            foreach (var row in refused) error.WriteLine(row);
            if (refused.Any(row => row.IsFile)) return CommonOptions.CouldNotRead;
            try
            {
                var applied = AppliedLedger.Compute(
                    new LogFolder(parsed.GetValue(data)!),
                    new()
                    {
                        By = lanes is null ? Groups[place].By : AppliedBy.Route, With = [AppliedBy.Material], Season = parsed.GetValue(season),
                        Constants = ConstantTable.Read(parsed.GetValue(constants)!), Storms = parsed.GetValue(storms) is { } named ? Storm.Read(named) : null,
                    });
                var answer = SaltAnswer.Of(applied, Groups[place].By, lanes, new(water, pure), salts);
                var report = answer.Report(new Show(c, shown));
                if (parsed.GetValue(json)) output.Write(answer.Paper().Json("lines", refused));
                else if (parsed.GetValue(csv)) output.Write(answer.Paper().Csv());
                else Print(report, output);
                if (parsed.GetValue(pdf) is { } target
                    && !WholeFile.Write(target, ReportPdf.Draw(report, "", DateTimeOffset.UtcNow, shown == UnitPreferences.Metric ? Paper.A4 : Paper.Letter), error))
                    return CommonOptions.CouldNotRead;
                return refused.Count > 0 || applied.Total.CountsWithoutConstant > 0 ? CommonOptions.DoNotUse : CommonOptions.Answered;
            }
            catch (LogException wrong)
            {
                error.WriteLine(wrong.Message);
                return CommonOptions.CouldNotRead;
            }

            double? Share(string option, string? text, double least, double most)
            {
                if (QuantityText.Read<Fraction>(text, c, Units.Percent).TryGet(out var share) && share.Si >= least && share.Si <= most) return share.Si;
                error.WriteLine($"{option}: '{Excerpt.Of(text)}' was read; a share from {PercentText.Write(least, c)} to {PercentText.Write(most, c)} was expected.");
                return null;
            }
        });
        return command;
    }

    private static void Print(ReportSheet report, TextWriter output)
    {
        var table = new TextTable([.. report.Columns.Select(column => (column.Heading, column.IsNumber))]);
        foreach (var row in report.Rows) table.Add([.. row.Select(cell => cell.Text)]);
        CommonOptions.Print(table.Lines(""), output);
        output.WriteLine();
        CommonOptions.Print(Wrapped.Lines("", report.About), output);
    }
}
