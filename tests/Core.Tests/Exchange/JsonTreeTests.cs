using System.Text;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;

namespace Lanewright.Core.Tests.Exchange;

public sealed class JsonTreeTests
{
    [Fact]
    public void Names_items_and_scalars_keep_order_literal_path_and_place()
    {
        var root = Tree("{\"b\": 1,\n \"a\": [\"x\", {\"n\": 1.50}],\n \"t\": true, \"z\": null}");

        Assert.Equal(["b", "a", "t", "z"], root.Children.Select(child => child.Name));
        var number = root.Find("a")!.Children[1].Find("n")!;
        Assert.Equal("a[1].n", number.Path);
        Assert.Equal((NodeKind.Number, "1.50"), (number.Kind, number.Literal));
        Assert.Equal((2, 19), (number.Line, number.Column));
        Assert.Equal((NodeKind.Flag, "true"), (root.Find("t")!.Kind, root.Find("t")!.Literal));
        Assert.Equal(NodeKind.Null, root.Find("z")!.Kind);
        Assert.Equal("", root.Path);
    }

    [Fact]
    public void Columns_count_characters_not_bytes()
    {
        var root = Tree("{\"å\": \"😀\", \"b\": 1}");
        Assert.Equal((1, 17), (root.Find("b")!.Line, root.Find("b")!.Column));
    }

    [Fact]
    public void Comments_trailing_commas_and_a_byte_order_mark_are_allowed()
    {
        var tree = JsonTree.Read("\uFEFF// by hand\n{\"a\": [1, 2,], /* b */ }");
        Assert.Empty(tree.Findings);
        Assert.Equal(2, tree.Root!.Find("a")!.Children.Count);
    }

    [Fact]
    public void A_name_given_twice_is_reported_and_the_first_value_is_kept()
    {
        var tree = JsonTree.Read("{\"g\": {\"a\": 1,\n \"a\": {\"x\": [2]}, \"b\": 3}}");

        var finding = Assert.Single(tree.Findings);
        Assert.Equal(("read.duplicate-field", Severity.Stop, "g.a"), (finding.Code, finding.Severity, finding.Field));
        Assert.Equal((2, 2), Where(finding));
        Assert.Equal(["a", "b"], tree.Root!.Find("g")!.Children.Select(child => child.Name));
        Assert.Equal("1", tree.Root.Find("g")!.Find("a")!.Literal);
    }

    [Theory]
    [InlineData("{\"a\": NaN}", "read.json-syntax", 1, 7)]
    [InlineData("{\n\"a\": 1,\n\"b\": -Infinity}", "read.json-syntax", 3, 7)]
    [InlineData("{\"a\": 1", "read.cut-off", 1, 8)]
    [InlineData("{\"a\": \"x", "read.cut-off", 1, 9)]
    [InlineData("{\"a\":\n [1, 2", "read.cut-off", 2, 7)]
    [InlineData("{\"a\": 01}", "read.json-syntax", 1, 8)]
    [InlineData("{'a': 1}", "read.json-syntax", 1, 2)]
    [InlineData("{\"a\": 1} {\"b\": 2}", "read.json-syntax", 1, 10)]
    [InlineData("{\"a\": \"\\ud800\"}", "read.bad-characters", 1, 7)]
    [InlineData("weighing: yes", "read.json-syntax", 1, 1)]
    public void A_broken_text_gives_a_finding_with_its_place(string text, string code, int line, int column)
    {
        var tree = JsonTree.Read(text);
        var finding = Assert.Single(tree.Findings);
        Assert.Equal(code, finding.Code);
        Assert.Equal((line, column), Where(finding));
        Assert.Null(tree.Root);
    }

    [Fact]
    public void Half_a_character_is_found_where_it_is()
    {
        var finding = Assert.Single(JsonTree.Read("{\"a\":\n \"\ud800\"}").Findings);
        Assert.Equal("read.bad-characters", finding.Code);
        Assert.Equal((2, 3), Where(finding));
    }

    [Theory]
    [InlineData("")]
    [InlineData(" \n\t ")]
    [InlineData("\uFEFF")]
    public void An_empty_text_is_said_to_be_empty(string text) =>
        Assert.Equal("read.empty", Assert.Single(JsonTree.Read(text).Findings).Code);

    [Fact]
    public void Bytes_that_are_not_utf8_are_found_where_they_are()
    {
        byte[] text = [.. "{\n\"ab\": \""u8, 0xFC, .. "\"}"u8];
        var finding = Assert.Single(JsonTree.Read(text).Findings);
        Assert.Equal("read.bad-characters", finding.Code);
        Assert.Equal((2, 8), Where(finding));
    }

    [Fact]
    public void Utf16_is_refused_as_not_utf8() =>
        Assert.Equal(
            "read.bad-characters",
            Assert.Single(JsonTree.Read(Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes("{}")).ToArray()).Findings).Code);

    [Fact]
    public void Thirty_two_levels_are_read_and_thirty_three_refused()
    {
        Assert.NotNull(JsonTree.Read(new string('[', 32) + new string(']', 32)).Root);

        var tree = JsonTree.Read(new string('[', 33) + new string(']', 33));
        Assert.Null(tree.Root);
        Assert.Equal("read.too-deep", Assert.Single(tree.Findings).Code);
        Assert.Equal("read.too-deep", Assert.Single(JsonTree.Read(new string('[', 3_000_000)).Findings).Code);
    }

    [Fact]
    public void A_text_of_fifty_megabytes_is_refused_with_its_size_and_the_limit()
    {
        var finding = Assert.Single(JsonTree.Read(new byte[50 * 1024 * 1024]).Findings);
        Assert.Equal("read.too-large", finding.Code);
        Assert.Equal(["50.0 MB", "4.0 MB"], finding.Values.Select(value => value.Word));
        Assert.Equal("read.too-large", Assert.Single(JsonTree.Read(new string('x', 50 * 1024 * 1024)).Findings).Code);
    }

    [Fact]
    public void More_than_a_hundred_thousand_parts_are_refused()
    {
        var tree = JsonTree.Read("[" + string.Concat(Enumerable.Repeat("0,", 100_001)) + "0]");
        Assert.Equal("read.too-many-parts", Assert.Single(tree.Findings).Code);
        Assert.Null(tree.Root);
    }

    [Fact]
    public void A_flood_of_repeated_names_is_listed_up_to_the_limit_and_counted()
    {
        var tree = JsonTree.Read("{" + string.Concat(Enumerable.Repeat("\"a\":0,", 2001)) + "}");
        Assert.Equal(SheetLimits.Findings + 1, tree.Findings.Count);
        Assert.Equal(1500, tree.Findings[^1].Values[0].Si);
    }

    [Fact]
    public void A_very_long_name_is_shortened_in_paths()
    {
        var root = Tree($"{{\"{new string('n', 1_000_000)}\": [1, 2, 3]}}");
        Assert.Equal(new string('n', 40) + "…[2]", root.Children[0].Children[2].Path);
    }

    internal static (int Line, int Column) Where(Finding finding) =>
        ((int)finding.Values.Single(value => value.Name == "line").Si,
         (int)finding.Values.Single(value => value.Name == "column").Si);

    private static SheetNode Tree(string text)
    {
        var tree = JsonTree.Read(text);
        Assert.Empty(tree.Findings);
        return tree.Root!;
    }
}
