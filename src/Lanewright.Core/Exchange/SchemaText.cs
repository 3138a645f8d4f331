using System.Text.Json;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>The recurring parts of a schema's fields.</summary>
internal static class SchemaText
{
    /// <summary>A pattern for a text that is not blank.</summary>
    internal const string NotBlank = @"\S";

    /// <summary>The types a value may have; an optional one may be null too.</summary>
    internal static void Types(Utf8JsonWriter json, bool optional, params ReadOnlySpan<string> types)
    {
        if (types.Length == 1 && !optional)
        {
            json.WriteString("type", types[0]);
            return;
        }

        json.WriteStartArray("type");
        foreach (var type in types) json.WriteStringValue(type);
        if (optional) json.WriteStringValue("null");
        json.WriteEndArray();
    }

    /// <summary>A text of a format that the schema's vocabulary names.</summary>
    internal static void Formatted(Utf8JsonWriter json, bool optional, string format)
    {
        Types(json, optional, "string");
        json.WriteString("format", format);
    }

    /// <summary>What a quantity means, what it measures, its limits, and what a bare number is in.</summary>
    internal static string Describe<T>(
        string doc, Unit? unitWhenNone, T? least, T? most, bool unitsAgreed = false)
        where T : struct, IQuantity<T>
    {
        var unit = unitWhenNone ?? UnitPreferences.Metric[T.Dimension];
        var limits = (least is { } low ? $" At least {Write(low, unit)}." : "")
            + (most is { } high ? $" At most {Write(high, unit)}." : "");
        var bare = unitsAgreed ? " A number without a unit is in the unit that the field units agrees on; without that "
                + "field it is asked about."
            : unitWhenNone is null ? ""
            : $" A number without a unit is in {unitWhenNone.Symbol}.";
        var words = DimensionWords.Of(T.Dimension);
        return $"{doc} This is {words}, written with its unit ({DimensionWords.Units(T.Dimension)}).{limits}{bare}";
    }

    /// <summary>A quantity: a text with a unit, or also a number when its unit is agreed.</summary>
    internal static void Quantity(Utf8JsonWriter json, bool optional, Dimension dimension, bool mayBeBare)
    {
        if (mayBeBare) Types(json, optional, "string", "number");
        else Types(json, optional, "string");
        if (!optional) json.WriteString("pattern", NotBlank);
        json.WriteStartArray("examples");
        foreach (var unit in Units.Of(dimension).Take(2)) json.WriteStringValue($"12.5 {unit.Symbol}");
        json.WriteEndArray();
    }

    /// <summary>What a quantity of one of several dimensions means.</summary>
    internal static string Describe(string doc, IReadOnlyList<Dimension> dimensions) =>
        $"{doc} This is {string.Join(" or ", dimensions.Select(DimensionWords.Of))}, written with its unit. A number "
        + "without one is in the unit that its group states; where none is stated it is asked about.";

    /// <summary>A quantity of one of several dimensions.</summary>
    internal static void Amount(Utf8JsonWriter json, bool optional, IReadOnlyList<Dimension> dimensions)
    {
        Types(json, optional, "string", "number");
        json.WriteStartArray("examples");
        foreach (var dimension in dimensions) json.WriteStringValue($"12.5 {Units.Of(dimension)[0].Symbol}");
        json.WriteEndArray();
    }

    /// <summary>The symbol of a unit; other spellings are read too, so the symbols are examples.</summary>
    internal static void Unit(Utf8JsonWriter json, bool optional, IReadOnlyList<Dimension> dimensions)
    {
        Types(json, optional, "string");
        json.WriteStartArray("examples");
        foreach (var unit in dimensions.SelectMany(Units.Of)) json.WriteStringValue(unit.Symbol);
        json.WriteEndArray();
    }

    /// <summary>One of a few words, each with its meaning.</summary>
    internal static void Words<T>(Utf8JsonWriter json, IReadOnlyList<Word<T>> words, bool optional)
        where T : struct
    {
        json.WriteStartArray("oneOf");
        foreach (var word in words)
        {
            json.WriteStartObject();
            json.WriteString("const", word.Text);
            json.WriteString("description", word.Doc);
            json.WriteEndObject();
        }

        if (optional)
        {
            json.WriteStartObject();
            json.WriteString("type", "null");
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string Write<T>(T quantity, Unit unit)
        where T : struct, IQuantity<T> => QuantityText.Write(quantity, unit, TextCulture.Invariant);
}
