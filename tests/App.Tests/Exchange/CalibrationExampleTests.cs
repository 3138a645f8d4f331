using Lanewright.App.Tests.Commands;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Tests;
using Lanewright.Files;

namespace Lanewright.App.Tests.Exchange;

/// <summary>The example files of the other calibrations.</summary>
public sealed class CalibrationExampleTests
{
    public static TheoryData<string> Files => [.. Names];

    private static IEnumerable<string> Names =>
        Directory.GetFiles(Repository.File("examples", "calibrations")).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal);

    [Theory]
    [MemberData(nameof(Files))]
    public void An_example_is_invented_and_answered_and_text_and_json_agree(string name)
    {
        var path = Repository.File("examples", "calibrations", name);
        var text = CommandLine.Run("analyse", path);
        var json = CommandLine.Run("analyse", path, "--json");
        Assert.Equal((0, "", 0, ""), (text.Code, text.Errors, json.Code, json.Errors));
        Assert.True(json.Json.GetProperty("usable").GetBoolean());
        Assert.True(json.Json.GetProperty("invented").GetBoolean());
        foreach (var figure in json.Json.GetProperty("figures").EnumerateArray())
            Assert.Contains(figure.GetProperty("text").GetString()!, text.Output, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void In_german_and_in_si_units_the_values_are_the_same(string name)
    {
        var path = Repository.File("examples", "calibrations", name);
        var first = CommandLine.Run("analyse", path, "--json").Json.GetProperty("figures").EnumerateArray().Select(f => f.GetProperty("si").GetDouble());
        var other = CommandLine.Run("analyse", path, "--json", "--culture", "de-DE", "--units", "si")
            .Json.GetProperty("figures").EnumerateArray().Select(f => f.GetProperty("si").GetDouble());
        Assert.Equal(first, other);
    }

    [Fact]
    public void Every_kind_has_an_example_and_a_schema()
    {
        var shown = Names.Select(name => Calibration.KindOf(SheetFile.Read(Repository.File("examples", "calibrations", name)))!.Word).ToHashSet();
        Assert.All(Calibration.Kinds, kind => Assert.Contains(kind.Word, shown));
        Assert.All(Calibration.Kinds, kind => Assert.Equal(0, CommandLine.Run("schema", kind.Word).Code));
    }
}
