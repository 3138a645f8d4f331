using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Season;

/// <summary>What a spreader was loaded with in a storm, and what its log says of the same loads.</summary>
public sealed record StormLoads
{
    /// <summary>The spreader.</summary>
    public required string Spreader { get; init; }

    /// <summary>Its depot.</summary>
    public required string Depot { get; init; }

    /// <summary>The storm.</summary>
    public required string Storm { get; init; }

    /// <summary>Day on which it ended.</summary>
    public required DateOnly Day { get; init; }

    /// <summary>Loads less returns, kg, above 0. A gain that somebody stated for a scale is a source of its own, with an identity that begins with "scale:".</summary>
    public required Measured Loaded { get; init; }

    /// <summary>What the log says, kg, above 0: a number without an error of its own, since the looks ask what it is worth.</summary>
    public required double Logged { get; init; }

    /// <summary>Rows of the log, and how many of them come behind a hole in it.</summary>
    public required long Rows { get; init; }

    /// <summary>Rows behind a hole.</summary>
    public required long Holes { get; init; }

    /// <summary>Routes it worked on.</summary>
    public required IReadOnlyList<string> Routes { get; init; }

    /// <summary>Relative standard uncertainty of its calibration.</summary>
    public required double Calibration { get; init; }

    /// <summary>Standard uncertainty of what is in a hopper at the end of a storm: anything up to 200 kg (common practice, no source).</summary>
    public const double HopperLeft = 57.735026918962575;

    /// <summary>Share of holes above which a storm gives no look.</summary>
    public const double MostHoles = 0.05;

    /// <summary>How many others must have worked the same routes.</summary>
    public const int FewestSisters = 3;

    // A median scatters more than a mean, by the root of pi / 2 for a normal distribution of many.
    private const double Median = 1.2533141373155003;

    /// <summary>
    /// One look for each spreader and storm: its tickets against its log or, where that is known better, the same less the median of its
    /// sisters, the spreaders of the depot that worked one of its routes. Never both: they are of the same tickets.
    /// </summary>
    /// <param name="all">Every spreader's loads in every storm.</param>
    public static IReadOnlyList<(string Spreader, DriftLook Look)> Looks(IReadOnlyList<StormLoads> all)
    {
        ArgumentNullException.ThrowIfNull(all);
        var looks = new List<(string, DriftLook)>();
        foreach (var storm in all.Where(IsWhole).GroupBy(one => (one.Depot, one.Storm)))
        {
            var together = storm.OrderBy(one => one.Spreader, StringComparer.Ordinal).ToList();
            foreach (var one in together)
            {
                var sisters = together.Where(other => other.Spreader != one.Spreader && other.Routes.Intersect(one.Routes).Any()).ToList();
                Measured? alone = one.IsScaleKnown ? one.Against : null;
                Measured? beside = sisters.Count >= FewestSisters ? one.Beside(sisters) : null;
                if (alone is { } a && !(beside?.StandardUncertainty < a.StandardUncertainty)) looks.Add((one.Spreader, new(one.Day, DriftLookKind.Tickets, one.Storm, a)));
                else if (beside is { } b) looks.Add((one.Spreader, new(one.Day, DriftLookKind.Sisters, one.Storm, b)));
            }
        }

        return looks;
    }

    private static bool IsWhole(StormLoads one) =>
        one.Loaded.Value > 0 && one.Logged > 0 && one.Holes <= MostHoles * one.Rows && Math.Abs(Elementary.Log(one.Loaded.Value / one.Logged)) < 1;

    private bool IsScaleKnown => IsGain(Loaded);

    // Logarithm of loaded by logged. Behind a hole lie between none and two rows that did not come.
    private Measured Against
    {
        get
        {
            var holes = (double)Holes / Math.Max(1, Rows);
            var x = Loaded.Map(Elementary.Log(Loaded.Value / (Logged * (1 + holes))), 1 / Loaded.Value)
                .With(ErrorSource.Normal($"hopper:{Spreader}:{Storm}", "left in the hopper"), HopperLeft * Root2 / Loaded.Value);
            return holes > 0 ? x.With(ErrorSource.Normal($"holes:{Spreader}:{Storm}", "holes in the log"), holes / Root3) : x;
        }
    }

    private const double DayToDay = 0.005;
    private const double Root2 = 1.4142135623730951;
    private const double Root3 = 1.7320508075688772;

    private Measured Beside(List<StormLoads> sisters)
    {
        var theirs = sisters.Select(one => one.Against).ToList();
        var ordered = theirs.Select(x => x.Value).Order().ToList();
        var middle = ordered.Count % 2 == 1 ? ordered[ordered.Count / 2] : (ordered[(ordered.Count / 2) - 1] + ordered[ordered.Count / 2]) / 2;
        // All were weighed on the depot's scale: its gain cancels.
        var own = Measured.Of(Against.Value - middle, [.. Against.Contributions.ToArray().Where(c => !IsGain(c.Source))]);
        // Sisters differ from day to day, too; that of the spreader itself the chart reckons with.
        var storm = Math.Sqrt((sisters.Count * DayToDay * DayToDay) + theirs.Sum(x => x.Contributions.ToArray().Where(c => !IsGain(c.Source)).Sum(c => c.Amount * c.Amount)));
        var lasting = Math.Sqrt(sisters.Sum(one => one.Calibration * one.Calibration));
        return own.With(ErrorSource.Normal($"sisters:{Depot}:{Storm}:of {Spreader}", "loads of the sisters"), Median * storm / sisters.Count)
            .With(ErrorSource.Normal($"sisters:{Depot}:of {Spreader}", "calibrations of the sisters"), Median * lasting / sisters.Count);
    }

    private static bool IsGain(Measured x) => x.Contributions.ToArray().Any(c => IsGain(c.Source));

    private static bool IsGain(ErrorSource source) => source.Id.StartsWith("scale:", StringComparison.Ordinal);
}
