using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Text;

/// <summary>Reading where the quantity is known, which settles or raises questions that the text alone does not.
/// </summary>
public sealed class QuantityReadingTests
{
    [Fact]
    public void An_ounce_is_a_mass_where_a_mass_is_asked_for_and_fluid_where_a_volume_is()
    {
        Assert.Same(Units.Ounce, QuantityText.Read<Mass>("5 oz", TextCulture.Invariant).Unit);
        Assert.Same(Units.UsFluidOunce, QuantityText.Read<Volume>("5 oz", TextCulture.UnitedStates).Unit);
        Assert.Same(Units.ImperialFluidOunce, QuantityText.Read<Volume>("5 oz", TextCulture.UnitedKingdom).Unit);
        Assert.Equal(2, QuantityText.Read<Volume>("5 oz", TextCulture.Invariant).Choices.Count);
    }

    [Fact]
    public void A_bare_number_is_asked_about_unless_a_unit_is_given_for_it()
    {
        var asked = QuantityText.Read<Mass>("1250", TextCulture.UnitedStates);
        Assert.Equal(TextOutcome.Question, asked.Outcome);
        Assert.Equal(Units.Of(Dimension.Mass), asked.Choices.Select(choice => choice.Unit));
        Assert.Contains("1,250 lb", asked.Choices.Select(choice => choice.Words));
        Assert.Equal(
            Mass.FromPounds(1250), QuantityText.Read<Mass>("1250", TextCulture.UnitedStates, Units.Pound).Value);
        Assert.Equal(
            Mass.FromKilograms(1250), QuantityText.Read<Mass>("1250 kg", TextCulture.UnitedStates, Units.Pound).Value);
    }

    [Fact]
    public void A_bare_number_needs_no_question_where_there_is_one_unit_only() =>
        Assert.Equal(4500, QuantityText.Read<PulseCount>("4500", TextCulture.German).Value.Pulses);

    [Fact]
    public void Nothing_is_nothing_in_any_unit_but_not_on_a_temperature_scale()
    {
        Assert.Equal(default, QuantityText.Read<Mass>("0", TextCulture.German).Value);
        Assert.Equal(default, QuantityText.Read<LaneRate>("0 lb/mile", TextCulture.UnitedStates).Value);
        Assert.Equal(TextOutcome.Question, QuantityText.Read<Temperature>("0", TextCulture.German).Outcome);
    }

    [Fact]
    public void A_question_gives_each_value_with_its_words()
    {
        var reading = QuantityText.Read<Mass>("1.250 kg", TextCulture.German);
        Assert.Equal(TextOutcome.Question, reading.Outcome);
        Assert.Equal(TextProblem.None, reading.Problem);
        Assert.Equal(["1,25 kg", "1\u202F250 kg"], reading.Choices.Select(choice => choice.Words));
        Assert.Equal([1.25, 1250], reading.Choices.Select(choice => choice.Value.Kilograms));
        Assert.Equal("1.250 kg", reading.Read);
        Assert.False(reading.TryGet(out _));
        Assert.Throws<InvalidOperationException>(() => reading.Value);
    }

    [Fact]
    public void An_ambiguous_number_with_an_ambiguous_unit_gives_every_pair()
    {
        var reading = QuantityText.Read<LaneRate>("1.250 lb/mile", TextCulture.German);
        Assert.Equal(
            ["1,25 lb/lane-mile", "1,25 lb/two-lane mile", "1\u202F250 lb/lane-mile", "1\u202F250 lb/two-lane mile"],
            reading.Choices.Select(choice => choice.Words));
    }

    [Fact]
    public void A_mile_of_road_is_not_taken_for_a_lane_mile()
    {
        var reading = QuantityText.Read<LaneRate>("300 lb/mile", TextCulture.UnitedStates);
        Assert.Equal(
            [LaneRate.FromPoundsPerLaneMile(300), LaneRate.FromPoundsPerLaneMile(150)],
            reading.Choices.Select(choice => choice.Value));
    }

