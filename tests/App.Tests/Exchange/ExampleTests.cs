using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Spreading;
using Lanewright.Core.Tests.Exchange;

namespace Lanewright.App.Tests.Exchange;

public sealed class ExampleTests
{
    public static TheoryData<string> Sheets => [.. Examples.Sheets];

    [Theory]
    [MemberData(nameof(Sheets))]
    public void An_example_reads_without_findings_and_comes_back_equal_from_its_canonical_form(string name)
    {
        var first = SheetReader.Read(Examples.Tree(name));
        Assert.Empty(first.Findings);
        var text = SheetWriter.Write(first.Value!);
        var second = SheetReader.Read(JsonTree.Read(text));
        Assert.Empty(second.Findings);
        Assert.Null(Deep.Difference(first.Value, second.Value));
        Assert.Equal(text, SheetWriter.Write(second.Value!));
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void An_example_says_that_it_is_invented_and_gives_an_answer(string name)
    {
        var sheet = SheetReader.Read(Examples.Tree(name)).Value!;
        Assert.True(sheet.Invented);
        var report = SheetAnalysis.Analyse(sheet);
        Assert.True(report.Usable, string.Join('\n', report.Findings.Where(f => f.Severity is Severity.Stop)));
    }

    [Fact]
    public void There_are_examples_of_every_syntax_and_kind()
    {
        Assert.Equal([".csv", ".json", ".yaml"], Examples.All.Select(Path.GetExtension).Distinct().Order(StringComparer.Ordinal));
        Assert.Equal(2, Examples.Sheets.Select(name => SheetReader.Read(Examples.Tree(name)).Value!.Kind).Distinct().Count());
        Assert.NotEmpty(Examples.Plans);
    }
}
