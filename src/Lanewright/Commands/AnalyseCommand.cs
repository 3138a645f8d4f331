using System.CommandLine;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Files;
using Lanewright.Print;

namespace Lanewright.Commands;

/// <summary><c>lanewright analyse</c> and <c>lanewright check</c>: a sheet in, a report out.</summary>
internal static class AnalyseCommand
{
    private const int DefaultTrials = 100_000;
    private const int MostTrials = 10_000_000;

    internal static Command Analyse() => Make(
        "analyse", "Analyse the sheet of a drop test: the constant, how good it is, and whether to trust it.",
        TestKind.DropTest);

    internal static Command Check() => Make(
        "check", "Check delivered against weighed with the constant now in the controller.", TestKind.Verification);

    private static Command Make(string name, string description, TestKind kind)
    {
        var file = new Argument<string>("sheet") { Description = "The sheet: a JSON, YAML or CSV file." };
        var json = CommonOptions.Json();
        var culture = CommonOptions.Culture();
        var units = CommonOptions.Units();
        var trials = new Option<int>("--trials")
        {
            Description = "Random trials that check the formula; 0 for none.",
            DefaultValueFactory = _ => DefaultTrials,
        };
        var command = new Command(name, description) { file, json, culture, units, trials };
        command.SetAction(parsed =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var error = parsed.InvocationConfiguration.Error;
            if (CommonOptions.CultureOf(parsed.GetValue(culture)!, error) is not { } c) return CommonOptions.CouldNotRead;
            if (CommonOptions.UnitsOf(parsed.GetValue(units), UnitPreferences.UnitedStates, error) is not { } u)
                return CommonOptions.CouldNotRead;
            var count = parsed.GetValue(trials);
            if (count is not 0 and (< 1000 or > MostTrials))
            {
                error.WriteLine($"--trials: {count} was read; 0 or 1000 to {MostTrials} was expected.");
                return CommonOptions.CouldNotRead;
            }

            var reading = SheetReader.Read(SheetFile.Read(parsed.GetValue(file)!));
            if (!reading.IsUsable)
                return CommonOptions.Refuse(reading.Findings, parsed.GetValue(json), new(c, u), output, error);
            var sheet = reading.Value!;
            if (sheet.Kind != kind)
            {
                var other = kind is TestKind.DropTest ? "check" : "analyse";
                error.WriteLine($"This sheet is of another kind; use 'lanewright {other}' for it.");
                return CommonOptions.CouldNotRead;
            }

            var show = new Show(c, parsed.GetValue(units) is null ? sheet.Preferences : u);
            return Report(sheet, reading.Findings, count, parsed.GetValue(json), show, output);
        });
        return command;
    }

    private static int Report(
        TestSheet sheet, IReadOnlyList<Finding> readFindings, int trials, bool json, Show show, TextWriter output)
    {
        var report = SheetAnalysis.Analyse(sheet, new(trials));
        if (json) output.Write(ReportWriter.Write(report, readFindings, show.Culture, show.Units));
        else CommonOptions.Print(ReportText.Lines(report, readFindings, show), output);
        return report.Usable ? CommonOptions.Answered : CommonOptions.DoNotUse;
    }
}
