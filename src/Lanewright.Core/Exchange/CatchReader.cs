using Lanewright.Core.Quantities;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Exchange;

/// <summary>Reads how the material of a run was weighed.</summary>
internal static class CatchReader
{
    private static readonly Mass MostMass = Mass.FromSi(1e6);

    /// <summary>Every way of weighing that the run has; a good run has one.</summary>
    internal static IReadOnlyList<Catch> Read(Fields fields, BareUnits bare)
    {
        var containers = fields.List(
            "containers", "Containers, each with its own tare and gross.", (f, _) => ContainerOf(f, bare));
        var counted = fields.Group(
            "counted", "The short cut: one container weighed, the others counted as its equals.",
            f => Counted(f, bare), Need.Optional);
        var whole = fields.Group("whole", "The whole catch in one weighing.", f => Whole(f, bare), Need.Optional);
        var truck = fields.Group("truck", "The truck before and after.", f => Truck(f, bare), Need.Optional);
        Catch?[] all = [containers.Count > 0 ? new ContainerCatch(containers) : null, counted, whole, truck];
        return [.. all.OfType<Catch>()];
    }

    /// <summary>
    /// A weight. Negative ones are read too, so that the finding about them can say what they mean.
    /// </summary>
    internal static Mass? Weight(
        Fields fields, string name, string doc, BareUnits bare, Need need = Need.Optional) =>
        fields.Quantity<Mass>(name, doc, need, bare.Mass, Mass.FromSi(-MostMass.Si), MostMass, true);

    private static Container? ContainerOf(Fields fields, BareUnits bare)
    {
        var tare = Weight(fields, "tare", "Reading of the empty container.", bare, Need.Required);
        var gross = Weight(fields, "gross", "Reading of the full container.", bare, Need.Required);
        return tare is { } t && gross is { } g ? new(t, g) : null;
    }

    private static CountedCatch? Counted(Fields fields, BareUnits bare)
    {
        var count = fields.Count("count", "How many containers, the weighed one included.", least: 1, most: 10_000);
        var tare = Weight(fields, "tare", "Reading of the empty container.", bare, Need.Required);
        var gross = Weight(fields, "gross", "Reading of the one weighed full.", bare, Need.Required);
        var spread = SheetReader.Share(
            fields, "fillSpread", "Standard deviation of the fill from container to container, as a share; 5 % is assumed when left out.", 0, 1);
        return count is { } n && tare is { } t && gross is { } g ? new(n, t, g, spread) : null;
    }

    private static WholeCatch? Whole(Fields fields, BareUnits bare)
    {
        var tare = Weight(fields, "tare", "Reading with the empty bin or tarpaulin.", bare, Need.Required);
        var gross = Weight(fields, "gross", "Reading with the catch.", bare, Need.Required);
        return tare is { } t && gross is { } g ? new(t, g) : null;
    }

    private static TruckCatch? Truck(Fields fields, BareUnits bare)
    {
        var before = Weight(fields, "before", "Reading before the drop.", bare, Need.Required);
        var after = Weight(fields, "after", "Reading after the drop.", bare, Need.Required);
        var fuel = fields.Group(
            "fuelBurnt", "Fuel burnt between the readings.", f => AllowanceOf(f, bare), Need.Optional);
        var same = fields.YesNo(
            "samePeople",
            "Yes when the same people sat in the truck at both readings; no when people got in or out, who then belong "
            + "among the changes.",
            Need.Optional);
        var changes = fields.List(
            "changes", "Everything else that left or joined the truck between the readings.",
            (f, _) => ChangeOf(f, bare));
        if (before is not { } b || after is not { } a) return null;
        return new(b, a, fuel, same is true || (same is false && changes.Count > 0), changes);
    }

    private static Change? ChangeOf(Fields fields, BareUnits bare)
    {
        var what = fields.Text("what", "What left or joined.");
        var joined = fields.YesNo("joined", "Yes when it was added, no when it left.");
        var allowance = AllowanceOf(fields, bare);
        return what is not null && joined is { } j && allowance is not null ? new(what, j, allowance) : null;
    }

    private static Allowance? AllowanceOf(Fields fields, BareUnits bare)
    {
        var amount = Weight(fields, "amount", "How much.", bare, Need.Required);
        var plusMinus = Weight(fields, "plusMinus", "Half the range it may lie in; a quarter of the amount is assumed when left out.", bare);
        return amount is { } a ? new(a, plusMinus) : null;
    }
}
