using System.Text.Json;
using Lanewright.Core.Exchange;

namespace Lanewright.Core.Tests.Exchange;

/// <summary>What a person is told of the value keyed in and read back, however it is written.</summary>
public sealed class LiveKeyedTests
{
    [Theory]
    [InlineData("en-US", "12.1 pulse/lb", "12.1", "12.10 pulse/lb", 0, "")]
    [InlineData("de-DE", "12,1 pulse/lb", "12,1", "12,10", 0, "")]
    [InlineData("en-US", "12.1 pulse/lb", "21.1", "21.1", 1, "The answer says 12.1")]
    [InlineData("en-US", "12.1 pulse/lb", "12.1", "1.21", 1, "the controller shows 1.21")]
    [InlineData("de-DE", "12,1 pulse/lb", "12,2", "12,3", 2, "12,2 was keyed in, but the controller shows 12,3")]
    [InlineData("en-US", "12.1 pulse/lb", "twelve", "", 1, "'twelve' was read; a number in pulse/lb was expected")]
    [InlineData("en-US", "", "", "", 0, "")]
    public void Differences_are_said(string culture, string advised, string keyed, string readBack, int count, string part)
    {
        var json = JsonSerializer.Serialize(new { culture, unit = "pulse/lb", advised, keyed, readBack, fields = new { } });

        using var answer = JsonDocument.Parse(LiveSheet.Keyed(json));

        var say = answer.RootElement.GetProperty("say").EnumerateArray().Select(one => one.GetString()!).ToList();
        Assert.Equal(count, say.Count);
        Assert.Contains(part, string.Join(' ', say), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("12 pulse/kg", 1)]
    [InlineData("4.5 pulse/kg", 0)]
    public void Another_unit_is_converted_before_it_is_compared(string keyed, int count)
    {
        // 1 pulse/g is 1000 pulse/kg, so 0.0045 pulse/g is 4.5 pulse/kg, exactly.
        var json = JsonSerializer.Serialize(
            new { culture = "en-US", unit = "pulse/kg", advised = "4.5", keyed, readBack = "0.0045 pulse/g", fields = new { } });

        using var answer = JsonDocument.Parse(LiveSheet.Keyed(json));

        Assert.Equal(2 * count, answer.RootElement.GetProperty("say").GetArrayLength());
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("{\"unit\":\"no unit\",\"keyed\":\"1\"}")]
    public void Whatever_is_sent_is_answered(string json) =>
        Assert.Equal("{\"say\":[]}", LiveSheet.Keyed(json));
}
