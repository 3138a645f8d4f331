using System.CommandLine;
using Lanewright.Core.Diagnosis;
using Lanewright.Core.Practice;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Print;

namespace Lanewright.Commands;

/// <summary><c>lanewright practice</c>: a spreader whose truth is known; make runs, do cheap tests, name the fault.</summary>
internal static class PracticeCommand
{
    private const int LongestLine = 200;

    internal static Command Make()
    {
        var exercise = new Option<string?>("--exercise") { Description = $"An exercise, 1 (easy) to {PracticeExercises.All.Count} (hard)." };
        var seed = new Option<string?>("--seed") { Description = "Draw a spreader instead; the same seed draws the same one." };
        var culture = CommonOptions.Culture();
        var command = new Command("practice", "Practise finding what is wrong with a spreader. Reads what to do from the terminal or a file.")
        {
            exercise, seed, culture,
        };
        command.SetAction(parsed =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var error = parsed.InvocationConfiguration.Error;
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            if (Number(parsed.GetValue(exercise), "--exercise", 1, PracticeExercises.All.Count, c, error) is not { } number) return CommonOptions.CouldNotRead;
            if (Number(parsed.GetValue(seed), "--seed", 0, 1_000_000_000_000, c, error) is not { } drawn) return CommonOptions.CouldNotRead;
            if (number < 0 && drawn < 0) number = 1;
            return Play(new(Math.Max(0, number), (ulong)Math.Max(0, drawn), [], []), c, Console.In, output);
        });
        return command;
    }

    // -1 when nothing was said, null after saying what is wrong.
    private static long? Number(string? text, string name, long least, long most, TextCulture culture, TextWriter error)
    {
        if (text is null) return -1;
        if (QuantityText.ReadCount(text, culture).TryGet(out var count) && count >= least && count <= most) return count;
        error.WriteLine(culture.Say($"{name}: '{Excerpt.Of(text)}' was read; a whole number from {least} to {most} was expected."));
        return null;
    }

    private static int Play(PracticeState state, TextCulture culture, TextReader input, TextWriter output)
    {
        var text = new PracticeText(culture);
        var game = PracticeGame.Look(state);
        CommonOptions.Print(Wrapped.Lines("", text.Story(game)), output);
        CommonOptions.Print(Wrapped.Lines("", text.Task(game)), output);
        foreach (var known in text.Known(game)) CommonOptions.Print(Wrapped.Lines("  ", known), output);
        Help(game, output);
        while (game.Named is null)
        {
            output.Write("> ");
            output.Flush();
            if (input.ReadLine() is not { } line)
            {
                output.WriteLine();
                output.WriteLine(culture.Say("Ended without a fault named."));
                return CommonOptions.CouldNotRead;
            }

            line = line.Trim();
            if (line.Length > LongestLine) line = line[..LongestLine];
            var blank = line.IndexOf(' ', StringComparison.Ordinal);
            var (word, rest) = blank < 0 ? (line, "") : (line[..blank], line[(blank + 1)..].Trim());
            if (word.ToUpperInvariant() is "QUIT" or "EXIT") return CommonOptions.CouldNotRead;
            var problems = new List<Phrase>();
            if (Action(word, rest, culture, game, problems, output) is { } action)
            {
                if (state.Actions.Count >= PracticeState.MostActions) problems.Add($"After {PracticeState.MostActions} steps only a fault can be named.");
                if (state.Actions.Count < PracticeState.MostActions || action is NameCause)
                    state = state with { Actions = [.. state.Actions, action] };
                var before = game;
                game = PracticeGame.Look(state);
                problems.AddRange(game.Problems.Skip(before.Problems.Count));
                Show(before, game, text, output);
            }

            foreach (var problem in problems) CommonOptions.Print(Wrapped.Lines("  ", culture.Say(problem)), output);
        }

        output.WriteLine();
        foreach (var line in text.Ended(game, game.End()!)) CommonOptions.Print(Wrapped.Lines("", line), output);
        return CommonOptions.Answered;
    }

    private static PracticeAction? Action(
        string word, string rest, TextCulture culture, PracticeGame game, List<Phrase> problems, TextWriter output)
    {
        switch (word.ToUpperInvariant())
        {
            case "":
                return null;
            case "RUN":
                // The last part is a length when a number with a time stands at the end.
                var comma = rest.LastIndexOf(" for ", StringComparison.OrdinalIgnoreCase);
                return comma < 0
                    ? PracticeState.Run(rest, "", culture, problems)
                    : PracticeState.Run(rest[..comma], rest[(comma + 5)..], culture, problems);
            case "TEST":
                return PracticeState.Test(rest, problems);
            case "NAME":
                return PracticeState.Name(rest, problems);
            case "TESTS":
                foreach (var test in NextTests.All)
                    CommonOptions.Print(Wrapped.Lines($"  {test.Code,-18} {test.Minutes,3} min  ", culture.Say(test.How)), output);
                return null;
            case "CAUSES":
                foreach (var facts in CauseTable.All) output.WriteLine($"  {facts.Code,-18} {culture.Say(facts.Name)}");
                return null;
            case "KNOWN":
                foreach (var known in new PracticeText(culture).Known(game)) CommonOptions.Print(Wrapped.Lines("  ", known), output);
                return null;
            case "SHEET":
                foreach (var (path, typed) in game.Sheet?.Fields ?? []) output.WriteLine($"  {path}: {typed}");
                return null;
            case "HINT":
                Hint(game, culture, output);
                return null;
            case "HELP":
                Help(game, output);
                return null;
            default:
                problems.Add($"'{Excerpt.Of(word)}' was read; run, test, name, tests, causes, known, sheet, hint, help or quit was expected.");
                return null;
        }
    }

    private static void Help(PracticeGame game, TextWriter output) => output.WriteLine(
        (game.Setup.Situation is TestSituation.RoadCheck ? "run 40 km/h" : "run 50 % for 60 s")
        + " | test CODE | name CODE | tests | causes | known | sheet | hint | help | quit");

    private static void Show(PracticeGame before, PracticeGame now, PracticeText text, TextWriter output)
    {
        foreach (var (path, typed) in (now.Sheet?.Fields ?? []).Skip(before.Sheet?.Fields.Count ?? 0))
            if (path.StartsWith("runs[", StringComparison.Ordinal)) output.WriteLine($"  {path}: {typed}");
        foreach (var done in now.Tests.Skip(before.Tests.Count))
            CommonOptions.Print(Wrapped.Lines("  ", text.Done(done)), output);
    }

    private static void Hint(PracticeGame game, TextCulture culture, TextWriter output)
    {
        if (game.Diagnosis() is not { } diagnosis)
        {
            output.WriteLine("  " + culture.Say("Make a run first."));
            return;
        }

        var text = new DiagnosisText(culture, game.Setup.Metric ? UnitPreferences.Metric : UnitPreferences.UnitedStates);
        foreach (var evidence in text.Evidence(diagnosis.Report)) CommonOptions.Print(Wrapped.Lines("  ", evidence), output);
        var next = NextTests.Advise(diagnosis.Chances, [.. game.Tests.Select(t => t.Test.Code)]);
        if (next.Count > 0) CommonOptions.Print(Wrapped.Lines("  ", culture.Say($"Worth most for its time: test {next[0].Test.Code}. {(Phrase)next[0].Test.How}")), output);
    }
}
