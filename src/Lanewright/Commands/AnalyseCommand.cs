using System.CommandLine;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Files;
using Lanewright.Print;

namespace Lanewright.Commands;

/// <summary><c>lanewright analyse</c> and <c>lanewright check</c>: a sheet in, a report out.</summary>
internal static class AnalyseCommand
{
    private const int DefaultTrials = 100_000;
    private const int MostTrials = 10_000_000;

    internal static Command Analyse() => Make(
        "analyse", "Analyse a sheet of a drop test or of another calibration: the answer, how good it is, and whether to trust it.",
        TestKind.DropTest);

    internal static Command Check() => Make(
        "check", "Check delivered against weighed with the constant now in the controller.", TestKind.Verification);

    private static Command Make(string name, string description, TestKind kind)
    {
        var file = new Argument<string>("sheet") { Description = "The sheet: a JSON, YAML or CSV file." };
        var json = CommonOptions.Json();
        var culture = CommonOptions.Culture();
        var units = CommonOptions.Units();
        var trials = new Option<string?>("--trials")
        {
            Description = "Random trials that check the formula, 1000 to 10000000; 0 for none; 100000 when left out.",
        };
        var command = new Command(name, description) { file, json, culture, units, trials };
        if (kind is TestKind.DropTest) command.Aliases.Add("analyze");
        command.SetAction(parsed =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var error = parsed.InvocationConfiguration.Error;
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            if (CommonOptions.UnitsOf(parsed.GetValue(units), UnitPreferences.UnitedStates, c, error) is not { } u)
                return CommonOptions.CouldNotRead;
            if (TrialsOf(parsed.GetValue(trials), c, error) is not { } count) return CommonOptions.CouldNotRead;
            var name = parsed.GetValue(file)!;
            var tree = SheetFile.Read(name);
            if (kind is TestKind.DropTest && Calibration.KindOf(tree) is { } calibration)
                return Calibrated(tree, calibration, name, parsed.GetValue(json), parsed.GetValue(units) is null ? null : u, c, output, error);
            var reading = SheetReader.Read(tree);
            var findings = reading.Findings;
            if (reading is { IsUsable: true, Value.Kind: var read } && read != kind)
                findings = [.. findings, OtherKind(read, kind)];
            else if (reading.IsUsable)
            {
                var show = new Show(c, parsed.GetValue(units) is null ? reading.Value!.Preferences : u);
                return Report(reading.Value!, findings, count, parsed.GetValue(json), show, output);
            }

            return CommonOptions.Refuse(name, findings, parsed.GetValue(json), new(c, u), output, error);
        });
        return command;
    }

    private static int Calibrated(
        SheetTree tree, CalibrationKind kind, string name, bool json, UnitPreferences? units, TextCulture culture,
        TextWriter output, TextWriter error)
    {
        var reading = Calibration.Read(tree, kind);
        var show = new Show(culture, units ?? reading.Value?.Head.Preferences ?? UnitPreferences.UnitedStates);
        if (!reading.IsUsable) return CommonOptions.Refuse(name, reading.Findings, json, show, output, error);
        var report = reading.Value!.In(units).Analyse();
        if (json) output.Write(CalibrationWriter.Write(report, reading.Findings, show.Culture, show.Units));
        else CommonOptions.Print(CalibrationLines.Of(report, reading.Findings, show), output);
        return report.Usable ? CommonOptions.Answered : CommonOptions.DoNotUse;
    }

    private static Finding OtherKind(TestKind read, TestKind wanted) => SheetFindings.OtherKind.At(
        "kind", FindingValue.Text("kind", ReportWords.Of(read)), FindingValue.Text("wanted", ReportWords.Of(wanted)),
        FindingValue.Text("command", read is TestKind.DropTest ? "lanewright analyse" : "lanewright check"));

    // Not the command line's own numbers, which read 100.000 as a hundred in one language and as more in another.
    private static int? TrialsOf(string? text, TextCulture culture, TextWriter error)
    {
        if (text is null) return DefaultTrials;
        if (QuantityText.ReadCount(text, culture).TryGet(out var count) && count is 0 or (>= 1000 and <= MostTrials))
            return (int)count;
        error.WriteLine(culture.Say($"--trials: '{Excerpt.Of(text)}' was read; 0, or a whole number from 1000 to {MostTrials}, was expected."));
        return null;
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
