using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Rates;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Calibrations;

/// <summary>
/// The rate card of a spreader: for an open loop the setting for each speed and rate, for a closed loop the delivery each
/// needs and the speed at which hydraulics or gate run out (docs/method/rates.md).
/// </summary>
public static class RateCard
{
    /// <summary>The kind.</summary>
    public static CalibrationKind Kind { get; } = new(
        "rate-card", "Rate card", "Which setting, and up to which speed, for each rate?", Ask);

    private static readonly IReadOnlyList<Dimension> Constants =
        [Dimension.PulsesPerMass, Dimension.MassPerPulse, Dimension.MassPerRevolution];

    private static readonly Word<int>[] Published =
        [.. PublishedRates.All.Select((table, i) => new Word<int>(table.Word, i, table.Name + "."))];

    private static Action<CalibrationReport>? Ask(Fields fields, CalibrationHead head)
    {
        var us = head.Units is UnitSystem.UnitedStates;
        var none = head.Units is null;
        var loop = fields.Choice("loop", "How the controller regulates.", SheetWords.Loops);
        var material = fields.Text("material", "Material it holds for.");
        var gate = fields.Text("gate", "Gate opening as the driver reads it.", Need.Optional, 40);
        var width = fields.Quantity<Length>(
            "laneWidth", "Width of a lane.", Need.Required, none ? null : us ? Units.Foot : Units.Metre, Length.FromSi(2), Length.FromSi(6), true);
        var lanes = fields.Number("lanes", "Lanes that one pass covers: 1, or 2 when both are spread from the middle.", Need.Required, 0.5, 6);
        var speeds = fields.Quantities<Speed>(
            "speeds", "Speeds of the table.", 1, 8, none ? null : us ? Units.MilePerHour : Units.KilometrePerHour, Speed.FromSi(0.5), Speed.FromSi(35));
        var rates = fields.Quantities<LaneRate>(
            "rates", "Rates of the table, for one lane.", 0, 10, none ? null : us ? Units.PoundPerLaneMile : Units.KilogramPerLaneKilometre,
            LaneRate.FromSi(1e-4), LaneRate.FromSi(2));
        var areas = fields.Quantities<AreaRate>(
            "areaRates", "Or rates by area.", 0, 10, Units.GramPerSquareMetre, AreaRate.FromSi(1e-4), AreaRate.FromSi(0.5));
        var constant = fields.Amount("constant", "The value in a closed loop's controller.", Constants, null, Need.Optional);
        var plusMinus = SheetReader.Share(fields, "plusMinus", "How sure the calibration is, plus or minus.", 0, 0.5);
        var flow = none ? null : us ? Units.PoundPerMinute : Units.KilogramPerMinute;
        var most = fields.Quantity<MassFlow>(
            "mostDelivery", "The most it delivers at this gate, as measured.", Need.Optional, flow, MassFlow.FromSi(0.01), MassFlow.FromSi(500), true);
        var settings = fields.List("settings", "Tested settings of an open loop, rising.", (f, _) => Setting(f, flow), 0, 30);
        var calibrated = fields.Date("calibrated", "Day of the calibration.", Need.Optional);
        var due = fields.Date("nextDue", "Day by which it is due again.", Need.Optional);
        var by = fields.Text("by", "Who calibrated it.", Need.Optional, 60);
        var record = fields.Text("record", "The record behind it, such as the number or address of the test.", Need.Optional, 200);
        var targets = fields.List("targets", "The yard's own target rates.", (f, _) => Target(f), 0, 12);
        var published = fields.Choice("published", "A published table to show beside them.", Published, Need.Optional);
        if (loop is not { } l || material is null || width is not { } w || lanes is not { } n || speeds.Any(s => s is null)) return null;
        if (speeds.Count == 0 || rates.Any(r => r is null) || areas.Any(a => a is null)) return null;
        // A rate by area belongs to the stated width and no other.
        double[] all = [.. rates.Select(r => r!.Value.Si), .. areas.Select(a => a!.Value.Si * w.Si)];
        if (all.Length == 0)
        {
            fields.Report(CalibrationFindings.NoRates, "rates");
            return null;
        }

        var sheet = new RateSheet(
            l is ControlLoop.Open, material, gate ?? "", w.Si, n, [.. speeds.Select(s => s!.Value.Si)], all, constant, plusMinus?.Si, most?.Si,
            settings, calibrated, due, by ?? head.People, record ?? "", targets, published is { } p ? PublishedRates.All[p] : null);
        return report => Work(report, sheet);
    }

