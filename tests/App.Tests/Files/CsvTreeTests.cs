using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Files;

namespace Lanewright.App.Tests.Files;

public sealed class CsvTreeTests
{
    // Invented numbers.
    private const string Sheet = """"
        # a comment
        spreader.id,HR-104,,
        weighing.method,containers,,
        density,1180,kg/m3,

        run,pulses,seconds,gross (lb)
        1,"3,021",60,412.5
        2,3033,,414 kg

        container,tare,note
        2,21.5 lb
        1,22,"""big"""
        2,23
        """";

    [Fact]
    public void Fields_and_tables_become_groups_and_lists()
    {
        var tree = Read(Sheet);
        Assert.Empty(tree.Findings);
        Assert.Equal(
            [
                "spreader.id=HR-104", "weighing.method=containers", "density=1180 kg/m3",
                "runs[0].id=1", "runs[0].pulses=3,021", "runs[0].seconds=60", "runs[0].gross=412.5 lb",
                "runs[0].containers[0].tare=22", "runs[0].containers[0].note=\"big\"",
                "runs[1].id=2", "runs[1].pulses=3033", "runs[1].gross=414 kg",
                "runs[1].containers[0].tare=21.5 lb", "runs[1].containers[1].tare=23",
            ],
            Leaves(tree.Root!));
        Assert.Equal(7, tree.Root!.Find("runs")!.Children[0].Find("pulses")!.Line);
    }

    [Theory]
    [InlineData(';')]
    [InlineData('\t')]
    public void The_separator_is_found_out(char separator)
    {
        var text = Sheet.Replace("\"3,021\"", "3021", StringComparison.Ordinal).Replace(',', separator);
        Assert.Equal(
            Leaves(Read(Sheet).Root!).Select(leaf => leaf.Replace("3,021", "3021", StringComparison.Ordinal)),
            Leaves(Read(text).Root!));
    }

    [Theory]
    [InlineData("sep=;\r\nspreader.id;HR-104\r\n")]
    [InlineData("\uFEFFspreader.id;\"HR-104\"\r\n")]
    [InlineData("  spreader.id ;\t HR-104 ;;;\n")]
    [InlineData("\"spreader.id\";HR-104")]
    public void What_spreadsheets_add_is_understood(string text) =>
        Assert.Equal(["spreader.id=HR-104"], Leaves(Read(text).Root!));

    [Fact]
    public void A_decimal_comma_goes_with_a_semicolon() =>
        Assert.Equal(["a=412,5 kg", "b=1"], Leaves(Read("a;412,5 kg\nb;1\n").Root!));

    [Fact]
    public void An_inch_mark_inside_a_cell_stands() =>
        Assert.Equal(["gate=2.5\" open", "b=1"], Leaves(Read("gate,2.5\" open\nb,1\n").Root!));

    [Fact]
    public void Lists_can_be_written_field_by_field_and_a_table_can_go_on_later()
    {
        var tree = Read("runs[0].pulses,1\nruns[1].pulses,2\n\nrun,pulses\n,3\n\nrun,pulses\n9,4\n");
        Assert.Empty(tree.Findings);
        Assert.Equal(
            ["runs[0].pulses=1", "runs[1].pulses=2", "runs[2].pulses=3", "runs[3].id=9", "runs[3].pulses=4"],
            Leaves(tree.Root!));
    }

    [Theory]
    [InlineData("a,1\na,2\n", "read.duplicate-field", 2)]
    [InlineData("a,1\na.b,2\n", "read.csv-clash", 2)]
    [InlineData("a.b,1\na,2\n", "read.csv-clash", 2)]
    [InlineData("a.b,1\na[0],2\n", "read.csv-clash", 2)]
    [InlineData("a[1],2\n", "read.csv-order", 1)]
    [InlineData("gross,3,021\n", "read.csv-surplus", 1)]
    [InlineData("gross,3,021 kg\n", "read.csv-surplus", 1)]
    [InlineData("a,1\nid,HR,104,x\n", "read.csv-surplus", 2)]
    [InlineData("run,pulses\n1,3021,60\n", "read.csv-surplus", 2)]
    [InlineData("run,pulses,,gross\n1,3021,60,4\n", "read.csv-surplus", 2)]
    [InlineData("run,pulses\n1,2\n\ncontainer,tare\n3,2\n", "read.csv-owner", 5)]
    [InlineData("drop test,1\n", "read.csv-name", 1)]
    [InlineData("a[x],1\n", "read.csv-name", 1)]
    [InlineData("a..b,1\n", "read.csv-name", 1)]
    [InlineData("run,pul ses\n1,2\n", "read.csv-name", 1)]
    [InlineData(",1\n", "read.csv-name", 1)]
    public void A_row_without_a_meaning_is_reported_and_the_rest_is_read(string text, string code, int line)
    {
        var tree = Read(text);
        var finding = Assert.Single(tree.Findings);
        Assert.Equal((code, Severity.Stop), (finding.Code, finding.Severity));
        Assert.Equal(line, finding.Values.Single(value => value.Name == "line").Si);
        Assert.NotNull(tree.Root);
    }

    [Theory]
    [InlineData("a,1\nb,\"open\nc,3\n", 2)]
    [InlineData("a,1\nb,\"closed\"x\nc,3\n", 2)]
    [InlineData("a,b\"c,\"open\nd,1\n", 1)]
    public void Quotes_that_do_not_match_refuse_the_text(string text, int line)
    {
        var tree = Read(text);
        Assert.Null(tree.Root);
        var finding = Assert.Single(tree.Findings);
        Assert.Equal("read.csv-quotes", finding.Code);
        Assert.Equal(line, finding.Values.Single(value => value.Name == "line").Si);
    }

    [Fact]
    public void Size_depth_and_number_are_limited()
    {
        Assert.Equal("read.empty", Assert.Single(Read("\n,,\n# x\n").Findings).Code);
        Assert.Equal("read.too-large", Assert.Single(Read(new string('a', 50 * 1024 * 1024)).Findings).Code);
        Assert.Equal("read.csv-name", Assert.Single(Read(string.Concat(Enumerable.Repeat("a.", 1_000_000)) + "a,1").Findings).Code);
        Assert.Equal("read.csv-name", Assert.Single(Read("a" + string.Concat(Enumerable.Repeat("[0]", 1_000_000)) + ",1").Findings).Code);
        var rows = string.Concat(Enumerable.Range(0, 120_000).Select(i => $"a{i},1\n"));
        Assert.Equal("read.too-many-parts", Assert.Single(Read(rows).Findings).Code);
        Assert.Equal(SheetLimits.Findings + 1, Read(string.Concat(Enumerable.Repeat("a,1\n", 3000))).Findings.Count);
    }

    private static SheetTree Read(string text) => CsvTree.Read(text, CsvTree.DropTestTables);

    private static IEnumerable<string> Leaves(SheetNode node) =>
        node.Children.Count == 0 ? [$"{node.Path}={node.Literal}"] : node.Children.SelectMany(Leaves);
}
