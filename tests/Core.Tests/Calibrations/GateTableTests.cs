using System.Globalization;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Calibrations;

/// <summary>Delivery by turn or pulse at several gate openings.</summary>
public sealed class GateTableTests
{
    private const double Pound = 0.45359237;

    [Fact]
    public void Openings_on_a_line_are_read_off_between_and_guessed_outside()
    {
        // 2 lb a turn for each inch, less 1: 3, 5, 9 at 2, 3, 5 in; 7 at 4 in, 13 at 7 in (by hand).
        var report = Worked.Of(Sheet([(2, 3), (3, 5), (5, 9)], "\"wanted\": [{ \"gate\": 4 }, { \"gate\": 7 }],"));
        Assert.Equal(7 * Pound, Value(report, "read off at 4 in"), 1e-9);
        Assert.Equal(13 * Pound, Value(report, "read off at 7 in"), 1e-9);
        var outside = Assert.Single(report.Findings, f => f.Code == "gate.outside");
        Assert.Equal("wanted[1]", outside.Field);
        Assert.False(report.Figures.Single(f => f.Name == "read off at 7 in").IsMain);
        Assert.Contains("reaches nothing at 0.5 in", report.Lines[0].Text(TextCulture.UnitedStates, UnitPreferences.UnitedStates), StringComparison.Ordinal);
    }

    [Fact]
    public void Openings_that_miss_a_line_are_said_and_a_curve_is_used()
    {
        var report = Worked.Of(Sheet([(1, 2), (2, 8), (3, 9), (4, 20)], "\"wanted\": [{ \"gate\": 2 }],"));
        Assert.Contains(report.Findings, f => f.Code == "gate.not-a-line");
        Assert.Equal(8 * Pound, Value(report, "read off at 2 in"), 1e-9);
    }

    [Fact]
    public void A_chain_under_a_gate_is_held_against_its_sizes()
    {
        // 18 in x 3 in x 120 in of travel at 80 lb/ft3 are 300 lb (18 in x 3 in gate, 10 ft/min: 300 lb/min; 200 with 2 in), so 12 in of
        // travel in a turn are 30 and 20 lb.
        var sizes = "\"material\": { \"name\": \"salt\", \"bulkDensity\": 80 }, \"chain\": { \"width\": 18, \"travel\": 12 },";
        var report = Worked.Of(Sheet([(2, 20), (3, 30)], sizes));
        var expected = report.Tables[0].Rows.Select(row => row[4].Si / Pound).ToList();
        Assert.Equal([20, 25, 30], expected.Select(e => Math.Round(e, 9)));
        Assert.DoesNotContain(report.Findings, f => f.Code == "gate.unlike-geometry");
        Assert.Equal(2, Worked.Of(Sheet([(2, 10), (3, 15)], sizes)).Findings.Count(f => f.Code == "gate.unlike-geometry"));
    }

    [Fact]
    public void An_auger_by_pulse_is_held_against_its_sizes()
    {
        // 9 in auger, 2.5 in shaft, 9 in pitch, 80 lb/ft3: 24.462 lb a turn flooded (exact arithmetic); with 4 pulses 6.1155 each.
        var report = Worked.Of(Sheet(
            [(2, 6), (3, 6.2)],
            "\"per\": \"pulse\", \"pulsesPerTurn\": 4, \"material\": { \"name\": \"salt\", \"bulkDensity\": 80 }, \"auger\": { \"diameter\": 9, \"shaft\": 2.5, \"pitch\": 9 },",
            "pulses"));
        Assert.Equal(24.462 / 4, report.Tables[0].Rows[0][4].Si / Pound, 0.001);
        Assert.Equal(6 * Pound, Value(report, "at 2 in"), 1e-9);
    }

    [Fact]
    public void One_opening_is_no_table_and_what_is_missing_is_said()
    {
        Assert.Contains(Worked.Of(Sheet([(2, 3)])).Findings, f => f.Code == "gate.one-opening");
        Assert.Contains(Worked.Of(Sheet([(2, 3), (3, 5)])).Findings, f => f.Code == "gate.two-openings");
        var report = Worked.Of(Sheet([(2, 3), (3, 5)], "\"chain\": { \"width\": 18, \"travel\": 12 },"));
        Assert.Contains(report.Findings, f => f.Code == "gate.geometry-needs" && f.Field == "material.bulkDensity");
        Assert.Contains(Worked.Of(Sheet([(2, 3), (3, 5)], "", "pulses")).Findings, f => f.Code == "run.no-count");
        Assert.False(Worked.Reading("""{ "kind": "gate-table", "runs": [{ "gate": "wide" }] }""").IsUsable);
    }

    private static double Value(CalibrationReport report, string name) => Assert.Single(report.Figures, f => f.Name == name).Value.Value;

    private static string Sheet((double Gate, double PoundsEach)[] openings, string more = "", string counted = "revolutions") =>
        "{ \"kind\": \"gate-table\", \"units\": \"us\", \"commonError\": true, \"revolutionStep\": \"0.25 rev\", "
        + "\"scale\": { \"id\": \"pallet\", \"capacity\": \"2000 lb\", \"tolerance\": \"0.1 lb\" }, " + more + " \"runs\": ["
        + string.Join(", ", openings.SelectMany(o => Enumerable.Repeat(
            string.Create(CultureInfo.InvariantCulture, $"{{ \"gate\": {o.Gate}, \"{counted}\": 40, \"whole\": {{ \"tare\": 50, \"gross\": {50 + (40 * o.PoundsEach):R} }} }}"), 3)))
        + "] }";
}