    private static TestedSetting? Setting(Fields fields, Unit? flow)
    {
        var position = fields.Number("position", "The setting as the driver sets it, such as 40.", Need.Required, 0, 10_000);
        var delivery = fields.Quantity<MassFlow>(
            "delivery", "What it delivers there.", Need.Required, flow, MassFlow.FromSi(0), MassFlow.FromSi(500), true);
        return position is { } s && delivery is { } d ? new(s, d.Si) : null;
    }

    private static TargetRate? Target(Fields fields)
    {
        var condition = fields.Text("condition", "Pavement temperature and event.", maxLength: 80);
        var rate = fields.Text("rate", "The rate, with its unit.", maxLength: 40);
        return condition is not null && rate is not null ? new(condition, rate) : null;
    }

    private static void Work(CalibrationReport report, RateSheet sheet)
    {
        var head = report.Head;
        var units = head.Preferences;
        if (sheet.IsOpen) CheckSettings(report, sheet);
        var most = sheet.Most ?? (sheet.Settings.Count > 0 ? sheet.Settings.Max(s => s.Delivery) : null);
        if (most is null) report.Add(CalibrationFindings.NoLimit.At("mostDelivery"));
        foreach (var rate in sheet.Rates)
        {
            if (most is not { } q) break;
            report.Add(
                $"highest speed at {Rate(rate, sheet, units)}", SpreadRate.HighestSpeed(q, rate, sheet.Lanes), Dimension.Speed, null, true);
        }

        if (most is null) report.Add("lanes in one pass", sheet.Lanes, Dimension.Fraction, Units.Ratio, true);
        report.Say(
            "A lane is {width} wide and one pass covers {lanes}; a rate for a two-lane road is twice the rate for one lane.",
            FindingValue.Number("width", sheet.Width, Dimension.Length),
            FindingValue.Said("lanes", sheet.Lanes == 1 ? "1 lane" : (Phrase)$"{QuantityText.WriteNumber(sheet.Lanes, TextCulture.Invariant, NumberForm.RoundTrip)} lanes"));
        var table = Table(sheet, units, most);
        report.Add(table);
        report.Add(Needed(sheet, units));
        ReportTable? targets = null;
        if (sheet.Targets.Count > 0)
        {
            targets = new("The yard's own target rates", [new("Pavement and event"), new("Rate")], [.. sheet.Targets.Select(t => (IReadOnlyList<ReportCell>)[t.Condition, t.Rate])]);
            report.Add(targets);
        }

        if (sheet.Published is { } published)
        {
            report.Add(new ReportTable(
                $"{(Phrase)published.Name}. Source: {published.Source}. Shown for comparison; the yard sets its own rates.",
                [new("Condition"), new("Rate"), new("Beside it")],
                [.. published.Rows.Select(row => (IReadOnlyList<ReportCell>)[ReportCell.Said(row.Condition), ReportCell.Said(Phrase.FromString(row.Rate)), ReportCell.Said(row.Note)])]));
        }

        if (sheet.NextDue is null) report.Add(CalibrationFindings.NoNextDue.At("nextDue"));
        report.Card = new()
        {
            Spreader = head.Spreader,
            Material = sheet.Material,
            Gate = sheet.Gate,
            Constant = sheet.Constant is { } c
                ? $"{QuantityText.WriteNumber(c.Value, TextCulture.Invariant, NumberForm.RoundTrip)} {c.Unit.Symbol}" : "",
            PlusMinus = sheet.PlusMinus,
            Calibrated = sheet.Calibrated ?? head.Date,
            NextDue = sheet.NextDue,
            By = sheet.By,
            Record = sheet.Record,
            IsOpenLoop = sheet.IsOpen,
            LaneWidth = sheet.Width,
            Lanes = sheet.Lanes,
            Table = table,
            Targets = targets,
            Invented = head.Invented,
        };
    }

