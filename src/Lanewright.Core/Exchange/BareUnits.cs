using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Exchange;

/// <summary>Units of numbers written without one; null where such a number is asked about.</summary>
internal sealed record BareUnits(Unit? Mass, Unit? Opening, Unit? Density)
{
    internal static BareUnits Of(UnitSystem? system) => system switch
    {
        UnitSystem.UnitedStates => new(Units.Pound, Units.Inch, Units.PoundPerCubicFoot),
        UnitSystem.Si => new(Units.Kilogram, Units.Millimetre, Units.KilogramPerCubicMetre),
        _ => new(null, null, null),
    };
}
