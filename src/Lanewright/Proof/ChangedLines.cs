namespace Lanewright.Proof;

/// <summary>A line that differs.</summary>
/// <param name="Line">The line as it should be, or what stands in addition.</param>
/// <param name="Said">The words that the file has; empty for none.</param>
/// <param name="Real">The words that should stand there; empty for none.</param>
internal sealed record ChangedLine(string Line, string Said, string Real);

/// <summary>Where two texts differ, by the longest common subsequence of their lines.</summary>
internal static class ChangedLines
{
    /// <summary>The differences, in order.</summary>
    /// <param name="said">Lines of the file.</param>
    /// <param name="real">Lines as they should be.</param>
    /// <param name="unknown">Stands in a line that is not known; what the file has in its place is left out.</param>
    internal static IReadOnlyList<ChangedLine> Between(IReadOnlyList<string> said, IReadOnlyList<string> real, string unknown)
    {
        var common = Common(said, real);
        List<ChangedLine> changed = [];
        for (int i = 0, k = 0; i < said.Count || k < real.Count;)
        {
            var (from, begin) = (i, k);
            while (i < said.Count || k < real.Count)
            {
                if (i < said.Count && k < real.Count && said[i] == real[k]) break;
                if (k == real.Count || (i < said.Count && common[i + 1, k] >= common[i, k + 1])) i++;
                else k++;
            }

            Gap(said, from, i, real, begin, k, unknown, changed);
            while (i < said.Count && k < real.Count && said[i] == real[k]) (i, k) = (i + 1, k + 1);
        }

        return changed;
    }

    private static void Gap(
        IReadOnlyList<string> said, int from, int to, IReadOnlyList<string> real, int begin, int end, string unknown, List<ChangedLine> changed)
    {
        for (var k = begin; k < end; k++) if (real[k].Contains(unknown, StringComparison.Ordinal)) return;
        for (var n = 0; n < Math.Max(to - from, end - begin); n++)
        {
            var (a, b) = (from + n < to ? said[from + n] : "", begin + n < end ? real[begin + n] : "");
            var (one, other) = (a.Split(' '), b.Split(' '));
            var start = 0;
            while (start < one.Length && start < other.Length && one[start] == other[start]) start++;
            var tail = 0;
            while (tail < Math.Min(one.Length, other.Length) - start && one[^(tail + 1)] == other[^(tail + 1)]) tail++;
            changed.Add(new(b.Length > 0 ? b : a, string.Join(' ', one[start..^tail]), string.Join(' ', other[start..^tail])));
        }
    }

    // How many lines are common to the ends of both from each place on.
    private static int[,] Common(IReadOnlyList<string> said, IReadOnlyList<string> real)
    {
        var common = new int[said.Count + 1, real.Count + 1];
        for (var i = said.Count - 1; i >= 0; i--)
            for (var k = real.Count - 1; k >= 0; k--)
                common[i, k] = said[i] == real[k] ? common[i + 1, k + 1] + 1 : Math.Max(common[i + 1, k], common[i, k + 1]);
        return common;
    }
}
