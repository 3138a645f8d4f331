namespace Lanewright.Core.Text;

/// <summary>Which ton and gallon a bare "ton" or "gal" means.</summary>
public enum CustomaryUnits
{
    /// <summary>Neither: a bare "ton" or "gal" is answered with a question.</summary>
    None,

    /// <summary>Short ton and US gallon.</summary>
    UnitedStates,

    /// <summary>Long ton and imperial gallon.</summary>
    Imperial,
}
