using Lanewright.Core.Quantities;

namespace Lanewright.Core.Weighing;

/// <summary>A weighing instrument as it is marked and as it is known.</summary>
public sealed record Scale
{
    /// <summary>Name in the sheet.</summary>
    public required string Id { get; init; }

    /// <summary>What kind of instrument.</summary>
    public ScaleKind Kind { get; init; }

    /// <summary>The most it may weigh; null when not stated.</summary>
    public Mass? Capacity { get; init; }

    /// <summary>The division d it shows; null when not stated.</summary>
    public Mass? Division { get; init; }

    /// <summary>The class marked on it.</summary>
    public ScaleClass Class { get; init; }

    /// <summary>The rules behind the class.</summary>
    public ScaleRules Rules { get; init; }

    /// <summary>A tolerance of its own, the same at every load, plus or minus; above 0, it stands before the relative
    /// one and the class.</summary>
    public Mass? Tolerance { get; init; }

    /// <summary>A tolerance of its own as a share of the load, plus or minus; above 0, it stands before the class.</summary>
    public Fraction? RelativeTolerance { get; init; }

    /// <summary>When it was last verified.</summary>
    public DateOnly? Verified { get; init; }

    /// <summary>Whether a tolerance of its own is known.</summary>
    internal bool HasOwnTolerance => Tolerance is { Si: > 0 } || RelativeTolerance is { Si: > 0 };

    /// <summary>Whether anything says how wrong it may be.</summary>
    public bool HasTolerance =>
        HasOwnTolerance || (Division is { Si: > 0 } && ScaleTolerance.Has(Class, Rules));

    /// <summary>The limits of error at a load, plus or minus, in kilograms; 0 when nothing is known.</summary>
    public double ToleranceAt(double loadKilograms)
    {
        var load = Math.Abs(loadKilograms);
        if (Tolerance is { Si: > 0 } own) return own.Si;
        if (RelativeTolerance is { Si: > 0 } share) return share.Si * load;
        if (!HasTolerance) return 0;
        var d = Division!.Value.Si;
        return d * ScaleTolerance.InDivisions(Class, Rules, WholeIfClose(load / d));
    }

    /// <summary>
    /// The largest error proportional to the load that stays within tolerance at every load up to capacity, as a share
    /// of the load: the smallest tolerance-to-load ratio over the loads where a step ends. What remains of a scale's
    /// error in the difference of two readings when the rest is common to both.
    /// </summary>
    /// <param name="largestLoadKilograms">Stands in for the capacity where none is stated.</param>
    public double GainLimit(double largestLoadKilograms)
    {
        var top = Capacity is { Si: > 0 } c ? c.Si : Math.Abs(largestLoadKilograms);
        if (top == 0) return 0;
        if (Tolerance is { Si: > 0 } own) return own.Si / top;
        if (RelativeTolerance is { Si: > 0 } share) return share.Si;
        if (!HasTolerance) return 0;
        var d = Division!.Value.Si;
        var least = double.PositiveInfinity;
        foreach (var end in ScaleTolerance.StepEnds(Class, Rules, WholeIfClose(top / d)))
            least = Math.Min(least, ScaleTolerance.InDivisions(Class, Rules, end) / end);
        return least;
    }

    // Loads and divisions are decimal in their own unit, so their quotient in kilograms may miss a whole number by
    // rounding, and with it the step it belongs to.
    private static double WholeIfClose(double divisions)
    {
        var whole = Math.Round(divisions);
        return Math.Abs(divisions - whole) <= 1e-9 * whole ? whole : divisions;
    }
}
