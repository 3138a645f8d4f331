using Lanewright.Core.Statistics;

namespace Lanewright.Core.Season;

/// <summary>
/// What is known of a spreader's constant on a day: level and wear of the logarithm of delivered by said, normal, with what they
/// share (R. E. Kalman, 1960; A. C. Harvey, Forecasting, Structural Time Series Models and the Kalman Filter, 1989, 2.3 by
/// memory).
/// </summary>
/// <param name="Day">The day.</param>
/// <param name="Level">Estimate of the logarithm.</param>
/// <param name="LevelUncertainty">Its standard uncertainty.</param>
/// <param name="Wear">Estimate of its change in a day.</param>
/// <param name="WearUncertainty">Its standard uncertainty.</param>
/// <param name="Covariance">Of level and wear.</param>
/// <param name="WanderInDay">Variance that the level gains in a day.</param>
public sealed record WearState(
    DateOnly Day, double Level, double LevelUncertainty, double Wear, double WearUncertainty, double Covariance, double WanderInDay)
{
    /// <summary>The level's estimate and standard uncertainty a number of days later, 0 or more.</summary>
    public (double Level, double Uncertainty) After(int days)
    {
        double t = days;
        var variance = (LevelUncertainty * LevelUncertainty) + (2 * t * Covariance) + (t * t * WearUncertainty * WearUncertainty) + (t * WanderInDay);
        return (Level + (t * Wear), Math.Sqrt(Math.Max(0, variance)));
    }

    /// <summary>The chance that the level lies outside the tolerance, a number of days later.</summary>
    public double ChanceOutside(double tolerance, int days)
    {
        var (level, u) = After(days);
        double low = Elementary.Log(1 - tolerance), high = Elementary.Log(1 + tolerance);
        if (u == 0) return level < low || level > high ? 1 : 0;
        return NormalDistribution.Cdf((low - level) / u) + NormalDistribution.Survival((high - level) / u);
    }

    /// <summary>The first day on which that chance is at least <paramref name="chance"/>; null when there is none within
    /// <paramref name="days"/>.</summary>
    public DateOnly? Leaves(double tolerance, double chance, int days)
    {
        for (var t = 0; t <= days; t++)
        {
            if (ChanceOutside(tolerance, t) >= chance) return Day.AddDays(t);
        }

        return null;
    }
}

/// <summary>
/// Follows level and wear through the looks. Errors that looks share are carried as unknowns of their own, so a scale's gain
/// never averages out.
/// </summary>
public static class WearFilter
{
    // Nothing is known of the level before the first look but that it is a spreader: 30 % either way.
    private const double LevelBefore = 0.3;
    private const double DaysInYear = 365.25;

    /// <summary>The state on a day.</summary>
    /// <param name="looks">At least one, in order of their days, the calibration among them.</param>
    /// <param name="rules">The yard's.</param>
    /// <param name="today">On or after the last look.</param>
    public static WearState Of(IReadOnlyList<DriftLook> looks, DriftRules rules, DateOnly today) => Through(looks, rules, today)[^1];

    /// <summary>The state after each look, and last the state on a day.</summary>
    public static IReadOnlyList<WearState> Through(IReadOnlyList<DriftLook> looks, DriftRules rules, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(looks);
        ArgumentNullException.ThrowIfNull(rules);
        if (looks.Count == 0) throw new ArgumentException("At least one look is needed.", nameof(looks));
        var errors = LookErrors.Of([.. looks.Select(look => look.LogShare)], rules.DayToDay);
        var n = 2 + errors.Sources;
        var (x, p, states) = (new double[n], new double[n, n], new List<WearState>(looks.Count + 1));
        var wander = rules.WanderInYear * rules.WanderInYear / DaysInYear;
        p[0, 0] = LevelBefore * LevelBefore;
        p[1, 1] = rules.WearInYear / DaysInYear * (rules.WearInYear / DaysInYear);
        for (var j = 2; j < n; j++) p[j, j] = 1;
        var (day, row, gain) = (looks[0].Day, new double[n], new double[n]);
        for (var i = 0; i < looks.Count; i++)
        {
            Wait(looks[i].Day);
            row[0] = 1;
            for (var j = 2; j < n; j++) row[j] = errors.Shared[i, j - 2];
            var (off, variance) = (looks[i].LogShare.Value, errors.Own[i] * errors.Own[i]);
            for (var j = 0; j < n; j++)
            {
                gain[j] = 0;
                for (var k = 0; k < n; k++) gain[j] += p[j, k] * row[k];
                off -= row[j] * x[j];
            }

            for (var j = 0; j < n; j++) variance += row[j] * gain[j];
            for (var j = 0; j < n; j++)
            {
                x[j] += gain[j] / variance * off;
                for (var k = 0; k < n; k++) p[j, k] -= gain[j] * gain[k] / variance;
            }

            states.Add(State());
        }

        Wait(today);
        states.Add(State());
        return states;

        void Wait(DateOnly until)
        {
            double t = until.DayNumber - day.DayNumber;
            if (t < 0) throw new ArgumentException("The looks must be in order of their days.", nameof(looks));
            x[0] += t * x[1];
            // P = F P F' with F = [1 t; 0 1] on level and wear, and the wander on the level.
            for (var k = 0; k < n; k++) p[0, k] += t * p[1, k];
            for (var k = 0; k < n; k++) p[k, 0] += t * p[k, 1];
            p[0, 0] += wander * t;
            day = until;
        }

        WearState State() => new(
            day, x[0], Math.Sqrt(Math.Max(0, p[0, 0])), x[1], Math.Sqrt(Math.Max(0, p[1, 1])), p[0, 1], wander);
    }
}
