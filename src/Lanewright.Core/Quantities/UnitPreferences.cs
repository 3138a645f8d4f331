namespace Lanewright.Core.Quantities;

/// <summary>The unit in which each dimension is shown and expected. Values themselves are always kept in SI.</summary>
public sealed class UnitPreferences
{
    private readonly Unit[] units;

    private UnitPreferences(Unit[] units) => this.units = units;

    /// <summary>What is usual in the United States.</summary>
    public static UnitPreferences UnitedStates { get; } = Of(
        Units.Percent, Units.Pulse, Units.Revolution, Units.Pound, Units.Foot, Units.SquareFoot, Units.UsGallon,
        Units.Second, Units.MilePerHour, Units.PoundPerCubicFoot, Units.PoundPerMinute, Units.UsGallonPerMinute,
        Units.RevolutionPerMinute, Units.DegreeFahrenheit, Units.PoundPerLaneMile, Units.PoundPerThousandSquareFeet,
        Units.UsGallonPerLaneMile, Units.UsGallonPerThousandSquareFeet, Units.UsGallonPerShortTon, Units.PulsePerPound,
        Units.PoundPerPulse, Units.PulsePerUsGallon, Units.PulsePerMile, Units.PulsePerRevolution,
        Units.PoundPerRevolution);

    /// <summary>What is usual elsewhere.</summary>
    public static UnitPreferences Metric { get; } = Of(
        Units.Percent, Units.Pulse, Units.Revolution, Units.Kilogram, Units.Metre, Units.SquareMetre, Units.Litre,
        Units.Second, Units.KilometrePerHour, Units.KilogramPerCubicMetre, Units.KilogramPerMinute,
        Units.LitrePerMinute, Units.RevolutionPerMinute, Units.DegreeCelsius, Units.KilogramPerLaneKilometre,
        Units.GramPerSquareMetre,
        Units.LitrePerLaneKilometre, Units.MillilitrePerSquareMetre, Units.LitrePerTonne, Units.PulsePerKilogram,
        Units.KilogramPerPulse, Units.PulsePerLitre, Units.PulsePerKilometre, Units.PulsePerRevolution,
        Units.KilogramPerRevolution);

    /// <summary>The unit for a dimension.</summary>
    public Unit this[Dimension dimension] => units[(int)dimension];

    /// <summary>The same preferences with <paramref name="unit"/> for its dimension.</summary>
    public UnitPreferences With(Unit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var changed = (Unit[])units.Clone();
        changed[(int)unit.Dimension] = unit;
        return new(changed);
    }

    private static UnitPreferences Of(params Unit[] chosen)
    {
        var ordered = new Unit[chosen.Length];
        foreach (var unit in chosen)
            ordered[(int)unit.Dimension] = unit;
        return new(ordered);
    }
}
