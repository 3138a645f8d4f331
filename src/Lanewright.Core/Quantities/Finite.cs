using System.Runtime.CompilerServices;

namespace Lanewright.Core.Quantities;

/// <summary>The one check every quantity makes of its value.</summary>
internal static class Finite
{
    internal static double Check(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, "A quantity must be a finite number.");
}
