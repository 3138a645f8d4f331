using System.Globalization;
using Lanewright.Core.Diagnosis;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Practice;

/// <summary>What the person sees in practice mode, in sentences.</summary>
/// <param name="Culture">How numbers are written.</param>
public sealed record PracticeText(TextCulture Culture)
{
    /// <summary>What the people say.</summary>
    public static string Story(PracticeGame game)
    {
        ArgumentNullException.ThrowIfNull(game);
        return PracticeExercises.Find(game.State.Exercise) is { } exercise
            ? $"Exercise {exercise.Number.ToString(CultureInfo.InvariantCulture)} of {PracticeExercises.All.Count.ToString(CultureInfo.InvariantCulture)}: {exercise.Title}"
            : $"A spreader drawn from seed {game.State.Seed.ToString(CultureInfo.InvariantCulture)}. It may be healthy.";
    }

    /// <summary>What to do.</summary>
    public static string Task(PracticeGame game)
    {
        ArgumentNullException.ThrowIfNull(game);
        return game.Setup.Situation switch
        {
            TestSituation.CountedDrop => "A drop test by pulses. Ask for runs at a drive setting, do cheap tests, then name the fault.",
            TestSituation.TimedDrop => "A drop test by time. Ask for runs at a drive setting, do cheap tests, then name the fault.",
            TestSituation.StandingCheck => "A check of what the controller says, truck standing. Ask for runs at a drive setting, do cheap tests, then name the fault.",
            _ => "A check on the road, the truck weighed before and after. Ask for passes at a speed, do cheap tests, then name the fault.",
        };
    }

    /// <summary>What is known of the spreader.</summary>
    public IReadOnlyList<string> Known(PracticeGame game)
    {
        ArgumentNullException.ThrowIfNull(game);
        var setup = game.Setup;
        var mass = setup.Metric ? Units.Kilogram : Units.Pound;
        var lines = new List<string>
        {
            $"Feeder: {(setup.Truck.Chain ? "chain under a gate" : "auger")}, {setup.Truck.Feeders.ToString(CultureInfo.InvariantCulture)} in number. Scale: {setup.Scale.Id}, division "
            + $"{QuantityText.Write(setup.Scale.Division!.Value.Si, mass, Culture, NumberForm.Significant(2))}.",
        };
        if (setup.Situation is not TestSituation.TimedDrop)
            lines.Add($"In the controller, as the paper says: {Constant(setup, 1 / setup.Keyed)}.");
        if (setup.Facts.Teeth is { } teeth) lines.Add($"Register: {Number(teeth)} pulses for a turn.");
        if (setup.Facts.Gate is { } gate)
            lines.Add($"Register: gate at {Inches(gate)}; marks at {string.Join(", ", setup.Facts.Gates.Select(Inches))}.");
        foreach (var earlier in setup.Earlier)
            lines.Add(
                $"Test of {earlier.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}{(earlier.Setting.Length > 0 ? " at " + earlier.Setting : "")}: "
                + $"{Constant(setup, earlier.Value)}, ± {PercentText.Write(2 * earlier.Uncertainty, Culture)}.");
        if (setup.Earlier.Count == 0) lines.Add("No earlier test is known.");
        lines.Add("Shaft at the last test: " + string.Join(", ", setup.Facts.Shaft.Select(s =>
            $"{PercentText.Write(s.Setting, Culture)} {Number(s.Turns * 60)} rpm")) + ".");
        foreach (var sister in setup.Sisters)
            lines.Add(
                $"{sister.Id}{(sister.SameMaterial ? ", same material" : "")}{(sister.SameScale ? ", same scale" : "")}: mass for each count "
                + $"{Signed(sister.Change)} since its last test, ± {PercentText.Write(2 * sister.Uncertainty, Culture)}.");
        lines.Add(setup.Facts.Events.Count == 0
            ? "Nothing was done to it since, says the register."
            : "Done since, says the register: " + string.Join(", ", setup.Facts.Events) + ".");
        return lines;
    }

    /// <summary>A test that was done.</summary>
    public static string Done(TestDone done)
    {
        ArgumentNullException.ThrowIfNull(done);
        return $"{done.Test.How} {(done.Showed ? "This shows something wrong." : "Nothing wrong to be seen.")}";
    }

    /// <summary>How it ended.</summary>
    public IReadOnlyList<string> Ended(PracticeGame game, PracticeEnd end)
    {
        ArgumentNullException.ThrowIfNull(game);
        ArgumentNullException.ThrowIfNull(end);
        var lines = new List<string>
        {
            end.Right ? $"Right: {end.Truth.Name}." : $"You named: {end.Named.Name}. It was: {end.Truth.Name}.",
            end.Truth.AlsoSeen,
            $"It took {Number(Math.Round(game.Minutes))} min of work.",
        };
        if (end.Separating is { } test) lines.Add($"This would have told the two apart in {Number(test.Minutes)} min: {test.How}");
        if (end.Rank > 0)
            lines.Add($"From your sheet and tests the program would have put the truth in place {Number(end.Rank)} of its list.");
        else
            lines.Add("You made no run, so there was nothing to work with.");
        return lines;
    }

    private string Constant(PracticeSetup setup, double si)
    {
        var unit = setup.Situation is TestSituation.TimedDrop
            ? (setup.Metric ? Units.KilogramPerMinute : Units.PoundPerMinute)
            : setup.Metric ? Units.PulsePerKilogram : Units.PulsePerPound;
        return QuantityText.Write(si, unit, Culture, NumberForm.Significant(4));
    }

    private string Inches(double metres) => QuantityText.Write(metres, Units.Inch, Culture, NumberForm.Significant(2));

    private string Number(double value) => QuantityText.WriteNumber(Math.Round(value * 10) / 10, Culture, NumberForm.RoundTrip);

    private string Signed(double log) => (log >= 0 ? "+" : "") + PercentText.Write(Statistics.Elementary.Expm1(log), Culture);
}
