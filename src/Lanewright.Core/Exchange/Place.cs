using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Exchange;

/// <summary>
/// Where in a text a finding is, as values of the finding: <c>line</c> and <c>column</c>, counted from 1. They are
/// left out when they are not known.
/// </summary>
public static class Place
{
    /// <summary>The values for a line and a column; 0 for not known.</summary>
    public static FindingValue[] Of(int line, int column) =>
        line <= 0 ? [] : column <= 0 ? [Count("line", line)] : [Count("line", line), Count("column", column)];

    /// <summary>The values for where a node begins.</summary>
    public static FindingValue[] Of(SheetNode node)
    {
        ArgumentNullException.ThrowIfNull(node);
        return Of(node.Line, node.Column);
    }

    /// <summary>A counted number in a finding.</summary>
    public static FindingValue Count(string name, long count) => FindingValue.Number(name, count, Dimension.Fraction);

    /// <summary>The path of a field in the group at a path.</summary>
    public static string Join(string path, string name) => string.IsNullOrEmpty(path) ? name : $"{path}.{name}";
}
