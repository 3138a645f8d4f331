using CsCheck;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Text;

public sealed class WritingTests
{
    private static readonly Unit[] AllUnits = [.. Units.All];

    private static readonly TextCulture[] Cultures =
        [TextCulture.UnitedStates, TextCulture.German, TextCulture.French, TextCulture.Invariant];

    // Sizes from a thousandth to a million, evenly over the powers of ten.
    private static readonly Gen<double> Everyday = Gen.Select(
        Gen.Double[-1, 1], Gen.Int[-3, 6], (share, power) => share * Math.Pow(10, power));

    [Theory]
    [InlineData(1250.5, "1,250.5", "1~250,5", "1250.5")]
    [InlineData(-1234567, "-1,234,567", "-1~234~567", "-1234567")]
    [InlineData(999, "999", "999", "999")]
    [InlineData(1000, "1,000", "1~000", "1000")]
    [InlineData(0, "0", "0", "0")]
    [InlineData(0.1, "0.1", "0,1", "0.1")]
    [InlineData(0.0000123, "0.0000123", "0,0000123", "0.0000123")]
    [InlineData(1e15, "1,000,000,000,000,000", "1~000~000~000~000~000", "1000000000000000")]
    [InlineData(1.5e16, "1.5e16", "1,5e16", "1.5e16")]
    [InlineData(1e-8, "1e-8", "1e-8", "1e-8")]
    [InlineData(0.1 + 0.2, "0.30000000000000004", "0,30000000000000004", "0.30000000000000004")]
    public void Round_trip_numbers_have_the_marks_of_the_culture(
        double value, string english, string decimalComma, string file)
    {
        Assert.Equal(english, QuantityText.WriteNumber(value, TextCulture.UnitedStates));
        Assert.Equal(decimalComma.Replace('~', '\u202F'), QuantityText.WriteNumber(value, TextCulture.Norwegian));
        Assert.Equal(file, QuantityText.WriteNumber(value, TextCulture.Invariant));
    }

    [Fact]
    public void A_negative_zero_is_written_without_its_sign()
    {
        Assert.Equal("0", QuantityText.WriteNumber(-0.0, TextCulture.UnitedStates));
        Assert.Equal("0.00", QuantityText.WriteNumber(-0.0, TextCulture.UnitedStates, NumberForm.Decimals(2)));
    }

    [Theory]
    [InlineData(1234.5678, 2, "1,234.57")]
    [InlineData(1234.5678, 0, "1,235")]
    [InlineData(999.96, 1, "1,000.0")]
    [InlineData(9.5, 0, "10")]
    [InlineData(0.5, 0, "1")]
    [InlineData(0.4, 0, "0")]
    [InlineData(-0.4, 0, "0")]
    [InlineData(-0.5, 0, "-1")]
    [InlineData(0.004, 2, "0.00")]
    [InlineData(0.005, 2, "0.01")]
    [InlineData(0.0004, 2, "0.00")]
    [InlineData(1.005, 2, "1.01")]
    [InlineData(2.675, 2, "2.68")]
    [InlineData(5, 3, "5.000")]
    [InlineData(0, 2, "0.00")]
    public void Fixed_decimals_are_rounded_half_away_from_zero_as_by_hand(
        double value, int decimals, string expected) =>
        Assert.Equal(
            expected, QuantityText.WriteNumber(value, TextCulture.UnitedStates, NumberForm.Decimals(decimals)));

    [Theory]
    [InlineData(1234.5678, 2, "1,200")]
    [InlineData(1234.5678, 6, "1,234.57")]
    [InlineData(0.012345, 3, "0.0123")]
    [InlineData(9.96, 2, "10")]
    [InlineData(99.96, 3, "100")]
    [InlineData(5, 3, "5.00")]
    [InlineData(0, 3, "0.00")]
    [InlineData(-0.999, 2, "-1.0")]
    public void Significant_digits_count_from_the_first_that_is_not_zero(double value, int digits, string expected) =>
        Assert.Equal(
            expected, QuantityText.WriteNumber(value, TextCulture.UnitedStates, NumberForm.Significant(digits)));

    [Fact]
    public void Units_are_written_as_the_culture_says_them()
    {
        var rate = LiquidPerMass.FromUsGallonsPerShortTon(10);
        Assert.Equal("10 gal/ton", QuantityText.Write(rate, Units.UsGallonPerShortTon, TextCulture.UnitedStates));
        Assert.Equal(
            "10 US gal/short ton", QuantityText.Write(rate, Units.UsGallonPerShortTon, TextCulture.UnitedKingdom));
        Assert.Equal(
            "10 gal/ton",
            QuantityText.Write(
                LiquidPerMass.FromImperialGallonsPerLongTon(10),
                Units.ImperialGallonPerLongTon,
                TextCulture.UnitedKingdom));
        Assert.Equal(
            "41,73 L/t", QuantityText.Write(rate, Units.LitrePerTonne, TextCulture.German, NumberForm.Decimals(2)));
        Assert.Equal(
            "41,73", QuantityText.WriteValue(rate.Si, Units.LitrePerTonne, TextCulture.German, NumberForm.Decimals(2)));
    }

