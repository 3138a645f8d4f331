using System.Globalization;

namespace Lanewright.Core.Exchange;

/// <summary>One step of a field's path: a name, or a place in a list.</summary>
/// <param name="Name">The name; null for a place in a list.</param>
/// <param name="Index">The zero-based place, when there is no name.</param>
public readonly record struct PathStep(string? Name, int Index);

/// <summary>Reads the path of a field, such as <c>spreader.id</c> or <c>runs[0].scale.before</c>.</summary>
public static class FieldPath
{
    private const int LongestPath = 500;

    /// <summary>
    /// The steps of a path; null when the text is not one, is very long, or has more steps than a sheet is deep.
    /// </summary>
    public static IReadOnlyList<PathStep>? Read(string text)
    {
        if (text.Length > LongestPath) return null;

        var steps = new List<PathStep>();
        foreach (var part in text.Split('.'))
        {
            var nameEnd = part.IndexOf('[', StringComparison.Ordinal);
            var name = nameEnd < 0 ? part : part[..nameEnd];
            if (!IsName(name)) return null;
            steps.Add(new PathStep(name, 0));

            var rest = nameEnd < 0 ? "" : part[nameEnd..];
            while (rest.Length > 0)
            {
                var end = rest.IndexOf(']', StringComparison.Ordinal);
                if (rest[0] != '[' || end < 0) return null;
                if (!int.TryParse(rest.AsSpan(1, end - 1), NumberStyles.None, CultureInfo.InvariantCulture, out var index))
                    return null;
                steps.Add(new PathStep(null, index));
                rest = rest[(end + 1)..];
            }
        }

        return steps.Count < SheetLimits.Depth ? steps : null;
    }

    private static bool IsName(string name) =>
        name.Length > 0 && char.IsAsciiLetter(name[0]) && name.All(one => char.IsAsciiLetterOrDigit(one) || one is '-' or '_');
}
