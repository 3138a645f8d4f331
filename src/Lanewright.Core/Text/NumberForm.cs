namespace Lanewright.Core.Text;

/// <summary>How many digits of a number are written. The default value is the shortest text that reads back the same.
/// </summary>
public readonly record struct NumberForm
{
    private const int MostDigits = 17;

    private NumberForm(int? decimals, int? significant)
    {
        FixedDecimals = decimals;
        SignificantDigits = significant;
    }

    /// <summary>The shortest text that reads back as the same value.</summary>
    public static NumberForm RoundTrip => default;

    internal int? FixedDecimals { get; }

    internal int? SignificantDigits { get; }

    /// <summary>So many digits after the decimal mark, 0 to 17.</summary>
    public static NumberForm Decimals(int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, MostDigits);
        return new(count, null);
    }

    /// <summary>So many digits from the first that is not zero, 1 to 17; zeros at the end are written.</summary>
    public static NumberForm Significant(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, MostDigits);
        return new(null, count);
    }
}
