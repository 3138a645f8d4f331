namespace Lanewright.Core.Liquids;

/// <summary>What is dissolved.</summary>
public enum SaltKind
{
    /// <summary>Nothing: water.</summary>
    None,

    /// <summary>Sodium chloride, NaCl.</summary>
    SodiumChloride,

    /// <summary>Calcium chloride, CaCl2.</summary>
    CalciumChloride,

    /// <summary>Magnesium chloride, MgCl2.</summary>
    MagnesiumChloride,

    /// <summary>Potassium acetate.</summary>
    PotassiumAcetate,
}
