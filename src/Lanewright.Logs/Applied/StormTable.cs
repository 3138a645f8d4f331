namespace Lanewright.Logs.Applied;

/// <summary>A storm.</summary>
/// <param name="Name">What people call it.</param>
/// <param name="From">Its begin, UTC.</param>
/// <param name="To">Its end, not included, UTC.</param>
/// <param name="Depot">The depot it is about; null for every depot.</param>
public sealed record Storm(string Name, DateTimeOffset From, DateTimeOffset To, string? Depot)
{
    /// <summary>Reads <c>storms.csv</c>.</summary>
    /// <exception cref="LogException">It cannot be read, or two storms of one depot overlap.</exception>
    public static IReadOnlyList<Storm> Read(string path)
    {
        var table = SeasonTable.Read(path, "storm", "from", "to");
        var storms = new List<Storm>(table.Count);
        for (var row = 0; row < table.Count; row++)
        {
            var from = table.Moment(row, "from") ?? throw table.Wrong(row, "from", "a moment");
            var to = table.Moment(row, "to") ?? throw table.Wrong(row, "to", "a moment");
            if (to <= from) throw table.Wrong(row, "to", "a moment later than 'from'");
            storms.Add(new(table.Needed(row, "storm"), from, to, table.Text(row, "depot") is { Length: > 0 } depot ? depot : null));
        }

        for (var i = 0; i < storms.Count; i++)
            for (var j = 0; j < i; j++)
                if ((storms[i].Depot is null || storms[j].Depot is null || storms[i].Depot == storms[j].Depot) && storms[i].From < storms[j].To && storms[j].From < storms[i].To)
                    throw new LogException($"The storms {storms[j].Name} and {storms[i].Name} overlap in time; each moment was expected in one storm of a depot.");
        return storms;
    }
}
