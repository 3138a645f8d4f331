using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Season;

/// <summary>
/// The constant that turned a spreader's counts into mass for some time, with its error sources. Two constants that share a
/// source, such as the gain of the scale they were found on, are wrong together.
/// </summary>
public sealed record SeasonConstant
{
    /// <summary>Identity.</summary>
    public required string Id { get; init; }

    /// <summary>The spreader's name, as in the logs.</summary>
    public required string Spreader { get; init; }

    /// <summary>Valid from this moment on, UTC.</summary>
    public required DateTimeOffset From { get; init; }

    /// <summary>Valid up to this moment, not included, UTC; null until another follows.</summary>
    public DateTimeOffset? To { get; init; }

    /// <summary>Mass for one count, kg; above 0. For a log of mass, kilograms delivered for one reported.</summary>
    public required double MassPerCount { get; init; }

    /// <summary>Standard uncertainties by source, as shares of the value.</summary>
    public required IReadOnlyList<Contribution> Relative { get; init; }

    /// <summary>A constant as a table of constants states it: an uncertainty of its own and one shared through a scale.</summary>
    /// <param name="id">Identity.</param>
    /// <param name="spreader">The spreader's name.</param>
    /// <param name="from">Valid from.</param>
    /// <param name="to">Valid up to; null until another follows.</param>
    /// <param name="massPerCount">kg for one count, above 0.</param>
    /// <param name="own">Standard uncertainty as a share, without the shared part; 0 or more.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom behind <paramref name="own"/>; infinite when known.</param>
    /// <param name="scale">Identity of the shared error, or null.</param>
    /// <param name="shared">Standard uncertainty of the shared error as a share; 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its limits.</exception>
    public static SeasonConstant Stated(
        string id, string spreader, DateTimeOffset from, DateTimeOffset? to, double massPerCount, double own, double degreesOfFreedom,
        string? scale, double shared)
    {
        if (!(massPerCount > 0) || double.IsInfinity(massPerCount)) throw new ArgumentOutOfRangeException(nameof(massPerCount), massPerCount, "Must be above 0.");
        if (!(own >= 0) || double.IsInfinity(own)) throw new ArgumentOutOfRangeException(nameof(own), own, "Must be 0 or more.");
        if (!(shared >= 0) || double.IsInfinity(shared)) throw new ArgumentOutOfRangeException(nameof(shared), shared, "Must be 0 or more.");
        var relative = new List<Contribution>();
        if (own > 0) relative.Add(new(ErrorSource.Normal($"constant:{id}", "calibration constant", degreesOfFreedom), own));
        if (shared > 0 && scale is not null) relative.Add(new(ErrorSource.Normal($"scale:{scale}:gain", $"scale {scale}: error in proportion to load"), shared));
        return new() { Id = id, Spreader = spreader, From = from, To = to, MassPerCount = massPerCount, Relative = relative };
    }
}
