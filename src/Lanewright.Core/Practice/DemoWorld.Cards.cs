using System.Globalization;
using Lanewright.Core.Text;

namespace Lanewright.Core.Practice;

/// <summary>What a season's tests are followed by: the card in the cab, and a measured course after new tyres.</summary>
public sealed partial class DemoWorld
{
    // A truck's own gate and the most it delivers there; invented like all of it.
    private void Card(PracticeSpreader spreader)
    {
        if (!spreader.Closed || spreader.Keyed is not { } keyed || spreader.KeyedDay is not { } day) return;
        var unit = spreader.ControllerUnit.Symbol;
        List<(string, string)> fields =
        [
            .. Head(spreader, "rate card", day), ("loop", "closed"), ("material", spreader.Material), ("gate", spreader.Metric ? "50 mm" : "2 in"),
            ("laneWidth", spreader.Metric ? "3.5 m" : "12 ft"), ("lanes", "1"),
            ("constant", QuantityText.WriteNumber(keyed, TextCulture.Invariant, NumberForm.RoundTrip) + " " + unit),
            ("plusMinus", PercentText.Write(spreader.KeyedTo, TextCulture.Invariant)),
            ("mostDelivery", spreader.Metric ? "80 kg/min" : "190 lb/min"), ("calibrated", Day(day)),
            ("nextDue", Day(new DateOnly(day.Year + 1, 9, 1))), ("by", Technician),
        ];
        string[] speeds = spreader.Metric ? ["20", "30", "40", "50", "60"] : ["15", "20", "25", "30", "35", "40"];
        string[] rates = spreader.Metric ? ["5", "10", "15", "20", "30", "40"] : ["100", "150", "200", "250", "300", "400"];
        for (var i = 0; i < speeds.Length; i++) fields.Add(($"speeds[{i.ToString(CultureInfo.InvariantCulture)}]", speeds[i] + (spreader.Metric ? " km/h" : " mph")));
        for (var i = 0; i < rates.Length; i++)
            fields.Add(($"{(spreader.Metric ? "areaRates" : "rates")}[{i.ToString(CultureInfo.InvariantCulture)}]", rates[i] + (spreader.Metric ? " g/m²" : " lb/lane-mile")));
        Calibrated(spreader, "rate-card", day, fields);
    }

    private void Course(PracticeSpreader spreader)
    {
        if (spreader.KeyedDay is not { } day || spreader.Metric) return;
        List<(string, string)> fields = [.. Head(spreader, "ground speed", day), ("course", "1000 ft"), ("coursePlusMinus", "1 ft")];
        var perPass = 3600 + (40 * random.NextInt(12));
        for (var i = 0; i < 4; i++)
            fields.Add(($"passes[{i.ToString(CultureInfo.InvariantCulture)}].pulses", (perPass + random.NextInt(9)).ToString(CultureInfo.InvariantCulture)));
        Calibrated(spreader, "ground-speed", day, fields);
    }

    private static IEnumerable<(string, string)> Head(PracticeSpreader spreader, string what, DateOnly day) =>
    [
        ("title", $"{spreader.Number}, {what}"), ("invented", "yes"), ("units", spreader.Metric ? "si" : "us"), ("spreader.id", spreader.Number),
        ("date", Day(day)), ("place", spreader.Depot), ("people", Technician),
    ];

    private void Calibrated(PracticeSpreader spreader, string kind, DateOnly day, List<(string Path, string Text)> fields)
    {
        var maker = MakerOf(spreader);
        var at = At(day, 15);
        maker.Add("test.begin", maker.NewSubject(at), Technician, at, json =>
        {
            json.WriteString("kind", kind);
            json.WriteString("spreader", spreader.Subject);
            json.WriteStartObject("fields");
            foreach (var (path, text) in fields) json.WriteString(path, text);
            json.WriteEndObject();
        });
    }
}
