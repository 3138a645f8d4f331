using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Lanewright.App.Tests.Exchange;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Tests.Exchange;
using Lanewright.Files;

namespace Lanewright.App.Tests.Mutation;

/// <summary>
/// Ten thousand mutated sheets on the whole road: no exception, no number that is not finite, and nothing wrong that is
/// accepted in silence. LANEWRIGHT_MUTATIONS=10 makes ten times as many, with seeds of their own.
/// </summary>
[Trait("culture", "own")]
public sealed class MutationTests
{
    private const int Seed = 20260901;

    private static readonly int Times = int.TryParse(
        Environment.GetEnvironmentVariable("LANEWRIGHT_MUTATIONS"), CultureInfo.InvariantCulture, out var times) ? times : 1;

    private static readonly SheetSyntax[] Syntaxes = Enum.GetValues<SheetSyntax>();

    // The examples, as typed, and generated sheets that use every option, in SI.
    private static readonly Base[] Bases =
    [
        .. Examples.Sheets.Select(name => new Base(name, Examples.Json(Examples.Tree(name).Root!)!)),
        .. SheetGen.Some(40).Select((sheet, i) => new Base($"generated {i}", JsonNode.Parse(SheetWriter.Write(sheet))!)),
    ];

    [Fact]
    public void Every_base_says_the_same_in_every_syntax()
    {
        foreach (var one in Bases)
        {
            foreach (var syntax in Syntaxes)
            {
                var road = Road.TakeShown(SheetTexts.Write(one.Sheet, syntax)!, syntax, one.Name);
                Assert.Empty(road.Reading.Findings);
                Assert.Equal(one.Canonical, road.Canonical);
            }
        }
    }

