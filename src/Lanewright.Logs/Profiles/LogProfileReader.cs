using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Logs.Profiles;

/// <summary>Reads a profile. Whatever is wrong is said with its place; a member that is not known is wrong too, since a
/// misspelt one would be read as missing.</summary>
public static class LogProfileReader
{
    /// <summary>The first member of every profile.</summary>
    public const string Format = "lanewright-log-profile/1";

    private const int MostCharacters = 100_000;

    private static readonly Dictionary<string, LogRole> Roles =
        Enum.GetValues<LogRole>().ToDictionary(role => Lower(role.ToString()), StringComparer.Ordinal);

    /// <summary>Reads a profile's text.</summary>
    /// <exception cref="LogException">Something is wrong with it.</exception>
    public static LogProfile Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > MostCharacters) throw new LogException($"A profile of {text.Length} characters was read; at most {MostCharacters} were expected.");
        try
        {
            using var document = JsonDocument.Parse(text, new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true, MaxDepth = 8 });
            return Read(document.RootElement, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))));
        }
        catch (JsonException wrong)
        {
            throw new LogException($"The profile is not JSON: line {wrong.LineNumber + 1}. {Excerpt.Of(wrong.Message, 120)}", wrong);
        }
    }

    private static LogProfile Read(JsonElement root, string hash)
    {
        Members(root, "profile", "format", "note", "file", "separator", "decimal", "header", "zone", "doubtfulTime", "longestInterval", "seasonBegins", "columns");
        if (Text(root, "format", "profile") is var format && format != Format) throw Wrong("format", format, Format);
        var culture = Choice(root, "decimal", "profile", ".", ("." , TextCulture.Invariant), ("," , TextCulture.German));
        var separator = Choice(root, "separator", "profile", ",", (",", ','), (";", ';'), ("tab", '\t'), ("|", '|'));
        if (separator == ',' && culture == TextCulture.German) throw Wrong("separator", ",", "; or tab or | where the decimal mark is a comma");
        if (!root.TryGetProperty("columns", out var list)) throw Wrong("columns", null, "an object");
        Members(list, "columns", [.. Roles.Keys]);
        var columns = list.EnumerateObject().Select(one => Column(one.Name, one.Value)).ToDictionary(one => one.Role);
        foreach (var needed in new[] { LogRole.Time, LogRole.Spreader, LogRole.Depot, LogRole.Counts })
            if (!columns.ContainsKey(needed)) throw Wrong($"columns.{Lower(needed.ToString())}", null, "where it is found");
        foreach (var (role, problem) in Misfits(columns)) throw new LogException($"Profile, columns.{Lower(role.ToString())}: expected {problem}.");
        return new()
        {
            Kind = Choice<LogFileKind?>(root, "file", "profile", "by ending", ("by ending", null), ("csv", LogFileKind.Csv), ("gpx", LogFileKind.Gpx), ("parquet", LogFileKind.Parquet)),
            Separator = separator,
            Culture = culture,
            Header = Choice(root, "header", "profile", "yes", ("yes", true), ("no", false)),
            Zone = Zone(root),
            Doubtful = Choice(root, "doubtfulTime", "profile", "refuse", ("refuse", DoubtfulTime.Refuse), ("first", DoubtfulTime.First), ("second", DoubtfulTime.Second)),
            Pattern = Pattern(list),
            LongestInterval = Seconds(root),
            SeasonBegins = Month(root),
            Columns = columns,
            Hash = hash,
        };
    }

    private static IEnumerable<(LogRole Role, Phrase Problem)> Misfits(Dictionary<LogRole, LogColumn> columns)
    {
        foreach (var one in new[] { LogRole.Time, LogRole.Clock, LogRole.Counts, LogRole.Latitude, LogRole.Longitude, LogRole.Distance, LogRole.Speed })
            if (columns.GetValueOrDefault(one) is { Column: null }) yield return (one, "a column");
        if (columns.ContainsKey(LogRole.Latitude) != columns.ContainsKey(LogRole.Longitude)) yield return (LogRole.Latitude, "latitude and longitude, or neither");
        if (columns.GetValueOrDefault(LogRole.Target)?.Unit is { Dimension: Dimension.AreaRate } && !columns.ContainsKey(LogRole.Width))
            yield return (LogRole.Target, "'width' beside it, since it is a rate by area");
    }

    private static LogColumn Column(string name, JsonElement element)
    {
        var place = $"columns.{name}";
        var role = Roles[name];
        var members = new List<string> { "column", "fixed" };
        if (role is LogRole.Time) members.Add("pattern");
        if (DimensionsOf(role) is not null) members.Add("unit");
        if (role is LogRole.Counts or LogRole.Distance) members.Add("kind");
        if (role is LogRole.Counts) members.Add("rollover");
        if (IsText(role)) members.Add("names");
        Members(element, place, [.. members]);
        var column = Optional(element, "column", place);
        var constant = Optional(element, "fixed", place);
        if (column is null == constant is null) throw new LogException($"Profile, {place}: expected either 'column' or 'fixed'.");
        Unit? unit = null;
        if (DimensionsOf(role) is { } dimensions)
        {
            var written = Text(element, "unit", place);
            unit = Units.Find(written);
            if (unit is null || !dimensions.Contains(unit.Dimension)) throw Wrong($"{place}.unit", written, $"a unit such as {string.Join(", ", dimensions.Select(one => Units.Of(one)[0].Symbol))}");
        }

        return new(
            role, column, constant, unit,
            role is LogRole.Counts or LogRole.Distance && Needed(element, "kind", place, ("running", true), ("interval", false)),
            Rollover(element, place), Names(element, place));
    }

    private static bool IsText(LogRole role) => role is LogRole.Spreader or LogRole.Depot or LogRole.Route or LogRole.Material or LogRole.Segment;

    private static Dimension[]? DimensionsOf(LogRole role) => role switch
    {
        LogRole.Counts => [Dimension.Pulses, Dimension.Revolutions, Dimension.Mass],
        LogRole.Distance or LogRole.Width => [Dimension.Length],
        LogRole.Speed => [Dimension.Speed],
        LogRole.Target => [Dimension.LaneRate, Dimension.AreaRate],
        _ => null,
    };

    private static double? Rollover(JsonElement element, string place)
    {
        if (Optional(element, "rollover", place) is not { } text) return null;
        if (QuantityText.ReadNumber(text, TextCulture.Invariant).TryGet(out var value) && value > 0) return value;
        throw Wrong($"{place}.rollover", text, "a number above 0, such as 65536");
    }

    private static Dictionary<string, string> Names(JsonElement element, string place)
    {
        var names = new Dictionary<string, string>(StringComparer.Ordinal);
        if (!element.TryGetProperty("names", out var list)) return names;
        Object(list, $"{place}.names");
        foreach (var one in list.EnumerateObject())
            names[one.Name.Trim()] = one.Value.ValueKind is JsonValueKind.String ? one.Value.GetString()! : throw Wrong($"{place}.names", one.Value.GetRawText(), "a text");
        return names;
    }

    private static TimePattern Pattern(JsonElement columns)
    {
        var text = Optional(columns.GetProperty("time"), "pattern", "columns.time") ?? "iso";
        return TimePattern.TryRead(text, out var pattern) ? pattern : throw Wrong("columns.time.pattern", text, TimePattern.Expected);
    }

    private static TimeZoneInfo Zone(JsonElement root)
    {
        var name = Text(root, "zone", "profile");
        if (name == "UTC") return TimeZoneInfo.Utc;
        if (name.Contains('/', StringComparison.Ordinal) && TimeZoneInfo.TryFindSystemTimeZoneById(name, out var zone)) return zone;
        throw Wrong("zone", name, "a zone of the IANA data base, such as America/Chicago, or UTC");
    }

    private static double Seconds(JsonElement root)
    {
        if (Optional(root, "longestInterval", "profile") is not { } text) return 300;
        if (QuantityText.Read<Duration>(text, TextCulture.Invariant).TryGet(out var time) && time.Si is > 0 and <= 86400) return time.Si;
        throw Wrong("longestInterval", text, "a time above 0 and up to a day, such as 60 s");
    }

    private static int Month(JsonElement root)
    {
        if (Optional(root, "seasonBegins", "profile") is not { } text) return 7;
        if (QuantityText.ReadCount(text, TextCulture.Invariant).TryGet(out var month) && month is >= 1 and <= 12) return (int)month;
        throw Wrong("seasonBegins", text, "a month from 1 to 12");
    }

    private static void Object(JsonElement element, string place)
    {
        if (element.ValueKind is not JsonValueKind.Object) throw Wrong(place, element.GetRawText(), "an object");
    }

    private static void Members(JsonElement element, string place, params string[] known)
    {
        Object(element, place);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var one in element.EnumerateObject())
        {
            if (!known.Contains(one.Name, StringComparer.Ordinal))
            {
                var near = string.Join(", ", Nearest.Close(one.Name, known));
                throw Wrong(place, one.Name, near.Length == 0 ? (Phrase)$"one of {string.Join(", ", known)}" : $"one of {string.Join(", ", known)}; perhaps {near}");
            }

            if (!seen.Add(one.Name)) throw new LogException($"Profile, {place}: '{Excerpt.Of(one.Name)}' was read twice; expected each member once.");
        }
    }

    private static T Choice<T>(JsonElement element, string name, string place, string otherwise, params (string Word, T Value)[] words) =>
        Pick(Optional(element, name, place) ?? otherwise, name, words);

    private static T Needed<T>(JsonElement element, string name, string place, params (string Word, T Value)[] words) =>
        Pick(Text(element, name, place), $"{place}.{name}", words);

    private static T Pick<T>(string text, string place, (string Word, T Value)[] words)
    {
        foreach (var (word, value) in words)
            if (word == text) return value;
        throw Wrong(place, text, $"one of {string.Join(" ", words.Select(one => one.Word))}");
    }

    private static string Text(JsonElement element, string name, string place) =>
        Optional(element, name, place) ?? throw Wrong(place == "profile" ? name : $"{place}.{name}", null, "a text");

    // Numbers and true or false may stand without quotes.
    private static string? Optional(JsonElement element, string name, string place)
    {
        if (!element.TryGetProperty(name, out var value) || value.ValueKind is JsonValueKind.Null) return null;
        return value.ValueKind switch
        {
            JsonValueKind.String => value.GetString(),
            JsonValueKind.Number => value.GetRawText(),
            JsonValueKind.True => "yes",
            JsonValueKind.False => "no",
            _ => throw Wrong($"{place}.{name}", value.GetRawText(), "a text"),
        };
    }

    private static string Lower(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static LogException Wrong(string place, string? read, Phrase expected) => new(
        read is null ? (Phrase)$"Profile, {place}: nothing was read; expected {expected}." : $"Profile, {place}: '{Excerpt.Of(read)}' was read; expected {expected}.");
}
