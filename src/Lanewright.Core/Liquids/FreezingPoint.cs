namespace Lanewright.Core.Liquids;

/// <summary>Where a solution begins to freeze, with how far the sources lie apart.</summary>
/// <param name="Kelvins">The middle, K.</param>
/// <param name="PlusMinus">Half the range in which the sources lie, K.</param>
/// <param name="RisesWithStrength">Whether a stronger solution freezes earlier, at a higher temperature.</param>
public sealed record FreezingPoint(double Kelvins, double PlusMinus, bool RisesWithStrength)
{
    // Polynomials of Melinder (2010) in mass fraction about a base, K, as an open library of fluid properties carries them;
    // the spread beside each strength is ours and holds the printed tables (docs/method/liquids.md lists them).
    private static readonly Curve Sodium = new(
        0.133897, [263.767, -90.39, -220.4, -482.7, 224.7], 0, 0.233,
        [(0, 0.05), (0.1, 0.2), (0.2, 0.3), (0.23, 0.6), (0.233, 0.6)]);

    private static readonly Curve Calcium = new(
        0.187414, [256.94, -155.5, -549.6, -2624, -17260, -44940], 0, 0.25,
        [(0, 0.05), (0.05, 0.3), (0.1, 0.5), (0.15, 0.8), (0.2, 1), (0.25, 4)]);

    private static readonly Curve Magnesium = new(
        0.141327, [258.03, -188.5, -545.5, -725.7, -32080, -179400], 0, 0.205,
        [(0, 0.05), (0.05, 0.3), (0.1, 0.6), (0.14, 1.3), (0.17, 2), (0.205, 3.3)]);

    private static readonly Curve Potassium = new(
        0.256757, [256.11, -122.8, -386.2, -457.1, 2969, 8690], 0.11, 0.41, [(0.11, 1), (0.41, 1)]);

    // Past the lowest point magnesium chloride's crystals come out earlier again: Lange's Handbook, 15th ed., table 5.13.
    private static readonly (double Strength, double Value)[] MagnesiumPast =
        [(0.22, 240.35), (0.24, 247.55), (0.26, 252.05), (0.28, 254.85), (0.30, 256.45)];

    private static readonly (double Strength, double Value)[] MagnesiumPastSpread = [(0.205, 3.3), (0.22, 3), (0.24, 2), (0.3, 2)];

    /// <summary>The freezing point; null where the sources give none or lie too far apart to say.</summary>
    public static FreezingPoint? Of(SaltKind salt, double strength)
    {
        if (salt is SaltKind.None) return strength == 0 ? new(273.15, 0, false) : null;
        var curve = salt switch
        {
            SaltKind.SodiumChloride => Sodium,
            SaltKind.CalciumChloride => Calcium,
            SaltKind.MagnesiumChloride => Magnesium,
            _ => Potassium,
        };
        if (strength >= curve.Least && strength <= curve.Most)
            return new(curve.At(strength), Between(curve.Spread, strength), false);
        if (salt is not SaltKind.MagnesiumChloride || !(strength > curve.Most && strength <= 0.3)) return null;
        var spread = Between(MagnesiumPastSpread, strength);
        return strength < 0.22
            ? new(Between([(curve.Most, curve.At(curve.Most)), MagnesiumPast[0]], strength), spread, false)
            : new(Between(MagnesiumPast, strength), spread, true);
    }

    /// <summary>The eutectic as FHWA-RD-95-202, appendix A, gives it: the lowest freezing point and its strength.</summary>
    public static (double Kelvins, double Strength)? Eutectic(SaltKind salt) => salt switch
    {
        SaltKind.SodiumChloride => (252.15, 0.233),
        SaltKind.CalciumChloride => (222.15, 0.298),
        SaltKind.MagnesiumChloride => (240.15, 0.216),
        SaltKind.PotassiumAcetate => (213.15, 0.49),
        _ => null,
    };

    private static double Between(ReadOnlySpan<(double X, double Y)> points, double x)
    {
        for (var i = 1; i < points.Length; i++)
        {
            if (x > points[i].X && i < points.Length - 1) continue;
            var share = (x - points[i - 1].X) / (points[i].X - points[i - 1].X);
            return points[i - 1].Y + (Math.Clamp(share, 0, 1) * (points[i].Y - points[i - 1].Y));
        }

        return points[0].Y;
    }

    private sealed record Curve(
        double Base, double[] Coefficients, double Least, double Most, (double X, double Y)[] Spread)
    {
        internal double At(double strength)
        {
            var sum = 0.0;
            for (var i = Coefficients.Length - 1; i >= 0; i--)
                sum = (sum * (strength - Base)) + Coefficients[i];
            return sum;
        }
    }
}
