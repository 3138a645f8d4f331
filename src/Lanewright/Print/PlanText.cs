using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Print;

/// <summary>A plan for a person at a terminal: cautions first.</summary>
internal static class PlanText
{
    internal static IEnumerable<string> Lines(TestPlan plan, Show show)
    {
        yield return show.Say("Before anything else");
        foreach (var caution in plan.Cautions)
        {
            foreach (var line in Wrapped.Lines("  ! ", show.Say(caution.Text))) yield return line;
        }

        yield return "";
        if (plan.Best is { } best)
        {
            yield return show.Say(
                $"Drop {best.Runs} runs of {show.Mass(best.MassPerRun.Si, 3)} each, {show.Mass(best.Total.Si, 3)} in all: ± {show.Percent(best.Expected)} to expect, ± {show.Percent(plan.Request.Wanted)} wanted.");
            foreach (var line in PerRun(best, show)) yield return line;
        }
        else if (plan.Choices.Count > 0)
        {
            yield return show.Say($"Nothing reaches ± {show.Percent(plan.Request.Wanted)} with this scale.");
        }

        if (plan.Choices.Count > 0)
        {
            yield return "";
            yield return "  " + show.Say("Uncertainty to expect, by mass of a run and number of runs (* reaches what is wanted)");
            foreach (var line in Grid(plan, show)) yield return line;
            yield return "";
            yield return "  " + show.Say("Common practice beside it");
            foreach (var line in Practices(plan, show)) yield return line;
        }

        if (plan.Findings.Count == 0) yield break;
        yield return "";
        yield return show.Say("Findings");
        foreach (var line in FindingLines.Of(plan.Findings, show)) yield return line;
    }

    private static IEnumerable<string> PerRun(PlanChoice choice, Show show)
    {
        if (choice.Containers > 0)
        {
            var each = show.Mass(choice.MassPerRun.Si / choice.Containers, 2);
            yield return "  " + show.Say(
                $"Each run takes {choice.Containers} container of about {each}, with its own tare.|Each run takes {choice.Containers} containers of about {each}, every one with its own tare.");
        }

        if (choice.TimePerRun is { } time)
            yield return "  " + show.Say($"Each run takes about {show.With(time.Si, Units.Second, 2)}.");
    }

    private static IEnumerable<string> Grid(TestPlan plan, Show show)
    {
        var runs = plan.Choices.Select(c => c.Runs).Distinct().Order().ToList();
        var table = new TextTable([
            (show.Say("run of"), true), .. runs.Select(r => (show.Say($"{r} run|{r} runs"), true)),
        ]);
        foreach (var group in plan.Choices.GroupBy(c => c.MassPerRun.Si))
        {
            table.Add([
                show.Mass(group.Key, 3),
                .. group.OrderBy(c => c.Runs).Select(c => show.Percent(c.Expected) + (c.Enough ? "*" : " ")),
            ]);
        }

        return table.Lines();
    }

    private static IEnumerable<string> Practices(TestPlan plan, Show show)
    {
        foreach (var practice in plan.Practices)
        {
            var text = practice.Choice is { } c
                ? show.Say($"{(Phrase)practice.Practice} Here: ± {show.Percent(c.Expected)}, {(Phrase)(c.Enough ? "enough" : "not enough")}.")
                : show.Say(practice.Practice);
            foreach (var line in Wrapped.Lines("  - ", text)) yield return line;
        }
    }
}