    private static void CheckSettings(CalibrationReport report, RateSheet sheet)
    {
        if (sheet.Settings.Count < 2) report.Add(CalibrationFindings.FewSettings.At("settings"));
        for (var i = 1; i < sheet.Settings.Count; i++)
        {
            if (sheet.Settings[i].Position <= sheet.Settings[i - 1].Position || sheet.Settings[i].Delivery < sheet.Settings[i - 1].Delivery)
                report.Add(CalibrationFindings.SettingsNotRising.At($"settings[{i}]", FindingValue.Text("which", CalibrationText.Number(i + 1))));
        }
    }

    // Rates down, speeds across: what a driver looks up is the rate first.
    private static ReportTable Table(RateSheet sheet, UnitPreferences units, double? most)
    {
        List<ReportColumn> columns = [new(RateHeading(units))];
        columns.AddRange(sheet.Speeds.Select(v => new ReportColumn($"{SpeedText(v, units)}")));
        var tested = sheet.Settings.Select(s => (s.Position, s.Delivery)).ToList();
        var rows = sheet.Rates.Select(rate =>
        {
            List<ReportCell> cells = [ReportCell.Said($"{RateNumber(rate, units)}")];
            foreach (var speed in sheet.Speeds)
            {
                var delivery = SpreadRate.Delivery(rate, speed, sheet.Lanes);
                if (!sheet.IsOpen) cells.Add(ReportCell.Said(most is not { } q ? "" : delivery <= q ? "yes" : "too fast"));
                else if (SpreadRate.Setting(tested, delivery) is { } setting) cells.Add(ReportCell.Said($"{Short(setting)}"));
                else cells.Add(ReportCell.Said(tested.Count > 0 && delivery > tested[^1].Delivery ? "too fast" : "too slow"));
            }

            return (IReadOnlyList<ReportCell>)cells;
        });
        return new(
            sheet.IsOpen ? "Setting for each rate and speed" : "Whether it can hold the rate at each speed", columns, [.. rows]);
    }

    private static ReportTable Needed(RateSheet sheet, UnitPreferences units)
    {
        List<ReportColumn> columns = [new(RateHeading(units))];
        columns.AddRange(sheet.Speeds.Select(v => new ReportColumn($"{SpeedText(v, units)}", Dimension.MassFlow)));
        return new("Delivery that each rate and speed needs", columns,
        [
            .. sheet.Rates.Select(rate => (IReadOnlyList<ReportCell>)
                [ReportCell.Said($"{RateNumber(rate, units)}"), .. sheet.Speeds.Select(v => (ReportCell)SpreadRate.Delivery(rate, v, sheet.Lanes))]),
        ]);
    }

    private static Phrase RateHeading(UnitPreferences units) => $"Rate, {units[Dimension.LaneRate].Symbol}";

    private static Reading RateNumber(double rate, UnitPreferences units) => Short(units[Dimension.LaneRate].FromSi(rate));

    private static Phrase Rate(double rate, RateSheet sheet, UnitPreferences units)
    {
        var area = Units.GramPerSquareMetre.FromSi(rate / sheet.Width);
        return $"{new Reading($"{RateNumber(rate, units)} {units[Dimension.LaneRate].Symbol}")} ({new Reading($"{Short(area)} g/m²")})";
    }

    private static Reading SpeedText(double speed, UnitPreferences units) =>
        new($"{Short(units[Dimension.Speed].FromSi(speed))} {units[Dimension.Speed].Symbol}");

    // At most three digits and no zeros at the end: read from a seat, not from a desk.
    private static Reading Short(double number)
    {
        var text = QuantityText.WriteNumber(number, TextCulture.Invariant, NumberForm.Significant(3));
        return new(text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text);
    }

    private sealed record TestedSetting(double Position, double Delivery);

    private sealed record TargetRate(string Condition, string Rate);

    private sealed record RateSheet(
        bool IsOpen, string Material, string Gate, double Width, double Lanes, IReadOnlyList<double> Speeds, IReadOnlyList<double> Rates,
        Amount? Constant, double? PlusMinus, double? Most, IReadOnlyList<TestedSetting> Settings, DateOnly? Calibrated, DateOnly? NextDue,
        string By, string Record, IReadOnlyList<TargetRate> Targets, PublishedRates? Published);
}
