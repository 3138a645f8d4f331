using Lanewright.Core.Quantities;

namespace Lanewright.Core.Weighing;

/// <summary>How the material of one run was weighed, with every reading as the scale showed it.</summary>
public abstract record Catch
{
    private protected Catch()
    {
    }
}

/// <summary>One container, weighed empty and full.</summary>
/// <param name="Tare">Reading of the empty container.</param>
/// <param name="Gross">Reading of the full container.</param>
public sealed record Container(Mass Tare, Mass Gross);

/// <summary>Many containers, each with a tare and a gross of its own.</summary>
/// <param name="Containers">At least one.</param>
public sealed record ContainerCatch(IReadOnlyList<Container> Containers) : Catch;

/// <summary>
/// The short cut: one container weighed, the others counted as its equals. Accepted, and its price shown.
/// </summary>
/// <param name="Count">How many containers, the weighed one included.</param>
/// <param name="Tare">Reading of the empty container.</param>
/// <param name="Gross">Reading of the one weighed full.</param>
/// <param name="FillSpread">Standard deviation of the fill from container to container, as a share of the fill;
/// null when nobody measured it.</param>
public sealed record CountedCatch(long Count, Mass Tare, Mass Gross, Fraction? FillSpread) : Catch;

/// <summary>The whole catch in one go on a pallet, floor, forklift or hanging scale.</summary>
/// <param name="Tare">Reading with the empty bin or tarpaulin.</param>
/// <param name="Gross">Reading with the catch.</param>
public sealed record WholeCatch(Mass Tare, Mass Gross) : Catch;

/// <summary>The truck before and after the drop.</summary>
/// <param name="Before">Reading before.</param>
/// <param name="After">Reading after.</param>
/// <param name="FuelBurnt">Fuel burnt between the readings; null when nobody said.</param>
/// <param name="PeopleStated">Whether somebody said who sat in the truck at each reading.</param>
/// <param name="Changes">Everything else that left or joined the truck between the readings.</param>
public sealed record TruckCatch(
    Mass Before, Mass After, Allowance? FuelBurnt, bool PeopleStated, IReadOnlyList<Change> Changes) : Catch;

/// <summary>An amount allowed for, with how far off it may be.</summary>
/// <param name="Amount">The amount, 0 or more.</param>
/// <param name="PlusMinus">Half the range it may lie in; null when nobody said.</param>
public sealed record Allowance(Mass Amount, Mass? PlusMinus);

/// <summary>Something that left or joined the truck between the readings.</summary>
/// <param name="What">In words.</param>
/// <param name="Joined">True when it was added, false when it left.</param>
/// <param name="Allowance">How much.</param>
public sealed record Change(string What, bool Joined, Allowance Allowance);
