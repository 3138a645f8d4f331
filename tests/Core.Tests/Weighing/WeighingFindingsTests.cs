using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Weighing;
using static Lanewright.Core.Tests.Weighing.Scales;

namespace Lanewright.Core.Tests.Weighing;

/// <summary>Each finding once, alone and at its field; the scale's own ones are in <see cref="ScaleTests"/>.</summary>
public sealed class WeighingFindingsTests
{
    private static readonly TruckCatch CleanTruck = new(
        Lb(40_000), Lb(38_000), new(Lb(8), Lb(2)), true, [new("driver", false, new(Lb(180), Lb(5)))]);

    [Fact]
    public void Clean_weighings_give_none()
    {
        Assert.Empty(Of(Platform500, new WholeCatch(Lb(2), Lb(500))));
        Assert.Empty(Of(Platform500, new WholeCatch(Lb(0), Lb(1))));
        Assert.Empty(Of(Platform500, new ContainerCatch([new(Lb(2.05), Lb(50)), new(Lb(2), Lb(48.95))])));
        Assert.Empty(Of(Vehicle, CleanTruck));
        Assert.Empty(Of(Vehicle, CleanTruck with { FuelBurnt = new(Lb(0), null), Changes = [] }));
    }

    [Fact]
    public void Readings_below_zero_or_above_capacity_are_found()
    {
        Only("weigh.negative-reading", "runs[0].whole.tare", Platform500, new WholeCatch(Lb(-0.05), Lb(50)));
        Only("weigh.overload", "runs[0].whole.gross", Platform500, new WholeCatch(Lb(2), Lb(500.05)));
        Only("weigh.overload", "runs[0].truck.before", Vehicle, CleanTruck with { Before = Lb(200_020) });
        Assert.Empty(Of(Vehicle, CleanTruck with { Before = Lb(200_000) }));
    }

    [Fact]
    public void Nothing_caught_is_found()
    {
        Only("weigh.nothing-caught", "runs[0]", Platform500, new WholeCatch(Lb(50), Lb(50)));
        Only("weigh.nothing-caught", "runs[0]", Platform500, new WholeCatch(Lb(50), Lb(2)));
        Only("weigh.nothing-caught", "runs[0]", Platform500, new ContainerCatch([]));
        Assert.Contains(
            "weigh.nothing-caught", Codes(Platform500, new WholeCatch(Lb(50), Mass.FromSi(Lb(50).Si + 0.9e-6))));
    }

    /// <summary>The other containers would hide it in the sum.</summary>
    [Fact]
    public void A_container_that_is_lighter_full_than_empty_is_found() => Only(
        "weigh.lighter-when-full", "runs[0].containers[1]", Platform500,
        new ContainerCatch([new(Lb(2), Lb(90)), new(Lb(50), Lb(2)), new(Lb(2), Lb(50))]));

    /// <summary>Smallest loads 20 d (III) and 50 d (III L).</summary>
    [Fact]
    public void Nets_below_the_smallest_load_are_found()
    {
        Only("weigh.below-least-load", "runs[0].whole", Platform500, new WholeCatch(Lb(2), Lb(2.95)));
        Only("weigh.below-least-load", "runs[0].truck", Vehicle, CleanTruck with { After = Lb(39_020) });
        Assert.Empty(Of(Vehicle, CleanTruck with { After = Lb(39_000) }));
        Only(
            "weigh.below-least-load", "runs[0].containers[1]", Platform500,
            new ContainerCatch([new(Lb(2), Lb(50)), new(Lb(2), Lb(2.5))]));
    }

    [Fact]
    public void Readings_off_the_division_are_counted_and_the_first_is_shown()
    {
        var finding = Only("weigh.off-division", "runs[0].whole.gross", Platform500, new WholeCatch(Lb(2.02), Lb(50.01)));
        Assert.Equal(2, finding.Values.Single(v => v.Name == "count").Si);
        // Readings are looked at in the order gross, tare.
        Assert.Equal(50.01, Pounds(finding.Values.Single(v => v.Name == "reading").Si), 1e-9);
        Only("weigh.off-division", "runs[0].truck.before", Vehicle, CleanTruck with { Before = Lb(40_010) });
        // A hundredth of a division is left for a display in another unit.
        Assert.Empty(Of(Platform500, new WholeCatch(Lb(2.0004), Lb(50))));
        Only("weigh.off-division", "runs[0].whole.tare", Platform500, new WholeCatch(Lb(2.0006), Lb(50)));
    }

