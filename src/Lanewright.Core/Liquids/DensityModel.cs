namespace Lanewright.Core.Liquids;

/// <summary>The five coefficients of one salt in the density model, and where they hold.</summary>
/// <param name="C0">First.</param>
/// <param name="C1">Second.</param>
/// <param name="C2">Third.</param>
/// <param name="C3">Fourth, per °C.</param>
/// <param name="C4">Fifth, °C.</param>
/// <param name="Coldest">Least temperature that was fitted, °C.</param>
/// <param name="MostStrength">Highest mass fraction that was fitted.</param>
/// <param name="PlusMinus">How far other tables lie from the model where it was fitted, kg/m³ (ours, see docs/method/liquids.md).</param>
/// <param name="PerDegree">What each degree colder than that adds to it, kg/m³ (ours: it covers the tables that reach there).</param>
internal sealed record DensityModel(
    double C0, double C1, double C2, double C3, double C4, double Coldest, double MostStrength, double PlusMinus, double PerDegree)
{
    // Laliberté, J. Chem. Eng. Data 54 (2009) 1725, the table as an open program for chemical engineers carries it.
    private static readonly DensityModel Sodium = new(
        -0.00324112223655149, 0.0636354335906616, 1.01371399467365, 0.0145951015210159, 3317.34854426537, 0, 0.266, 0.6, 0.15);

    private static readonly DensityModel Calcium = new(
        -9.72893747074295, 14.7005352975276, 4.19033341468332, 0.0397403624277021, 2708.12778894614, 15, 0.513, 3, 0.15);

    private static readonly DensityModel Magnesium = new(
        -0.0215001423271867, 0.0441202083909434, 1.53227586827304, -0.0098078506056196, -3478.36496883693, 0, 0.324, 4, 0.5);

    private static readonly DensityModel Potassium = new(
        -12939.1226122242, 69601.6517946745, 116.599325442767, 0.382632586300714, 1096.8090489007, 15, 0.595, 1.5, 0.15);

    /// <summary>The coefficients of a salt; null for water.</summary>
    internal static DensityModel? Of(SaltKind salt) => salt switch
    {
        SaltKind.SodiumChloride => Sodium,
        SaltKind.CalciumChloride => Calcium,
        SaltKind.MagnesiumChloride => Magnesium,
        SaltKind.PotassiumAcetate => Potassium,
        _ => null,
    };
}
