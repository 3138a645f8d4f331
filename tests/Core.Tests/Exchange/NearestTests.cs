using Lanewright.Core.Exchange;

namespace Lanewright.Core.Tests.Exchange;

public sealed class NearestTests
{
    [Theory]
    [InlineData("pulses", "pulses", 0)]
    [InlineData("pulse", "pulses", 1)]
    [InlineData("pusles", "pulses", 1)]
    [InlineData("Pulses", "pulses", 0)]
    [InlineData("gate-opening", "gateopening", 0)]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("", "abc", 3)]
    public void Distance_counts_changes_and_swaps(string left, string right, int distance)
    {
        Assert.Equal(distance, Nearest.Distance(left, right));
        Assert.Equal(distance, Nearest.Distance(right, left));
    }
}
