using System.Diagnostics;
using Lanewright.Core.Tests;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Tests.Exchange;
using Lanewright.Files;

namespace Lanewright.App.Tests.Files;

public sealed class FileFuzzTests
{
    private static readonly string[] Yaml =
    [
        "format: sample/1\nspreader:\n  id: HR-104\nruns:\n- pulses: 3,021\n  gross: \"412.5 lb\"\n- {pulses: 3033, gross: 414 lb}\n",
        "# by hand\nnotes: |\n  first line\n  second: line\nlist:\n  - a\n  - 'b ''c'''\n  -\n    - d\nnothing: ~\n\"é\\u00e9\": >-\n  folded\n  text\n",
        "{a: [1, 2, {b: c}], d: {}, e: \"x\\ty\", ? f : g}\n",
    ];

    private static readonly string[] Csv =
    [
        "# sheet\nspreader.id,HR-104,,\nweighing.method,containers\n\nrun,pulses,seconds,gross (lb)\n1,\"3,021\",60,412.5\n2,3033,,414 kg\n",
        "sep=;\r\nspreader.id;HR-104\r\nruns[0].pulses;3021\r\nruns[1].pulses;3033\r\n\r\ncontainer;tare (kg)\r\nA;21,5\r\n\"B \"\"big\"\"\";22\r\n",
        "a.b.c\t1\na.b.d\t\"two\nlines\"\ngate\t2.5\"\nx[0]\t1\nx[1]\t2\n",
    ];

    [Fact]
    public void Damaged_yaml_gives_a_tree_or_a_finding_and_never_an_exception() => Damage(Yaml, YamlTree.Read, 20260201);

    [Fact]
    public void Damaged_csv_gives_a_tree_or_a_finding_and_never_an_exception() =>
        Damage(Csv, text => CsvTree.Read(text, CsvTree.DropTestTables), 20260202);

    [Fact]
    public void Damaged_texts_of_unknown_syntax_give_a_tree_or_a_finding() =>
        Damage([.. Yaml, .. Csv], text => SheetFile.Read(System.Text.Encoding.UTF8.GetBytes(text)), 20260203);

    private static void Damage(string[] seeds, Func<string, SheetTree> read, int seed)
    {
        var mutator = new TextMutator(seed);
        var (trees, refusals) = (0, 0);
        for (var i = 0; i < 4000; i++)
        {
            var text = mutator.Next(seeds);
            var clock = Stopwatch.StartNew();
            var tree = read(text);
            Assert.True(clock.Elapsed < Patience.Longest, text);
            Assert.True(tree.Root is not null || tree.Findings.Any(finding => finding.Severity == Severity.Stop), text);
            if (tree.Root is null) refusals++;
            else trees++;
        }

        // Both ways out must have been taken often, or the damage is too mild or too wild to prove anything.
        Assert.True(trees > 400 && refusals > 200, $"{trees} trees, {refusals} refusals");
    }
}
