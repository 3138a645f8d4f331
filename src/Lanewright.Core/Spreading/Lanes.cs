using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Lanewright.Core.Spreading;

/// <summary>
/// Arithmetic on whole spans of equal length, several numbers at a time where the processor can. Each number is worked
/// by the same operations in the same order whatever the width, so the bits are the same on every machine. Compiled at
/// their best from the first call, since the width is only known on the machine and a command line has no time to warm up.
/// </summary>
internal static class Lanes
{
    /// <summary>target += draw * scale + shift.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal static void AddScaled(Span<double> target, ReadOnlySpan<double> draw, double scale, double shift)
    {
        var targets = MemoryMarshal.Cast<double, Vector<double>>(target);
        var draws = MemoryMarshal.Cast<double, Vector<double>>(draw);
        for (var i = 0; i < targets.Length; i++)
            targets[i] += (draws[i] * scale) + new Vector<double>(shift);
        for (var i = targets.Length * Vector<double>.Count; i < target.Length; i++)
            target[i] += (draw[i] * scale) + shift;
    }

    /// <summary>target += weight * top / bottom.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal static void AddQuotient(
        Span<double> target, ReadOnlySpan<double> top, ReadOnlySpan<double> bottom, double weight)
    {
        var targets = MemoryMarshal.Cast<double, Vector<double>>(target);
        var above = MemoryMarshal.Cast<double, Vector<double>>(top);
        var below = MemoryMarshal.Cast<double, Vector<double>>(bottom);
        for (var i = 0; i < targets.Length; i++)
            targets[i] += above[i] * weight / below[i];
        for (var i = targets.Length * Vector<double>.Count; i < target.Length; i++)
            target[i] += top[i] * weight / bottom[i];
    }
}
