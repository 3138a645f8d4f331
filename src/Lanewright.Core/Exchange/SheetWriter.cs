using System.Globalization;
using System.Text.Json;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Exchange;

/// <summary>
/// Writes a sheet as canonical JSON: fields in the order of the schema, every quantity in SI with its unit, digits that
/// read back as the same value. Reading it gives an equal sheet.
/// </summary>
public static class SheetWriter
{
    /// <summary>The sheet as JSON text.</summary>
    public static string Write(TestSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return JsonText.Object(json => Sheet(json, sheet));
    }

    private static void Sheet(Utf8JsonWriter json, TestSheet sheet)
    {
        Word(json, "kind", SheetWords.Of(SheetWords.Kinds, sheet.Kind));
        Word(json, "title", sheet.Title);
        if (sheet.Invented) json.WriteBoolean("invented", true);
        Day(json, "date", sheet.Date);
        Word(json, "place", sheet.Place);
        Word(json, "people", string.Join(", ", sheet.People));
        if (sheet.Units is { } units) Word(json, "units", SheetWords.Of(SheetWords.UnitSystems, units));
        json.WriteStartObject("spreader");
        Spreader(json, sheet.Spreader);
        json.WriteEndObject();
        json.WriteStartObject("material");
        Material(json, sheet.Material);
        json.WriteEndObject();
        json.WriteStartObject("scale");
        Scale(json, sheet.Scale);
        json.WriteEndObject();
        if (sheet.CommonError is { } common) json.WriteBoolean("commonError", common);
        Amount(json, "timingUncertainty", sheet.TimingUncertainty?.Si, Units.Second);
        Amount(json, "revolutionStep", sheet.RevolutionStep?.Si, Units.Revolution);
        if (sheet.EarlierScatter is { } earlier)
        {
            json.WriteStartObject("earlierScatter");
            Amount(json, "relative", earlier.Relative, Units.Ratio);
            json.WriteNumber("runs", earlier.Runs);
            json.WriteEndObject();
        }

        Amount(json, "wantedUncertainty", sheet.WantedUncertainty, Units.Ratio);
        Amount(json, "probability", sheet.Probability, Units.Ratio);
        Amount(json, "tolerance", sheet.Tolerance, Units.Ratio);
        json.WriteStartArray("runs");
        foreach (var run in sheet.Runs)
        {
            json.WriteStartObject();
            Run(json, run);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (sheet.Decision is { } decision)
        {
            json.WriteStartObject("decision");
            Word(json, "verdict", SheetWords.Of(SheetWords.Verdicts, decision.Verdict));
            Word(json, "by", decision.By);
            Word(json, "why", decision.Why);
            json.WriteEndObject();
        }
    }

    private static void Spreader(Utf8JsonWriter json, Spreader spreader)
    {
        Word(json, "id", spreader.Id);
        Word(json, "metering", spreader.Metering);
        Word(json, "loop", SheetWords.Of(SheetWords.Loops, spreader.Loop));
        Word(json, "constant", SheetWords.Of(SheetWords.Forms, spreader.Form));
        Word(json, "unit", spreader.Unit.Symbol);
        var unit = SiUnitOf(spreader.Unit.Dimension);
        Amount(json, "resolution", spreader.Resolution, unit);
        Amount(json, "lowest", spreader.Lowest, unit);
        Amount(json, "highest", spreader.Highest, unit);
        Amount(json, "current", spreader.Current, unit);
    }

    private static void Material(Utf8JsonWriter json, Material material)
    {
        Word(json, "name", material.Name);
        Amount(json, "bulkDensity", material.BulkDensity?.Si, Units.KilogramPerCubicMetre);
        if (material.Moisture is not { } moisture) return;
        json.WriteStartObject("moisture");
        Amount(json, "share", moisture.Share, Units.Ratio);
        Word(json, "of", SheetWords.Of(SheetWords.MoistureBases, moisture.OfDry));
        Amount(json, "plusMinus", moisture.PlusMinus, Units.Ratio);
        json.WriteEndObject();
    }

    private static void Scale(Utf8JsonWriter json, Scale scale)
    {
        Word(json, "id", scale.Id);
        Word(json, "kind", SheetWords.Of(SheetWords.ScaleKinds, scale.Kind));
        Mass(json, "capacity", scale.Capacity);
        Mass(json, "division", scale.Division);
        Word(json, "class", SheetWords.Of(SheetWords.ScaleClasses, scale.Class));
        Word(json, "rules", SheetWords.Of(SheetWords.ScaleRuleBooks, scale.Rules));
        Mass(json, "tolerance", scale.Tolerance);
        Amount(json, "relativeTolerance", scale.RelativeTolerance?.Si, Units.Ratio);
        Day(json, "verified", scale.Verified);
    }

    private static void Run(Utf8JsonWriter json, Run run)
    {
        Word(json, "id", run.Id);
        Amount(json, "pulses", run.Pulses?.Si, Units.Pulse);
        Amount(json, "revolutions", run.Revolutions?.Si, Units.Revolution);
        Amount(json, "time", run.Time?.Si, Units.Second);
        Mass(json, "delivered", run.Delivered);
        Word(json, "setting", run.Setting);
        Amount(json, "engineSpeed", run.EngineSpeed?.Si, Units.RevolutionPerSecond);
        Amount(json, "gate", run.Gate?.Si, Units.Metre);
        Word(json, "oil", SheetWords.Of(SheetWords.OilStates, run.Oil));
        Word(json, "note", run.Note);
        if (run.Filled is { } filled) json.WriteNumber("filled", filled);
        Catch(json, run.Catch);
    }

    private static void Catch(Utf8JsonWriter json, Catch how)
    {
        switch (how)
        {
            case ContainerCatch containers:
                json.WriteStartArray("containers");
                foreach (var container in containers.Containers)
                {
                    json.WriteStartObject();
                    Mass(json, "tare", container.Tare);
                    Mass(json, "gross", container.Gross);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                break;
            case CountedCatch counted:
                json.WriteStartObject("counted");
                json.WriteNumber("count", counted.Count);
                Mass(json, "tare", counted.Tare);
                Mass(json, "gross", counted.Gross);
                Amount(json, "fillSpread", counted.FillSpread?.Si, Units.Ratio);
                json.WriteEndObject();
                break;
            case WholeCatch whole:
                json.WriteStartObject("whole");
                Mass(json, "tare", whole.Tare);
                Mass(json, "gross", whole.Gross);
                json.WriteEndObject();
                break;
            case TruckCatch truck:
                json.WriteStartObject("truck");
                Truck(json, truck);
                json.WriteEndObject();
                break;
        }
    }

    private static void Truck(Utf8JsonWriter json, TruckCatch truck)
    {
        Mass(json, "before", truck.Before);
        Mass(json, "after", truck.After);
        if (truck.FuelBurnt is { } fuel)
        {
            json.WriteStartObject("fuelBurnt");
            Allowance(json, fuel);
            json.WriteEndObject();
        }

        if (truck.PeopleStated) json.WriteBoolean("samePeople", truck.Changes.Count == 0);
        if (truck.Changes.Count == 0) return;
        json.WriteStartArray("changes");
        foreach (var change in truck.Changes)
        {
            json.WriteStartObject();
            Word(json, "what", change.What);
            json.WriteBoolean("joined", change.Joined);
            Allowance(json, change.Allowance);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Allowance(Utf8JsonWriter json, Allowance allowance)
    {
        Mass(json, "amount", allowance.Amount);
        Mass(json, "plusMinus", allowance.PlusMinus);
    }

    private static Unit SiUnitOf(Dimension dimension) => dimension switch
    {
        Dimension.PulsesPerMass => Units.PulsePerKilogram,
        Dimension.MassPerPulse => Units.KilogramPerPulse,
        Dimension.MassPerRevolution => Units.KilogramPerRevolution,
        _ => Units.KilogramPerSecond,
    };

    private static void Word(Utf8JsonWriter json, string name, string? word)
    {
        if (!string.IsNullOrEmpty(word)) json.WriteString(name, word);
    }

    private static void Day(Utf8JsonWriter json, string name, DateOnly? day)
    {
        if (day is { } d) json.WriteString(name, d.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
    }

    private static void Mass(Utf8JsonWriter json, string name, Mass? mass) =>
        Amount(json, name, mass?.Si, Units.Kilogram);

    private static void Amount(Utf8JsonWriter json, string name, double? si, Unit unit)
    {
        if (si is { } value) json.WriteString(name, QuantityText.Write(value, unit, TextCulture.Invariant));
    }
}
