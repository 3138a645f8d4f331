using Lanewright.Core.Charts;
using Lanewright.Core.Text;

namespace Lanewright.Core.Diagnosis;

/// <summary>Each run as observed, beside what a healthy spreader and what the first cause would give.</summary>
internal static class DiagnosisPicture
{
    internal static string Svg(DiagnosisReport report, RankedCause cause, string id, TextCulture culture)
    {
        if (report.Seen is not { } seen) return "";
        var channel = Best(seen, cause);
        var reference = ReferenceEquals(channel, seen.CountedMass) ? DiagnosisText.Reference(seen) : (Reference: 0, Variance: 0);
        // Without a reference the runs are held against their middle.
        var shift = reference.Variance < 0.5 ? reference.Reference : channel.Values.OfType<double>().Order().ElementAt(channel.Count / 2);
        var rows = new List<ExpectedRow>();
        for (var i = 0; i < channel.Values.Length; i++)
            if (channel.Values[i] is { } value)
                rows.Add(new(
                    seen.Runs[i].Run.Id, Statistics.Elementary.Expm1(value - shift), 2 * channel.Own[i],
                    Statistics.Elementary.Expm1(channel.Expected(cause.Best, i))));
        return ExpectedPicture.Svg(channel.Name, cause.Facts.Name, rows, id, culture);
    }

    // The quantity that the cause moves most.
    private static Channel Best(Observations seen, RankedCause cause)
    {
        var best = seen.CountedMass;
        var most = Moved(best);
        foreach (var channel in (Channel?[])[seen.PulsesPerTurn, seen.ShaftSpeed, seen.ControllerCount])
            if (channel is not null && Moved(channel) > most * 1.01) (best, most) = (channel, Moved(channel));
        return best;

        double Moved(Channel channel) => Enumerable.Range(0, channel.Values.Length)
            .Max(i => channel.Values[i] is null ? 0 : Math.Abs(channel.Expected(cause.Best, i)));
    }
}
