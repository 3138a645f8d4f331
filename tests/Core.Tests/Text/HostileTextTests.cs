using CsCheck;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Text;

/// <summary>Whatever the text, reading it ends in a value, a question or a problem, and soon.</summary>
public sealed class HostileTextTests
{
    private const string Marks = "0123456789.,'’ -+−eE/½\u00A0\u202F\"′″_^";

    private static readonly string[] Pieces =
    [
        "1", "250", "12,5", "1.250", "½", " ", "lb", "kg", "/", "ft", "'", "\"", "in", "m2", "per", "mile", "gal",
        "ton", "°F", "oz", "e3", "-", "1000 ft2", "lane-mile", "%", "🚚", "T",
    ];

    private static readonly TextCulture[] Cultures = [.. TextCulture.All];

    [Fact]
    public void Marks_and_digits_in_any_order_never_throw() => Never_throw(
        Gen.Select(Gen.Char[Marks].Array[0, 30], letters => new string(letters)));

    [Fact]
    public void Any_characters_at_all_never_throw() => Never_throw(Gen.String[Gen.Char, 0, 60]);

    [Fact]
    public void Numbers_and_units_in_any_order_never_throw() => Never_throw(
        Gen.Select(Gen.OneOf(Pieces).Array[0, 12], pieces => string.Concat(pieces)));

    [Fact]
    public void The_words_of_every_choice_are_read_as_that_choice_alone() =>
        Gen.Select(Gen.OneOf(Pieces).Array[1, 8], Gen.OneOf(Cultures)).Sample(
            (pieces, culture) =>
            {
                var text = "1" + string.Concat(pieces);
                CheckChoices<Mass>(text, culture);
                CheckChoices<Volume>(text, culture);
                CheckChoices<LaneRate>(text, culture);
                CheckChoices<LiquidPerMass>(text, culture);
                CheckChoices<Length>(text, culture);
            },
            iter: 3000,
            threads: 1);

    [Theory]
    [InlineData(121)]
    [InlineData(1_000_000)]
    public void A_long_text_is_not_looked_at(int length)
    {
        var faces = string.Concat(Enumerable.Repeat("😀", (length / 2) + 1));
        foreach (var text in new[] { new string('1', length), new string('½', length), faces })
        {
            Assert.Equal(TextProblem.TooLong, QuantityText.Read<Mass>(text, TextCulture.German).Problem);
            Assert.Equal(TextProblem.TooLong, QuantityText.ReadAny(text, TextCulture.German).Problem);
            Assert.Equal(TextProblem.TooLong, QuantityText.ReadNumber(text, TextCulture.German).Problem);
            Assert.Equal(TextProblem.TooLong, QuantityText.ReadCount(text, TextCulture.German).Problem);
            var read = QuantityText.ReadNumber(text, TextCulture.German).Read;
            Assert.InRange(read.Length, 2, 41);
            Assert.False(char.IsHighSurrogate(read[^2]));
        }
    }

    [Fact]
    public void Spaces_around_a_number_do_not_make_it_long()
    {
        var text = new string(' ', 1_000_000) + "5" + new string('\u00A0', 1000);
        Assert.Equal(5, QuantityText.ReadNumber(text, TextCulture.German).Value);
    }

    [Theory]
    [InlineData("", "1m", 55)]
    [InlineData("1 m2 ", "222 m2 ", 15)]
    public void A_chain_of_units_ends_soon(string start, string link, int links)
    {
        var text = start + string.Concat(Enumerable.Repeat(link, links));
        Assert.Equal(TextProblem.UnknownUnit, QuantityText.ReadAny(text, TextCulture.German).Problem);
    }

    private static void Never_throw(Gen<string> texts) =>
        Gen.Select(texts, Gen.OneOf(Cultures)).Sample(
            (text, culture) =>
            {
                CheckOutcome(QuantityText.ReadNumber(text, culture));
                CheckOutcome(QuantityText.ReadCount(text, culture));
                CheckOutcome(QuantityText.ReadAny(text, culture));
                CheckOutcome(QuantityText.Read<Mass>(text, culture));
                CheckOutcome(QuantityText.Read<Temperature>(text, culture, Units.DegreeFahrenheit));
                _ = Units.Find(text);
            },
            iter: 3000,
            threads: 1);

    private static void CheckOutcome<T>(TextReading<T> reading)
    {
        Assert.Equal(reading.Outcome == TextOutcome.Problem, reading.Problem != TextProblem.None);
        Assert.Equal(reading.Outcome == TextOutcome.Problem, reading.Expected.Length > 0);
        Assert.Equal(reading.Outcome == TextOutcome.Question, reading.Choices.Count > 1);
        Assert.Equal(reading.Outcome == TextOutcome.Value, reading.TryGet(out _));
    }

    private static void CheckChoices<T>(string text, TextCulture culture)
        where T : struct, IQuantity<T>
    {
        foreach (var choice in QuantityText.Read<T>(text, culture).Choices)
        {
            var again = QuantityText.Read<T>(choice.Words, culture);
            Assert.True(again.TryGet(out var value), choice.Words);
            Assert.Equal(choice.Value, value);
            Assert.Same(choice.Unit, again.Unit);
        }
    }
}
