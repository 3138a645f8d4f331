namespace Lanewright.Core.Spreading;

/// <summary>Salt and brine of a dose that is spread pre-wetted, in the dose's own unit (mass by area or by length).</summary>
/// <param name="Salt">The dry part.</param>
/// <param name="Brine">The liquid part.</param>
public readonly record struct PrewetDose(double Salt, double Brine)
{
    /// <summary>Both together.</summary>
    public double Total => Salt + Brine;

    /// <summary>A dose that is the sum of salt and brine, as European doses of pre-wetted salt are stated (30 % brine by mass of
    /// the total: ls.brandenburg.de).</summary>
    /// <param name="total">Salt and brine together, 0 or more.</param>
    /// <param name="brineShare">Share of brine by mass of the total, 0 up to but not 1.</param>
    public static PrewetDose OfTotal(double total, double brineShare)
    {
        Check(total, brineShare);
        return new(total * (1 - brineShare), total * brineShare);
    }

    /// <summary>A dose that counts the dry salt alone; the brine comes on top.</summary>
    /// <param name="dry">Dry salt, 0 or more.</param>
    /// <param name="brineShare">Share of brine by mass of the total, 0 up to but not 1.</param>
    public static PrewetDose OfDry(double dry, double brineShare)
    {
        Check(dry, brineShare);
        return new(dry, dry * brineShare / (1 - brineShare));
    }

    /// <summary>Salt in it, dry and dissolved.</summary>
    /// <param name="concentration">Share of salt by mass of the brine, 0 to 1.</param>
    public double SaltAltogether(double concentration)
    {
        if (!(concentration is >= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(concentration), concentration, "Must be 0 to 1.");
        return Salt + (Brine * concentration);
    }

    private static void Check(double dose, double brineShare)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(dose);
        if (!(brineShare is >= 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(brineShare), brineShare, "Must be 0 or more, below 1.");
    }
}