    [Fact]
    public void A_meaning_that_the_quantity_cannot_have_does_not_count()
    {
        Assert.Equal(
            -1.25, QuantityText.Read<Temperature>("-1.250 °C", TextCulture.German).Value.DegreesCelsius, 1e-9);
        Assert.Equal(
            TextProblem.OutOfRange, QuantityText.Read<Temperature>("-500 °F", TextCulture.UnitedStates).Problem);
        Assert.Equal(TextProblem.OutOfRange, QuantityText.Read<Density>("0 lb/ft3", TextCulture.UnitedStates).Problem);
    }

    [Theory]
    [InlineData("", TextProblem.Empty, "", "a number such as 1,250.5 kg")]
    [InlineData("  ", TextProblem.Empty, "", "a number such as 1,250.5 kg")]
    [InlineData(null, TextProblem.Empty, "", "a number such as 1,250.5 kg")]
    [InlineData("abc", TextProblem.NotANumber, "abc", "a number such as 1,250.5 kg")]
    [InlineData("5 blobs", TextProblem.UnknownUnit, "blobs", "a unit such as kg, g, mg or t")]
    [InlineData("5 ft", TextProblem.WrongDimension, "5 ft", "a unit such as kg, g, mg or t")]
    [InlineData("1e400 kg", TextProblem.OutOfRange, "1e400 kg", "a number that can be kept")]
    public void A_problem_says_what_was_read_and_what_was_expected(
        string? text, TextProblem problem, string read, string expected)
    {
        var reading = QuantityText.Read<Mass>(text, TextCulture.UnitedStates);
        Assert.Equal(TextOutcome.Problem, reading.Outcome);
        Assert.Equal((problem, read, expected), (reading.Problem, reading.Read, reading.Expected));
        Assert.Empty(reading.Choices);
    }

    [Fact]
    public void The_expected_number_has_the_marks_of_the_culture()
    {
        Assert.Equal(
            "a number such as 1\u202F250,5 kg", QuantityText.Read<Mass>("x", TextCulture.French).Expected);
        Assert.Equal("a number such as 1250.5", QuantityText.ReadNumber("x", TextCulture.Invariant).Expected);
    }

    [Theory]
    [InlineData("4500", 4500)]
    [InlineData("-3", -3)]
    [InlineData("4,500", 4500)]
    [InlineData("4 500", 4500)]
    [InlineData("3e3", 3000)]
    [InlineData("12.0", 12)]
    public void Whole_numbers_are_counts(string text, long expected) =>
        Assert.Equal(expected, QuantityText.ReadCount(text, TextCulture.UnitedStates).Value);

    [Fact]
    public void Meanings_that_are_not_whole_do_not_count_as_counts()
    {
        Assert.Equal(12_500, QuantityText.ReadCount("12.500", TextCulture.German).Value);
        Assert.Equal(
            [1L, 1000L], QuantityText.ReadCount("1.000", TextCulture.German).Choices.Select(choice => choice.Value));
        Assert.Equal(TextProblem.NotWhole, QuantityText.ReadCount("12.5", TextCulture.German).Problem);
        Assert.Equal(TextProblem.NotWhole, QuantityText.ReadCount("1/2", TextCulture.UnitedStates).Problem);
        Assert.Equal(TextProblem.WrongDimension, QuantityText.ReadCount("5 kg", TextCulture.UnitedStates).Problem);
        Assert.Equal(TextProblem.OutOfRange, QuantityText.ReadCount("1e17", TextCulture.UnitedStates).Problem);
        Assert.Equal(TextProblem.Empty, QuantityText.ReadCount(null, TextCulture.UnitedStates).Problem);
    }

    [Fact]
    public void Asking_for_a_mass_in_feet_is_a_mistake_of_the_program() =>
        Assert.Throws<ArgumentException>(() => QuantityText.Read<Mass>("5", TextCulture.German, Units.Foot));

    [Fact]
    public void Cultures_are_found_by_name_in_any_letter_case()
    {
        Assert.True(TextCulture.TryFind("NB-no", out var norwegian));
        Assert.Same(TextCulture.Norwegian, norwegian);
        Assert.False(TextCulture.TryFind("xx-XX", out _));
        Assert.False(TextCulture.TryFind(null, out _));
    }
}
