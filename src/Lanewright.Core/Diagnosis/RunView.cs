using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Diagnosis;

/// <summary>One run as a diagnosis sees it; what was not written down is null.</summary>
/// <param name="Run">As written.</param>
/// <param name="Place">Its place in the sheet.</param>
/// <param name="Mass">Net mass as it enters the constant, kg.</param>
/// <param name="Own">Standard uncertainty of its ratio from weighing, counting and timing, as a share.</param>
/// <param name="Share">Drive setting as a share; null when it is none.</param>
/// <param name="Speed">Speed on the road, m/s; null when the setting is none.</param>
internal sealed record RunView(Run Run, int Place, double Mass, double Own, double? Share, double? Speed)
{
    internal double? Pulses => Above(Run.Pulses?.Si);

    internal double? Turns => Above(Run.Revolutions?.Si);

    internal double? Seconds => Above(Run.Time?.Si);

    internal double? Delivered => Above(Run.Delivered?.Si);

    /// <summary>Containers of the run; empty when it was weighed otherwise.</summary>
    internal IReadOnlyList<Container> Containers => Run.Catch is ContainerCatch c ? c.Containers : [];

    /// <summary>How many empty weighings stand behind the net.</summary>
    internal int Tares => Run.Catch switch { ContainerCatch c => c.Containers.Count, WholeCatch => 1, CountedCatch c => (int)c.Count, _ => 0 };

    /// <summary>How many of them are zero.</summary>
    internal int ZeroTares => Run.Catch switch
    {
        ContainerCatch c => c.Containers.Count(x => x.Tare.Si == 0),
        WholeCatch { Tare.Si: 0 } => 1,
        CountedCatch { Tare.Si: 0 } c => (int)c.Count,
        _ => 0,
    };

    /// <summary>The runs of a report, in the order of the sheet; those that gave no ratio are left out.</summary>
    internal static List<RunView> Of(TestReport report)
    {
        var rows = new Dictionary<string, RunRow>(StringComparer.Ordinal);
        foreach (var result in report.Results)
            foreach (var row in result.Runs) rows[row.Id] = row;
        var views = new List<RunView>();
        for (var i = 0; i < report.Sheet.Runs.Count; i++)
        {
            var run = report.Sheet.Runs[i];
            if (!rows.TryGetValue(run.Id, out var row) || !(row.Net.Value > 0)) continue;
            var setting = QuantityText.ReadAny(run.Setting, TextCulture.Invariant).TryGet(out var amount) ? amount : (Amount?)null;
            views.Add(new(
                run, i, row.Net.Value, row.OwnUncertainty,
                setting is { Unit.Dimension: Dimension.Fraction, Si: >= 0 and <= 1 } share ? share.Si : null,
                setting is { Unit.Dimension: Dimension.Speed, Si: > 0 } speed ? speed.Si : null));
        }

        return views;
    }

    private static double? Above(double? value) => value is > 0 ? value : null;
}
