namespace Lanewright.App.Tests.Commands;

public sealed class ConvertTests
{
    /// <summary>
    /// 1 lb = 0.45359237 kg and 1 ft = 0.3048 m exactly (NIST SP 811); 300 lb over a mile of a 12 ft lane is
    /// 300 * 453.59237 g / (1609.344 m * 3.6576 m).
    /// </summary>
    [Theory]
    [InlineData("566.99046 kg\n", "1,250 lb", "kg")]
    [InlineData("3.81 m\n", "12 ft 6 in", "m")]
    [InlineData("24,000 lb\n", "12 ton", "lb")]
    [InlineData("23 °F\n", "-5 °C", "°F")]
    [InlineData("23.117555 g/m²\n", "300 lb/lane-mile", "g/m2", "--lane", "12 ft")]
    [InlineData("566,99046 kg\n", "1250 lb", "kg", "--culture", "de-DE")]
    [InlineData("0,56699046 kg\n", "1,25 lb", "kg", "--culture", "de-DE")]
    public void Quantities_convert(string output, params string[] arguments)
    {
        var answer = CommandLine.Run(["convert", .. arguments]);
        Assert.Equal((0, output, ""), (answer.Code, answer.Output, answer.Errors));
    }

    [Fact]
    public void The_rate_on_the_road_is_the_handbooks_arithmetic() =>
        Assert.Equal(23.11756, 300 * 453.59237 / (1609.344 * 12 * 0.3048), 5e-6);

    [Fact]
    public void Without_a_unit_all_units_of_the_kind_are_listed()
    {
        var lines = CommandLine.Run("convert", "1 kg").Output.Split('\n');
        Assert.Contains("2.2046226 lb", lines);
        Assert.Contains("1,000 g", lines);
        Assert.Contains("0.001 t", lines);
    }

    [Theory]
    [InlineData("12 ton", "lb", "--culture", "de-DE", "12 t or 12 short ton or 12 long ton")]
    [InlineData("1,250 lb", "kg", "--culture", "invariant", "1.25 lb or 1250 lb")]
    [InlineData("5 lb/mile", "kg/lane-km", "--culture", "en-US", "lb/lane-mile")]
    public void What_has_two_meanings_is_asked(string amount, string unit, string option, string culture, string question)
    {
        var answer = CommandLine.Run("convert", amount, unit, option, culture);
        Assert.Equal((1, ""), (answer.Code, answer.Output));
        Assert.Contains("more than one meaning", answer.Errors, StringComparison.Ordinal);
        Assert.Contains(question, answer.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("12 ton", "lb", "fr-CA", "amount : « 12 ton » a plus d'un sens. Écrire lequel : 12 t ou 12 short ton ou 12 long ton.")]
    [InlineData("12 ton", "lb", "fi-FI", "amount: ”12 ton” on monimerkityksinen. Kirjoita, kumpi tai mikä: 12 t tai 12 short ton tai 12 long ton.")]
    [InlineData("5 lb", "ft", "fi-FI", "unit: ”ft” ei mittaa samaa kuin ”lb”. Samaa mittaavat: kg")]
    [InlineData("5 lbb", "kg", "fr-FR", "Orthographe proche : lb")]
    public void The_answer_is_in_the_readers_language(string amount, string unit, string culture, string words) =>
        Assert.Contains(words, CommandLine.Run("convert", amount, unit, "--culture", culture).Errors, StringComparison.Ordinal);

    [Theory]
    [InlineData("5 lbb", "kg", "amount: 'lbb' was read", "Spelt nearly like it: lb")]
    [InlineData("5 lb", "kgg", "unit: 'kgg' was read", "Spelt nearly like it: kg")]
    [InlineData("300 lb/lane-mlie", "kg/lane-km", "amount: 'lb/lane-mlie' was read", "lb/lane-mile")]
    [InlineData("5 snirkel", "kg", "amount: 'snirkel' was read", "expected a unit such as")]
    [InlineData("5", "kg", "amount: '5' was read", "expected a unit such as")]
    [InlineData("five lb", "kg", "amount: 'five lb' was read", "expected a number")]
    [InlineData("5 lb", "ft", "unit: 'ft' does not measure the same as 'lb'", "Units that do: kg")]
    [InlineData("300 lb/lane-mile", "g/m2", "does not measure the same", "add --lane \"12 ft\"")]
    public void What_cannot_be_converted_says_what_was_read_and_what_was_expected(string amount, string unit, string read, string help)
    {
        var answer = CommandLine.Run("convert", amount, unit);
        Assert.Equal((1, ""), (answer.Code, answer.Output));
        Assert.Contains(read, answer.Errors, StringComparison.Ordinal);
        Assert.Contains(help, answer.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("12 lb")]
    [InlineData("12")]
    [InlineData("-12 ft")]
    [InlineData("12 mile")]
    public void A_lane_that_is_none_is_refused(string lane)
    {
        var answer = CommandLine.Run("convert", "300 lb/lane-mile", "g/m2", "--lane", lane);
        Assert.Equal((1, ""), (answer.Code, answer.Output));
        Assert.StartsWith("--lane: ", answer.Errors, StringComparison.Ordinal);
    }
}
