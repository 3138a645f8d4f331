using System.Runtime.CompilerServices;

namespace Lanewright.Core.Statistics;

/// <summary>The checks the functions of this folder make of their arguments.</summary>
internal static class Require
{
    internal static double Positive(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value > 0 ? value : throw new ArgumentOutOfRangeException(name, value, "Must be greater than 0.");

    internal static double Probability(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value is >= 0 and <= 1 ? value : throw new ArgumentOutOfRangeException(name, value, "Must be between 0 and 1.");

    internal static void NotEmpty(
        ReadOnlySpan<double> values, [CallerArgumentExpression(nameof(values))] string? name = null)
    {
        if (values.IsEmpty)
            throw new ArgumentException("At least one value is needed.", name);
    }
}
