namespace Lanewright.Office;

/// <summary>Orders texts so that digits within them count as numbers (HR-9 before HR-10), whatever the letter case.</summary>
internal sealed class NaturalOrder : IComparer<string?>
{
    internal static readonly NaturalOrder Instance = new();

    public int Compare(string? x, string? y)
    {
        ReadOnlySpan<char> a = x, b = y;
        while (a.Length > 0 && b.Length > 0)
        {
            var partA = Part(a);
            var partB = Part(b);
            var order = char.IsAsciiDigit(partA[0]) && char.IsAsciiDigit(partB[0])
                ? Numbers(partA.TrimStart('0'), partB.TrimStart('0'))
                : partA.CompareTo(partB, StringComparison.OrdinalIgnoreCase);
            if (order != 0) return order;
            a = a[partA.Length..];
            b = b[partB.Length..];
        }

        return a.Length != b.Length ? a.Length.CompareTo(b.Length) : string.CompareOrdinal(x, y);
    }

    private static int Numbers(ReadOnlySpan<char> a, ReadOnlySpan<char> b) =>
        a.Length != b.Length ? a.Length.CompareTo(b.Length) : a.SequenceCompareTo(b);

    // The digits, or the other characters, that a text begins with.
    private static ReadOnlySpan<char> Part(ReadOnlySpan<char> text)
    {
        var end = 1;
        while (end < text.Length && char.IsAsciiDigit(text[end]) == char.IsAsciiDigit(text[0])) end++;
        return text[..end];
    }
}
