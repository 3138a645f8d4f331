using Lanewright.Core.Diagnosis;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Statistics;
using Lanewright.Core.Text;

namespace Lanewright.Core.Practice;

/// <summary>Something the person does in practice mode.</summary>
public abstract record PracticeAction
{
    private protected PracticeAction()
    {
    }
}

/// <summary>A run in the yard, or a pass on the road.</summary>
/// <param name="Setting">Drive setting, 0.05 to 1; without meaning on the road.</param>
/// <param name="Seconds">Length, 5 to 300 s; without meaning on the road.</param>
/// <param name="Speed">Speed on the road, m/s; 0 in the yard.</param>
public sealed record MakeRun(double Setting, double Seconds, double Speed) : PracticeAction;

/// <summary>One of the cheap tests.</summary>
/// <param name="Code">Its word.</param>
public sealed record DoTest(string Code) : PracticeAction;

/// <summary>The fault named: the end.</summary>
/// <param name="Cause">The cause.</param>
public sealed record NameCause(Cause Cause) : PracticeAction;

/// <summary>
/// A session of practice mode: which spreader, and what was done so far. A page keeps it as JSON and sends it whole each time.
/// </summary>
/// <param name="Exercise">Number of the exercise; 0 for a spreader drawn from the seed.</param>
/// <param name="Seed">Seed of a drawn spreader.</param>
/// <param name="Actions">What was done, in order.</param>
/// <param name="Problems">What could not be understood, as sentences.</param>
public sealed record PracticeState(long Exercise, ulong Seed, IReadOnlyList<PracticeAction> Actions, IReadOnlyList<Phrase> Problems)
{
    /// <summary>Most actions of a session; further ones are passed over.</summary>
    public const int MostActions = 80;

    /// <summary>Most runs of a session.</summary>
    public const int MostRuns = 20;

    /// <summary>The spreader of the session, its runs left out.</summary>
    public PracticeSetup Setup() => Drawn() with { SwapIn = 1 };

    private PracticeSetup Drawn()
    {
        if (PracticeExercises.Find(Exercise) is { } exercise)
            return PracticeSetup.Draw(exercise.Cause, exercise.Situation, PracticeExercises.Seed, exercise.Stream);
        var random = new RandomSource(Seed, 77);
        // A third of the spreaders drawn is healthy, so that "nothing wrong" is a real answer.
        var causes = CauseTable.All.Where(f => f.Cause is not (Cause.NothingWrong or Cause.SomethingElse)).ToList();
        var cause = random.NextInt(3) == 0 ? Cause.NothingWrong : causes[random.NextInt(causes.Count)].Cause;
        var situations = PracticeCase.Situations(cause);
        return PracticeSetup.Draw(cause, situations[random.NextInt(situations.Count)], Seed, 78);
    }

    /// <summary>The seed and the number that the chances of the runs come from.</summary>
    public (ulong Seed, ulong Stream) Chance =>
        PracticeExercises.Find(Exercise) is { } exercise ? (PracticeExercises.Seed, exercise.Stream) : (Seed, 78);

    /// <summary>Reads a state from JSON; whatever is wrong with it becomes a sentence in <see cref="Problems"/>.</summary>
    public static PracticeState Read(string json)
    {
        var problems = new List<Phrase>();
        var actions = new List<PracticeAction>();
        var tree = JsonTree.Read(json);
        if (tree.Root is not { Kind: NodeKind.Map } root)
            return new(1, 1, [], ["The state could not be read; exercise 1 is begun."]);
        var culture = TextCulture.TryFind(Text(root, "culture"), out var found) ? found : TextCulture.Invariant;
        var exercise = Whole(root, "exercise", 0, 1000, problems);
        if (exercise != 0 && PracticeExercises.Find(exercise) is null)
        {
            problems.Add($"exercise: {exercise} was read; 1 to {PracticeExercises.All.Count} was expected. A spreader is drawn instead.");
            exercise = 0;
        }

        var seed = (ulong)Whole(root, "seed", 1, 1_000_000_000_000, problems);
        foreach (var node in root.Find("actions")?.Children ?? [])
        {
            if (actions.Count >= MostActions)
            {
                problems.Add($"actions: only the first {MostActions} are taken.");
                break;
            }

            if (node.Kind is NodeKind.Map && Action(node, culture, problems) is { } action) actions.Add(action);
        }

        return new(exercise, seed, actions, problems);
    }

