namespace Lanewright.Core.Quantities;

/// <summary>The units the trade uses, each with exact factors to SI.</summary>
public static class Units
{
    private const double KilogramsPerPound = 0.45359237;

    /// <summary>kg.</summary>
    public static readonly Unit Kilogram = new("kg", Dimension.Mass, 1, 1, 0, "kilogram", "kilograms");

    /// <summary>lb.</summary>
    public static readonly Unit Pound = new("lb", Dimension.Mass, KilogramsPerPound, 1, 0, "lbs", "pound", "pounds");
}