    [Fact]
    public void Counted_containers_show_their_price()
    {
        var finding = Only(
            "weigh.counted-containers", "runs[0]", Platform500,
            new CountedCatch(10, Lb(2), Lb(50), Fraction.FromPercent(5)));
        // s sqrt(n (n - 1)) / n.
        Assert.Equal(0.05 * Math.Sqrt(0.9), finding.Values.Single(v => v.Name == "cost").Si, 1e-12);
        Assert.Equal(
            ["weigh.fill-spread-assumed", "weigh.counted-containers"],
            Codes(Platform500, new CountedCatch(10, Lb(2), Lb(50), null)));
    }

    [Fact]
    public void What_was_not_said_of_the_truck_is_asked()
    {
        Only("weigh.fuel-not-stated", "runs[0].truck.fuelBurnt", Vehicle, CleanTruck with { FuelBurnt = null });
        Only("weigh.people-not-stated", "runs[0].truck.samePeople", Vehicle, CleanTruck with { PeopleStated = false });
        Only(
            "weigh.allowance-assumed", "runs[0].truck.fuelBurnt.plusMinus", Vehicle,
            CleanTruck with { FuelBurnt = new(Lb(8), null) });
        Only(
            "weigh.allowance-assumed", "runs[0].truck.changes[0].plusMinus", Vehicle,
            CleanTruck with { Changes = [new("driver", false, new(Lb(180), null))] });
    }

    /// <summary>Wrong input never throws: it is said, and the amount counts without its sign in the uncertainty.</summary>
    [Fact]
    public void Negative_amounts_are_found_and_do_not_throw()
    {
        const string Code = "weigh.negative-amount";
        Only(Code, "runs[0].truck.fuelBurnt", Vehicle, CleanTruck with { FuelBurnt = new(Lb(-8), Lb(2)) });
        Only(Code, "runs[0].truck.fuelBurnt.plusMinus", Vehicle, CleanTruck with { FuelBurnt = new(Lb(8), Lb(-2)) });
        Assert.Equal(
            [Code, "weigh.allowance-assumed"], Codes(Vehicle, CleanTruck with { FuelBurnt = new(Lb(-8), null) }));
        var counted = new CountedCatch(10, Lb(2), Lb(50), Fraction.FromPercent(-5));
        Assert.Equal("runs[0].counted.fillSpread", Of(Platform500, counted)[0].Field);
        Assert.Equal([Code, "weigh.counted-containers"], Codes(Platform500, counted));
        Assert.Equal(
            Weigh(Platform500, counted with { FillSpread = Fraction.FromPercent(5) }).StandardUncertainty,
            Weigh(Platform500, counted).StandardUncertainty);
    }

    [Fact]
    public void The_list_of_all_findings_has_each_once_with_a_code_of_its_own()
    {
        var declared = typeof(WeighingFindings).GetFields()
            .Select(f => f.GetValue(null)).OfType<FindingKind>().ToArray();
        Assert.Equal(declared.Length, WeighingFindings.All.Count);
        Assert.All(declared, kind => Assert.Contains(kind, WeighingFindings.All));
        Assert.Equal(declared.Length, declared.Select(k => k.Code).Distinct().Count());
    }

    /// <summary>The question whether the error is common is asked by the analysis, which works out both.</summary>
    [Fact]
    public void A_sheet_that_does_not_say_whether_the_error_is_common_is_asked()
    {
        var sheet = new TestSheet
        {
            Kind = TestKind.DropTest,
            Scale = Vehicle,
            Spreader = new() { Id = "HR-104", Form = ConstantForm.PulsesPerMass, Unit = Units.PulsePerPound },
            Material = new() { Name = "road salt" },
            Runs = [.. Enumerable.Range(1, 3).Select(i => Run($"{i}", 2000 + (20 * i)))],
        };
        var asked = Assert.Single(
            SheetAnalysis.Analyse(sheet).Findings, f => f.Code == "weigh.common-error-not-stated");
        Assert.Equal("commonError", asked.Field);
        Assert.True(asked.Values.Single(v => v.Name == "common").Si < asked.Values.Single(v => v.Name == "separate").Si);
        foreach (var answer in (bool[])[true, false])
        {
            Assert.DoesNotContain(
                SheetAnalysis.Analyse(sheet with { CommonError = answer }).Findings,
                f => f.Code == "weigh.common-error-not-stated");
        }
    }

    private static Run Run(string id, double pounds) => new()
    {
        Id = id,
        Catch = CleanTruck with { After = Lb(40_000 - pounds) },
        Pulses = PulseCount.FromSi(pounds * 10),
    };

    private static List<Finding> Of(Scale scale, Catch what)
    {
        var findings = new List<Finding>();
        Weigh(scale, what, findings: findings);
        return findings;
    }

    private static string[] Codes(Scale scale, Catch what) => [.. Of(scale, what).Select(f => f.Code)];

    private static Finding Only(string code, string field, Scale scale, Catch what)
    {
        var finding = Assert.Single(Of(scale, what));
        Assert.Equal((code, field), (finding.Code, finding.Field));
        return finding;
    }
}
