using System.Text.Json;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Exchange;

/// <summary>
/// A measured value as JSON with the identity of each error source, so that results read back from different files are
/// still correlated through what they share.
/// </summary>
public static class MeasuredJson
{
    /// <summary>Writes the value as an object.</summary>
    public static void Write(Utf8JsonWriter json, Measured measured)
    {
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartObject();
        json.WriteNumber("si", measured.Value);
        json.WriteStartArray("sources");
        foreach (var (source, amount) in measured.Contributions)
        {
            json.WriteStartObject();
            json.WriteString("id", source.Id);
            json.WriteString("family", source.Family);
            json.WriteString("shape", NameOf(source.Shape));
            if (!double.IsInfinity(source.DegreesOfFreedom))
                json.WriteNumber("degreesOfFreedom", source.DegreesOfFreedom);
            if (source.Ensemble is not null) json.WriteString("ensemble", source.Ensemble);
            json.WriteNumber("amount", amount);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>Reads an object written by <see cref="Write"/>.</summary>
    /// <exception cref="FormatException">It is not such an object.</exception>
    public static Measured Read(JsonElement element)
    {
        try
        {
            var parts = new List<Contribution>();
            var seen = new HashSet<string>(StringComparer.Ordinal);
            foreach (var s in element.GetProperty("sources").EnumerateArray())
            {
                var dof = s.TryGetProperty("degreesOfFreedom", out var d) ? d.GetDouble() : double.PositiveInfinity;
                var ensemble = s.TryGetProperty("ensemble", out var e) ? e.GetString() : null;
                var id = Text(s, "id");
                if (!seen.Add(id)) throw new FormatException($"The source '{id}' is given twice.");
                parts.Add(new(
                    ErrorSource.Of(id, Text(s, "family"), ShapeOf(Text(s, "shape")), dof, ensemble),
                    Amount(s)));
            }

            return Measured.Of(
                element.GetProperty("si").GetDouble(),
                System.Runtime.InteropServices.CollectionsMarshal.AsSpan(parts));
        }
        catch (Exception e) when (e is KeyNotFoundException or InvalidOperationException or ArgumentException)
        {
            throw new FormatException("This is not a measured value with its error sources.", e);
        }
    }

    private static string Text(JsonElement element, string name) =>
        element.GetProperty(name).GetString() ?? throw new FormatException($"'{name}' has no text.");

    // A number beyond the range of doubles is read as infinite.
    private static double Amount(JsonElement source)
    {
        var amount = source.GetProperty("amount").GetDouble();
        return double.IsFinite(amount) ? amount : throw new FormatException("The amount of a source is not finite.");
    }

    private static string NameOf(ErrorShape shape) => shape switch
    {
        ErrorShape.Normal => "normal",
        ErrorShape.Rectangular => "rectangular",
        ErrorShape.Triangular => "triangular",
        _ => "arcsine",
    };

    private static ErrorShape ShapeOf(string name) => name switch
    {
        "normal" => ErrorShape.Normal,
        "rectangular" => ErrorShape.Rectangular,
        "triangular" => ErrorShape.Triangular,
        "arcsine" => ErrorShape.Arcsine,
        _ => throw new FormatException($"'{name}' is not the shape of an error."),
    };
}
