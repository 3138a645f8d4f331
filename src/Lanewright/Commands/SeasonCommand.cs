using System.CommandLine;
using System.Globalization;
using Lanewright.Core.Quantities;
using Lanewright.Core.Season;
using Lanewright.Core.Text;
using Lanewright.Logs;
using Lanewright.Logs.Store;
using Lanewright.Season;

namespace Lanewright.Commands;

/// <summary><c>lanewright season</c>: which spreader has drifted, and where the salt went.</summary>
internal static class SeasonCommand
{
    internal static Command Make() => new("season", "A season in files: which spreader has drifted, and where the salt went.") { Drift(), Balance(), SeasonSaltCommand.Make(), SeasonSavedCommand.Make() };

    private static Command Drift()
    {
        var (folder, culture, json, csv) = Common();
        var on = new Option<string?>("--on") { Description = "The day to judge for, as 2027-01-31; the day of the last look when left out." };
        var tolerance = new Option<string?>("--tolerance") { Description = "Tolerance of delivered by said, such as 4 %." };
        var logs = Logs("The data folder into which the season's logs were taken: tickets.csv against the logs, storm by storm, are looks too.");
        var command = new Command("drift", "Drift charts of all spreaders, from constants.csv and verifications.csv.") { folder, on, tolerance, logs, culture, json, csv };
        command.SetAction(parsed =>
        {
            var (output, error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            var rules = new DriftRules();
            if (parsed.GetValue(tolerance) is { } typed)
            {
                if (!QuantityText.Read<Fraction>(typed, c, Units.Percent).TryGet(out var share) || share.Si is not (> 0 and < 0.9))
                {
                    error.WriteLine(c.Say($"--tolerance: '{Excerpt.Of(typed)}' was read; a share such as 4 % was expected, below 90 %."));
                    return CommonOptions.CouldNotRead;
                }

                rules = rules with { Tolerance = share.Si };
            }

            DateOnly? day = null;
            if (parsed.GetValue(on) is { } text)
            {
                if (!DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var read))
                {
                    error.WriteLine(c.Say($"--on: '{Excerpt.Of(text)}' was read; a day such as 2027-01-31 was expected."));
                    return CommonOptions.CouldNotRead;
                }

                day = read;
            }

            var season = new SeasonFolder(parsed.GetValue(folder)!, c);
            var (constants, checks) = (season.Constants(), season.Checks());
            if (constants.Count == 0 || season.IsUnreadable) return Unusable(season, c, error);
            StormBook? book = null;
            try
            {
                if (parsed.GetValue(logs) is { } data) book = StormBook.Of(new LogFolder(data), season.TimedTickets(), season.LogConstants(), season.Storms());
            }
            catch (LogException wrong)
            {
                error.WriteLine(c.Say(wrong.Said));
                return CommonOptions.CouldNotRead;
            }

            if (season.IsUnreadable) return Unusable(season, c, error);
            var looks = book is null ? [] : StormLoads.Looks(book.Loads);
            var last = looks.Select(one => one.Look.Day).Concat(checks.Select(check => DateOnly.FromDateTime(check.At.UtcDateTime)))
                .DefaultIfEmpty(DateOnly.FromDateTime(constants.Max(constant => constant.From).UtcDateTime)).Max();
            var answer = DriftAnswer.Of(constants, checks, rules, day ?? last, looks);
            return Write(season, parsed.GetValue(json), parsed.GetValue(csv), "spreaders", answer.Paper, () => answer.Text(c), c, output, error);
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
        var logs = Logs("The data folder into which the season's logs were taken; instead of --applied, and better: what constants share is known.");
        var by = new Option<string>("--by") { Description = "A ledger for each: depot, or storm (of each depot, without its pile; needs --logs).", DefaultValueFactory = _ => "depot" };
        var units = CommonOptions.UnitsShown();
        var command = new Command("balance", "Tickets, piles and logs held against each other, from tickets.csv, piles.csv and constants.csv.")
        {
            folder, applied, logs, by, units, culture, json, csv,
        };
        command.SetAction(parsed =>
        {
            var (output, error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            if (CommonOptions.UnitsOf(parsed.GetValue(units), UnitPreferences.Metric, c, error) is not { } shown) return CommonOptions.CouldNotRead;
            var season = new SeasonFolder(parsed.GetValue(folder)!, c);
            if (parsed.GetValue(by) is not ("depot" or "storm") || (parsed.GetValue(by) == "storm" && parsed.GetValue(logs) is null))
            {
                error.WriteLine(c.Say($"--by: '{Excerpt.Of(parsed.GetValue(by))}' was read; depot was expected, or storm together with --logs."));
                return CommonOptions.CouldNotRead;
            }

            IReadOnlyList<LoadTicket> tickets;
            IReadOnlyList<PilePair> piles = [];
            IReadOnlyList<LoggedMass> logged;
            try
            {
                if (parsed.GetValue(by) == "storm")
                {
                    var book = StormBook.Of(new LogFolder(parsed.GetValue(logs)!), season.TimedTickets(), season.LogConstants(), season.Storms());
                    (tickets, logged) = (book.Tickets, book.Logged);
                    if (book.Outside > 0) error.WriteLine(c.Say($"tickets.csv: {book.Outside} ticket was weighed more than 6 hours from any storm; it is in no balance.|tickets.csv: {book.Outside} tickets were weighed more than 6 hours from any storm; they are in no balance."));
                }
                else
                {
                    tickets = season.Tickets();
                    piles = season.Piles();
                    logged = parsed.GetValue(logs) is { } data ? SeasonFolder.FromLogs(data, season.LogConstants(), SeasonFolder.Depots(season.Constants()))
                        : parsed.GetValue(applied) is { } file ? season.Applied(file, season.Constants()) : [];
                }
            }
            catch (LogException wrong)
            {
                error.WriteLine(c.Say(wrong.Said));
                return CommonOptions.CouldNotRead;
            }

            if (season.IsUnreadable) return Unusable(season, c, error);
            var answer = new BalanceAnswer(SeasonLedger.Of(tickets, piles, logged));
            var show = new Print.Show(c, Large(shown));
            var code = Write(season, parsed.GetValue(json), parsed.GetValue(csv), "lines", answer.Paper, () => answer.Text(show), c, output, error);
            return code == CommonOptions.Answered && answer.Depots.Any(depot => depot.Suspect is not null) ? CommonOptions.DoNotUse : code;
        });
        return command;
    }

    private static Option<string?> Logs(string description) => new("--logs") { Description = description };

    // A season is weighed in tons.
    private static UnitPreferences Large(UnitPreferences units) =>
        units.With(units[Dimension.Mass] == Units.Kilogram ? Units.Tonne : Units.ShortTon);

    private static int Write(
        SeasonFolder season, bool json, bool csv, string name, Func<SeasonPaper> paper, Func<IEnumerable<string>> text, TextCulture culture, TextWriter output, TextWriter error)
    {
        foreach (var row in season.Refused) error.WriteLine(culture.Say(row.Said));
        if (json) output.Write(paper().Json(name, season.Refused));
        else if (csv) output.Write(paper().Csv());
        else CommonOptions.Print(text(), output);
        return season.Refused.Count > 0 ? CommonOptions.DoNotUse : CommonOptions.Answered;
    }

    private static int Unusable(SeasonFolder season, TextCulture culture, TextWriter error)
    {
        foreach (var row in season.Refused) error.WriteLine(culture.Say(row.Said));
        if (season.Refused.Count == 0) error.WriteLine(culture.Say("constants.csv: it holds no constant."));
        return CommonOptions.CouldNotRead;
    }

    private static (Argument<string> Folder, Option<string> Culture, Option<bool> Json, Option<bool> Csv) Common() => (
        new("folder") { Description = "The season's folder (docs/formats/season.md)." }, CommonOptions.Culture(), CommonOptions.Json(),
        new("--csv") { Description = "Write the result as CSV, in SI." });
}