    private static PracticeAction? Action(SheetNode node, TextCulture culture, List<Phrase> problems) =>
        Text(node, "do").ToUpperInvariant() switch
        {
            "RUN" => Run(Text(node, "setting"), Text(node, "seconds"), culture, problems),
            "TEST" => Test(Text(node, "code"), problems),
            "NAME" => Name(Text(node, "code"), problems),
            var other => Wrong<PracticeAction>(problems, $"actions: '{Excerpt.Of(other)}' was read; run, test or name was expected."),
        };

    /// <summary>A run from what was typed, or null with a sentence about what is wrong.</summary>
    /// <param name="setting">A drive setting such as <c>50 %</c>, or a speed such as <c>40 km/h</c>.</param>
    /// <param name="length">Length such as <c>60 s</c>; 60 s when empty.</param>
    /// <param name="culture">How numbers are written.</param>
    /// <param name="problems">Takes the sentence.</param>
    public static MakeRun? Run(string setting, string length, TextCulture culture, List<Phrase> problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        const string Expected = "a drive setting of 5 % to 100 %, or on the road a speed of 5 km/h to 100 km/h, was expected";
        if (!QuantityText.ReadAny(setting, culture).TryGet(out var amount))
            return Wrong<MakeRun>(problems, $"setting: '{Excerpt.Of(setting)}' was read; {(Phrase)Expected}.");
        var seconds = 60.0;
        if (!string.IsNullOrWhiteSpace(length))
        {
            if (!QuantityText.Read<Duration>(length, culture, Units.Second).TryGet(out var time) || time.Si is not (>= 5 and <= 300))
                return Wrong<MakeRun>(problems, $"seconds: '{Excerpt.Of(length)}' was read; 5 s to 300 s was expected.");
            seconds = time.Si;
        }

        return amount switch
        {
            { Unit.Dimension: Dimension.Fraction, Si: >= 0.05 and <= 1 } => new(amount.Si, seconds, 0),
            { Unit.Dimension: Dimension.Speed, Si: >= 5 / 3.6 and <= 100 / 3.6 } => new(0.5, seconds, amount.Si),
            _ => Wrong<MakeRun>(problems, $"setting: '{Excerpt.Of(setting)}' was read; {(Phrase)Expected}."),
        };
    }

    /// <summary>A test from its code, or null with a sentence about what is wrong.</summary>
    public static DoTest? Test(string code, List<Phrase> problems) =>
        NextTests.All.FirstOrDefault(t => string.Equals(t.Code, code.Trim(), StringComparison.OrdinalIgnoreCase)) is { } test
            ? new(test.Code)
            : Wrong<DoTest>(problems, $"test: '{Excerpt.Of(code)}' was read; one of {string.Join(", ", NextTests.All.Select(t => t.Code))} was expected.");

    /// <summary>A cause from its code, or null with a sentence about what is wrong.</summary>
    public static NameCause? Name(string code, List<Phrase> problems) =>
        CauseTable.Find(code.Trim()) is { } facts
            ? new(facts.Cause)
            : Wrong<NameCause>(problems, $"name: '{Excerpt.Of(code)}' was read; one of {string.Join(", ", CauseTable.All.Select(f => f.Code))} was expected.");

    private static T? Wrong<T>(List<Phrase> problems, Phrase sentence)
        where T : class
    {
        problems.Add(sentence);
        return null;
    }

    private static string Text(SheetNode node, string name) =>
        node.Find(name) is { Kind: NodeKind.Text or NodeKind.Number } found ? found.Literal : "";

    private static long Whole(SheetNode root, string name, long otherwise, long most, List<Phrase> problems)
    {
        if (root.Find(name) is not { Kind: NodeKind.Text or NodeKind.Number } node) return otherwise;
        if (QuantityText.ReadCount(node.Literal, TextCulture.Invariant).TryGet(out var count) && count >= 0 && count <= most) return count;
        problems.Add($"{name}: '{Excerpt.Of(node.Literal)}' was read; a whole number from 0 to {most} was expected.");
        return otherwise;
    }
}
