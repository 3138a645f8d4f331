using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Lanewright.Core.Exchange;
using Lanewright.Core.Spreading;
using Lanewright.Core.Tests.Exchange;
using FieldShape = Lanewright.Core.Tests.Exchange.FieldShape;

namespace Lanewright.App.Tests.Mutation;

/// <summary>Makes one deliberate change to a sheet. The same seed makes the same changes.</summary>
internal sealed class Mutator(int seed)
{
    private static readonly Dictionary<string, IReadOnlyList<FieldFact>> Facts = new(StringComparer.Ordinal)
    {
        [""] = RecordingFields.Of(SheetReader.Read),
        ["us"] = RecordingFields.Of(SheetReader.Read, UnitSystem.UnitedStates),
        ["si"] = RecordingFields.Of(SheetReader.Read, UnitSystem.Si),
    };

    // Fields whose meaning reaches into others, so that one change shows in many places.
    private static readonly string[] FarReaching = ["units", "culture", "spreader.unit", "spreader.constant"];

    private readonly Random random = new(seed);

    public Mutation Next(JsonNode original)
    {
        while (true)
        {
            var sheet = original.DeepClone();
            if (Try(sheet) is { } mutation) return mutation;
        }
    }

    private Mutation? Try(JsonNode sheet) => random.Next(20) switch
    {
        < 7 => WrongValue(sheet),
        < 10 => Remove(sheet),
        < 12 => Unknown(sheet),
        < 14 => Twice(sheet),
        < 16 => Swap(sheet),
        < 19 => OtherValue(sheet),
        _ => Structure(sheet),
    };

    private Mutation? WrongValue(JsonNode sheet)
    {
        var (fact, parent, name, path) = Place(sheet, present: random.Next(4) > 0);
        if (fact is null) return null;
        // Several weighings of one run are reported at the run; a wrong one beside a good one is reported at itself.
        var wrong = WrongValues.Pick(fact, random);
        parent![name!] = wrong.Value;
        return new("wrong value", path, sheet, Outcome.StopAtField) { InJsonOnly = wrong.InJsonOnly };
    }

    private Mutation? Remove(JsonNode sheet)
    {
        var (fact, parent, name, path) = Place(sheet, present: true);
        if (fact is null) return null;
        if (random.Next(3) > 0) parent!.Remove(name!);
        else parent![name!] = random.Next(2) == 0 ? null : JsonValue.Create("  ");
        if (fact.Need == Need.Required) return new("missing", path, sheet, Outcome.StopAtField);
        return IsWeighing(name!)
            ? new("no weighing", path[..path.LastIndexOf('.')], sheet, Outcome.StopUnderField)
            : new("left out", path, sheet, Outcome.Legal);
    }

    private Mutation? Unknown(JsonNode sheet)
    {
        var (fact, parent, name, path) = Place(sheet, present: true);
        if (fact is null) return null;
        var typo = name!.Length > 3 ? name[..2] + name[3] + name[2] + name[4..] : name + "x";
        if (typo == name || parent!.ContainsKey(typo)) typo = name + "q";
        var value = parent![name]?.DeepClone();
        if (random.Next(2) == 0) parent.Remove(name);
        parent[typo] = value ?? JsonValue.Create("x");
        return new("misspelt", path[..^name.Length] + typo, sheet, Outcome.UnknownField);
    }

    private Mutation? Twice(JsonNode sheet)
    {
        var (fact, parent, name, path) = Place(sheet, present: true);
        if (fact is null || parent![name!] is not JsonValue value) return null;
        parent[Mutation.Twin] = random.Next(2) == 0 ? value.DeepClone() : JsonValue.Create("7");
        return new("given twice", path, sheet, Outcome.TwiceGiven) { TwinName = name };
    }

    // Tare for gross and before for after: readable, and wrong.
    private Mutation? Swap(JsonNode sheet)
    {
        var (fact, parent, name, path) = Place(sheet, present: true, f => f.Path.EndsWith(".gross", StringComparison.Ordinal)
            || f.Path.EndsWith("truck.before", StringComparison.Ordinal));
        if (fact is null) return null;
        var (large, small) = name == "gross" ? ("gross", "tare") : ("before", "after");
        if (parent![small] is not { } tare || parent[large] is not { } gross) return null;
        if (Kilograms(sheet, gross) is not { } g || Kilograms(sheet, tare) is not { } t || g - t < 1e-3) return null;
        // Material that joined the truck can make up for anything, so such a run may come out right by chance.
        if (name == "before" && parent["changes"] is not null) return null;
        (parent[large], parent[small]) = (tare.DeepClone(), gross.DeepClone());
        return new("swapped", path[..(path.IndexOf(']', StringComparison.Ordinal) + 1)], sheet, Outcome.StopUnderField);
    }

