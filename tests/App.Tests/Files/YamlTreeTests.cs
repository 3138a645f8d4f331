using System.Diagnostics;
using Lanewright.Core.Tests;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Files;

namespace Lanewright.App.Tests.Files;

public sealed class YamlTreeTests
{
    [Fact]
    public void Groups_lists_and_scalars_keep_order_literal_path_and_place()
    {
        var tree = YamlTree.Read(
            "# invented\nspreader:\n  id: HR-104\nruns:\n- pulses: 3,021\n  gross: \"412.5 lb\"\n- {pulses: 3033}\nat: 2026-01-31\n");
        Assert.Empty(tree.Findings);
        Assert.Equal(["spreader", "runs", "at"], tree.Root!.Children.Select(child => child.Name));
        var gross = tree.Root.Find("runs")!.Children[0].Find("gross")!;
        Assert.Equal(("runs[0].gross", "412.5 lb", 6, 10), (gross.Path, gross.Literal, gross.Line, gross.Column));
        Assert.Equal("3033", tree.Root.Find("runs")!.Children[1].Find("pulses")!.Literal);
        Assert.Equal("2026-01-31", tree.Root.Find("at")!.Literal);
    }

    [Fact]
    public void Scalars_are_texts_and_only_an_unquoted_blank_tilde_or_null_is_nothing()
    {
        var root = YamlTree.Read("a: 1.50\nb: yes\nc: 0x1F\nd: ~\ne:\nf: null\ng: \"null\"\nh: ''\n").Root!;
        Assert.Equal("1.50,yes,0x1F,,,,null,", string.Join(',', root.Children.Select(child => child.Literal)));
        Assert.Equal(
            [NodeKind.Text, NodeKind.Text, NodeKind.Text, NodeKind.Null, NodeKind.Null, NodeKind.Null, NodeKind.Text, NodeKind.Text],
            root.Children.Select(child => child.Kind));
    }

    [Theory]
    [InlineData("a: &x 1\nb: 2\n", "read.yaml-alias", 1)]
    [InlineData("a: 1\nb: *x\n", "read.yaml-alias", 2)]
    [InlineData("a: !!binary aGk=\n", "read.yaml-tag", 1)]
    [InlineData("a: 1\n---\na: 2\n", "read.several-documents", 2)]
    [InlineData("? [a, b]\n: 1\n", "read.yaml-name", 1)]
    [InlineData("a:\n  : 1\n", "read.yaml-name", 2)]
    [InlineData("a: 1\nb: [1, 2", "read.cut-off", 2)]
    [InlineData("a:\n\tb: 1\n", "read.yaml-tab", 2)]
    [InlineData("a: \"\\ud800\"\n", "read.yaml-syntax", 1)]
    [InlineData("a: [1, 2\nb: 3\n", "read.yaml-syntax", 2)]
    [InlineData("a: b: c\n", "read.yaml-syntax", 1)]
    [InlineData("a: 'open\n", "read.cut-off", 1)]
    [InlineData("a: @x\n", "read.yaml-syntax", 1)]
    public void What_a_sheet_does_not_use_is_refused_with_its_line(string text, string code, int line)
    {
        var tree = YamlTree.Read(text);
        Assert.Null(tree.Root);
        var finding = Assert.Single(tree.Findings);
        Assert.Equal((code, Severity.Stop), (finding.Code, finding.Severity));
        Assert.Equal(line, finding.Values.Single(value => value.Name == "line").Si);
    }

    [Fact]
    public void A_name_given_twice_is_reported()
    {
        var finding = Assert.Single(YamlTree.Read("g:\n  a: 1\n  a: 2\n").Findings);
        Assert.Equal(("read.duplicate-field", "g.a"), (finding.Code, finding.Field));
    }

    [Theory]
    [InlineData("")]
    [InlineData("# only a comment\n")]
    [InlineData("\uFEFF\n")]
    public void A_text_without_a_document_is_empty(string text) =>
        Assert.Equal("read.empty", Assert.Single(YamlTree.Read(text).Findings).Code);

    [Fact]
    public void A_small_text_cannot_grow_through_aliases()
    {
        var lines = "a: &a [x, x, x, x, x, x, x, x, x]\n"
            + string.Concat(Enumerable.Range(1, 9).Select(i => $"a{i}: &a{i} [*a, *a, *a, *a, *a, *a, *a, *a]\n"));
        Assert.Equal("read.yaml-alias", Assert.Single(YamlTree.Read(lines).Findings).Code);
    }

    [Fact]
    public void Depth_and_size_are_limited_and_answered_quickly()
    {
        var clock = Stopwatch.StartNew();
        Assert.NotNull(YamlTree.Read(new string('[', 32) + new string(']', 32)).Root);
        Assert.Equal("read.too-deep", Assert.Single(YamlTree.Read(new string('[', 33) + new string(']', 33)).Findings).Code);
        Assert.Equal("read.too-deep", Assert.Single(YamlTree.Read(new string('[', 1_000_000)).Findings).Code);
        Assert.Equal("read.too-deep", Assert.Single(YamlTree.Read(string.Concat(Enumerable.Repeat("- ", 100_000))).Findings).Code);
        Assert.Equal("read.too-many-parts", Assert.Single(YamlTree.Read(string.Concat(Enumerable.Repeat("- a\n", 200_000))).Findings).Code);
        Assert.Equal("read.too-large", Assert.Single(YamlTree.Read(new string('a', 50 * 1024 * 1024)).Findings).Code);
        Assert.True(clock.Elapsed < Patience.Longest, $"{clock.Elapsed}");
    }
}
