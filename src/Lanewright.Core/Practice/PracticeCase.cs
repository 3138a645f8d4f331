using Lanewright.Core.Diagnosis;
using Lanewright.Core.Statistics;

namespace Lanewright.Core.Practice;

/// <summary>One test of a practice spreader with its truth, drawn from a seed and a number.</summary>
/// <param name="Setup">The spreader and what is wrong with it.</param>
/// <param name="Sheet">What people typed, and what each run did.</param>
/// <param name="Input">What a diagnosis is given.</param>
public sealed record PracticeCase(PracticeSetup Setup, PracticeSheet Sheet, DiagnosisInput Input)
{
    private static readonly TestSituation[] Single =
        [TestSituation.CountedDrop, TestSituation.TimedDrop, TestSituation.StandingCheck, TestSituation.RoadCheck];

    /// <summary>Draws a case.</summary>
    /// <param name="cause">What is wrong.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="stream">Its number; the kind of test follows from it.</param>
    public static PracticeCase Draw(Cause cause, ulong seed, ulong stream)
    {
        var possible = Situations(cause);
        var situation = possible[new RandomSource(seed, stream * 4).NextInt(possible.Count)];
        var setup = PracticeSetup.Draw(cause, situation, seed, stream);
        var sheet = PracticeSheet.Of(setup, seed, stream);
        return new(setup, sheet, sheet.Input());
    }

    /// <summary>The kinds of test in which a cause can show itself.</summary>
    public static IReadOnlyList<TestSituation> Situations(Cause cause) =>
        [.. Single.Where(s => (CauseTable.Of(cause).In & s) != 0)];

    /// <summary>The effect by its expanded uncertainty: more than 2 counts as large. See docs/method/diagnosis.md.</summary>
    /// <param name="seed">The seed it was drawn with.</param>
    /// <param name="stream">The number it was drawn with.</param>
    public double Effect(ulong seed, ulong stream)
    {
        if (Setup.Cause is Cause.NothingWrong) return 0;
        // A division written wrongly moves no result.
        if (Setup.Cause is Cause.ScaleDivision) return Detectability.OfDivision(Input.Report.Sheet, Setup.Dials.CoarserDivision);
        if (Setup.Cause is Cause.Wear)
        {
            if (Input.Earlier.Count < 2) return 0;
            var first = Input.Earlier.MinBy(e => e.Day)!;
            var last = Input.Report.Results[0];
            var u = Math.Sqrt((first.Uncertainty * first.Uncertainty) + (last.RelativeExpanded * last.RelativeExpanded / 4));
            return Setup.Dials.WearBySeason * Input.Earlier.Count / (2 * u);
        }

        return Detectability.Of(Input, PracticeSheet.Of(Setup.Healthy(), seed, stream).Input(), Setup.Truck.Scatter);
    }
}
