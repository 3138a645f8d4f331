using Lanewright.Core.Statistics;
using Lanewright.Core.Text;

namespace Lanewright.Core.Diagnosis;

/// <summary>What a cause would do to each run, as logarithms of factors; what it does not touch is null.</summary>
internal sealed class Hypothesis(Cause cause, double weight, double effect)
{
    internal Cause Cause => cause;

    /// <summary>Share of the cause's chance that this size and place of it has.</summary>
    internal double Weight => weight;

    /// <summary>The size of the effect, in the cause's own measure.</summary>
    internal double Effect => effect;

    /// <summary>The run it touches, or -1 for all.</summary>
    internal int Run { get; init; } = -1;

    /// <summary>Mass weighed for each turn.</summary>
    internal double[]? Mass { get; init; }

    /// <summary>Pulses for each turn.</summary>
    internal double[]? Pulses { get; init; }

    /// <summary>Turns by time.</summary>
    internal double[]? Turns { get; init; }

    /// <summary>Count as written by the one that was counted: a slip of the pen.</summary>
    internal double[]? Written { get; init; }

    /// <summary>Mass said to be delivered, for the pulses counted.</summary>
    internal double[]? Delivered { get; init; }

    /// <summary>Further scatter of the mass, as a share.</summary>
    internal double Further { get; init; }

    /// <summary>What it does to sister spreaders with the same material, and on the same scale.</summary>
    internal double SisterMaterial { get; init; }

    /// <summary>See <see cref="SisterMaterial"/>.</summary>
    internal double SisterScale { get; init; }

    /// <summary>Loss in a season (wear).</summary>
    internal double Slope { get; init; }

    /// <summary>Engine speed by the earlier one, as a logarithm.</summary>
    internal double Engine { get; init; }

    internal static double At(double[]? what, int run) => what is null ? 0 : what[run];
}

/// <summary>
/// A quantity observed in the runs against what is expected of a healthy spreader, as logarithms of ratios, and how a hypothesis
/// moves it.
/// </summary>
internal sealed class Channel(
    Phrase name, double?[] values, double[] own, double common, double mass, double pulses, double turns, double delivered,
    double written)
{
    internal Phrase Name => name;

    internal double?[] Values => values;

    /// <summary>Standard uncertainty of each value from errors of its own.</summary>
    internal double[] Own => own;

    /// <summary>Standard uncertainty common to the values.</summary>
    internal double Common => common;

    internal int Count { get; } = values.Count(v => v is not null);

    /// <summary>What a hypothesis makes of a value.</summary>
    internal double Expected(Hypothesis h, int run) =>
        (mass * Hypothesis.At(h.Mass, run)) + (pulses * Hypothesis.At(h.Pulses, run)) + (turns * Hypothesis.At(h.Turns, run)) + (delivered * Hypothesis.At(h.Delivered, run))
        + (written * Hypothesis.At(h.Written, run));

    /// <summary>Logarithm of the chance density of what was observed, up to a constant.</summary>
    /// <param name="h">The hypothesis.</param>
    /// <param name="spread">The spread of the values.</param>
    /// <param name="shift">The reference.</param>
    /// <param name="commonVariance">Its variance, with what the values have in common.</param>
    internal double LogLikelihood(Hypothesis h, Spread spread, double shift, double commonVariance)
    {
        double weighted = 0, squares = 0;
        for (var i = 0; i < values.Length; i++)
        {
            if (values[i] is not { } value) continue;
            var off = value - Expected(h, i) - shift;
            var pull = off * spread.Precisions[i];
            weighted += pull;
            squares += off * pull;
        }

        var grown = 1 + (commonVariance * spread.Precision);
        return -0.5 * (spread.Logs + Elementary.Log(grown) + squares - (commonVariance * weighted * weighted / grown));
    }

    /// <summary>The spread of the values with a scatter from run to run and a further one.</summary>
    internal Spread SpreadOf(double scatter, double further)
    {
        var precisions = new double[values.Length];
        double logs = 0, precision = 0;
        for (var i = 0; i < values.Length; i++)
        {
            if (values[i] is null) continue;
            var variance = (own[i] * own[i]) + (scatter * scatter) + (further * further);
            logs += Elementary.Log(variance);
            precisions[i] = 1 / variance;
            precision += precisions[i];
        }

        return new(precisions, precision, logs);
    }
}

/// <summary>Precisions of the values of a channel, their sum, and the sum of the logarithms of their variances.</summary>
internal sealed record Spread(double[] Precisions, double Precision, double Logs);
