using System.CommandLine;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Files;
using Lanewright.Print;

namespace Lanewright.Commands;

/// <summary><c>lanewright plan</c>: how much to drop, how often, and what each choice buys.</summary>
internal static class PlanCommand
{
    internal static Command Make()
    {
        var file = new Argument<string>("plan") { Description = "What is known: a JSON, YAML or CSV file." };
        var json = CommonOptions.Json();
        var culture = CommonOptions.Culture();
        var unitsOption = CommonOptions.Units();
        var command = new Command("plan", "Plan a drop test before it is done.") { file, json, culture, unitsOption };
        command.SetAction(parsed =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var error = parsed.InvocationConfiguration.Error;
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            var name = parsed.GetValue(file)!;
            var reading = PlanReader.Read(SheetFile.Read(name));
            var own = reading.Value?.Units is UnitSystem.Si ? UnitPreferences.Metric : UnitPreferences.UnitedStates;
            if (CommonOptions.UnitsOf(parsed.GetValue(unitsOption), own, c, error) is not { } units)
                return CommonOptions.CouldNotRead;
            var show = new Show(c, units);
            if (!reading.IsUsable)
                return CommonOptions.Refuse(name, reading.Findings, parsed.GetValue(json), show, output, error);
            // The masses to choose from are round in the units that are shown.
            var system = ReferenceEquals(units, UnitPreferences.Metric) ? UnitSystem.Si : UnitSystem.UnitedStates;
            var plan = Planner.Plan(reading.Value! with { Units = system });
            if (parsed.GetValue(json))
            {
                output.Write(PlanWriter.Write(plan, reading.Findings, c, units));
            }
            else
            {
                CommonOptions.Print(PlanText.Lines(plan, show), output);
                CommonOptions.Print(FindingLines.Of(reading.Findings, show), output);
            }

            return plan.Findings.Any(f => f.Severity is Severity.Stop) ? CommonOptions.DoNotUse : CommonOptions.Answered;
        });
        return command;
    }
}
