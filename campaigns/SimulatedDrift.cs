using Lanewright.Core.Season;
using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Campaigns;

/// <summary>
/// Seasons of one spreader with known truth, all invented: a drop test in autumn, then checks of different uncertainty on the same
/// scale, whose gain is off by an amount nobody knows.
/// </summary>
internal sealed class SimulatedDrift(ulong seed)
{
    internal static readonly DateOnly Autumn = new(2026, 10, 1);

    private readonly RandomSource random = new(seed);

    /// <summary>Looks after the calibration.</summary>
    internal int Looks { get; init; } = 10;

    /// <summary>Days between looks.</summary>
    internal int Every { get; init; } = 14;

    /// <summary>Standard uncertainty of the scale's gain.</summary>
    internal double Scale { get; init; } = 0.004;

    /// <summary>Own standard uncertainty of the calibration.</summary>
    internal double Calibration { get; init; } = 0.004;

    internal DriftRules Rules { get; init; } = new();

    internal RandomSource Random => random;

    /// <summary>A path of the logarithm of a constant by days: steady wear and wander as the rules expect them.</summary>
    internal double[] Worn(int days)
    {
        var wear = random.NextNormal() * Rules.WearInYear / 365.25;
        var wander = Rules.WanderInYear / Math.Sqrt(365.25);
        var path = new double[days];
        for (var day = 1; day < days; day++) path[day] = path[day - 1] + wear + (wander * random.NextNormal());
        return path;
    }

    /// <summary>The calibration and the looks.</summary>
    /// <param name="truth">Logarithm of delivered by said, by days since the calibration, had the constant been keyed in without
    /// error.</param>
    /// <param name="start">What it was on the day of the calibration: what the errors of the drop test left.</param>
    internal (DriftLook Calibration, List<DriftLook> Looks) Season(Func<int, double> truth, out double start)
    {
        var gain = ErrorSource.Normal("scale:gain", "scale");
        var gainError = random.NextNormal() * Scale;
        var own = random.NextNormal() * Calibration;
        // The constant keyed in carries the errors of its test: the spreader delivers that much less than is said.
        start = -(gainError + own);
        var calibration = new DriftLook(
            Autumn, DriftLookKind.Calibration, "drop test",
            Measured.Of(0, Scale, gain).With(ErrorSource.Normal("calibration", "drop test"), Calibration));
        var looks = new List<DriftLook>();
        for (var i = 1; i <= Looks; i++)
        {
            var u = 0.01 + (0.01 * random.NextDouble());
            var value = truth(i * Every) + start + gainError + (random.NextNormal() * u) + (random.NextNormal() * Rules.DayToDay);
            looks.Add(new(
                Autumn.AddDays(i * Every), DriftLookKind.Check, $"check {i:00}",
                Measured.Of(value, Scale, gain).With(ErrorSource.Normal($"check {i}", "check"), u)));
        }

        return (calibration, looks);
    }
}
