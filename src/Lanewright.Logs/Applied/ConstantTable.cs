using System.Globalization;
using Lanewright.Core.Season;

namespace Lanewright.Logs.Applied;

/// <summary>The constants of a season.</summary>
public static class ConstantTable
{
    /// <summary>Reads <c>constants.csv</c>.</summary>
    /// <exception cref="LogException">It cannot be read, or two constants of one spreader are valid at once.</exception>
    public static IReadOnlyList<SeasonConstant> Read(string path)
    {
        var table = SeasonTable.Read(path, "constant", "spreader", "from", "kg_per_count", "u_rel");
        var constants = new List<SeasonConstant>(table.Count);
        for (var row = 0; row < table.Count; row++)
        {
            var from = table.Moment(row, "from") ?? throw table.Wrong(row, "from", "a moment");
            var to = table.Moment(row, "to");
            if (to <= from) throw table.Wrong(row, "to", "a moment later than 'from'");
            constants.Add(SeasonConstant.Stated(
                table.Needed(row, "constant"), table.Needed(row, "spreader"), from, to,
                table.Number(row, "kg_per_count", 1e-12, 1e12) ?? throw table.Wrong(row, "kg_per_count", "a number above 0"),
                table.Number(row, "u_rel", 0, 10) ?? throw table.Wrong(row, "u_rel", "a number of 0 or more"),
                table.Number(row, "dof", 0.1, 1e9) ?? double.PositiveInfinity,
                table.Text(row, "scale") is { Length: > 0 } scale ? scale : null,
                table.Number(row, "u_scale_rel", 0, 10) ?? 0));
        }

        Check(constants);
        return constants;
    }

    /// <summary>Says when two constants of one spreader are valid at once, or two have one identity.</summary>
    /// <exception cref="LogException">They are.</exception>
    public static void Check(IReadOnlyList<SeasonConstant> constants)
    {
        ArgumentNullException.ThrowIfNull(constants);
        if (constants.GroupBy(one => one.Id, StringComparer.Ordinal).FirstOrDefault(same => same.Count() > 1) is { } twice)
            throw new LogException($"The constant {twice.Key} is listed {twice.Count()} times; once was expected.");
        foreach (var spreader in constants.GroupBy(one => one.Spreader, StringComparer.Ordinal))
        {
            SeasonConstant? before = null;
            foreach (var one in spreader.OrderBy(one => one.From))
            {
                if (before is not null && (before.To ?? DateTimeOffset.MaxValue) > one.From)
                    throw new LogException($"{spreader.Key}: the constants {before.Id} and {one.Id} are both valid at {one.From.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture)}; one was expected.");
                before = one;
            }
        }
    }
}
