using System.Globalization;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>Something still to be done before the answer is good.</summary>
/// <param name="Step">The page where it is done: prepare, drop or weigh.</param>
/// <param name="Path">The field; empty when it is not one field.</param>
/// <param name="Text">What, in plain words.</param>
/// <param name="Needed">Whether there is no answer without it; otherwise the answer is worse.</param>
internal sealed record LiveToDo(string Step, string Path, Phrase Text, bool Needed)
{
    private const int EnoughRuns = 3;

    private static readonly (string Path, Phrase Text, bool Needed)[] Before =
    [
        ("spreader.id", "Which spreader is it?", true),
        ("spreader.loop", "Does its controller regulate with a sensor (closed loop) or by a setting (open loop)?", true),
        ("spreader.constant", "What does its controller count: pulses, turns or time?", true),
        ("spreader.unit", "In which unit does the controller take the value?", true),
        ("material.name", "Which material is dropped?", true),
        ("scale.id", "Which scale weighs the catch?", true),
        ("scale.division", "What is the smallest step the scale shows?", false),
        ("commonError", "Are both readings of a difference taken on the same scale, minutes apart?", false),
        ("spreader.resolution", "What is the smallest step of the value in the controller?", false),
    ];

    /// <summary>Everything still to do, in the order of the work.</summary>
    internal static List<LiveToDo> Of(LiveInput input, IReadOnlyList<LiveRun> runs)
    {
        var list = new List<LiveToDo>();
        foreach (var (path, text, needed) in Before)
        {
            if (input.Text(path).Length > 0) continue;
            if (path == "spreader.resolution" && input.IsVerification) continue;
            // A tolerance of its own says all that a division would.
            list.Add(new("prepare", path, text, needed));
        }

        foreach (var run in runs) OfRun(input, run, list);
        var usable = runs.Count(run => run.IsReady);
        if (runs.Count < EnoughRuns && usable == runs.Count)
        {
            var next = runs.Count == 0 ? 0 : runs[^1].Place + 1;
            list.Add(new(
                "drop", string.Create(CultureInfo.InvariantCulture, $"runs[{next}]"),
                $"Do run {runs.Count + 1} (three or more show the scatter).",
                runs.Count == 0));
        }

        return list;
    }

    private static void OfRun(LiveInput input, LiveRun run, List<LiveToDo> list)
    {
        var count = LiveRuns.CountName(input);
        if (!run.HasCount && count is not null)
        {
            list.Add(new("drop", $"{run.Path}.{count}", count switch
            {
                "pulses" => (Phrase)$"Run {run.Name}: how many pulses were counted?",
                "revolutions" => $"Run {run.Name}: how many turns of the shaft were counted?",
                "time" => $"Run {run.Name}: how many seconds did it run?",
                _ => $"Run {run.Name}: how much does the controller say it delivered?",
            }, true));
        }

        if (run.Containers.Count == 0)
        {
            if (!run.IsWeighed) list.Add(new("weigh", run.Path, $"Run {run.Name}: weigh the catch.", true));
            return;
        }

        if (run.Filled is null)
            list.Add(new("weigh", run.Path + ".filled", $"Run {run.Name}: how many containers did it fill?", true));
        foreach (var container in run.Containers)
        {
            if (container.Net is not null) continue;
            var path = string.Create(CultureInfo.InvariantCulture, $"{run.Path}.containers[{container.Place}]");
            var field = input.Text(path + ".tare").Length == 0 ? ".tare" : ".gross";
            list.Add(new(
                "weigh", path + field,
                field == ".tare"
                    ? $"Run {run.Name}, container {container.Place + 1}: weigh it empty."
                    : (Phrase)$"Run {run.Name}, container {container.Place + 1}: weigh it full.",
                true));
        }

        var weighed = run.Containers.Count(c => c.Net is not null);
        if (run.Filled is { } filled && filled != run.Containers.Count)
        {
            list.Add(new(
                "weigh", run.Path + ".filled", $"Run {run.Name}: {filled} containers were filled, {weighed} are weighed.", true));
        }
    }
}
