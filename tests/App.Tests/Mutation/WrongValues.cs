using System.Globalization;
using System.Text.Json.Nodes;
using Lanewright.Core.Quantities;
using Lanewright.Core.Tests.Exchange;

namespace Lanewright.App.Tests.Mutation;

/// <summary>A value that a field must not take.</summary>
/// <param name="Value">It.</param>
/// <param name="InJsonOnly">Whether it is wrong, or can be written, in JSON only.</param>
internal sealed record WrongValue(JsonNode? Value, bool InJsonOnly = false);

/// <summary>For each shape of field the values that must be reported.</summary>
internal static class WrongValues
{
    private static readonly string[] NoNumbers =
        ["NaN", "Infinity", "-Infinity", "x", "--5", "1.2.3.4", "1e", "0x1F", "five", "😀", "\u202E12", "12 34,5 6", "½½", "=1+1"];

    /// <summary>One of them, picked at random.</summary>
    public static WrongValue Pick(FieldFact fact, Random random)
    {
        if (fact.Shape is not (FieldShape.Group or FieldShape.List) && random.Next(6) == 0)
            return new(random.Next(3) switch { 0 => new JsonArray("a"), 1 => new JsonObject { ["a"] = "b" }, _ => Nested(20) });
        return fact.Shape switch
        {
            FieldShape.Text or FieldShape.Notes => random.Next(4) switch
            {
                0 => new(JsonValue.Create(12.5), InJsonOnly: true),
                1 => new(JsonValue.Create(true), InJsonOnly: true),
                2 => new(JsonValue.Create("bell\u0007"), InJsonOnly: true),
                _ => new(JsonValue.Create(new string('w', (int)fact.Most + 1))),
            },
            FieldShape.Quantity or FieldShape.Amount => Quantity(fact, random),
            FieldShape.Unit => Word(random, "psi", "furlong", "lb lb", "1", "%%", "pulse/"),
            FieldShape.Count => random.Next(3) switch
            {
                0 => Word(random, NoNumbers),
                1 => new(JsonValue.Create(1.5)),
                _ => random.Next(2) == 0 ? new(Number(fact.Least - 1)) : new(Number((fact.Most * 10) + 1)),
            },
            FieldShape.YesNo => Word(random, "perhaps", "2", "ja", "y e s"),
            FieldShape.Choice => Word(random, "perhaps", "0", fact.Words[0] + "x", "drop_test?"),
            FieldShape.Date => Word(random, "06/10/2026", "2026-02-30", "20261006", "tomorrow", "2026-13-01", "26-10-06", "0000-00-00"),
            FieldShape.List => random.Next(3) switch
            {
                0 => new(JsonValue.Create("x")),
                1 => new(new JsonObject { ["a"] = "b" }),
                _ => new(JsonValue.Create(5)),
            },
            _ => random.Next(3) switch
            {
                0 => new(JsonValue.Create("x")),
                1 => new(new JsonArray("a")),
                _ => new(JsonValue.Create(5)),
            },
        };
    }

    /// <summary>Lists inside one another.</summary>
    public static JsonNode Nested(int depth)
    {
        JsonNode node = JsonValue.Create("a");
        for (var i = 0; i < depth; i++) node = new JsonArray(node);
        return node;
    }

    private static WrongValue Quantity(FieldFact fact, Random random)
    {
        var unit = Units.Of(fact.Dimensions[0])[0];
        switch (random.Next(5))
        {
            case 0:
                return Word(random, NoNumbers);
            case 1:
                return new(JsonValue.Create($"{NoNumbers[random.Next(NoNumbers.Length)]} {unit.Symbol}"));
            case 2:
                // A unit of something else; a share is the one thing that a plain number can be.
                var other = Wrong(fact, random);
                return new(JsonValue.Create($"12.5 {other.Symbol}"));
            case 3:
                return new(JsonValue.Create($"1e400 {unit.Symbol}"));
            default:
                var (least, most) = fact.Shape is FieldShape.Amount ? (1e-9, 1e9) : (fact.Least, fact.Most);
                var si = random.Next(2) == 0 ? BelowOf(least) : most * (random.Next(2) == 0 ? 1.01 : 1e200);
                var shown = unit.FromSi(si);
                return new(JsonValue.Create($"{shown.ToString("R", CultureInfo.InvariantCulture)} {unit.Symbol}"), InJsonOnly: true);
        }
    }

    private static double BelowOf(double least) => least > 0 ? least / 2 : least - Math.Max(1, Math.Abs(least) / 100);

    private static Unit Wrong(FieldFact fact, Random random)
    {
        Dimension[] all = [.. Enum.GetValues<Dimension>().Where(d => !fact.Dimensions.Contains(d) && d != Dimension.Fraction)];
        // Some symbols have a meaning in several dimensions (a point of temperature and a difference, say); pounds and feet do not.
        var dimension = all.Where(d => d is Dimension.Mass or Dimension.Length or Dimension.Speed or Dimension.Density).ToArray();
        return Units.Of(dimension[random.Next(dimension.Length)])[0];
    }

    private static JsonNode Number(double value) => JsonNode.Parse(value.ToString("R", CultureInfo.InvariantCulture))!;

    private static WrongValue Word(Random random, params string[] words) => new(JsonValue.Create(words[random.Next(words.Length)]));
}
