namespace Lanewright.Core.Quantities;

/// <summary>The check that every conversion between a rate per lane and a rate per area makes.</summary>
internal static class LaneWidth
{
    internal static double Check(Length laneWidth) =>
        laneWidth.Si > 0
            ? laneWidth.Si
            : throw new ArgumentOutOfRangeException(nameof(laneWidth), laneWidth.Si, "A lane must be wider than 0 m.");
}
