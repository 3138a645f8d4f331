namespace Lanewright.Core.Uncertainty;

/// <summary>
/// One independent cause of error with an identity of its own: this scale's gain, this reading's rounding. Two results
/// that share a source are correlated through it; two different sources are independent. Equal when the identities are
/// the same text.
/// </summary>
public sealed class ErrorSource : IEquatable<ErrorSource>, IComparable<ErrorSource>
{
    private readonly ulong key;

    private ErrorSource(string id, string family, ErrorShape shape, double degreesOfFreedom, string? ensemble)
    {
        ArgumentException.ThrowIfNullOrEmpty(id);
        ArgumentException.ThrowIfNullOrEmpty(family);
        if (!(degreesOfFreedom > 0))
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "Must be positive.");
        Id = id;
        Family = family;
        Shape = shape;
        DegreesOfFreedom = degreesOfFreedom;
        Ensemble = ensemble;
        key = Hash(id);
    }

    /// <summary>The identity, stable across files and machines.</summary>
    public string Id { get; }

    /// <summary>What the budget calls it; sources of one family share a line there.</summary>
    public string Family { get; }

    /// <summary>The distribution of the error.</summary>
    public ErrorShape Shape { get; }

    /// <summary>Degrees of freedom behind its standard deviation; infinite when that is taken as known.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>
    /// Name of the set of observations it was estimated from together with others, or null. Sources of one ensemble
    /// enter the Welch-Satterthwaite sum as one term, since their spreads come from the same residuals.
    /// </summary>
    public string? Ensemble { get; }

    /// <summary>A normal error, by default of known spread.</summary>
    public static ErrorSource Normal(
        string id, string family, double degreesOfFreedom = double.PositiveInfinity, string? ensemble = null) =>
        new(id, family, ErrorShape.Normal, degreesOfFreedom, ensemble);

    /// <summary>An error anywhere between two limits with equal chance.</summary>
    public static ErrorSource Rectangular(
        string id, string family, double degreesOfFreedom = double.PositiveInfinity) =>
        new(id, family, ErrorShape.Rectangular, degreesOfFreedom, null);

    /// <summary>The sum of two equal rectangular errors, e.g. rounding at the start and at the end of a count.</summary>
    public static ErrorSource Triangular(
        string id, string family, double degreesOfFreedom = double.PositiveInfinity) =>
        new(id, family, ErrorShape.Triangular, degreesOfFreedom, null);

    /// <summary>An error that swings as a sine between two limits.</summary>
    public static ErrorSource Arcsine(
        string id, string family, double degreesOfFreedom = double.PositiveInfinity) =>
        new(id, family, ErrorShape.Arcsine, degreesOfFreedom, null);

    /// <summary>A source of any shape, as read back from a file.</summary>
    public static ErrorSource Of(
        string id, string family, ErrorShape shape, double degreesOfFreedom, string? ensemble) =>
        new(id, family, shape, degreesOfFreedom, ensemble);

    /// <inheritdoc/>
    public int CompareTo(ErrorSource? other)
    {
        if (ReferenceEquals(this, other)) return 0;
        if (other is null) return 1;
        var byKey = key.CompareTo(other.key);
        return byKey != 0 ? byKey : string.CompareOrdinal(Id, other.Id);
    }

    /// <inheritdoc/>
    public bool Equals(ErrorSource? other) => other is not null && CompareTo(other) == 0;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ErrorSource);

    /// <inheritdoc/>
    public override int GetHashCode() => key.GetHashCode();

    /// <inheritdoc/>
    public override string ToString() => Id;

    /// <summary>Order of identities.</summary>
    public static bool operator <(ErrorSource left, ErrorSource right) => left.CompareTo(right) < 0;

    /// <summary>Order of identities.</summary>
    public static bool operator >(ErrorSource left, ErrorSource right) => left.CompareTo(right) > 0;

    /// <summary>Order of identities.</summary>
    public static bool operator <=(ErrorSource left, ErrorSource right) => left.CompareTo(right) <= 0;

    /// <summary>Order of identities.</summary>
    public static bool operator >=(ErrorSource left, ErrorSource right) => left.CompareTo(right) >= 0;

    /// <summary>Same identity.</summary>
    public static bool operator ==(ErrorSource? left, ErrorSource? right) =>
        left is null ? right is null : left.Equals(right);

    /// <summary>Different identities.</summary>
    public static bool operator !=(ErrorSource? left, ErrorSource? right) => !(left == right);

    // FNV-1a, 64 bit: only orders the sources; ties are settled by the text itself.
    private static ulong Hash(string text)
    {
        var hash = 14695981039346656037UL;
        foreach (var c in text)
            hash = unchecked((hash ^ c) * 1099511628211UL);
        return hash;
    }
}
