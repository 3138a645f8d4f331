using System.Diagnostics;
using System.Text;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;

namespace Lanewright.Core.Tests.Exchange;

public sealed class JsonFuzzTests
{
    private static readonly string[] Seeds =
    [
        """{"format": "sample/1", "spreader": {"id": "HR-104"}, "runs": [{"pulses": 3021, "gross": "412.5 lb"}]}""",
        "// by hand\n{\n  \"a\": [1, 2.5e3, -0, true, false, null,],\n  \"é\\u00e9\": \"\\ud83d\\ude00\", /* c */ \"b\": {}\n}\n",
        """{"runs": [{"pulses": "3,021"}, {"pulses": 12.5}], "date": "2026-01-31", "at": "2026-01-31T07:45:00-05:00"}""",
    ];

    [Fact]
    public void Damaged_texts_give_a_tree_or_a_finding_and_never_an_exception()
    {
        var mutator = new TextMutator(20260131);
        var (trees, refusals) = (0, 0);
        for (var i = 0; i < 4000; i++)
        {
            var text = mutator.Next(Seeds);
            var clock = Stopwatch.StartNew();
            var tree = JsonTree.Read(text);
            Assert.True(clock.Elapsed < Patience.Longest, text);
            Assert.True(tree.Root is not null || tree.Findings.Any(finding => finding.Severity == Severity.Stop), text);
            if (tree.Root is null) refusals++;
            else trees++;
        }

        // Both ways out must have been taken often, or the damage is too mild or too wild to prove anything.
        Assert.True(trees > 400 && refusals > 400, $"{trees} trees, {refusals} refusals");
    }

    [Fact]
    public void Damaged_bytes_give_a_tree_or_a_finding_and_never_an_exception()
    {
        var random = new Random(7);
        for (var i = 0; i < 3000; i++)
        {
            var bytes = Encoding.UTF8.GetBytes(Seeds[i % Seeds.Length]);
            for (var times = random.Next(1, 4); times > 0; times--) bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
            var tree = JsonTree.Read(bytes);
            Assert.True(tree.Root is not null || tree.Findings.Count > 0);
        }
    }
}
