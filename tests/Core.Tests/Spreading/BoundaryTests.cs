using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using static Lanewright.Core.Spreading.DropTestFindings;

namespace Lanewright.Core.Tests.Spreading;

/// <summary>Figures that lie exactly on a limit. All data invented.</summary>
public sealed class BoundaryTests
{
    [Theory]
    [InlineData(2280, 2520, false)]
    [InlineData(2279, 2521, true)]
    public void Runs_within_exactly_10_percent_agree(double low, double high, bool scatter) =>
        Assert.Equal(scatter, Sheets.Drop((low, 200), (2400, 200), (high, 200)).Says(DropTestFindings.Scatter));

    [Theory]
    [InlineData(1200, false)]
    [InlineData(1199.9, true)]
    public void Exactly_1200_rpm_is_not_slow(double rpm, bool slow) =>
        Assert.Equal(slow, AllAt(rpm, rpm).Says(LowEngineSpeed));

    [Theory]
    [InlineData(1425, 1575, false)]
    [InlineData(1425, 1576, true)]
    public void Engine_speeds_within_exactly_10_percent_of_their_mean_are_one_speed(double low, double high, bool differ) =>
        Assert.Equal(differ, AllAt(low, high).Says(EngineSpeedDiffers));

    [Theory]
    [InlineData(0.999, Conformity.Pass)]
    [InlineData(1.001, Conformity.CannotTell)]
    public void The_guard_band_reaches_exactly_to_the_tolerance_from_inside(double factor, Conformity expected)
    {
        var sheet = Sheets.Check((200, 203), (200, 204), (200, 203.5), (400, 407));
        var delivery = sheet.Result().Delivery!;
        var need = Math.Abs(delivery.Share.Value - 1) + delivery.Expanded;
        // A tolerance a little larger than needed passes, one a little smaller does not.
        Assert.Equal(expected, (sheet with { Tolerance = need / factor }).Result().Delivery!.Conformity);
        Assert.Equal(Conformity.Pass, (sheet with { Tolerance = need }).Result().Delivery!.Conformity);
    }

    [Theory]
    [InlineData(0.999, Conformity.Fail)]
    [InlineData(1.001, Conformity.CannotTell)]
    public void The_guard_band_reaches_exactly_to_the_tolerance_from_outside(double factor, Conformity expected)
    {
        var sheet = Sheets.Check((200, 188), (200, 189), (200, 188.5), (400, 377));
        var delivery = sheet.Result().Delivery!;
        var reach = Math.Abs(delivery.Share.Value - 1) - delivery.Expanded;
        Assert.Equal(expected, (sheet with { Tolerance = reach * factor }).Result().Delivery!.Conformity);
    }

    [Fact]
    public void On_the_limit_itself_the_chance_of_being_within_is_a_half()
    {
        var sheet = Sheets.Check((200, 210), (200, 211), (200, 209), (400, 420));
        var off = sheet.Result().Delivery!.Share.Value - 1;
        var delivery = (sheet with { Tolerance = off }).Result().Delivery!;
        Assert.Equal(Conformity.CannotTell, delivery.Conformity);
        Assert.Equal(0.5, delivery.ChanceWithin, 1e-3);
    }

    // For a guard band of the 95 % interval the chance inside is at least 0.95 at a pass, at most 0.05 at a failure.
    [Fact]
    public void The_chance_within_agrees_with_the_verdict()
    {
        for (var delivered = 180.0; delivered <= 220; delivered += 0.5)
        {
            var delivery = Sheets.Check((delivered, 200), (delivered, 201), (delivered, 199.5)).Result().Delivery!;
            if (delivery.Conformity is Conformity.Pass) Assert.True(delivery.ChanceWithin >= 0.95);
            else if (delivery.Conformity is Conformity.Fail) Assert.True(delivery.ChanceWithin <= 0.05);
            else Assert.InRange(delivery.ChanceWithin, 0.02, 0.98);
        }
    }

    [Fact]
    public void A_value_on_an_end_of_the_controllers_range_is_accepted()
    {
        var sheet = Sheets.Drop((2400, 200), (2400, 200), (4800, 400));
        TestSheet Range(double low, double high) =>
            sheet.WithSpreader(s => s with { Lowest = s.Unit.ToSi(low), Highest = s.Unit.ToSi(high) });
        Assert.False(Range(12, 250).Says(OutOfRange));
        Assert.False(Range(1, 12).Says(OutOfRange));
        Assert.True(Range(12.01, 250).Says(OutOfRange));
        Assert.True(Range(1, 11.99).Says(OutOfRange));
    }

    [Fact]
    public void The_range_is_checked_without_a_stated_step_too() =>
        Assert.True(Sheets.Clean().WithSpreader(s => s with { Resolution = null, Highest = s.Unit.ToSi(11) }).Says(OutOfRange));

    // 0.02 lb/pulse in steps of 0.1 lb/pulse comes to zero, which no controller can use.
    [Fact]
    public void A_step_so_coarse_that_the_value_rounds_to_zero_is_below_the_range()
    {
        var sheet = Sheets.Clean().WithSpreader(s => s with
        {
            Form = ConstantForm.MassPerPulse,
            Unit = Units.PoundPerPulse,
            Resolution = Units.PoundPerPulse.ToSi(0.2),
            Lowest = null,
            Highest = null,
        });
        var report = SheetAnalysis.Analyse(sheet);
        Assert.Equal(0, report.Results[0].KeyIn!.Value);
        Assert.Equal("spreader.lowest", report.Find(OutOfRange)!.Field);
        Assert.Equal(0.2, Units.PoundPerPulse.FromSi(report.Find(OutOfRange)!.Number("limit")), 1e-12);
        Assert.False(report.Usable);
    }

    [Fact]
    public void Moisture_that_is_badly_known_is_not_blamed_on_the_weighing()
    {
        var sheet = Sheets.Clean() with { Material = new() { Name = "salt", Moisture = new(0.05, false, 0.05) } };
        Assert.False(sheet.Says(SmallDrop));
        Assert.True(sheet.Says(WideForGood));
        Assert.Equal("moisture of the material", sheet.Result().Budget[0].Family);
    }

    private static TestSheet AllAt(double low, double high) => Sheets.Clean().WithAll(r => r with
    {
        EngineSpeed = RotationalSpeed.FromRevolutionsPerMinute(r.Id == "1" ? high : r.Id == "2" ? low : (low + high) / 2),
    });
}