    [Fact]
    public void Seven_thousand_deliberate_changes_are_found_or_legal()
    {
        var mutator = new Mutator(Seed + Times);
        var counts = new SortedDictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < 7000 * Times; i++)
        {
            var one = Bases[i % Bases.Length];
            var mutation = mutator.Next(one.Sheet);
            var syntax = mutation.InJsonOnly ? SheetSyntax.Json : Syntaxes[i / Bases.Length % 3];
            var text = SheetTexts.Write(mutation.Sheet, syntax);
            if (text is null) (syntax, text) = (SheetSyntax.Json, SheetTexts.Write(mutation.Sheet, SheetSyntax.Json)!);
            if (mutation.TwinName is { } name)
                text = Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(text).Replace(Mutation.Twin, name, StringComparison.Ordinal));
            var what = $"{one.Name}: {mutation.Kind} at {mutation.Path}";
            var road = Road.TakeShown(text, syntax, what);
            if (Complaint(mutation, road, one) is { } complaint)
                Assert.Fail($"{what} ({syntax}): {complaint}\n{string.Join('\n', road.Findings.Take(20).Select(f => $"{f.Code} {f.Field}"))}\n{Encoding.UTF8.GetString(text)}");
            counts[mutation.Kind] = counts.GetValueOrDefault(mutation.Kind) + 1;
        }

        // Each kind of change must have been made often enough to prove something.
        Assert.True(counts.Count >= 12 && counts.Values.Min() >= 5, string.Join(", ", counts));
    }

    [Fact]
    public void Three_thousand_damaged_texts_give_a_report_or_findings()
    {
        var mutator = new TextMutator(Seed + 1 + Times);
        string[] texts =
        [
            .. Examples.Sheets.Select(name => File.ReadAllText(Examples.PathOf(name))),
            .. Bases.Skip(Examples.Sheets.Count).Take(6).Select(one => one.Canonical),
        ];
        var (sheets, refusals) = (0, 0);
        for (var i = 0; i < 3000 * Times; i++)
        {
            var road = Road.TakeShown(Encoding.UTF8.GetBytes(mutator.Next(texts)), null, $"damaged text {i}");
            if (road.Reading.Value is null) refusals++;
            else sheets++;
        }

        Assert.True(sheets > 300 && refusals > 300, $"{sheets} sheets, {refusals} refusals");
    }

    [Fact]
    public void Five_hundred_legal_sheets_of_any_size_give_finite_numbers()
    {
        foreach (var sheet in SheetGen.Some(500))
            Road.TakeShown(Encoding.UTF8.GetBytes(SheetWriter.Write(sheet)), SheetSyntax.Json, "a generated sheet");
    }

    [Theory]
    [InlineData("{\"runs\": [", "{\"pulses\": 1}, ", "]}")]
    [InlineData("runs:\n", "- {pulses: 1}\n", "")]
    [InlineData("run,pulses\n", "1,2\n", "")]
    [InlineData("", "x", "")]
    public void Fifty_megabytes_are_refused_without_being_read(string start, string piece, string end)
    {
        var text = new StringBuilder(start);
        while (text.Length < 50 * 1024 * 1024) text.Append(piece);
        var bytes = Encoding.UTF8.GetBytes(text.Append(end).ToString());
        Assert.Equal("read.too-large", Assert.Single(Road.Take(bytes, null).Findings).Code);
        using var stream = new MemoryStream(bytes);
        Assert.Equal("read.too-large", Assert.Single(SheetFile.Read(stream).Findings).Code);
        Assert.InRange(stream.Position, 1, 5 * 1024 * 1024);
    }

    // What is wrong with what came of a mutation; null when it is as it must be.
    private static string? Complaint(Mutation mutation, Road road, Base one)
    {
        var findings = road.Reading.Findings;
        switch (mutation.Outcome)
        {
            case Outcome.StopAtField:
                return Has(f => f.Field == mutation.Path && f.Severity is Severity.Stop) ? null : "no stop at the field";
            case Outcome.UnknownField:
                return Has(f => f.Field == mutation.Path && f.Code == "read.unknown-field") ? null : "the field passed as known";
            case Outcome.TwiceGiven:
                return Has(f => f.Field == mutation.Path && f.Code == "read.duplicate-field") ? null : "nobody noticed the twin";
            case Outcome.StopUnderField:
                return road.Findings.Any(f => f.Field.StartsWith(mutation.Path, StringComparison.Ordinal) && f.Severity is Severity.Stop)
                    ? null
                    : "no stop there";
            case Outcome.Refused:
                return !road.Reading.IsUsable && Has(f => f.Severity is Severity.Stop) ? null : "not refused";
            default:
                if (!road.Reading.IsUsable) return findings.Count > 0 ? null : "refused without a finding";
                return Elsewhere(one.Canonical, road.Canonical!, mutation.Path) is { } other ? $"{other} changed too" : null;
        }

        bool Has(Func<Finding, bool> test) => findings.Any(test);
    }

    // A place outside the mutated one where two canonical sheets differ.
    private static string? Elsewhere(string before, string after, string path)
    {
        var (was, now) = (Leaves(before), Leaves(after));
        return was.Keys.Union(now.Keys).FirstOrDefault(key =>
            was.GetValueOrDefault(key) != now.GetValueOrDefault(key)
            && !key.StartsWith(path, StringComparison.Ordinal) && !IsConsequence(key, path));
    }

    // Who sat in the truck is one answer made from two fields.
    private static bool IsConsequence(string key, string path) =>
        key.EndsWith("samePeople", StringComparison.Ordinal) && path.Contains(".truck.", StringComparison.Ordinal);

    private static Dictionary<string, string> Leaves(string json)
    {
        var leaves = new Dictionary<string, string>(StringComparer.Ordinal);
        Walk(JsonTree.Read(json).Root!);
        return leaves;

        void Walk(SheetNode node)
        {
            if (node.Children.Count == 0) leaves.Add(node.Path, node.Literal);
            foreach (var child in node.Children) Walk(child);
        }
    }

    private sealed record Base(string Name, JsonNode Sheet)
    {
        public string Canonical { get; } =
            SheetWriter.Write(SheetReader.Read(SheetFile.Read(SheetTexts.Write(Sheet, SheetSyntax.Yaml)!, SheetSyntax.Yaml)).Value!);
    }
}
