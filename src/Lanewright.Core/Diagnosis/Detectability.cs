namespace Lanewright.Core.Diagnosis;

/// <summary>
/// How large an effect is against what the measurement leaves uncertain: two sheets of the same runs, with and without it.
/// </summary>
public static class Detectability
{
    /// <summary>
    /// The largest effect by its expanded uncertainty (k = 2), over the quantities a diagnosis looks at: of the mean of the runs
    /// against the reference, and of one run against the others.
    /// </summary>
    /// <param name="with">With the fault.</param>
    /// <param name="without">The same chance without it.</param>
    /// <param name="scatter">True scatter of one run, as a share.</param>
    public static double Of(DiagnosisInput with, DiagnosisInput without, double scatter)
    {
        if (Observations.Of(with) is not { } a || Observations.Of(without) is not { } b || a.Runs.Count != b.Runs.Count) return 0;
        var (_, history, _) = a.Referred ? (0, a.ReferenceUncertainty * a.ReferenceUncertainty, 0) : a.History.Expect(0, a.Keyed);
        var most = Ratio(a.CountedMass, b.CountedMass, scatter, history);
        foreach (var (x, y) in new[] { (a.PulsesPerTurn, b.PulsesPerTurn), (a.ShaftSpeed, b.ShaftSpeed), (a.ControllerCount, b.ControllerCount) })
            if (x is not null && y is not null) most = Math.Max(most, Ratio(x, y, 0, 0));
        return most;
    }

    /// <summary>
    /// The same for a division that is coarser than written, which moves no result: 2 where all readings miss the finer steps by
    /// chance in one sheet of a thousand.
    /// </summary>
    public static double OfDivision(Spreading.TestSheet sheet, int coarser)
    {
        var (_, readings) = Marks.LatticeOf(sheet);
        return 2 * readings * Statistics.Elementary.Log(coarser) / Statistics.Elementary.Log(1000);
    }

    private static double Ratio(Channel with, Channel without, double scatter, double reference)
    {
        var moved = new List<(double By, double Variance)>();
        for (var i = 0; i < with.Values.Length; i++)
            if (with.Values[i] is { } x && without.Values[i] is { } y)
                moved.Add((x - y, (without.Own[i] * without.Own[i]) + (scatter * scatter)));
        if (moved.Count == 0) return 0;
        var mean = moved.Average(m => m.By);
        var variance = reference + (without.Common * without.Common) + (moved.Average(m => m.Variance) / moved.Count);
        var most = Math.Abs(mean) / (2 * Math.Sqrt(variance));
        foreach (var (by, own) in moved)
            most = Math.Max(most, Math.Abs(by - mean) / (2 * Math.Sqrt(own)));
        return most;
    }
}
