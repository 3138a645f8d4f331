namespace Lanewright.App.Tests;

public sealed class SmokeTests
{
    [Fact]
    public void Runs() => Assert.Equal(4, 2 + 2);
}
