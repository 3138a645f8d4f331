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
    public string Story(PracticeGame game)
    {
        ArgumentNullException.ThrowIfNull(game);
        return PracticeExercises.Find(game.State.Exercise) is { } exercise
            ? Culture.Say($"Exercise {exercise.Number} of {PracticeExercises.All.Count}: {(Phrase)exercise.Title}")
            : Culture.Say($"A spreader drawn from seed {game.State.Seed}. It may be healthy.");
    }

    /// <summary>What to do.</summary>
    public string Task(PracticeGame game)
    {
        ArgumentNullException.ThrowIfNull(game);
        return Culture.Say(game.Setup.Situation switch
        {
            TestSituation.CountedDrop => "A drop test by pulses. Ask for runs at a drive setting, do cheap tests, then name the fault.",
            TestSituation.TimedDrop => "A drop test by time. Ask for runs at a drive setting, do cheap tests, then name the fault.",
            TestSituation.StandingCheck => "A check of what the controller says, truck standing. Ask for runs at a drive setting, do cheap tests, then name the fault.",
            _ => "A check on the road, the truck weighed before and after. Ask for passes at a speed, do cheap tests, then name the fault.",
        });
    }

    /// <summary>What is known of the spreader.</summary>
    public IReadOnlyList<string> Known(PracticeGame game)
    {
        ArgumentNullException.ThrowIfNull(game);
        var setup = game.Setup;
        var mass = setup.Metric ? Units.Kilogram : Units.Pound;
        var lines = new List<string>
        {
            Culture.Say(
                $"Feeder: {(Phrase)(setup.Truck.Chain ? "chain under a gate" : "auger")}, {setup.Truck.Feeders} in number. Scale: {setup.Scale.Id}, division {QuantityText.Write(setup.Scale.Division!.Value.Si, mass, Culture, NumberForm.Significant(2))}."),
        };
        if (setup.Situation is not TestSituation.TimedDrop)
            lines.Add(Culture.Say($"In the controller, as the paper says: {Constant(setup, 1 / setup.Keyed)}."));
        if (setup.Facts.Teeth is { } teeth) lines.Add(Culture.Say($"Register: {Number(teeth)} pulses for a turn."));
        if (setup.Facts.Gate is { } gate)
            lines.Add(Culture.Say($"Register: gate at {Inches(gate)}; marks at {string.Join(", ", setup.Facts.Gates.Select(Inches))}."));
        foreach (var earlier in setup.Earlier)
        {
            var day = earlier.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            var value = $"{Constant(setup, earlier.Value)}, ± {PercentText.Write(2 * earlier.Uncertainty, Culture)}";
            lines.Add(Culture.Say(earlier.Setting.Length > 0 ? $"Test of {day} at {earlier.Setting}: {value}." : (Phrase)$"Test of {day}: {value}."));
        }

        if (setup.Earlier.Count == 0) lines.Add(Culture.Say("No earlier test is known."));
        var shaft = string.Join(", ", setup.Facts.Shaft.Select(s => $"{PercentText.Write(s.Setting, Culture)} {Number(s.Turns * 60)} rpm"));
        lines.Add(Culture.Say($"Shaft at the last test: {shaft}."));
        foreach (var sister in setup.Sisters)
        {
            Phrase same = (sister.SameMaterial, sister.SameScale) switch
            {
                (true, true) => ", same material, same scale",
                (true, false) => ", same material",
                (false, true) => ", same scale",
                _ => "",
            };
            lines.Add(Culture.Say(
                $"{sister.Id}{same}: mass for each count {Signed(sister.Change)} since its last test, ± {PercentText.Write(2 * sister.Uncertainty, Culture)}."));
        }

        lines.Add(setup.Facts.Events.Count == 0
            ? Culture.Say("Nothing was done to it since, says the register.")
            : Culture.Say($"Done since, says the register: {string.Join(", ", setup.Facts.Events.Select(e => Culture.Say(e)))}."));
        return lines;
    }

    /// <summary>A test that was done.</summary>
    public string Done(TestDone done)
    {
        ArgumentNullException.ThrowIfNull(done);
        return Culture.Say(done.Test.How) + " " + Culture.Say(done.Showed ? "This shows something wrong." : "Nothing wrong to be seen.");
    }

    /// <summary>How it ended.</summary>
    public IReadOnlyList<string> Ended(PracticeGame game, PracticeEnd end)
    {
        ArgumentNullException.ThrowIfNull(game);
        ArgumentNullException.ThrowIfNull(end);
        var lines = new List<string>
        {
            Culture.Say(end.Right ? $"Right: {(Phrase)end.Truth.Name}." : (Phrase)$"You named: {(Phrase)end.Named.Name}. It was: {(Phrase)end.Truth.Name}."),
            Culture.Say(end.Truth.AlsoSeen),
            Culture.Say($"It took {Number(Math.Round(game.Minutes))} min of work."),
        };
        if (end.Separating is { } test) lines.Add(Culture.Say($"This would have told the two apart in {Number(test.Minutes)} min: {(Phrase)test.How}"));
        if (end.Rank > 0)
            lines.Add(Culture.Say($"From your sheet and tests the program would have put the truth in place {Number(end.Rank)} of its list."));
        else
            lines.Add(Culture.Say("You made no run, so there was nothing to work with."));
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
