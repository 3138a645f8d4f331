using System.Globalization;
using Lanewright.Core.Quantities;
using Lanewright.Core.Season;
using Lanewright.Core.Spreading;
using Lanewright.Core.Uncertainty;
using Lanewright.Storage;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Folding;

namespace Lanewright.Season;

/// <summary>The constants that the records say were valid: each adopted drop test from the moment of its decision until the next.</summary>
internal static class RecordConstants
{
    /// <summary>The constants of closed-loop spreaders. A constant is the value that the test found, not the rounded one that was
    /// keyed in: counts are turned into mass, whatever the controller believed.</summary>
    internal static async Task<IReadOnlyList<SeasonConstant>> OfAsync(EntryStore store, CancellationToken stop)
    {
        var found = new List<SeasonConstant>();
        long? before = null;
        while (true)
        {
            var tests = await store.TestsAsync(new() { Before = before, Most = TestQuery.MostTests }, stop);
            if (tests.Count == 0) break;
            before = tests.Min(one => one.Test.LastNumber);
            foreach (var (row, _) in tests)
                if (row is { Kind: "drop-test", Verdict: "adopt", Conflicts: 0 } && await store.FoldAsync(row.Id, stop) is { Decision: { } decision } fold
                    && Constant(row.SpreaderName, decision, fold) is { } constant) found.Add(constant);
        }

        return
        [
            .. found.GroupBy(one => one.Spreader, StringComparer.Ordinal).SelectMany(group =>
            {
                // Two decisions of one moment: that of the newest test holds, and the newest was read first.
                var inOrder = group.GroupBy(one => one.From).Select(same => same.First()).OrderBy(one => one.From).ToList();
                return inOrder.Select((one, i) => i + 1 < inOrder.Count ? one with { To = inOrder[i + 1].From } : one);
            }),
        ];
    }

    private static SeasonConstant? Constant(string spreader, Entry decision, TestFold fold)
    {
        var reading = TestComputation.Sheet(fold);
        if (!reading.IsUsable || SheetAnalysis.Analyse(reading.Value!) is not { Usable: true, Results: [var result] }) return null;
        var value = result.Value;
        // Pulses or turns for a mass are turned over; mass for a count is taken as it is.
        double massPerCount;
        switch (result.Dimension)
        {
            case Dimension.PulsesPerMass: massPerCount = 1 / value.Value; break;
            case Dimension.MassPerPulse or Dimension.MassPerRevolution: massPerCount = value.Value; break;
            default: return null;
        }

        // Sources of runs are named within their test only; those of a scale have one identity everywhere.
        var relative = new List<Contribution>();
        foreach (var (source, amount) in value.Contributions)
        {
            var own = source.Id.StartsWith("scale:", StringComparison.Ordinal)
                ? source
                : ErrorSource.Of($"{fold.Id}:{source.Id}", source.Family, source.Shape, source.DegreesOfFreedom, source.Ensemble is { } name ? $"{fold.Id}:{name}" : null);
            relative.Add(new(own, (result.Dimension is Dimension.PulsesPerMass ? -1 : 1) * amount / value.Value));
        }

        return new()
        {
            Id = string.Create(CultureInfo.InvariantCulture, $"{spreader} {decision.At:yyyy-MM-dd} {fold.Id}"), Spreader = spreader, From = decision.At,
            MassPerCount = massPerCount, Relative = relative,
        };
    }
}
