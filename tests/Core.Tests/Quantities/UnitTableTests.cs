using System.Reflection;
using CsCheck;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Quantities;

public sealed class UnitTableTests
{
    public static TheoryData<string> Symbols => [.. Units.All.Select(unit => unit.Symbol)];

    [Fact]
    public void Every_unit_of_the_table_is_found_by_going_through_it()
    {
        var fields = typeof(Units).GetFields(BindingFlags.Public | BindingFlags.Static)
            .Select(field => field.GetValue(null)).Cast<Unit>().ToList();
        Assert.Equal(fields, Units.All);
        Assert.True(fields.Count >= 100);
    }

    [Fact]
    public void No_two_units_are_written_alike() =>
        Assert.Equal(
            Units.All.Count, Units.All.Select(unit => unit.Symbol).Distinct(StringComparer.OrdinalIgnoreCase).Count());

    [Theory]
    [MemberData(nameof(Symbols))]
    public void A_unit_is_found_by_its_symbol_in_any_letter_case(string symbol)
    {
        var unit = Units.Find(symbol);
        Assert.NotNull(unit);
        Assert.Equal(symbol, unit.Symbol);
        if (symbol == "oz")
            return; // exactly so it is the ounce of mass; otherwise it may be a fluid ounce
        Assert.Same(unit, Units.Find(symbol.ToLowerInvariant()));
        Assert.Same(unit, Units.Find($"  {symbol.Replace("/", " per ", StringComparison.Ordinal)} "));
        if (!symbol.Split('/').Contains("t")) // a capital T is any ton
            Assert.Same(unit, Units.Find(symbol.ToUpperInvariant()));
    }

    [Theory]
    [MemberData(nameof(Symbols))]
    public void A_unit_is_among_the_meanings_of_each_of_its_spellings(string symbol)
    {
        var unit = Units.Find(symbol)!;
        foreach (var spelling in unit.Spellings)
        {
            var reading = QuantityText.ReadAny("7 " + spelling, TextCulture.Invariant);
            Assert.NotEqual(TextOutcome.Problem, reading.Outcome);
            Assert.True(
                reading.Unit == unit || reading.Choices.Any(choice => choice.Unit == unit),
                $"{spelling} is not read as {symbol}");
        }
    }

    [Theory]
    [InlineData("ton")]
    [InlineData("gal")]
    [InlineData("ounce")]
    [InlineData("T")]
    [InlineData("Mg")]
    [InlineData("lb/mile")]
    [InlineData("kg/km")]
    [InlineData("gal/min")]
    [InlineData("gal/ton")]
    [InlineData("furlong")]
    [InlineData("kg/")]
    [InlineData("/kg")]
    [InlineData("lb/min/s")]
    [InlineData("lane-mile")]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData(null)]
    public void An_ambiguous_or_unknown_spelling_is_no_unit(string? spelling) => Assert.Null(Units.Find(spelling));

    [Theory]
    [InlineData("POUNDS PER MINUTE", "lb/min")]
    [InlineData("lbs/min.", "lb/min")]
    [InlineData("g/m^2", "g/m²")]
    [InlineData("g/m2", "g/m²")]
    [InlineData("lb / lane mile", "lb/lane-mile")]
    [InlineData("lb per LM", "lb/lane-mile")]
    [InlineData("lb per 2-lane mile", "lb/two-lane mile")]
    [InlineData("lb/1,000 sq. ft.", "lb/1000 ft²")]
    [InlineData("pounds per thousand square feet", "lb/1000 ft²")]
    [InlineData("pulses per pound", "pulse/lb")]
    [InlineData("rev/min", "rpm")]
    [InlineData("miles per hour", "mph")]
    [InlineData("KM/H", "km/h")]
    [InlineData("g/cm3", "g/mL")]
    [InlineData("lb/cu yd", "lb/yd³")]
    [InlineData("metric tons per hour", "t/h")]
    [InlineData("US gallons per short ton", "US gal/short ton")]
    [InlineData("deg F", "°F")]
    [InlineData("℃", "°C")]
    [InlineData("per cent", "%")]
    [InlineData("lb/MİN", "lb/min")]
    [InlineData("\u212Ag", "kg")]
    public void Units_are_found_the_way_people_write_them(string spelling, string symbol) =>
        Assert.Equal(symbol, Units.Find(spelling)?.Symbol);

    [Theory]
    [MemberData(nameof(Symbols))]
    public void Converting_there_and_back_changes_next_to_nothing(string symbol)
    {
        var unit = Units.Find(symbol)!;
        Gen.Double[-1e9, 1e9].Sample(
            value => Assert.Equal(value, unit.FromSi(unit.ToSi(value)), Tolerance(unit, value)), iter: 200, threads: 1);
    }

    [Theory]
    [MemberData(nameof(Symbols))]
    public void A_difference_scales_with_its_size_and_has_no_zero_point(string symbol)
    {
        var unit = Units.Find(symbol)!;
        Gen.Double[-1e6, 1e6].Sample(
            value =>
            {
                Assert.Equal(2 * unit.DifferenceToSi(value), unit.DifferenceToSi(2 * value));
                Assert.Equal(value, unit.DifferenceFromSi(unit.DifferenceToSi(value)), Math.Abs(value) * 1e-15);
                Assert.Equal(
                    unit.DifferenceToSi(value),
                    unit.ToSi(value) - unit.ToSi(0),
                    1e-12 + (Math.Abs(unit.ToSi(value)) * 1e-15));
            },
            iter: 200,
            threads: 1);
    }

    [Fact]
    public void Each_set_of_preferences_has_a_unit_for_each_dimension()
    {
        foreach (var preferences in new[] { UnitPreferences.UnitedStates, UnitPreferences.Metric })
        {
            foreach (var dimension in Enum.GetValues<Dimension>())
                Assert.Equal(dimension, preferences[dimension].Dimension);
        }
    }

    [Fact]
    public void One_preference_is_changed_without_touching_the_others()
    {
        var changed = UnitPreferences.UnitedStates.With(Units.ShortTon);
        Assert.Same(Units.ShortTon, changed[Dimension.Mass]);
        Assert.Same(Units.MilePerHour, changed[Dimension.Speed]);
        Assert.Same(Units.Pound, UnitPreferences.UnitedStates[Dimension.Mass]);
    }

    // Four roundings of half a unit in the last place; a zero point adds its own size.
    private static double Tolerance(Unit unit, double value) =>
        (Math.Abs(value) + (unit.Dimension == Dimension.Temperature ? 1000 : 0)) * 1e-15;
}
