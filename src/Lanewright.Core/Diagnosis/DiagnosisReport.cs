namespace Lanewright.Core.Diagnosis;

/// <summary>What a diagnosis comes to.</summary>
public enum Outcome
{
    /// <summary>Nothing is wrong as far as the sheet shows.</summary>
    NothingWrong,

    /// <summary>One cause is likelier than all others together.</summary>
    Likely,

    /// <summary>The sheet does not say whether something is wrong, or which of several causes it is.</summary>
    CannotTell,
}

/// <summary>A cause with its chance.</summary>
public sealed record RankedCause
{
    internal RankedCause(CauseFacts facts, double chance, double effect, Hypothesis best) =>
        (Facts, Chance, Effect, Best) = (facts, chance, effect, best);

    /// <summary>The cause.</summary>
    public CauseFacts Facts { get; }

    /// <summary>Its chance, 0 to 1, given the sheet and all causes considered.</summary>
    public double Chance { get; }

    /// <summary>Its size if it is the cause, in the cause's own measure.</summary>
    public double Effect { get; }

    /// <summary>The size and place of it that fits best.</summary>
    internal Hypothesis Best { get; }
}

/// <summary>The causes behind a report, likeliest first.</summary>
public sealed class DiagnosisReport
{
    internal DiagnosisReport(DiagnosisInput input, Observations? seen, IReadOnlyList<RankedCause> causes)
    {
        Input = input;
        Seen = seen;
        Causes = causes;
    }

    /// <summary>What was looked at.</summary>
    public DiagnosisInput Input { get; }

    /// <summary>The causes considered, likeliest first; empty when no run could be used.</summary>
    public IReadOnlyList<RankedCause> Causes { get; }

    /// <summary>Chance that nothing is wrong.</summary>
    public double NothingWrong => ChanceOf(Cause.NothingWrong);

    /// <summary>What it comes to.</summary>
    public Outcome Outcome
    {
        get
        {
            if (Causes.Count == 0) return Outcome.CannotTell;
            if (NothingWrong >= Diagnose.LikelyFrom) return Outcome.NothingWrong;
            return NothingWrong < Diagnose.AlarmBelow && Causes[0].Chance >= Diagnose.LikelyFrom
                && Causes[0].Facts.Cause is not Cause.SomethingElse
                ? Outcome.Likely
                : Outcome.CannotTell;
        }
    }

    /// <summary>The chance of each cause, in the order of <see cref="Cause"/>.</summary>
    public IReadOnlyList<double> Chances => [.. CauseTable.All.Select(f => ChanceOf(f.Cause))];

    /// <summary>Tests by what they bring for each minute of work, best first.</summary>
    public IReadOnlyList<AdvisedTest> Next => Causes.Count == 0 ? [] : NextTests.Advise(Chances);

    internal Observations? Seen { get; }

    /// <summary>The chance of a cause; 0 for one that was not considered.</summary>
    public double ChanceOf(Cause cause) => Causes.FirstOrDefault(c => c.Facts.Cause == cause)?.Chance ?? 0;

    internal static DiagnosisReport Nothing(DiagnosisInput input) => new(input, null, []);
}
