using System.CommandLine;
using Lanewright.Core.Practice;
using Lanewright.Core.Text;
using Lanewright.Logs.Practice;
using Lanewright.Office;

namespace Lanewright.Commands;

/// <summary><c>lanewright practice-season</c>: writes an invented season whose truth is known.</summary>
internal static class PracticeSeasonCommand
{
    internal static Command Make()
    {
        var to = new Option<string>("--out") { Description = "A new folder for the season.", Required = true };
        var spreaders = Number("--spreaders", "How many spreaders, 1 to 5000.", "32");
        var seed = Number("--seed", "The same seed gives the same season.", "1");
        var interval = Number("--interval", "Seconds between two rows of a log, 1 to 600.", "10");
        var storms = Number("--storms", "How many storms, 1 to 40.", "12");
        var command = new Command("practice-season", "Write an invented season with a known truth: logs, tickets, piles, checks (docs/formats/season.md).")
        {
            to, spreaders, seed, interval, storms,
        };
        command.SetAction(parsed => LogsCommand.Told(parsed, () =>
        {
            var error = parsed.InvocationConfiguration.Error;
            if (Read(parsed, spreaders, 1, 5000, error) is not { } many || Read(parsed, seed, 0, 1_000_000_000_000, error) is not { } start
                || Read(parsed, interval, 1, 600, error) is not { } seconds || Read(parsed, storms, 1, 40, error) is not { } count) return CommonOptions.CouldNotRead;
            var world = SeasonWorld.Make(new() { Spreaders = (int)many, Seed = (ulong)start, Interval = (int)seconds, Storms = (int)count });
            var rows = SeasonWriter.Write(world, parsed.GetValue(to)!);
            parsed.InvocationConfiguration.Output.WriteLine(OfficeText.Say($"An invented season in {parsed.GetValue(to)}: spreaders: {many}, rows of logs: {rows}."));
            return CommonOptions.Answered;
        }));
        return command;
    }

    private static Option<string> Number(string name, string description, string otherwise) =>
        new(name) { Description = description, DefaultValueFactory = _ => otherwise };

    private static long? Read(ParseResult parsed, Option<string> option, long least, long most, TextWriter error)
    {
        var text = parsed.GetValue(option);
        if (QuantityText.ReadCount(text, TextCulture.UnitedStates).TryGet(out var count) && count >= least && count <= most) return count;
        error.WriteLine(OfficeText.Say($"{option.Name}: '{Excerpt.Of(text)}' was read; a whole number from {least} to {most} was expected."));
        return null;
    }
}
