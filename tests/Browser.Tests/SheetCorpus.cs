using System.Globalization;
using System.Text.Json;
using Lanewright.Core.Exchange;
using Lanewright.Core.Tests;
using Lanewright.Files;

namespace Lanewright.Browser.Tests;

/// <summary>What people may have typed by some moment: whole sheets, half of them, wrong ones; the same every time.</summary>
internal static class SheetCorpus
{
    private static readonly string[] Cultures = ["en-US", "en-GB", "de-DE", "fr-FR", "fr-CA", "fi-FI", "nb-NO", "tr-TR", "xx"];
    private static readonly string[] Odd = ["", " ", "1,234", "1.234,5", "12 kg", "-3", "abc", "1e3", "٣٧", "37.8 lb", "1/2", "999999999", "0"];
    private static readonly (string Form, string Unit, string Count)[] Constants =
    [
        ("pulses-per-mass", "pulse/lb", "pulses"), ("pulses-per-mass", "pulse/kg", "pulses"), ("mass-per-pulse", "g/pulse", "pulses"),
        ("mass-per-revolution", "lb/rev", "revolutions"), ("mass-per-time", "kg/min", "time"),
    ];

    /// <summary>A closed-loop test of three runs that gives 12.6 pulse/lb to key in.</summary>
    internal static Dictionary<string, string> Complete(string spreader)
    {
        var fields = new Dictionary<string, string>
        {
            ["culture"] = "en-US", ["units"] = "us", ["date"] = "2026-10-06", ["people"] = "R.V.", ["title"] = spreader,
            ["spreader.id"] = spreader, ["spreader.loop"] = "closed", ["spreader.constant"] = "pulses-per-mass",
            ["spreader.unit"] = "pulse/lb", ["spreader.resolution"] = "0.1", ["spreader.current"] = "11.4",
            ["material.name"] = "white rock salt", ["scale.id"] = "bench", ["scale.division"] = "0.1", ["scale.capacity"] = "150",
            ["scale.class"] = "iii", ["scale.verified"] = "2026-04-14", ["commonError"] = "yes",
        };
        for (var run = 0; run < 3; run++)
        {
            fields[$"runs[{run}].pulses"] = (2000 + (10 * run)).ToString(CultureInfo.InvariantCulture);
            fields[$"runs[{run}].filled"] = "4";
            for (var i = 0; i < 4; i++)
            {
                fields[$"runs[{run}].containers[{i}].tare"] = "2.5";
                fields[$"runs[{run}].containers[{i}].gross"] = "42.5";
            }
        }

        return fields;
    }

    /// <summary>Questions for Core's <c>Live</c>: the examples, then generated ones.</summary>
    internal static List<string> Questions(int count, int seed)
    {
        var all = Directory.GetFiles(Repository.File("examples")).Order(StringComparer.Ordinal)
            .Select(file => Question("en-US", "us", FieldsOf(SheetFile.Read(file)))).ToList();
        var random = new Random(seed);
        while (all.Count < count) all.Add(Generated(random));
        return all;
    }

    private static string Question(string culture, string units, Dictionary<string, string> fields) =>
        JsonSerializer.Serialize(new { culture, units, kind = fields.GetValueOrDefault("kind", "drop-test"), fields });

    private static Dictionary<string, string> FieldsOf(SheetTree tree)
    {
        var fields = new Dictionary<string, string>();
        Add(tree.Root);
        return fields;

        void Add(SheetNode? node)
        {
            if (node is null) return;
            if (node.Children.Count == 0 && node.Literal.Length > 0) fields[node.Path] = node.Literal;
            foreach (var child in node.Children) Add(child);
        }
    }

    private static string Generated(Random random)
    {
        var culture = Cultures[random.Next(Cultures.Length)];
        var comma = culture is not ("en-US" or "en-GB" or "xx");
        var (form, unit, count) = Constants[random.Next(Constants.Length)];
        var fields = Complete($"HR-{random.Next(1000)}");
        foreach (var path in fields.Keys.Where(path => path.StartsWith("runs[", StringComparison.Ordinal)).ToList()) fields.Remove(path);
        fields["culture"] = culture;
        fields["units"] = random.Next(2) == 0 ? "us" : "si";
        fields["kind"] = random.Next(5) == 0 ? "verification" : "drop-test";
        (fields["spreader.constant"], fields["spreader.unit"]) = (form, unit);
        fields["spreader.resolution"] = Number(0.01 * random.Next(1, 50), 2);
        fields["spreader.current"] = Number((random.NextDouble() * 30) + 1, 2);
        fields["scale.division"] = Number(0.1, 1);
        if (random.Next(3) == 0) fields["spreader.loop"] = "open";
        if (random.Next(3) == 0) fields["material.moisture.share"] = Number(random.NextDouble() * 5, 1) + " %";
        for (var run = 0; run < random.Next(1, 8); run++)
        {
            var here = $"runs[{run + (random.Next(8) == 0 ? 1 : 0)}]";
            var net = 0.0;
            var shape = random.Next(4);
            if (shape < 2)
            {
                var filled = random.Next(1, 6);
                fields[$"{here}.filled"] = Number(filled, 0);
                for (var i = 0; i < filled; i++) net += Pair($"{here}.containers[{i}].tare", $"{here}.containers[{i}].gross", 2.5, 36);
            }
            else if (shape == 2) net = Pair($"{here}.whole.tare", $"{here}.whole.gross", 62, 215);
            else net = -Pair($"{here}.truck.before", $"{here}.truck.after", 53260, -2900);

            fields[$"{here}.{count}"] = Number(net * (12.6 + (random.NextDouble() * 0.2)), count == "pulses" ? 0 : 1);
            fields[$"{here}.delivered"] = Number(net * 1.01, 1);
            fields[$"{here}.setting"] = random.Next(2) == 0 ? "50 %" : "70 %";
        }

        // Some fields not typed yet, some typed wrong.
        foreach (var path in fields.Keys.ToList())
        {
            if (random.Next(40) == 0) fields.Remove(path);
            else if (random.Next(40) == 0) fields[path] = Odd[random.Next(Odd.Length)];
        }

        return Question(culture, fields.GetValueOrDefault("units", "us"), fields);

        double Pair(string tarePath, string grossPath, double tare, double net)
        {
            tare += Math.Round(random.NextDouble(), 1);
            net *= 1 + (random.NextDouble() * 0.02);
            fields[tarePath] = Number(tare, 1);
            fields[grossPath] = Number(tare + net, 1);
            return net;
        }

        string Number(double value, int digits)
        {
            var text = value.ToString($"F{digits}", CultureInfo.InvariantCulture);
            return comma ? text.Replace('.', ',') : text;
        }
    }
}