    [Theory]
    [InlineData(23.11756, 0.0411, "23.118 ± 0.041 g/m²")]
    [InlineData(23.11756, 0.0996, "23.12 ± 0.10 g/m²")]
    [InlineData(23.11756, 9.96, "23 ± 10 g/m²")]
    [InlineData(1234.5, 567, "1,230 ± 570 g/m²")]
    [InlineData(1234.5, 12345, "1,000 ± 12,000 g/m²")]
    [InlineData(0.2, 12345, "0 ± 12,000 g/m²")]
    [InlineData(-5.5, 1, "-5.5 ± 1.0 g/m²")]
    [InlineData(23.5, 0, "23.5 ± 0 g/m²")]
    public void An_uncertainty_has_two_digits_and_its_value_the_same_place(
        double value, double uncertainty, string expected) =>
        Assert.Equal(
            expected,
            QuantityText.WriteWithUncertainty(
                value / 1000, uncertainty / 1000, Units.GramPerSquareMetre, TextCulture.UnitedStates));

    [Fact]
    public void An_uncertainty_of_a_temperature_has_no_zero_point() =>
        Assert.Equal(
            "32.0 ± 1.8 °F",
            QuantityText.WriteWithUncertainty(273.15, 1, Units.DegreeFahrenheit, TextCulture.UnitedStates));

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void An_impossible_uncertainty_is_a_mistake_of_the_program(double uncertainty) =>
        Assert.Throws<ArgumentOutOfRangeException>(
            () => QuantityText.WriteTogether(1, uncertainty, Units.Kilogram, TextCulture.German));

    [Fact]
    public void Numbers_that_are_none_are_not_written()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => QuantityText.WriteNumber(double.NaN, TextCulture.German));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => QuantityText.Write(double.PositiveInfinity, Units.Kilogram, TextCulture.German));
        Assert.Throws<ArgumentOutOfRangeException>(() => NumberForm.Decimals(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => NumberForm.Significant(0));
        Assert.Throws<ArgumentException>(
            () => QuantityText.Write(Mass.FromKilograms(1), Units.Foot, TextCulture.German));
    }

    [Fact]
    public void What_was_typed_is_written_back_as_it_was_typed() =>
        Gen.Select(Gen.Int[-99_999_999, 99_999_999], Gen.Int[0, 6], Gen.OneOf(AllUnits), Gen.OneOf(Cultures))
            .Sample(
                (digits, decimals, unit, culture) =>
                {
                    var typed = digits / Math.Pow(10, decimals);
                    var written = QuantityText.Write(unit.ToSi(typed), unit, culture);
                    Assert.Equal(
                        QuantityText.WriteNumber(typed, culture) + " " + QuantityText.Symbol(unit, culture), written);
                },
                iter: 20_000,
                threads: 1);

    [Fact]
    public void Round_trip_text_reads_back_as_exactly_the_same_value_in_the_SI_unit() =>
        Sample(Everyday, (si, unit, culture) =>
        {
            var value = QuantityText.ReadNumber(QuantityText.WriteNumber(si, culture), culture).Value;
            Assert.Equal(si, value);
            Assert.Equal(
                si,
                QuantityText.Read<Length>(QuantityText.Write(si, Units.Metre, culture), culture).Value.Si);
        });

    [Fact]
    public void Round_trip_text_reads_back_as_exactly_what_was_typed_in_any_unit() =>
        Sample(Everyday, (value, unit, culture) =>
        {
            var si = unit.ToSi(value);
            if (ReadBack(QuantityText.Write(si, unit, culture), unit, culture) is { } read)
                Assert.Equal(si, read);
        });

    [Fact]
    public void Round_trip_text_of_any_value_in_any_unit_is_within_one_part_in_2_to_the_51() =>
        Sample(Everyday, (value, unit, culture) =>
        {
            var si = unit.Dimension == Dimension.Temperature ? Math.Abs(value) : value;
            if (ReadBack(QuantityText.Write(si, unit, culture), unit, culture) is { } read)
                Assert.Equal(si, read, Math.Max(Math.Abs(si), unit.ToSi(0)) * Math.Pow(2, -51));
        });

    [Fact]
    public void Rounded_text_reads_back_within_half_of_its_last_digit() =>
        Gen.Select(Everyday, Gen.Int[0, 6], Gen.OneOf(Cultures)).Sample(
            (value, decimals, culture) =>
            {
                var text = QuantityText.WriteNumber(value, culture, NumberForm.Decimals(decimals));
                Assert.Equal(
                    value,
                    QuantityText.ReadNumber(text, culture).Value,
                    (0.5 * Math.Pow(10, -decimals)) + Math.Abs(value * 1e-15));
                var digits = QuantityText.WriteNumber(value, culture, NumberForm.Significant(decimals + 1));
                Assert.Equal(
                    value,
                    QuantityText.ReadNumber(digits, culture).Value,
                    Math.Abs(value) * 5 * Math.Pow(10, -decimals - 1) * (1 + 1e-12));
            },
            iter: 10_000,
            threads: 1);

    private static void Sample(Gen<double> values, Action<double, Unit, TextCulture> check) =>
        Gen.Select(values, Gen.OneOf(AllUnits), Gen.OneOf(Cultures))
            .Sample(check, iter: 10_000, threads: 1);

    // A bare "oz" is also a fluid ounce where the quantity is not known.
    private static double? ReadBack(string text, Unit unit, TextCulture culture)
    {
        if (unit == Units.Ounce)
            return QuantityText.Read<Mass>(text, culture).Value.Si;
        var reading = QuantityText.ReadAny(text, culture);
        Assert.Equal(TextOutcome.Value, reading.Outcome);
        Assert.Same(unit, reading.Unit);
        return reading.Value.Si;
    }
}
