namespace Lanewright.Storage.Tests;

public sealed class KillTests
{
    [Fact]
    public async Task Killing_the_server_25_times_while_clients_send_loses_and_doubles_nothing()
    {
        var tally = await Kills.RunAsync(25, 20261125, TestContext.Current.CancellationToken);
        Assert.True(tally.IsGood, $"{tally}");
        Assert.True(tally.Acknowledged > 100, $"{tally}");
    }
}
