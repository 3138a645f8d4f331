using System.Globalization;

namespace Lanewright.Core.Tests;

/// <summary>The second pass of <c>./test</c> proves something only if its threads really have the other culture.</summary>
public sealed class TestCultureTests
{
    private static readonly string? Wanted = Environment.GetEnvironmentVariable("LANEWRIGHT_TEST_CULTURE");

    [Fact]
    public void The_culture_that_the_pass_names_is_the_culture_of_its_threads()
    {
        Assert.SkipWhen(string.IsNullOrEmpty(Wanted), "LANEWRIGHT_TEST_CULTURE names no culture; ./test sets it.");
        Assert.Equal(Wanted, CultureInfo.CurrentCulture.Name);
        var name = "";
        var thread = new Thread(() => name = CultureInfo.CurrentCulture.Name);
        thread.Start();
        thread.Join();
        Assert.Equal(Wanted, name);
    }

    [Fact]
    public void A_german_pass_has_a_decimal_comma()
    {
        Assert.SkipUnless(Wanted == "de-DE", "This is not the German pass.");
#pragma warning disable CA1305 // Specify IFormatProvider: the culture of the thread is what is tested.
        Assert.Equal("1,5", 1.5.ToString());
#pragma warning restore CA1305
    }
}
