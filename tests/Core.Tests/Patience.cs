namespace Lanewright.Core.Tests;

/// <summary>How long a test waits before it calls something a hang.</summary>
internal static class Patience
{
    /// <summary>Far longer than the work takes, because other processes may hold the machine meanwhile.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromSeconds(30);
}