    private Mutation? OtherValue(JsonNode sheet)
    {
        var (fact, parent, name, path) = Place(sheet, present: random.Next(3) > 0, f => !FarReaching.Contains(f.Path));
        if (fact is null) return null;
        JsonNode? value = fact.Shape switch
        {
            FieldShape.Text or FieldShape.Notes => JsonValue.Create("other text"),
            FieldShape.YesNo => JsonValue.Create(random.Next(2) == 0),
            FieldShape.Choice => JsonValue.Create(fact.Words[random.Next(fact.Words.Count)]),
            FieldShape.Date => JsonValue.Create("2025-11-30"),
            FieldShape.Count => JsonValue.Create(Math.Min((long)fact.Most, Math.Max((long)fact.Least, random.Next(1, 30)))),
            FieldShape.Quantity => JsonValue.Create(Inside(fact)),
            _ => null,
        };
        if (value is null) return null;
        parent![name!] = value;
        return new("other value", path, sheet, Outcome.Legal);
    }

    private Mutation? Structure(JsonNode sheet)
    {
        var runs = sheet["runs"]!.AsArray();
        switch (random.Next(5))
        {
            case 0:
                sheet["note"] = WrongValues.Nested(40);
                return new("too deep", "", sheet, Outcome.Refused);
            case 1 when random.Next(8) == 0:
                while (runs.Count <= 1000) runs.Add(runs[0]!.DeepClone());
                return new("thousands of runs", "runs", sheet, Outcome.StopAtField);
            case 2:
                sheet["runs"] = new JsonArray();
                return new("no runs", "runs", sheet, Outcome.StopAtField);
            case 3 when runs[0]!["id"] is not null:
                runs.Add(runs[0]!.DeepClone());
                return new("run twice", "runs", sheet, Outcome.StopUnderField);
            case 4 when runs.Count > 1:
                runs.RemoveAt(random.Next(runs.Count));
                return new("a run less", "runs", sheet, Outcome.Legal);
            default:
                return null;
        }
    }

    // A value of any size within the field's limits, small ones and round ones as likely as large ones.
    private string Inside(FieldFact fact)
    {
        var least = double.IsFinite(fact.Least) ? fact.Least : 0;
        var share = random.Next(3) switch { 0 => 0, 1 => random.NextDouble(), _ => Math.Pow(10, -12 * random.NextDouble()) };
        var si = least + ((fact.Most - least) * share * (1 - 1e-12));
        var unit = Core.Quantities.Units.Of(fact.Dimensions[0]).First(u => u.FromSi(1) == 1);
        return Core.Text.QuantityText.Write(si, unit, Core.Text.TextCulture.Invariant);
    }

    private static bool IsWeighing(string name) => name is "containers" or "counted" or "whole" or "truck";

    private static double? Kilograms(JsonNode sheet, JsonNode value)
    {
        var text = value.GetValueKind() == JsonValueKind.String ? value.GetValue<string>() : value.ToJsonString();
        var unit = sheet["units"]?.GetValue<string>() switch { "us" => Core.Quantities.Units.Pound, "si" => Core.Quantities.Units.Kilogram, _ => null };
        var culture = sheet["culture"]?.GetValue<string>() is { } name && Core.Text.TextCulture.TryFind(name, out var found) ? found : Core.Text.TextCulture.Invariant;
        return Core.Text.QuantityText.Read<Core.Quantities.Mass>(text, culture, unit).TryGet(out var mass) ? mass.Si : null;
    }

    /// <summary>A field that is there, or one that could be: its question, the group that holds it, its name and path.</summary>
    private (FieldFact? Fact, JsonObject? Parent, string? Name, string Path) Place(
        JsonNode sheet, bool present, Func<FieldFact, bool>? where = null)
    {
        var facts = Facts[sheet["units"]?.GetValue<string>() ?? ""];
        for (var tries = 0; tries < 30; tries++)
        {
            var fact = facts[random.Next(facts.Count)];
            if (where?.Invoke(fact) == false) continue;
            var steps = fact.Path.Split('.');
            JsonNode? node = sheet;
            var path = "";
            foreach (var step in steps[..^1])
            {
                var isList = step.EndsWith("[]", StringComparison.Ordinal);
                var name = isList ? step[..^2] : step;
                node = (node as JsonObject)?[name];
                path += (path.Length == 0 ? "" : ".") + name;
                if (!isList) continue;
                if (node is not JsonArray { Count: > 0 } list)
                {
                    node = null;
                    break;
                }

                var i = random.Next(list.Count);
                node = list[i];
                path += string.Create(CultureInfo.InvariantCulture, $"[{i}]");
            }

            if (node is not JsonObject parent || parent.ContainsKey(steps[^1]) != present) continue;
            // A second way of weighing beside the first is a case of its own.
            if (!present && IsWeighing(steps[^1])) continue;
            return (fact, parent, steps[^1], path.Length == 0 ? steps[^1] : $"{path}.{steps[^1]}");
        }

        return (null, null, null, "");
    }
}
