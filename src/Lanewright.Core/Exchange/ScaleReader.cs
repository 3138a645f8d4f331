using Lanewright.Core.Quantities;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Exchange;

/// <summary>Reads a scale.</summary>
internal static class ScaleReader
{
    internal static Scale? Read(Fields fields, BareUnits bare)
    {
        var id = fields.Text("id", "Name of the scale.", maxLength: 60);
        var kind = fields.Choice("kind", "What kind of scale; a platform scale when left out.", SheetWords.ScaleKinds, Need.Optional);
        var capacity = Positive("capacity", "The most it may weigh.", 1e6);
        var division = Positive("division", "The division d it shows.", 1e4);
        var scaleClass = fields.Choice(
            "class", "Accuracy class on the plate.", SheetWords.ScaleClasses, Need.Optional);
        var rules = fields.Choice(
            "rules", "Rules behind the class; NIST Handbook 44 when left out.", SheetWords.ScaleRuleBooks,
            Need.Optional);
        var tolerance = Positive("tolerance", "A tolerance of its own, plus or minus, in place of the class.", 1e4);
        var relative = SheetReader.Share(
            fields, "relativeTolerance", "A tolerance of its own as a share of the load, plus or minus.", 1e-6, 0.2);
        var verified = fields.Date("verified", "When it was last verified.", Need.Optional);
        if (id is null) return null;
        return new()
        {
            Id = id,
            Kind = kind ?? ScaleKind.Platform,
            Capacity = capacity,
            Division = division,
            Class = scaleClass ?? ScaleClass.None,
            Rules = rules ?? ScaleRules.Handbook44,
            Tolerance = tolerance,
            RelativeTolerance = relative,
            Verified = verified,
        };

        Mass? Positive(string name, string doc, double most) => fields.Quantity<Mass>(
            name, doc, Need.Optional, bare.Mass, Mass.FromSi(1e-6), Mass.FromSi(most), true);
    }
}
