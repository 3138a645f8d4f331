using System.Globalization;
using System.Text;
using Lanewright.Core.Exchange;
using Lanewright.Core.Spreading;
using Lanewright.Core.Statistics;

namespace Lanewright.Benchmarks;

/// <summary>An invented drop test: closed loop, runs of two sizes in turn, all weighed in containers.</summary>
internal static class InventedSheet
{
    private const double PulsesPerPound = 13.1;

    /// <summary>What a program does to read the file.</summary>
    internal static TestSheet Read(byte[] json)
    {
        var reading = SheetReader.Read(JsonTree.Read(json));
        return reading.IsUsable
            ? reading.Value!
            : throw new InvalidOperationException("The invented sheet could not be read.");
    }

    /// <summary>The file as a technician would write it, in JSON.</summary>
    internal static byte[] Write(int runs, int containersEach)
    {
        var random = new RandomSource(1);
        var text = new StringBuilder(
            """
            {
              "kind": "drop-test", "title": "Many runs", "invented": true, "date": "2026-10-06", "units": "us",
              "spreader": {
                "id": "T-1", "metering": "auger", "loop": "closed", "constant": "pulses-per-mass",
                "unit": "pulse/lb", "resolution": "0.1 pulse/lb", "current": "12.4 pulse/lb"
              },
              "material": { "name": "rock salt" },
              "scale": {
                "id": "bench", "kind": "platform", "capacity": "150 lb", "division": "0.1 lb", "class": "iii",
                "rules": "handbook-44", "verified": "2026-04-14"
              },
              "commonError": true,
              "runs": [

            """);
        for (var run = 1; run <= runs; run++)
        {
            var fill = run % 2 == 0 ? 20 : 36;
            var total = 0.0;
            var containers = new StringBuilder();
            for (var c = 0; c < containersEach; c++)
            {
                var tare = Math.Round(22 + (8 * random.NextDouble())) / 10;
                var net = Math.Round(10 * (fill + (2 * random.NextDouble()))) / 10;
                total += net;
                containers.Append(c == 0 ? "" : ", ").Append(
                    CultureInfo.InvariantCulture, $$"""{ "tare": "{{tare:0.0}} lb", "gross": "{{tare + net:0.0}} lb" }""");
            }

            var pulses = Math.Round(total * PulsesPerPound * (1 + (0.01 * random.NextNormal())));
            text.Append(
                CultureInfo.InvariantCulture,
                $$"""{{(run == 1 ? "" : ",")}}{ "id": "{{run}}", "pulses": {{pulses}}, "setting": "50 %", """)
                .Append("\"gate\": \"2 in\", \"oil\": \"warm\", \"containers\": [").Append(containers).Append("] }\n");
        }

        return Encoding.UTF8.GetBytes(text.Append("] }").ToString());
    }
}
