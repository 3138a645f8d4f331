using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Exchange;

/// <summary>Reads a spreader as far as a test needs it.</summary>
internal static class SpreaderReader
{
    /// <summary>What a calibration constant may measure.</summary>
    internal static readonly Dimension[] ConstantDimensions =
        [Dimension.PulsesPerMass, Dimension.MassPerPulse, Dimension.MassPerRevolution, Dimension.MassFlow];

    internal static Spreader? Read(Fields fields)
    {
        var id = fields.Text("id", "Its number or name.", maxLength: 60);
        var metering = fields.Text("metering", "Auger, drag chain or belt.", Need.Optional);
        var loop = fields.Choice("loop", "How the controller regulates.", SheetWords.Loops);
        var form = fields.Choice("constant", "What the calibration constant is a ratio of.", SheetWords.Forms);
        var unit = fields.Unit(
            "unit", "The unit in which the constant is keyed in, such as pulse/lb or g/pulse.", ConstantDimensions);
        var resolution = Constant("resolution", "Smallest step the controller accepts.");
        var lowest = Constant("lowest", "Smallest value the controller accepts.");
        var highest = Constant("highest", "Largest value the controller accepts.");
        var current = Constant("current", "The constant in the controller before the test.");
        if (lowest > highest) fields.Report(SheetFindings.RangeReversed, "lowest");
        if (id is null || loop is null || form is null || unit is null) return null;
        if (unit.Dimension != ResultBuilder.DimensionOf(form.Value))
        {
            fields.Report(
                SheetFindings.UnitOfOtherForm, "unit", FindingValue.Text("unit", unit.Symbol),
                FindingValue.Text("form", SheetWords.Of(SheetWords.Forms, form.Value)!));
            return null;
        }

        return new()
        {
            Id = id,
            Metering = metering ?? "",
            Loop = loop.Value,
            Form = form.Value,
            Unit = unit,
            Resolution = resolution,
            Lowest = lowest,
            Highest = highest,
            Current = current,
        };

        double? Constant(string name, string doc)
        {
            var dimensions = unit is null ? ConstantDimensions : [unit.Dimension];
            return fields.Amount(name, doc, dimensions, unit, Need.Optional) is { } amount
                ? ConstantRange.Check(fields, name, doc, amount)
                : null;
        }
    }
}
