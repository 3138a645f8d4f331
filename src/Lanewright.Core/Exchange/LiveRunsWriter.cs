using System.Text.Json;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>Writes the masses of each run as they are typed.</summary>
internal static class LiveRunsWriter
{
    internal static void Write(Utf8JsonWriter json, LiveState state)
    {
        json.WriteStartArray("runs");
        foreach (var run in state.Runs)
        {
            json.WriteStartObject();
            json.WriteNumber("index", run.Place);
            json.WriteString("name", run.Name);
            json.WriteBoolean("ready", state.Ready.Contains(run.Place));
            json.WriteBoolean("counted", run.HasCount);
            json.WriteBoolean("weighed", run.IsWeighed);
            if (run.Filled is { } filled) json.WriteNumber("filled", filled);
            if (run.Net is { } net) json.WriteString("net", Mass(net, run, state));
            json.WriteStartArray("containers");
            foreach (var container in run.Containers)
            {
                json.WriteStartObject();
                json.WriteNumber("index", container.Place);
                if (container.Net is { } one)
                {
                    json.WriteString("net", Mass(one, run, state));
                    json.WriteString("running", Mass(container.Running, run, state));
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string Mass(double kilograms, LiveRun run, LiveState state) => QuantityText.Write(
        kilograms, state.Input.Units[Dimension.Mass], state.Input.Culture, NumberForm.Decimals(run.Decimals));
}
