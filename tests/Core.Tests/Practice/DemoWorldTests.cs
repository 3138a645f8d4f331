using System.Text.Json;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Practice;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Tests.Practice;

public sealed class DemoWorldTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly IReadOnlyList<PracticeEntry> World = DemoWorld.Make(20260901, Today);

    [Fact]
    public void The_same_seed_and_day_make_the_same_world_and_another_seed_another()
    {
        Assert.Equal(World, DemoWorld.Make(20260901, Today));
        Assert.NotEqual(World[0].Id, DemoWorld.Make(20260902, Today)[0].Id);
    }

    [Fact]
    public void Identities_are_unique_version_7_and_times_never_go_back()
    {
        Assert.Equal(World.Count, World.Select(e => e.Id).Distinct().Count());
        Assert.All(World, e => Assert.Equal(7, e.Id.Version));
        Assert.Equal(World.OrderBy(e => e.At).Select(e => e.At), World.Select(e => e.At));
        Assert.All(World, e => Assert.True(DateOnly.FromDateTime(e.At.UtcDateTime) <= Today));
    }

    [Fact]
    public void It_has_the_forty_spreaders_of_the_scenario()
    {
        var numbers = World.Where(e => e.Kind == "register.spreader")
            .Select(e => JsonDocument.Parse(e.Payload).RootElement.GetProperty("id").GetString()!).ToList();
        Assert.Equal(40, numbers.Count);
        Assert.Equal("HR-101", numbers[0]);
        Assert.Equal("HR-132", numbers[31]);
        Assert.Equal("FM-08", numbers[39]);
    }

    [Fact]
    public void Every_test_is_read_says_that_it_is_invented_and_most_can_be_used()
    {
        var tests = Tests().ToList();
        Assert.InRange(tests.Count, 80, 160);
        var usable = 0;
        foreach (var fields in tests)
        {
            var places = new FieldPlaces();
            foreach (var (path, text) in fields)
                places.Put(path, FieldPath.Read(path)!, new FieldPlaces.Spot(NodeKind.Text, 0, text));
            var reading = SheetReader.Read(places.Build());
            Assert.True(reading.IsUsable, string.Join("; ", reading.Findings.Select(f => $"{f.Field} {f.Code}")));
            Assert.Empty(reading.Findings);
            Assert.True(reading.Value!.Invented);
            var report = SheetAnalysis.Analyse(reading.Value);
            Assert.NotEmpty(report.Results);
            if (report.Findings.All(f => f.Severity is not Severity.Stop)) usable++;
        }

        Assert.InRange(usable, tests.Count * 85 / 100, tests.Count);
    }

    [Fact]
    public void Every_other_calibration_is_read_and_can_be_used()
    {
        var others = Tests(drop: false).ToList();
        Assert.InRange(others.Count, 20, 60);
        foreach (var fields in others)
        {
            var tree = TypedFields.Of(fields).Tree;
            var reading = Calibration.Read(tree, Calibration.KindOf(tree)!);
            Assert.True(reading.IsUsable, string.Join("; ", reading.Findings.Select(f => $"{f.Field} {f.Code}")));
            Assert.True(reading.Value!.Head.Invented);
            Assert.True(reading.Value.Analyse().Usable);
        }
    }

    private static string KindOf(PracticeEntry begin) =>
        JsonDocument.Parse(begin.Payload).RootElement.GetProperty("kind").GetString()!;

    private static IEnumerable<Dictionary<string, string>> Tests(bool drop = true) =>
        World.Where(e => e.Kind is "test.begin" or "test.field").GroupBy(e => e.Subject)
            .Where(g => (KindOf(g.First(e => e.Kind == "test.begin")) == "drop-test") == drop).Select(g =>
        {
            var fields = new Dictionary<string, string>();
            if (!drop) fields["kind"] = KindOf(g.First(e => e.Kind == "test.begin"));
            foreach (var entry in g)
            {
                var payload = JsonDocument.Parse(entry.Payload).RootElement;
                if (entry.Kind == "test.field")
                    fields[payload.GetProperty("path").GetString()!] = payload.GetProperty("text").GetString()!;
                else
                    foreach (var field in payload.GetProperty("fields").EnumerateObject())
                        fields[field.Name] = field.Value.GetString()!;
            }

            return fields;
        });
}
