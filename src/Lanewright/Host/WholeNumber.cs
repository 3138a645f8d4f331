using System.Globalization;

namespace Lanewright.Host;

/// <summary>A whole number in an address: digits only, in every language.</summary>
internal static class WholeNumber
{
    /// <summary>Reads it; false when something else stands there.</summary>
    /// <param name="text">The text; nothing counts as not given.</param>
    /// <param name="value">The number; null when it was not given.</param>
    internal static bool Read(string? text, out long? value)
    {
        value = null;
        if (string.IsNullOrEmpty(text)) return true;
        if (!long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)) return false;
        value = number;
        return true;
    }
}
