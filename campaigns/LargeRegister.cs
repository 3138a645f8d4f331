using System.Globalization;
using Lanewright.Storage;
using Lanewright.Storage.Entries;

namespace Lanewright.Campaigns;

/// <summary>A large agency's register and seasons of tests, all invented; the same counts make the same entries.</summary>
internal sealed class LargeRegister(int spreaders, int tests)
{
    private const int Depots = 60;
    private static readonly string[] Changes = ["hydraulics", "metering", "gate", "supplier"];
    private long seq;

    /// <summary>How many entries were made so far.</summary>
    internal long Count => seq;

    /// <summary>An entry that nobody has made yet.</summary>
    internal EntryDraft Next(string kind, string subject, string payload) => new()
    {
        Id = Uuid(1, ++seq), Kind = kind, Subject = subject, Person = "M.O.", Device = "d", Seq = seq,
        At = new DateTimeOffset(2024, 9, 1, 0, 0, 0, TimeSpan.Zero).AddMinutes(seq), Zone = "", Payload = payload,
    };

    /// <summary>Identity of a spreader.</summary>
    internal static string Spreader(int i) => Uuid(2, i);

    /// <summary>Identity of a test.</summary>
    internal static string Test(int i) => Uuid(3, i);

    internal async Task FillAsync(EntryStore store, CancellationToken stop)
    {
        foreach (var batch in Entries().Chunk(EntryStore.MostEntries)) await store.AppendAsync(batch, stop);
    }

    private IEnumerable<EntryDraft> Entries()
    {
        for (var i = 0; i < Depots; i++) yield return Next("register.depot", Uuid(4, i), $$"""{"name":"Depot {{i}}"}""");
        for (var i = 0; i < 4; i++)
            yield return Next("register.material", Uuid(5, i), $$"""{"name":"salt {{i}}","bulkDensity":"80 lb/ft³","pricePerTonne":{{70 + i}}}""");
        for (var i = 0; i < 200; i++)
            yield return Next("register.person", Uuid(6, i), $$"""{"name":"P.{{i}}","role":"technician"}""");
        for (var i = 0; i < 120; i++)
        {
            yield return Next("register.scale", Uuid(7, i),
                $$"""{"id":"scale {{i}}","kind":"floor","capacity":"1000 lb","division":"0.2 lb","class":"iii","verified":"2026-04-14","depot":"Depot {{i % Depots}}"}""");
        }

        yield return Next("register.rules", "rules", """{"tolerance":"5 %"}""");
        for (var i = 0; i < spreaders; i++)
        {
            yield return Next("register.spreader", Spreader(i),
                $$"""
                {"id":"HR-{{i}}","metering":"tailgate auger","loop":"closed","constant":"pulses-per-mass","unit":"pulse/lb","resolution":0.01,
                "depot":"Depot {{i % Depots}}","body":"tandem dump body","sensor":"toothed wheel","drive":"hydraulic motor",
                "material":"salt {{i % 4}}","seasonMass":"420 short ton","note":"invented"}
                """);
        }

        for (var i = 0; i < tests; i++)
        {
            yield return Next("test.begin", Test(i), Begin(i));
            // The last few are still open.
            if (i < tests - 40) yield return Next("test.decision", Test(i), """{"verdict":"adopt","why":"narrow enough","keyed":"12.60 pulse/lb"}""");
            if (i % 20 == 0)
            {
                yield return Next("spreader.event", Spreader(i % spreaders),
                    $$"""{"event":"{{Changes[i / 20 % Changes.Length]}}","date":"{{Day(i)}}","note":"invented"}""");
            }
        }
    }

    private string Begin(int i)
    {
        var drop = ((i / spreaders) + i) % 4 != 0;
        var measured = drop ? $"\"runs[#].pulses\":\"{750 + (i % 9)}\"" : $"\"runs[#].delivered\":\"{60 + (i % 7)}\"";
        var runs = string.Join(',', Enumerable.Range(0, 3).Select(run => string.Create(
            CultureInfo.InvariantCulture,
            $$"""{{measured.Replace("#", $"{run}", StringComparison.Ordinal)}},"runs[{{run}}].containers[0].tare":"2.4","runs[{{run}}].containers[0].gross":"{{62 + ((i + run) % 3)}}.{{run}}" """)));
        return $$$"""
            {"kind":"{{{(drop ? "drop-test" : "verification")}}}","spreader":"{{{Spreader(i % spreaders)}}}","fields":{"title":"HR-{{{i % spreaders}}}, test {{{i}}}","units":"us",
            "invented":"yes","date":"{{{Day(i)}}}","place":"Depot {{{i % spreaders % Depots}}}","people":"M.O., P.{{{i % 200}}}","spreader.id":"HR-{{{i % spreaders}}}","spreader.loop":"closed",
            "spreader.constant":"pulses-per-mass","spreader.unit":"pulse/lb","spreader.resolution":"0.01","spreader.current":"12.6","material.name":"salt {{{i % 4}}}","scale.id":"bench",
            "scale.kind":"platform","scale.capacity":"150 lb","scale.division":"0.1 lb","scale.class":"iii","commonError":"yes","tolerance":"5 %",{{{runs}}}}}
            """;
    }

    private string Day(int i) =>
        new DateOnly(2024, 9, 1).AddDays(i * 800 / tests).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Uuid(int kind, long i) => $"0193a1b2-000{kind}-7000-8000-{i:x12}";
}
