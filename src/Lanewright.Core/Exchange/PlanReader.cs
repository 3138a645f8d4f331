using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Exchange;

/// <summary>Reads what is known before a test.</summary>
public static class PlanReader
{
    private static readonly Word<CatchMethod>[] Methods =
    [
        new("containers", CatchMethod.Containers, "Many containers, each with its own tare and gross."),
        new("whole", CatchMethod.Whole, "The whole catch in one weighing."),
        new("truck", CatchMethod.Truck, "The truck before and after."),
    ];

    /// <summary>Reads a plan's file from its tree.</summary>
    public static SheetReading<PlanRequest> Read(SheetTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        return TreeFields.Read(tree, SheetCulture.Of(tree), Read);
    }

    /// <summary>The request, or null when the scale is missing or wrong.</summary>
    public static PlanRequest? Read(Fields fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        SheetCulture.Ask(fields);
        var units = fields.Choice(
            "units", "Units of numbers written without one, and of the plan.", SheetWords.UnitSystems, Need.Optional);
        var bare = BareUnits.Of(units);
        var scale = fields.Group("scale", "The scale that will weigh the catch.", f => ScaleReader.Read(f, bare));
        var method = fields.Choice("method", "How the catch will be weighed.", Methods);
        var common = fields.YesNo(
            "commonError", "Whether the scale's own error will be the same at both readings.", Need.Optional);
        var form = fields.Choice(
            "constant", "What the calibration constant is a ratio of; pulses per mass when left out.", SheetWords.Forms,
            Need.Optional);
        var expected = fields.Amount(
            "expectedConstant", "The constant expected.", SpreaderReader.ConstantDimensions, null, Need.Optional);
        var constant = expected is { } amount
            ? ConstantRange.Check(fields, "expectedConstant", "The constant expected.", amount)
            : null;
        var density = fields.Quantity<Density>(
            "bulkDensity", "Bulk density of the material; 80 lb/ft3 when left out.", Need.Optional, bare.Density, Density.FromSi(100),
            Density.FromSi(5000), true);
        var delivery = fields.Quantity<MassFlow>(
            "delivery", "Mass delivered in a time at the drive setting of the test.", Need.Optional, null,
            MassFlow.FromSi(1e-3), MassFlow.FromSi(500));
        var scatter = SheetReader.Share(
            fields, "expectedScatter", "Scatter of one long run to expect; 1 % when left out.", 0.0005, 0.3);
        var startStop = Weight(
            "startStop", "Mass by which starting and stopping scatters in every run; 1 lb when left out.");
        var fill = Weight("containerFill", "Net fill of one container; 35.6 lb when left out.");
        var tare = Weight("containerTare", "Weight of the empty container or bin; 2.5 lb when left out.");
        var truck = Weight("truckGross", "Weight of the loaded truck; 45,000 lb when left out.");
        var wanted = SheetReader.Share(fields, "wantedUncertainty", "Uncertainty wanted; 2 % when left out.", 0.0001, 0.5);
        var runs = fields.Count("mostRuns", "Most runs that you would do; 8 when left out.", Need.Optional, 2, 20);
        if (scale is null || method is null) return null;
        var formOrDefault = form ?? ConstantForm.PulsesPerMass;
        if (expected is { } e && e.Unit.Dimension != ResultBuilder.DimensionOf(formOrDefault))
        {
            fields.Report(
                SheetFindings.UnitOfOtherForm, "expectedConstant", Findings.FindingValue.Text("unit", e.Unit.Symbol),
                Findings.FindingValue.Text("form", SheetWords.Of(SheetWords.Forms, formOrDefault)!));
            return null;
        }

        var plain = new PlanRequest { Scale = scale };
        return plain with
        {
            Method = method.Value,
            CommonError = common,
            Form = formOrDefault,
            ExpectedConstant = constant,
            BulkDensity = density ?? plain.BulkDensity,
            Delivery = delivery,
            ExpectedScatter = scatter?.Si ?? PlanRequest.DefaultScatter,
            StartStop = startStop ?? plain.StartStop,
            ContainerFill = fill ?? plain.ContainerFill,
            ContainerTare = tare ?? plain.ContainerTare,
            TruckGross = truck ?? plain.TruckGross,
            Wanted = wanted?.Si ?? plain.Wanted,
            Units = units ?? UnitSystem.UnitedStates,
            MostRuns = (int)(runs ?? plain.MostRuns),
        };

        Mass? Weight(string name, string doc) => fields.Quantity<Mass>(
            name, doc, Need.Optional, bare.Mass, Mass.FromSi(1e-3), Mass.FromSi(1e6), true);
    }
}
