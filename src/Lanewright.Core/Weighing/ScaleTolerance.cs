namespace Lanewright.Core.Weighing;

/// <summary>
/// Tolerance of a classed scale, in scale divisions d, as a step function of the load in divisions.
/// </summary>
/// <remarks>
/// NIST Handbook 44 section 2.20, Table 6 (maintenance; acceptance is one half). The table is from memory, with two
/// Class III rows seen in a secondary copy. OIML R 76-1: maximum permissible errors at initial verification from
/// secondary copies, doubled in service. A load at a boundary belongs to the smaller step.
/// </remarks>
public static class ScaleTolerance
{
    private static readonly double[] LimitsIII = [500, 2000, 4000];
    private static readonly double[] LimitsIIII = [50, 200, 400];
    private static readonly double[] Handbook44Steps = [1, 2, 3, 5];
    private static readonly double[] OimlSteps = [1, 2, 3];
    private static readonly double[] OimlLimitsIII = [500, 2000];
    private static readonly double[] OimlLimitsIIII = [50, 200];

    /// <summary>In-service tolerance, plus or minus, in divisions, at a load in divisions (0 or more).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The load is negative or not finite, or the class has no table
    /// under these rules (III L under OIML, or no class).</exception>
    public static double InDivisions(ScaleClass scaleClass, ScaleRules rules, double loadInDivisions)
    {
        if (!(loadInDivisions >= 0) || double.IsInfinity(loadInDivisions))
            throw new ArgumentOutOfRangeException(nameof(loadInDivisions), loadInDivisions, "Must be 0 or more.");
        return (scaleClass, rules) switch
        {
            (ScaleClass.III, ScaleRules.Handbook44) => Step(LimitsIII, Handbook44Steps, loadInDivisions),
            (ScaleClass.IIII, ScaleRules.Handbook44) => Step(LimitsIIII, Handbook44Steps, loadInDivisions),
            (ScaleClass.IIIL, ScaleRules.Handbook44) => Math.Max(1, Math.Ceiling(loadInDivisions / 500)),
            (ScaleClass.III, ScaleRules.Oiml) => Step(OimlLimitsIII, OimlSteps, loadInDivisions),
            (ScaleClass.IIII, ScaleRules.Oiml) => Step(OimlLimitsIIII, OimlSteps, loadInDivisions),
            _ => throw new ArgumentOutOfRangeException(
                nameof(scaleClass), scaleClass, "There is no tolerance table for this class under these rules."),
        };
    }

    /// <summary>Whether there is a table for the class under the rules.</summary>
    public static bool Has(ScaleClass scaleClass, ScaleRules rules) =>
        scaleClass is not ScaleClass.None && !(scaleClass is ScaleClass.IIIL && rules is ScaleRules.Oiml);

    /// <summary>
    /// The largest number of divisions a scale of the class may have: III 10,000; III L 10,000; IIII 1,200 under
    /// Handbook 44 (from memory) and 1,000 under OIML (secondary copy).
    /// </summary>
    public static double MostDivisions(ScaleClass scaleClass, ScaleRules rules) => (scaleClass, rules) switch
    {
        (ScaleClass.IIII, ScaleRules.Handbook44) => 1200,
        (ScaleClass.IIII, _) => 1000,
        (ScaleClass.None, _) => double.PositiveInfinity,
        _ => 10_000,
    };

    /// <summary>
    /// The recommended smallest load, in divisions: III 20, III L 50, IIII 10 (Handbook 44, from memory; OIML minimum
    /// capacity III 20 e, IIII 10 e from a secondary copy).
    /// </summary>
    public static double LeastLoadInDivisions(ScaleClass scaleClass) => scaleClass switch
    {
        ScaleClass.IIIL => 50,
        ScaleClass.IIII => 10,
        _ => 20,
    };

    /// <summary>The loads, in divisions, at which a tolerance step ends, up to a capacity, which ends the list.</summary>
    internal static IEnumerable<double> StepEnds(ScaleClass scaleClass, ScaleRules rules, double capacityInDivisions)
    {
        var limits = (scaleClass, rules) switch
        {
            (ScaleClass.III, ScaleRules.Oiml) => OimlLimitsIII,
            (ScaleClass.IIII, ScaleRules.Oiml) => OimlLimitsIIII,
            (ScaleClass.IIII, _) => LimitsIIII,
            (ScaleClass.IIIL, _) => [500],
            _ => LimitsIII,
        };
        foreach (var limit in limits)
        {
            if (limit < capacityInDivisions) yield return limit;
        }

        yield return capacityInDivisions;
    }

    private static double Step(double[] limits, double[] steps, double load)
    {
        for (var i = 0; i < limits.Length; i++)
        {
            if (load <= limits[i]) return steps[i];
        }

        return steps[limits.Length];
    }
}
