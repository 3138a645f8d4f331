using System.CommandLine;
using Lanewright.Core.Diagnosis;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Files;
using Lanewright.Print;

namespace Lanewright.Commands;

/// <summary><c>lanewright diagnose</c>: what may be wrong with a truck whose number is odd, and the test that would tell.</summary>
internal static class DiagnoseCommand
{
    private const int FirstCauses = 3;
    private const int MostTests = 3;
    private const double WorthNaming = 0.01;

    internal static Command Make()
    {
        var file = new Argument<string>("sheet") { Description = "The sheet in doubt: a JSON, YAML or CSV file." };
        var history = new Option<string[]>("--history")
        {
            Description = "Sheets of earlier tests of this spreader and of its sisters, in any order.",
            AllowMultipleArgumentsPerToken = true,
        };
        var all = new Option<bool>("--all") { Description = "Show every cause considered, not only the first three." };
        var json = CommonOptions.Json();
        var culture = CommonOptions.Culture();
        var units = CommonOptions.Units();
        var command = new Command("diagnose", "Say what may be wrong with the truck, from its sheet and earlier ones.")
        {
            file, history, all, json, culture, units,
        };
        command.SetAction(parsed =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var error = parsed.InvocationConfiguration.Error;
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            if (CommonOptions.UnitsOf(parsed.GetValue(units), UnitPreferences.UnitedStates, c, error) is not { } u)
                return CommonOptions.CouldNotRead;
            var asJson = parsed.GetValue(json);
            var (report, refused) = Read(parsed.GetValue(file)!);
            if (report is null)
                return CommonOptions.Refuse(parsed.GetValue(file)!, refused, asJson, new(c, u), output, error);
            var earlier = new List<TestReport>();
            foreach (var name in parsed.GetValue(history) ?? [])
            {
                var (other, findings) = Read(name);
                if (other is null) return CommonOptions.Refuse(name, findings, asJson, new(c, u), output, error);
                earlier.Add(other);
            }

            var text = new DiagnosisText(c, parsed.GetValue(units) is null ? report.Sheet.Preferences : u);
            var diagnosis = Diagnose.Of(DiagnosisHistory.Of(report, earlier));
            if (asJson) output.WriteLine(DiagnosisWriter.Write(diagnosis, text));
            else CommonOptions.Print(Lines(diagnosis, text, parsed.GetValue(all)), output);
            return CommonOptions.Answered;
        });
        return command;
    }

    private static (TestReport? Report, IReadOnlyList<Finding> Findings) Read(string file)
    {
        var reading = SheetReader.Read(SheetFile.Read(file));
        return reading.IsUsable ? (SheetAnalysis.Analyse(reading.Value!), reading.Findings) : (null, reading.Findings);
    }

    private static IEnumerable<string> Lines(DiagnosisReport report, DiagnosisText text, bool all)
    {
        foreach (var line in Wrapped.Lines("", text.Headline(report))) yield return line;
        if (report.Causes.Count == 0) yield break;
        yield return "";
        yield return text.Culture.Say("What was seen");
        foreach (var evidence in text.Evidence(report))
            foreach (var line in Wrapped.Lines("  ", evidence)) yield return line;
        yield return "";
        yield return text.Culture.Say("What it may be");
        var shown = all ? report.Causes : [.. report.Causes.Where((cause, i) => i == 0 || cause.Chance >= WorthNaming).Take(FirstCauses)];
        foreach (var cause in shown)
        {
            var effect = text.Effect(cause, report);
            yield return $"  {text.Chance(cause.Chance),-16} {text.Culture.Say(cause.Facts.Name)}";
            foreach (var line in Wrapped.Lines("                   ", (effect.Length > 0 ? effect + " " : "") + text.Culture.Say($"If so: {(Core.Text.Phrase)cause.Facts.AlsoSeen}")))
                yield return line;
        }

        var next = report.Next.Take(MostTests).ToList();
        if (next.Count == 0) yield break;
        yield return "";
        yield return text.Culture.Say("What to do next (most learnt for each minute first)");
        foreach (var advised in next)
            foreach (var line in Wrapped.Lines($"  {text.Minutes(advised.Test.Minutes),-8}", text.Culture.Say(advised.Test.How))) yield return line;
        yield return "";
        foreach (var line in Wrapped.Lines(
            "", text.Culture.Say(
                "Chances rest on the ranges and priors of docs/method/diagnosis.md, which are ours. Lock out before reaching near auger, "
                + "chain or spinner; local rules and the maker's instructions stand first.")))
            yield return line;
    }
}
