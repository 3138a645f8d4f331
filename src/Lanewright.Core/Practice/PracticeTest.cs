using Lanewright.Core.Quantities;
using Lanewright.Core.Statistics;
using Lanewright.Core.Text;

namespace Lanewright.Core.Practice;

/// <summary>
/// Plays one drop test of the demo world and gives what people would have typed. The physics is the plain model of the
/// method pages: counts follow the true constant with the spreader's scatter, readings follow the true mass with the
/// scale's gain and rounding.
/// </summary>
internal sealed class PracticeTest(PracticeSpreader spreader, PracticeScale scale, RandomSource random)
{
    private readonly Unit massUnit = spreader.Metric ? Units.Kilogram : Units.Pound;
    private readonly TextCulture culture = spreader.Metric ? TextCulture.Norwegian : TextCulture.UnitedStates;

    /// <summary>Paths and texts of the whole sheet.</summary>
    internal List<(string Path, string Text)> Fields(string title, string date, string place, string people)
    {
        List<(string, string)> fields =
        [
            ("kind", "drop-test"), ("title", title), ("invented", "yes"), ("date", date), ("place", place),
            ("people", people), ("culture", culture.Name), ("units", spreader.Metric ? "si" : "us"),
            ("spreader.id", spreader.Number), ("spreader.metering", spreader.Metering),
            ("spreader.loop", spreader.Closed ? "closed" : "open"),
            ("spreader.constant", spreader.Closed ? "pulses-per-mass" : "mass-per-time"),
            ("spreader.unit", spreader.ControllerUnit.Symbol),
            ("spreader.resolution", Number(spreader.Resolution)), ("material.name", spreader.Material),
            ("scale.id", scale.Scale.Id), ("scale.capacity", Mass(scale.Scale.Capacity!.Value.Si)),
            ("scale.division", Mass(scale.Scale.Division!.Value.Si)), ("scale.class", ClassWord()),
            ("scale.rules", spreader.Metric ? "oiml" : "handbook-44"),
            ("scale.verified", scale.Scale.Verified!.Value.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)),
            ("commonError", "yes"),
        ];
        if (spreader.Keyed is { } keyed) fields.Add(("spreader.current", Number(keyed)));
        if (!spreader.Closed) fields.Add(("timingUncertainty", culture == TextCulture.Norwegian ? "0,3 s" : "0.3 s"));
        var truck = scale.Scale.Kind is Weighing.ScaleKind.Vehicle;
        var runs = 3 + random.NextInt(2);
        for (var i = 0; i < runs; i++)
        {
            // The last run is about half as large, to show what starting and stopping costs.
            var size = (truck ? 1200 : 150) * (i == 2 ? 0.5 : 1) * (0.95 + (0.1 * random.NextDouble()));
            Run(fields, i, size, truck);
        }

        return fields;
    }

    private void Run(List<(string, string)> fields, int index, double mass, bool truck)
    {
        var at = $"runs[{index}]";
        var constant = spreader.Truth * (1 + (spreader.Scatter * random.NextNormal()));
        fields.Add(($"{at}.setting", spreader.Metric ? "50 %" : "50 %"));
        fields.Add(($"{at}.engineSpeed", "1500"));
        fields.Add(($"{at}.oil", "warm"));
        if (spreader.Closed)
            fields.Add(($"{at}.pulses", Whole(Math.Floor(mass * constant))));
        else
            fields.Add(($"{at}.time", QuantityText.WriteNumber(
                (mass / constant) + (0.3 * random.NextNormal()), culture, NumberForm.Decimals(1))));
        if (truck) Truck(fields, at, mass);
        else if (scale.Scale.Capacity!.Value.Si < 200) Containers(fields, at, mass);
        else Whole(fields, at, mass);
    }

    private void Containers(List<(string, string)> fields, string at, double mass)
    {
        var count = (int)Math.Ceiling(mass / 17);
        for (var c = 0; c < count; c++)
        {
            var tare = 1 + (0.3 * random.NextDouble());
            fields.Add(($"{at}.containers[{c}].tare", Mass(scale.Reads(tare))));
            fields.Add(($"{at}.containers[{c}].gross", Mass(scale.Reads(tare + (mass / count)))));
        }
    }

    private void Whole(List<(string, string)> fields, string at, double mass)
    {
        var tare = 22 + (4 * random.NextDouble());
        fields.Add(($"{at}.whole.tare", Mass(scale.Reads(tare))));
        fields.Add(($"{at}.whole.gross", Mass(scale.Reads(tare + mass))));
    }

    private void Truck(List<(string, string)> fields, string at, double mass)
    {
        var empty = 17_000 + (500 * random.NextDouble());
        fields.Add(($"{at}.truck.before", Mass(scale.Reads(empty + mass))));
        fields.Add(($"{at}.truck.after", Mass(scale.Reads(empty - 0.9))));
        fields.Add(($"{at}.truck.fuelBurnt.amount", Mass(spreader.Metric ? 1 : 2 * 0.45359237)));
        fields.Add(($"{at}.truck.fuelBurnt.plusMinus", Mass(spreader.Metric ? 0.5 : 0.45359237)));
        fields.Add(($"{at}.truck.samePeople", "yes"));
    }

    private string Mass(double kilograms) =>
        QuantityText.WriteNumber(
            Math.Round(massUnit.FromSi(kilograms) * 1000) / 1000, TextCulture.Invariant, NumberForm.RoundTrip)
            .Replace(".", culture.DecimalMark.ToString(), StringComparison.Ordinal) + " " + massUnit.Symbol;

    private string Number(double value) =>
        QuantityText.WriteNumber(value, TextCulture.Invariant, NumberForm.RoundTrip)
            .Replace(".", culture.DecimalMark.ToString(), StringComparison.Ordinal) + " " + spreader.ControllerUnit.Symbol;

    private static string Whole(double value) =>
        value.ToString("0", System.Globalization.CultureInfo.InvariantCulture);

    private string ClassWord() => scale.Scale.Class is Weighing.ScaleClass.IIIL ? "iii-l" : "iii";
}
