using Lanewright.Core.Diagnosis;
using Lanewright.Core.Quantities;
using Lanewright.Core.Statistics;
using Lanewright.Core.Text;

namespace Lanewright.Core.Practice;

/// <summary>A test that was done, and whether it showed something wrong.</summary>
/// <param name="Test">The test.</param>
/// <param name="Showed">Whether it did.</param>
public sealed record TestDone(NextTest Test, bool Showed);

/// <summary>How it ended.</summary>
/// <param name="Named">What the person named.</param>
/// <param name="Truth">What was wrong.</param>
/// <param name="Separating">The test that would best have told the two apart; null when the answer was right or none would.</param>
/// <param name="Rank">Place of the truth in the diagnosis of the person's own sheet, from 1; 0 when there was none.</param>
public sealed record PracticeEnd(CauseFacts Named, CauseFacts Truth, NextTest? Separating, int Rank)
{
    /// <summary>Whether the right cause was named.</summary>
    public bool Right => Named.Cause == Truth.Cause;
}

/// <summary>
/// Practice mode as pure functions: from a state (which spreader, what was done) to what the person sees. The same state gives
/// the same view anywhere; a further action never changes what earlier ones gave.
/// </summary>
public sealed class PracticeGame
{
    /// <summary>Minutes that a run takes beside its own length (common practice, no source).</summary>
    public const double MinutesByRun = 6;

    private PracticeGame(PracticeState state)
    {
        State = state;
        Setup = state.Setup();
        var problems = new List<Phrase>(state.Problems);
        var runs = new List<PlannedRun>();
        var tests = new List<TestDone>();
        foreach (var action in state.Actions)
        {
            if (Named is not null) break;
            switch (action)
            {
                case MakeRun run when runs.Count >= PracticeState.MostRuns:
                    problems.Add($"The hopper is empty after {PracticeState.MostRuns} runs; {Math.Round(run.Seconds)} s more are not to be had.");
                    break;
                case MakeRun run:
                    if (Planned(run, problems) is { } planned) runs.Add(planned);
                    break;
                case DoTest test:
                    if (!tests.Exists(t => t.Test.Code == test.Code)) tests.Add(Done(test.Code));
                    break;
                case NameCause name:
                    Named = name.Cause;
                    break;
            }
        }

        Problems = problems;
        Tests = tests;
        Minutes = runs.Sum(r => MinutesByRun + (r.Seconds / 60)) + tests.Sum(t => t.Test.Minutes);
        var (seed, stream) = state.Chance;
        Sheet = runs.Count == 0 ? null : PracticeSheet.Of(Setup with { Runs = runs }, seed, stream);
    }

    /// <summary>Where we are.</summary>
    public PracticeState State { get; }

    /// <summary>The spreader with its truth.</summary>
    public PracticeSetup Setup { get; }

    /// <summary>The sheet so far; null before the first run.</summary>
    public PracticeSheet? Sheet { get; }

    /// <summary>The tests done.</summary>
    public IReadOnlyList<TestDone> Tests { get; }

    /// <summary>Minutes of work so far.</summary>
    public double Minutes { get; }

    /// <summary>What could not be done, as sentences.</summary>
    public IReadOnlyList<Phrase> Problems { get; }

    /// <summary>What the person named; null before.</summary>
    public Cause? Named { get; }

    /// <summary>What a state looks like.</summary>
    public static PracticeGame Look(PracticeState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return new(state);
    }

    /// <summary>The diagnosis of the sheet so far with the tests done; null before the first run.</summary>
    public (DiagnosisReport Report, IReadOnlyList<double> Chances)? Diagnosis()
    {
        if (Sheet is null) return null;
        var report = Diagnose.Of(Sheet.Input());
        var chances = report.Chances;
        foreach (var done in Tests) chances = NextTests.After(chances, done.Test, done.Showed);
        return (report, chances);
    }

    /// <summary>How it ended; null before something was named.</summary>
    public PracticeEnd? End()
    {
        if (Named is not { } named) return null;
        var truth = Setup.Cause;
        NextTest? separating = null;
        if (named != truth)
        {
            separating = NextTests.All.MaxBy(t => Math.Abs(t.ChanceUnder(named) - t.ChanceUnder(truth)) / t.Minutes);
            if (Math.Abs(separating!.ChanceUnder(named) - separating.ChanceUnder(truth)) < 0.3) separating = null;
        }

        var rank = 0;
        if (Diagnosis() is { } diagnosis)
            rank = 1 + diagnosis.Chances.Count(c => c > diagnosis.Chances[(int)truth]);
        return new(CauseTable.Of(named), CauseTable.Of(truth), separating, rank);
    }

    private PlannedRun? Planned(MakeRun run, List<Phrase> problems)
    {
        if (Setup.Situation is TestSituation.RoadCheck)
        {
            if (run.Speed > 0) return new(0.5, Setup.Runs[0].Seconds, run.Speed);
            problems.Add("This is a check on the road: a run is a pass at a speed, such as 40 km/h.");
            return null;
        }

        if (run.Speed == 0) return new(run.Setting, run.Seconds);
        problems.Add("This truck stands in the yard: a run has a drive setting, such as 50 %.");
        return null;
    }

    // The answer belongs to the spreader and the test, so that asking twice gives the same.
    private TestDone Done(string code)
    {
        var index = NextTests.All.ToList().FindIndex(t => t.Code == code);
        var (seed, stream) = State.Chance;
        var test = NextTests.All[index];
        return new(test, new RandomSource(seed, (stream * 4) + 1000 + (ulong)index).NextDouble() < test.ChanceUnder(Setup.Cause));
    }
}
