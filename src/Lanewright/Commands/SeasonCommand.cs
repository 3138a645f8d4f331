using System.CommandLine;
using System.Globalization;
using Lanewright.Core.Quantities;
using Lanewright.Core.Season;
using Lanewright.Core.Text;
using Lanewright.Logs;
using Lanewright.Season;

namespace Lanewright.Commands;

/// <summary><c>lanewright season</c>: which spreader has drifted, and where the salt went.</summary>
internal static class SeasonCommand
{
    internal static Command Make() => new("season", "A season in files: which spreader has drifted, and where the salt went.") { Drift(), Balance(), SeasonSaltCommand.Make() };

    private static Command Drift()
    {
        var (folder, culture, json, csv) = Common();
        var on = new Option<string?>("--on") { Description = "The day to judge for, as 2027-01-31; the day of the last check when left out." };
        var tolerance = new Option<string?>("--tolerance") { Description = "Tolerance of delivered by said, such as 4 %." };
        var command = new Command("drift", "Drift charts of all spreaders, from constants.csv and verifications.csv.") { folder, on, tolerance, culture, json, csv };
        command.SetAction(parsed =>
        {
            var (output, error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            var rules = new DriftRules();
            if (parsed.GetValue(tolerance) is { } typed)
            {
                if (!QuantityText.Read<Fraction>(typed, c, Units.Percent).TryGet(out var share) || share.Si is not (> 0 and < 0.9))
                {
                    error.WriteLine($"--tolerance: '{Excerpt.Of(typed)}' was read; a share such as 4 % was expected, below 90 %.");
                    return CommonOptions.CouldNotRead;
                }

                rules = rules with { Tolerance = share.Si };
            }

            DateOnly? day = null;
            if (parsed.GetValue(on) is { } text)
            {
                if (!DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var read))
                {
                    error.WriteLine($"--on: '{Excerpt.Of(text)}' was read; a day such as 2027-01-31 was expected.");
                    return CommonOptions.CouldNotRead;
                }

                day = read;
            }

            var season = new SeasonFolder(parsed.GetValue(folder)!, c);
            var (constants, checks) = (season.Constants(), season.Checks());
            if (constants.Count == 0 || season.IsUnreadable) return Unusable(season, error);
            var last = checks.Count > 0 ? DateOnly.FromDateTime(checks.Max(check => check.At).UtcDateTime)
                : DateOnly.FromDateTime(constants.Max(constant => constant.From).UtcDateTime);
            var answer = DriftAnswer.Of(constants, checks, rules, day ?? last);
            return Write(season, parsed.GetValue(json), parsed.GetValue(csv), "spreaders", answer.Paper, () => answer.Text(c), output, error);
        });
        return command;
    }

    private static Command Balance()
    {
        var (folder, culture, json, csv) = Common();
        var applied = new Option<string?>("--applied")
        {
            Description = "Masses by spreader, as 'lanewright logs applied --by spreader' writes them; without it only tickets and piles are balanced.",
        };
        var logs = new Option<string?>("--logs") { Description = "The data folder into which the season's logs were taken; instead of --applied, and better: what constants share is known." };
        var units = new Option<string?>("--units") { Description = "Units of what is shown: us or si." };
        var command = new Command("balance", "Tickets, piles and logs held against each other, from tickets.csv, piles.csv and constants.csv.")
        {
            folder, applied, logs, units, culture, json, csv,
        };
        command.SetAction(parsed =>
        {
            var (output, error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            if (CommonOptions.UnitsOf(parsed.GetValue(units), UnitPreferences.Metric, error) is not { } shown) return CommonOptions.CouldNotRead;
            var season = new SeasonFolder(parsed.GetValue(folder)!, c);
            var (tickets, piles) = (season.Tickets(), season.Piles());
            List<LoggedMass> logged;
            try
            {
                logged = parsed.GetValue(logs) is { } data ? season.FromLogs(data, season.Constants())
                    : parsed.GetValue(applied) is { } file ? season.Applied(file, season.Constants()) : [];
            }
            catch (LogException wrong)
            {
                error.WriteLine(wrong.Message);
                return CommonOptions.CouldNotRead;
            }

            if (season.IsUnreadable) return Unusable(season, error);
            var answer = new BalanceAnswer(SeasonLedger.Of(tickets, piles, logged));
            var show = new Print.Show(c, Large(shown));
            var code = Write(season, parsed.GetValue(json), parsed.GetValue(csv), "lines", answer.Paper, () => answer.Text(show), output, error);
            return code == CommonOptions.Answered && answer.Depots.Any(depot => depot.Suspect is not null) ? CommonOptions.DoNotUse : code;
        });
        return command;
    }

    // A season is weighed in tons.
    private static UnitPreferences Large(UnitPreferences units) =>
        units.With(units[Dimension.Mass] == Units.Kilogram ? Units.Tonne : Units.ShortTon);

    private static int Write(
        SeasonFolder season, bool json, bool csv, string name, Func<SeasonPaper> paper, Func<IEnumerable<string>> text, TextWriter output, TextWriter error)
    {
        foreach (var row in season.Refused) error.WriteLine(row);
        if (json) output.Write(paper().Json(name, season.Refused));
        else if (csv) output.Write(paper().Csv());
        else CommonOptions.Print(text(), output);
        return season.Refused.Count > 0 ? CommonOptions.DoNotUse : CommonOptions.Answered;
    }

    private static int Unusable(SeasonFolder season, TextWriter error)
    {
        foreach (var row in season.Refused) error.WriteLine(row);
        if (season.Refused.Count == 0) error.WriteLine("constants.csv: it holds no constant.");
        return CommonOptions.CouldNotRead;
    }

    private static (Argument<string> Folder, Option<string> Culture, Option<bool> Json, Option<bool> Csv) Common() => (
        new("folder") { Description = "The season's folder (docs/formats/season.md)." }, CommonOptions.Culture(), CommonOptions.Json(),
        new("--csv") { Description = "Write the result as CSV, in SI." });
}
