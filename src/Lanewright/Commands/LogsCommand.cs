using System.CommandLine;
using Lanewright.Core.Quantities;
using Lanewright.Core.Season;
using Lanewright.Core.Text;
using Lanewright.Logs;
using Lanewright.Logs.Applied;
using Lanewright.Logs.Profiles;
using Lanewright.Logs.Store;
using Lanewright.Office;
using Lanewright.Print;
using Lanewright.Season;
using Lanewright.Storage;
using Lanewright.Storage.Database;

namespace Lanewright.Commands;

/// <summary><c>lanewright logs</c>: takes logs of vehicles in, and says where the salt went.</summary>
internal static class LogsCommand
{
    private static readonly string[] Groups = [.. Enum.GetNames<AppliedBy>().Select(name => name.ToLowerInvariant())];

    internal static Command Make() => new("logs", "Logs of vehicles: take them in, and compute what was spread.") { Import(), LogsMatchCommand.Make(), Applied(), Pack(), Forget() };

    private static Command Import()
    {
        var files = new Argument<string[]>("file") { Description = "CSV, GPX or Parquet files.", Arity = ArgumentArity.OneOrMore };
        var profile = new Option<string>("--profile") { Description = "How the files are read: a JSON file (docs/formats/log-profile.md).", Required = true };
        var season = new Option<string?>("--season") { Description = "Refuse rows of other seasons; two years, such as 2026-27." };
        var part = new Option<string>("--part") { Description = "Megabytes of a file that are taken in at once: less takes less memory and makes more files.", DefaultValueFactory = _ => "32" };
        var data = RecordsOptions.Data();
        var command = new Command("import", "Take logs in. Stopped at any point, the same command goes on where it was.") { files, profile, season, part, data };
        command.SetAction((parsed, stop) => Task.FromResult(Told(parsed, () =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var error = parsed.InvocationConfiguration.Error;
            var read = LogProfileReader.Read(Text(parsed.GetValue(profile)!));
            if (!QuantityText.ReadNumber(parsed.GetValue(part), TextCulture.Invariant).TryGet(out var megabytes) || megabytes is not (>= 0.2 and <= 1000))
                throw new LogException($"--part: '{Excerpt.Of(parsed.GetValue(part))}' was read; expected megabytes from 0.2 to 1000.");
            using var import = LogImport.Begin(new LogFolder(parsed.GetValue(data)!), read, parsed.GetValue(season), (int)(megabytes * 1_000_000));
            var progress = new Progressing(error);
            bool problems = false, refused = false;
            foreach (var file in parsed.GetValue(files)!)
            {
                var taken = import.Take(file, progress, stop);
                progress.Clear();
                Say(taken, output, error);
                problems |= taken.Problem is not null;
                refused |= taken.Refused > 0;
            }

            return problems ? CommonOptions.CouldNotRead : refused ? CommonOptions.DoNotUse : CommonOptions.Answered;
        })));
        return command;
    }

    private static Command Forget()
    {
        var hash = new Argument<string>("file") { Description = "The file that was taken in." };
        var season = new Option<string?>("--season") { Description = "The season it was taken in with." };
        var data = RecordsOptions.Data();
        var command = new Command("forget", "Remove the rows of a file, to take it in again with another profile.") { hash, season, data };
        command.SetAction((parsed, stop) => Task.FromResult(Told(parsed, () =>
        {
            var rows = LogImport.Forget(new LogFolder(parsed.GetValue(data)!), parsed.GetValue(hash)!, parsed.GetValue(season), stop);
            parsed.InvocationConfiguration.Output.WriteLine(OfficeText.Say($"Rows of {Path.GetFileName(parsed.GetValue(hash))} that are removed: {Count(rows)}."));
            return CommonOptions.Answered;
        })));
        return command;
    }

    private static Command Pack()
    {
        var data = RecordsOptions.Data();
        var command = new Command("pack", "Make one Parquet file of the many small ones of each season and spreader.") { data };
        command.SetAction((parsed, stop) => Task.FromResult(Told(parsed, () =>
        {
            var packed = LogPacking.Pack(new LogFolder(parsed.GetValue(data)!), stop: stop);
            parsed.InvocationConfiguration.Output.WriteLine(
                OfficeText.Say(packed.Folders == 0 ? (Phrase)$"Nothing to pack: no spreader has {LogPacking.UsualLeast} files or more in a season." : $"Files before: {Count(packed.Before)}; now: {Count(packed.Folders)}."));
            return CommonOptions.Answered;
        })));
        return command;
    }

    private static Command Applied()
    {
        var by = new Option<string>("--by") { Description = "Lines for each: " + string.Join(", ", Groups) + ".", DefaultValueFactory = _ => "spreader" };
        var season = new Option<string?>("--season") { Description = "Only this season, such as 2026-27." };
        var constants = new Option<string?>("--constants") { Description = "Constants of the spreaders as CSV (docs/formats/season.md); without it those adopted in the records." };
        var storms = new Option<string?>("--storms") { Description = "Storms as CSV; without it found from pauses of 12 hours." };
        var band = new Option<string>("--band") { Description = "How far an interval may be from its target before it counts as over or under.", DefaultValueFactory = _ => "10 %" };
        var csv = new Option<string?>("--csv") { Description = "Also write the lines as CSV, in SI." };
        var parquet = new Option<string?>("--parquet") { Description = "Also write the lines as Parquet, in SI." };
        var geo = new Option<string?>("--geojson") { Description = "Also write GeoJSON: what was spread on each road, for the whole season or by route, storm and so on." };
        var units = CommonOptions.UnitsShown();
        var culture = CommonOptions.Culture();
        var data = RecordsOptions.Data();
        var command = new Command("applied", "What was spread, against what was asked for.") { by, season, constants, storms, band, csv, parquet, geo, units, culture, data };
        command.SetAction((parsed, stop) => ToldAsync(parsed, async () =>
        {
            var error = parsed.InvocationConfiguration.Error;
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            if (CommonOptions.UnitsOf(parsed.GetValue(units), UnitPreferences.UnitedStates, c, error) is not { } preferences) return CommonOptions.CouldNotRead;
            if (Array.IndexOf(Groups, parsed.GetValue(by)!.ToLowerInvariant()) is not (>= 0 and var group))
                throw new LogException($"--by: '{Excerpt.Of(parsed.GetValue(by))}' was read; expected one of {string.Join(", ", Groups)}.");
            if (!QuantityText.Read<Fraction>(parsed.GetValue(band), c).TryGet(out var share) || share.Si is not (>= 0 and < 1))
                throw new LogException($"--band: '{Excerpt.Of(parsed.GetValue(band))}' was read; expected a share from 0 % to below 100 %, such as 10 %.");
            var question = new AppliedQuestion
            {
                By = (AppliedBy)group,
                Season = parsed.GetValue(season),
                Constants = parsed.GetValue(constants) is { } file ? ConstantTable.Read(file) : await OfRecordsAsync(parsed.GetValue(data)!, stop),
                Storms = parsed.GetValue(storms) is { } list ? Storm.Read(list) : null,
                Band = share.Si,
            };
            var answer = AppliedLedger.Compute(new LogFolder(parsed.GetValue(data)!), question);
            CommonOptions.Print(AppliedText.Lines(answer, question, new Show(c, preferences)), parsed.InvocationConfiguration.Output);
            if (parsed.GetValue(csv) is { } to) AppliedFile.WriteCsv(to, answer);
            if (parsed.GetValue(parquet) is { } table) AppliedFile.WriteParquet(table, answer);
            if (parsed.GetValue(geo) is { } map && AppliedMap.Write(map, new LogFolder(parsed.GetValue(data)!), question) is > 0 and var left)
                error.WriteLine(c.Say($"Lines that lie on no kept road and are not in {Excerpt.Of(map, 200)}: {Count(left)}."));
            return answer.Total.CountsWithoutConstant > 0 ? CommonOptions.DoNotUse : CommonOptions.Answered;
        }));
        return command;
    }

    private static async Task<IReadOnlyList<SeasonConstant>> OfRecordsAsync(string data, CancellationToken stop)
    {
        try
        {
            return await RecordConstants.OfAsync(await EntryStore.OpenAsync(RecordsPlace.InFolder(data), stop: stop, opening: Opening.Existing), stop);
        }
        catch (RecordsException wrong)
        {
            throw new LogException($"{wrong.Said} Or give the spreaders' constants with --constants.", wrong);
        }
    }

    private static void Say(ImportedFile taken, TextWriter output, TextWriter error)
    {
        var name = Excerpt.Of(taken.File, 200);
        if (taken.Problem is { } problem) error.WriteLine(OfficeText.Say($"{name}: {problem}"));
        if (taken.Problem is not null && taken.Accepted + taken.Refused == 0) return;
        var (rows, accepted, refused) = (Count(taken.Accepted + taken.Refused), Count(taken.Accepted), Count(taken.Refused));
        output.WriteLine(OfficeText.Say(taken.WasThere
            ? (Phrase)$"{name}: was taken in before; rows: {rows}, taken in: {accepted}, refused: {refused}." : $"{name}: rows: {rows}, taken in: {accepted}, refused: {refused}."));
        foreach (var (reason, count) in taken.Reasons.OrderByDescending(one => one.Value).ThenBy(one => one.Key, StringComparer.Ordinal))
            output.WriteLine($"  {Count(count)} {OfficeText.Say(LogImport.Reason(reason))}");
        if (taken.RefusedFiles.Count > 0)
            output.WriteLine("  " + OfficeText.Say(taken.RefusedFiles.Count == 1
                ? (Phrase)$"Refused rows with their reasons: {taken.RefusedFiles[0]}" : $"Refused rows with their reasons: {taken.RefusedFiles[0]} and {taken.RefusedFiles.Count - 1} more"));
    }

    private static string Count(long count) => QuantityText.WriteNumber(count, TextCulture.UnitedStates, NumberForm.Decimals(0));

    private static string Text(string file)
    {
        try
        {
            return File.ReadAllText(file);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw new LogException($"{Excerpt.Of(file, 200)} could not be read: {wrong.Message}", wrong);
        }
    }

    internal static int Told(ParseResult parsed, Func<int> work)
    {
        if (!CommonOptions.Speak(parsed)) return CommonOptions.CouldNotRead;
        try
        {
            return work();
        }
        catch (Exception wrong) when (wrong is LogException or RecordsException)
        {
            parsed.InvocationConfiguration.Error.WriteLine(Said(wrong));
            return CommonOptions.CouldNotRead;
        }
    }

    internal static async Task<int> ToldAsync(ParseResult parsed, Func<Task<int>> work)
    {
        if (!CommonOptions.Speak(parsed)) return CommonOptions.CouldNotRead;
        try
        {
            return await work();
        }
        catch (Exception wrong) when (wrong is LogException or RecordsException)
        {
            parsed.InvocationConfiguration.Error.WriteLine(Said(wrong));
            return CommonOptions.CouldNotRead;
        }
    }

    private static string Said(Exception wrong) => OfficeText.Say(wrong is LogException log ? log.Said : ((RecordsException)wrong).Said);

    // One line that is written over, on a terminal only.
    private sealed class Progressing(TextWriter error) : IProgress<LogProgress>
    {
        private int written;

        public void Report(LogProgress value)
        {
            if (Console.IsErrorRedirected) return;
            var line = OfficeText.Say($"{Excerpt.Of(value.File)}: {Count(value.Bytes / 1_000_000)} of {Count(value.Of / 1_000_000)} MB, rows: {Count(value.Rows)}");
            error.Write("\r" + line.PadRight(written));
            written = line.Length;
        }

        internal void Clear()
        {
            if (written > 0) error.Write("\r" + new string(' ', written) + "\r");
            written = 0;
        }
    }
}
