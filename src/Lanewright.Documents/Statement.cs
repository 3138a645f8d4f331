using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json;

namespace Lanewright.Documents;

/// <summary>
/// What a certificate says, for machines: its figures in SI and the record behind them, as JSON on one line. It is the same
/// whatever language, decimal mark, units and paper a reader chose; names of results are English. It travels inside
/// the PDF and the XML, and is worked out again from the records to see what, if anything, was changed.
/// </summary>
public sealed class Statement
{
    /// <summary>The format written.</summary>
    public const string Format = "lanewright-certificate/1";

    // What may differ between two issues of one record.
    private static readonly HashSet<string> OfTheIssue = new(StringComparer.Ordinal) { "issued", "program" };

    private Statement(IReadOnlyDictionary<string, string> values) => Values = values;

    /// <summary>Every value by its path, such as <c>results[0].si</c>.</summary>
    public IReadOnlyDictionary<string, string> Values { get; }

    /// <summary>The record behind it; null when it is from a sheet that is in no records.</summary>
    public RecordReference? Record =>
        Values.TryGetValue("record.test", out var test) && Values.TryGetValue("record.hash", out var hash)
        && Values.TryGetValue("record.entry", out var entry) && long.TryParse(entry, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? new(test, number, hash)
            : null;

    /// <summary>A value by its path; empty when it is not there.</summary>
    public string this[string path] => Values.GetValueOrDefault(path, "");

    /// <summary>The number that a certificate of this content has.</summary>
    public static string NumberOf(Certificate certificate)
    {
        var hash = SHA256.HashData(Write(certificate, ofTheIssue: false));
        return $"{certificate?.Date.ToString("yyyyMMdd", CultureInfo.InvariantCulture)}-{Convert.ToHexStringLower(hash.AsSpan(0, 6))}";
    }

    /// <summary>The statement of a certificate.</summary>
    public static byte[] Write(Certificate certificate) => Write(certificate, ofTheIssue: true);

    /// <summary>A statement as it was written; null when it is none.</summary>
    public static Statement? Read(ReadOnlyMemory<byte> json)
    {
        try
        {
            using var document = JsonDocument.Parse(json, new() { MaxDepth = 8 });
            var values = new Dictionary<string, string>(StringComparer.Ordinal);
            Flatten(document.RootElement, "", values);
            return values.GetValueOrDefault("format") == Format ? new(values) : null;
        }
        catch (Exception wrong) when (wrong is JsonException or InvalidOperationException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>Where two statements differ: the path, and both texts; empty for what is missing.</summary>
    public static IReadOnlyList<(string Path, string One, string Other)> Differences(Statement one, Statement other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        return
        [
            .. one.Values.Keys.Union(other.Values.Keys).Where(path => !OfTheIssue.Contains(path) && one[path] != other[path])
                .Order(StringComparer.Ordinal).Select(path => (path, one[path], other[path])),
        ];
    }

    private static byte[] Write(Certificate certificate, bool ofTheIssue)
    {
        ArgumentNullException.ThrowIfNull(certificate);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WriteString("format", Format);
            if (ofTheIssue)
            {
                json.WriteString("number", certificate.Number);
                json.WriteString("issued", certificate.Context.Issued.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture));
                json.WriteString("program", certificate.Context.Version);
            }

            json.WriteString("kind", certificate.Kind);
            json.WriteString("name", certificate.Name);
            json.WriteBoolean("invented", certificate.Invented);
            json.WriteString("item", certificate.Item.ToString());
            json.WriteString("date", certificate.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
            json.WriteString("place", certificate.Place);
            json.WriteString("people", certificate.People);
            if (certificate.Context.Record is { } record)
            {
                json.WriteStartObject("record");
                json.WriteString("test", record.Test);
                json.WriteNumber("entry", record.Entry);
                json.WriteString("hash", record.Hash);
                json.WriteEndObject();
            }

            json.WriteStartArray("results");
            foreach (var result in certificate.Results)
            {
                json.WriteStartObject();
                json.WriteString("name", result.Name.ToString());
                json.WriteString("measures", result.Unit.Dimension.ToString());
                json.WriteNumber("si", result.Value);
                if (result.Expanded is { } expanded) json.WriteNumber("expanded", expanded);
                json.WriteNumber("probability", result.Probability);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            if (certificate.Conformity is { } conformity)
            {
                json.WriteStartObject("conformity");
                json.WriteString("verdict", conformity.Word);
                json.WriteNumber("share", conformity.Share);
                json.WriteNumber("expanded", conformity.Expanded);
                json.WriteNumber("tolerance", conformity.Tolerance);
                json.WriteEndObject();
            }

            if (certificate.Context.Decision is { } decision)
            {
                json.WriteStartObject("decision");
                json.WriteString("verdict", decision.Verdict);
                json.WriteString("by", decision.By);
                json.WriteString("keyed", decision.Keyed);
                json.WriteEndObject();
            }

            json.WriteEndObject();
        }

        return stream.ToArray();
    }

    private static void Flatten(JsonElement element, string path, Dictionary<string, string> values)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (var member in element.EnumerateObject()) Flatten(member.Value, path.Length == 0 ? member.Name : $"{path}.{member.Name}", values);
                break;
            case JsonValueKind.Array:
                var index = 0;
                foreach (var item in element.EnumerateArray()) Flatten(item, $"{path}[{index++}]", values);
                break;
            default:
                values.Add(path, element.ToString());
                break;
        }
    }
}
