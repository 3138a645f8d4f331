using System.Text.Json;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// Writes the JSON Schema (draft 2020-12) of a sheet by listening to the questions that the reading function asks.
/// Every answer is null or an empty list, and findings are ignored.
/// </summary>
/// <remarks>
/// The schema promises one thing: a document that it accepts has the shape that <see cref="TreeFields"/> wants. What a
/// text means (the unit of a quantity, the day of a date) is decided in reading.
/// </remarks>
public sealed class SchemaFields : Fields
{
    private readonly List<(string Name, Need Need, Action<Utf8JsonWriter> Write)> fields = [];

    internal SchemaFields(string path) => Path = path;

    /// <inheritdoc/>
    public override string Path { get; }

    /// <summary>The schema as indented JSON text, with \n at the end of each line.</summary>
    /// <param name="id">The schema's identifier, a URI.</param>
    /// <param name="title">What the sheet is.</param>
    /// <param name="read">The function that reads the sheet.</param>
    public static string Describe<T>(string id, string title, Func<Fields, T?> read)
        where T : class
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(id);
        ArgumentException.ThrowIfNullOrWhiteSpace(title);
        ArgumentNullException.ThrowIfNull(read);
        var root = new SchemaFields("");
        read(root);

        return JsonText.Object(json =>
        {
            json.WriteString("$schema", "https://json-schema.org/draft/2020-12/schema");
            json.WriteString("$id", id);
            json.WriteString("title", title);
            root.WriteObject(json, isRoot: true);
        });
    }

    /// <inheritdoc/>
    public override string? Text(string name, string doc, Need need = Need.Required, int maxLength = 200)
    {
        Add(name, doc, need, (json, optional) =>
        {
            SchemaText.Types(json, optional, "string");
            json.WriteNumber("maxLength", maxLength);
            if (!optional) json.WriteString("pattern", SchemaText.NotBlank);
        });
        return null;
    }

    /// <inheritdoc/>
    public override string? Notes(string name, string doc, Need need = Need.Optional, int maxLength = 4000) =>
        Text(name, doc, need, maxLength);

    /// <inheritdoc/>
    public override T? Quantity<T>(
        string name, string doc, Need need = Need.Required, Unit? unitWhenNone = null, T? least = null, T? most = null,
        bool unitsAgreed = false)
    {
        Check(unitWhenNone, least, most);
        Add(name, SchemaText.Describe(doc, unitWhenNone, least, most, unitsAgreed), need, (json, optional) =>
            SchemaText.Quantity(json, optional, T.Dimension, unitsAgreed || unitWhenNone is not null));
        return null;
    }

    /// <inheritdoc/>
    public override IReadOnlyList<T?> Quantities<T>(
        string name, string doc, int minItems = 0, int maxItems = 1000, Unit? unitWhenNone = null,
        T? least = null, T? most = null)
    {
        Check(unitWhenNone, least, most);
        AddList(name, SchemaText.Describe(doc, unitWhenNone, least, most), minItems, maxItems, json =>
            SchemaText.Quantity(json, optional: false, T.Dimension, unitWhenNone is not null));
        return [];
    }

    /// <inheritdoc/>
    public override Amount? Amount(
        string name, string doc, IReadOnlyList<Dimension> dimensions, Unit? unitWhenNone = null,
        Need need = Need.Required)
    {
        // Without a unit of its own a bare number is in the unit of the group, when the sheet states one.
        Add(name, SchemaText.Describe(doc, dimensions), need, (json, optional) =>
            SchemaText.Amount(json, optional, dimensions));
        return null;
    }

    /// <inheritdoc/>
    public override Unit? Unit(
        string name, string doc, IReadOnlyList<Dimension> dimensions, Need need = Need.Required)
    {
        Add(name, doc, need, (json, optional) => SchemaText.Unit(json, optional, dimensions));
        return null;
    }

    /// <inheritdoc/>
    public override double? Number(
        string name, string doc, Need need = Need.Required,
        double least = double.MinValue, double most = double.MaxValue)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, least);
        Add(name, doc, need, (json, optional) =>
        {
            SchemaText.Types(json, optional, "number", "string");
            if (least > double.MinValue) json.WriteNumber("minimum", least);
            if (most < double.MaxValue) json.WriteNumber("maximum", most);
            if (!optional) json.WriteString("pattern", SchemaText.NotBlank);
        });
        return null;
    }

    /// <inheritdoc/>
    public override long? Count(
        string name, string doc, Need need = Need.Required, long least = 0, long most = 1_000_000_000_000)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, least);
        Add(name, doc, need, (json, optional) =>
        {
            SchemaText.Types(json, optional, "integer", "string");
            json.WriteNumber("minimum", least);
            json.WriteNumber("maximum", most);
            if (!optional) json.WriteString("pattern", SchemaText.NotBlank);
        });
        return null;
    }

    /// <inheritdoc/>
    public override bool? YesNo(string name, string doc, Need need = Need.Required)
    {
        Add(name, doc, need, (json, optional) =>
        {
            json.WriteStartArray("enum");
            json.WriteBooleanValue(true);
            json.WriteBooleanValue(false);
            json.WriteStringValue("yes");
            json.WriteStringValue("no");
            if (optional) json.WriteNullValue();
            json.WriteEndArray();
        });
        return null;
    }

    /// <inheritdoc/>
    public override T? Choice<T>(string name, string doc, IReadOnlyList<Word<T>> words, Need need = Need.Required)
    {
        ArgumentNullException.ThrowIfNull(words);
        Add(name, doc, need, (json, optional) => SchemaText.Words(json, words, optional));
        return null;
    }

    /// <inheritdoc/>
    public override DateOnly? Date(string name, string doc, Need need = Need.Required)
    {
        Add(name, doc, need, (json, optional) => SchemaText.Formatted(json, optional, "date"));
        return null;
    }

    /// <inheritdoc/>
    public override DateTimeOffset? Moment(string name, string doc, Need need = Need.Required)
    {
        Add(name, doc, need, (json, optional) => SchemaText.Formatted(json, optional, "date-time"));
        return null;
    }

    /// <inheritdoc/>
    public override T? Group<T>(string name, string doc, Func<Fields, T?> read, Need need = Need.Required)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(read);
        var group = new SchemaFields(Place.Join(Path, name));
        read(group);
        Add(name, doc, need, (json, optional) =>
        {
            SchemaText.Types(json, optional, "object");
            group.WriteObject(json, isRoot: false);
        });
        return null;
    }

    /// <inheritdoc/>
    public override IReadOnlyList<T> List<T>(
        string name, string doc, Func<Fields, int, T?> read, int minItems = 0, int maxItems = 1000)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(read);
        var item = new SchemaFields(Place.Join(Path, name) + "[0]");
        read(item, 0);
        AddList(name, doc, minItems, maxItems, json =>
        {
            json.WriteString("type", "object");
            item.WriteObject(json, isRoot: false);
        });
        return [];
    }

    /// <inheritdoc/>
    public override void Report(FindingKind kind, string? name, params FindingValue[] values)
    {
    }

    /// <inheritdoc/>
    public override void Report(Finding finding)
    {
    }

    private void Add(string name, string doc, Need need, Action<Utf8JsonWriter, bool> write)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentException.ThrowIfNullOrWhiteSpace(doc);
        if (fields.Any(field => field.Name == name))
            throw new ArgumentException($"The field '{name}' was asked for already.", nameof(name));
        fields.Add((name, need, json =>
        {
            json.WriteString("description", doc);
            write(json, need == Need.Optional);
        }));
    }

    private void AddList(string name, string doc, int minItems, int maxItems, Action<Utf8JsonWriter> writeItem)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(minItems);
        ArgumentOutOfRangeException.ThrowIfLessThan(maxItems, minItems);
        Add(name, doc, minItems > 0 ? Need.Required : Need.Optional, (json, optional) =>
        {
            SchemaText.Types(json, optional, "array");
            json.WriteNumber("minItems", minItems);
            json.WriteNumber("maxItems", maxItems);
            json.WriteStartObject("items");
            writeItem(json);
            json.WriteEndObject();
        });
    }

    private void WriteObject(Utf8JsonWriter json, bool isRoot)
    {
        if (isRoot) json.WriteString("type", "object");
        json.WriteStartObject("properties");
        if (isRoot)
        {
            json.WriteStartObject(TreeFields.SchemaField);
            json.WriteString("type", "string");
            json.WriteEndObject();
        }

        foreach (var field in fields)
        {
            json.WriteStartObject(field.Name);
            field.Write(json);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteStartArray("required");
        foreach (var field in fields)
            if (field.Need == Need.Required) json.WriteStringValue(field.Name);
        json.WriteEndArray();
        json.WriteBoolean("additionalProperties", false);
    }
}
