namespace Lanewright.Core.Rates;

/// <summary>
/// Delivery, speed and rate: q = r v n, with q in kg/s, the rate r in kg per metre of one lane, the speed v in m/s and n lanes
/// covered in one pass (docs/method/rates.md).
/// </summary>
public static class SpreadRate
{
    /// <summary>Delivery that puts a rate down at a speed, kg/s.</summary>
    /// <param name="laneRate">kg per metre of one lane, 0 or more.</param>
    /// <param name="speed">m/s, 0 or more.</param>
    /// <param name="lanes">Lanes covered in one pass, above 0.</param>
    public static double Delivery(double laneRate, double speed, double lanes) => laneRate * speed * lanes;

    /// <summary>Speed up to which a rate can be held with a delivery, m/s.</summary>
    /// <param name="mostDelivery">kg/s.</param>
    /// <param name="laneRate">kg per metre of one lane, above 0.</param>
    /// <param name="lanes">Lanes covered in one pass, above 0.</param>
    public static double HighestSpeed(double mostDelivery, double laneRate, double lanes)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(laneRate);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(lanes);
        return mostDelivery / (laneRate * lanes);
    }

    /// <summary>
    /// The setting that gives a delivery, between tested settings along a straight line; null outside them, where nothing was
    /// tested.
    /// </summary>
    /// <param name="tested">Settings and their deliveries, both rising.</param>
    /// <param name="delivery">Wanted, kg/s.</param>
    public static double? Setting(IReadOnlyList<(double Setting, double Delivery)> tested, double delivery)
    {
        ArgumentNullException.ThrowIfNull(tested);
        for (var i = 1; i < tested.Count; i++)
        {
            var (s0, d0) = tested[i - 1];
            var (s1, d1) = tested[i];
            if (delivery >= d0 && delivery <= d1)
                return d1 > d0 ? s0 + ((s1 - s0) * (delivery - d0) / (d1 - d0)) : s0;
        }

        return null;
    }
}
