using System.Collections;
using System.Reflection;

namespace Lanewright.Core.Tests.Exchange;

/// <summary>Compares records by what they hold, lists included, bit for bit.</summary>
internal static class Deep
{
    /// <summary>The first difference, by path; null when there is none.</summary>
    public static string? Difference(object? left, object? right, string path = "")
    {
        if (left is null || right is null) return ReferenceEquals(left, right) ? null : $"{path}: {left} and {right}";
        if (left is IEnumerable x and not string && right is IEnumerable y)
            return Lists([.. x.Cast<object?>()], [.. y.Cast<object?>()], path);
        if (left.GetType() != right.GetType()) return $"{path}: {left.GetType().Name} and {right.GetType().Name}";
        if (left is double a && right is double b)
            return BitConverter.DoubleToInt64Bits(a) == BitConverter.DoubleToInt64Bits(b) ? null : $"{path}: {a:R} and {b:R}";
        var type = left.GetType();
        if (type.IsPrimitive || type.IsEnum || left is string or DateOnly) return left.Equals(right) ? null : $"{path}: {left} and {right}";
        if (type == typeof(Core.Quantities.Unit)) return ReferenceEquals(left, right) ? null : $"{path}: {left} and {right}";
        // A quantity is its value in SI; its other properties are computed from it.
        if (type.GetProperty("Si") is { } si && type.IsValueType)
            return Difference(si.GetValue(left), si.GetValue(right), path);
        foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance))
        {
            if (property.GetMethod is null || property.GetIndexParameters().Length > 0 || property.Name == "EqualityContract") continue;
            // Computed from the others.
            if (property.SetMethod is null) continue;
            if (Difference(property.GetValue(left), property.GetValue(right), $"{path}.{property.Name}") is { } found)
                return found;
        }

        return null;
    }

    private static string? Lists(object?[] left, object?[] right, string path)
    {
        if (left.Length != right.Length) return $"{path}: {left.Length} and {right.Length} items";
        for (var i = 0; i < left.Length; i++)
            if (Difference(left[i], right[i], $"{path}[{i}]") is { } found) return found;
        return null;
    }
}
