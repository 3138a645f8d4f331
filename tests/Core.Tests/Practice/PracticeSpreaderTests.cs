using Lanewright.Core.Diagnosis;
using Lanewright.Core.Practice;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Tests.Practice;

public sealed class PracticeSpreaderTests
{
    public static TheoryData<Cause> Causes => [.. Enum.GetValues<Cause>()];

    private static SimulatedTruck Auger(double diameterInches) => new()
    {
        Chain = false,
        Size = Length.FromSi(diameterInches * 0.0254),
        Second = Length.FromSi(2.5 * 0.0254),
        Advance = Length.FromSi(9 * 0.0254),
        Density = Density.FromSi(80 * 0.45359237 / 0.028316846592),
        Teeth = 16,
        Displacement = Volume.FromSi(0.95 * 16.387064e-6),
        Pump = Volume.FromSi(8 * 3.785411784e-3 / 60 / 25),
        Engine = RotationalSpeed.FromSi(25),
        DeadBand = 0,
    };

    /// <summary>
    /// Mass of one turn of a flooded auger, 9 in by 2.5 in, pitch 9 in, 80 lb/ft3: 24.462 lb; worn by a quarter inch 66/74.75 of it.
    /// Form of CEMA and ISO 7119 from secondary copies (costcalculator.calculator.city, jerseycrusher.com), arithmetic our own.
    /// </summary>
    [Theory]
    [InlineData(9, 24.462, 0.0005)]
    [InlineData(8.5, 24.462 * 66 / 74.75, 0.0005)]
    public void An_auger_moves_what_its_geometry_says(double diameter, double pounds, double within) =>
        Assert.Equal(pounds, Auger(diameter).MassByTurn / 0.45359237, within);

    /// <summary>18 in by 3 in at 10 ft/min and 80 lb/ft3: 300 lb/min; with the gate at 2 in 200 (form from a conveyor's design sheet,
    /// scribd 405524856; arithmetic our own).</summary>
    [Theory]
    [InlineData(3, 300)]
    [InlineData(2, 200)]
    public void A_chain_moves_what_its_gate_lets_through(double gate, double poundsByMinute)
    {
        var chain = Auger(9) with
        {
            Chain = true, Size = Length.FromSi(18 * 0.0254), Second = Length.FromSi(gate * 0.0254), Advance = Length.FromSi(0.3048),
        };
        Assert.Equal(poundsByMinute, chain.MassByTurn * 10 / 0.45359237, 1e-6);
    }

    /// <summary>8 US gal/min and 0.95 in3: 1,945.3 rpm (nottco.com, ktnfluidpower.com).</summary>
    [Fact]
    public void The_motor_turns_with_the_oil_that_reaches_it() =>
        Assert.Equal(1945.3, Auger(9).Shaft(1, new()) * 60, 0.05);

    [Fact]
    public void The_shaft_follows_the_setting_until_the_hydraulics_give_no_more()
    {
        var truck = Auger(9) with { DeadBand = 0.1 };
        var limited = new FaultDials { FlowLimit = 0.5 };
        Assert.Equal(truck.Shaft(0.4, new()), truck.Shaft(0.4, limited));
        Assert.Equal(truck.Shaft(0.5, new()), truck.Shaft(0.9, limited), 1e-12);
        Assert.Equal(0.8 * truck.Shaft(0.4, new()), truck.Shaft(0.4, new() { Engine = 0.8 }), 1e-12);
        Assert.True(truck.Shaft(0.4, new() { ColdOil = 0.3 }, 0) < truck.Shaft(0.4, new() { ColdOil = 0.3 }, 1));
    }

    /// <summary>What leaves the hopper is in the containers, beside them, or still in the feeder.</summary>
    [Theory]
    [MemberData(nameof(Causes))]
    public void Nothing_is_lost_and_nothing_made(Cause cause)
    {
        for (ulong i = 1; i <= 6; i++)
        {
            var one = PracticeCase.Draw(cause, 7, i);
            var session = one.Sheet.Session;
            var accounted = one.Sheet.Truths.Sum(t => t.Caught + t.Spilt + t.Priming);
            Assert.Equal(session.Start, session.Hopper + accounted, session.Start * 1e-12);
            Assert.All(one.Sheet.Truths, t => Assert.True(t is { Caught: > 0, Spilt: >= 0, Priming: >= 0, Pulses: > 0 }));
        }
    }

    [Theory]
    [MemberData(nameof(Causes))]
    public void The_same_seed_gives_the_same_sheet_and_every_sheet_can_be_read(Cause cause)
    {
        for (ulong i = 1; i <= 3; i++)
        {
            var one = PracticeCase.Draw(cause, 11, i);
            Assert.Equal(one.Sheet.Fields, PracticeCase.Draw(cause, 11, i).Sheet.Fields);
            Assert.NotEqual(one.Sheet.Fields, PracticeCase.Draw(cause, 12, i).Sheet.Fields);
            Assert.True(one.Input.Report.Sheet.Invented);
            Assert.NotEmpty(one.Input.Report.Results);
        }
    }

    [Fact]
    public void A_healthy_sheet_holds_what_was_caught_to_the_scales_step()
    {
        var setup = PracticeSetup.Draw(Cause.NothingWrong, TestSituation.CountedDrop, 3, 4);
        var sheet = PracticeSheet.Of(setup, 3, 4);
        var runs = sheet.Input().Report.Results[0].Runs;
        Assert.Equal(sheet.Truths.Count, runs.Count);
        for (var i = 0; i < runs.Count; i++)
            Assert.Equal(sheet.Truths[i].Caught, runs[i].Net.Value, 12 * setup.Scale.Division!.Value.Si);
    }

    [Fact]
    public void A_dial_moves_what_it_says_and_nothing_else()
    {
        var setup = PracticeSetup.Draw(Cause.NothingWrong, TestSituation.CountedDrop, 3, 9);
        var plain = PracticeSheet.Of(setup, 3, 9).Truths;
        var doubled = Truths(new() { PulsesCounted = 2 });
        var heavier = Truths(new() { Density = 1.1 });
        var late = Truths(new() { RunOn = 4 });
        var dry = Truths(new() { Priming = 5 });
        var beside = Truths(new() { Spill = 0.1 });
        for (var i = 0; i < plain.Count; i++)
        {
            Assert.InRange(doubled[i].Pulses - (2 * plain[i].Pulses), -1, 1);
            Assert.Equal(plain[i].Caught, doubled[i].Caught);
            Assert.Equal(1.1 * plain[i].Caught, heavier[i].Caught, 1e-9);
            Assert.Equal(plain[i].Caught + 4, late[i].Caught, 1e-9);
            Assert.Equal(plain[i].Pulses, late[i].Pulses);
            Assert.Equal(plain[i].Caught - (i == 0 ? 5 : 0), dry[i].Caught, 1e-9);
            Assert.Equal(0.9 * plain[i].Caught, beside[i].Caught, 1e-9);
        }

        IReadOnlyList<RunTruth> Truths(FaultDials dials) => PracticeSheet.Of(setup with { Dials = dials }, 3, 9).Truths;
    }
}
