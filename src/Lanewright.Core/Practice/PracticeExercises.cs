using Lanewright.Core.Diagnosis;

namespace Lanewright.Core.Practice;

/// <summary>An exercise of practice mode.</summary>
/// <param name="Number">From 1; the higher, the harder.</param>
/// <param name="Title">What the people in the yard say.</param>
/// <param name="Cause">What is wrong.</param>
/// <param name="Situation">The kind of test.</param>
/// <param name="Stream">The draw that it is: the sizes follow from it.</param>
public sealed record PracticeExercise(int Number, string Title, Cause Cause, TestSituation Situation, ulong Stream);

/// <summary>The graded exercises, easy to hard. All invented.</summary>
public static class PracticeExercises
{
    /// <summary>Seed of all exercises.</summary>
    public const ulong Seed = 2026;

    /// <summary>The exercises in order.</summary>
    public static IReadOnlyList<PracticeExercise> All { get; } =
    [
        new(1, "The new man weighed. Nothing fits any more.", Cause.MassUnit, TestSituation.CountedDrop, 3),
        new(2, "A new counter was fitted and the constant is absurd.", Cause.PulsesDoubled, TestSituation.CountedDrop, 16),
        new(3, "Everything is a little heavier than last year, every run.", Cause.TareForgotten, TestSituation.CountedDrop, 27),
        new(4, "Out on the route it puts down far from what was ordered.", Cause.LaneConvention, TestSituation.RoadCheck, 17),
        new(5, "The first run spoils the test.", Cause.Unprimed, TestSituation.CountedDrop, 13),
        new(6, "One run is far off and nobody knows why.", Cause.Bridging, TestSituation.CountedDrop, 25),
        new(7, "In the morning it spread too thin.", Cause.ColdOil, TestSituation.TimedDrop, 15),
        new(8, "Right at low settings, wrong at high ones.", Cause.FlowLimit, TestSituation.TimedDrop, 9),
        new(9, "The supervisor has a bad feeling about this one.", Cause.NothingWrong, TestSituation.CountedDrop, 26),
        new(10, "It came out well off, and some of the others did too.", Cause.MaterialChanged, TestSituation.CountedDrop, 38),
        new(11, "Short drops and long drops give different constants.", Cause.RunOn, TestSituation.CountedDrop, 30),
        new(12, "The controller and the scale do not agree.", Cause.ConstantLost, TestSituation.StandingCheck, 18),
        new(13, "Good at a third of the drive, poor at full.", Cause.Slip, TestSituation.CountedDrop, 6),
        new(14, "A little more to key in with every autumn.", Cause.Wear, TestSituation.CountedDrop, 29),
    ];

    /// <summary>The exercise of a number; null when there is none.</summary>
    public static PracticeExercise? Find(long number) => All.FirstOrDefault(e => e.Number == number);
}
