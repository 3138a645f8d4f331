namespace Lanewright.Print;

/// <summary>Breaks sentences into lines for a terminal.</summary>
internal static class Wrapped
{
    private const int Width = 100;

    /// <summary>The text in lines of at most 100 characters, the first after <paramref name="first"/>, the others
    /// indented as far.</summary>
    internal static IEnumerable<string> Lines(string first, string text)
    {
        var line = first;
        var fresh = true;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!fresh && line.Length + 1 + word.Length > Width)
            {
                yield return line;
                line = new string(' ', first.Length);
                fresh = true;
            }

            line += fresh ? word : " " + word;
            fresh = false;
        }

        yield return line;
    }
}
