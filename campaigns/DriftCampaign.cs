using System.Globalization;
using Lanewright.Core.Season;
using Lanewright.Core.Statistics;

namespace Lanewright.Campaigns;

/// <summary>
/// Seasons with and without a planted change, held against what the chart promised for each of them before it was looked at.
/// </summary>
internal static class DriftCampaign
{
    internal static int Run(int seasons, ulong seed)
    {
        Console.WriteLine("change      looks  own u, %  calibration u, %  seasons  promised  alarms   mean looks promised  found after  within 95 % promise");
        var good = true;
        var stream = seed;
        foreach (var (looks, calibration) in ((int, double)[])[(10, 0.002), (10, 0.006), (20, 0.006), (10, 0.012)])
        {
            foreach (var change in (double[])[0, 0.05, -0.05])
                good &= Stratum(seasons, stream++, looks, calibration, change);
        }

        good &= Wear(seasons, stream);
        return good ? 0 : 1;
    }

    private static bool Stratum(int seasons, ulong seed, int looks, double calibration, double change)
    {
        var simulated = new SimulatedDrift(seed) { Looks = looks + (change == 0 ? 0 : 200), Calibration = calibration, Every = 1 };
        var rules = simulated.Rules with { Looks = looks };
        double promised = 0, mean = 0, found = 0;
        int alarms = 0, within = 0;
        for (var i = 0; i < seasons; i++)
        {
            var (start, all) = simulated.Season(_ => change, out _);
            var off = all.Select(look => look.LogShare - start.LogShare).ToList();
            var own = off.Select(x => x.Contributions.ToArray().Where(c => c.Source.Id != "calibration").Sum(c => c.Amount * c.Amount))
                .Select(variance => Math.Sqrt(variance + (rules.DayToDay * rules.DayToDay))).ToArray();
            var promise = DriftPromise.For(own[..looks], calibration, rules);
            double[] values = [.. off.Select(x => x.Value)];
            var first = DriftChart.Of(values, own, rules.Change, promise.Limit).TakeWhile(p => p.Signal == ChartSignal.None).Count() + 1;
            promised += promise.FalseAlarm;
            mean += promise.MeanToFind;
            found += first;
            if (first <= looks) alarms++;
            if (promise.MostToFind is not { } most || first <= most) within++;
        }

        var n = (double)seasons;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{change,6:P0} {looks,10} {"1.1-2.1",9} {calibration * 100,17:F1} {seasons,8} {(change == 0 ? $"{promised / n:P1}" : ""),9} {alarms / n,7:P1} {(change == 0 ? "" : $"{mean / n:F2}"),21} {(change == 0 ? "" : $"{found / n:F2}"),12} {(change == 0 ? "" : $"{within / n:P1}"),20}"));
        // Four standard errors beside the promise.
        return change == 0
            ? alarms / n <= (promised / n) + (4 * Math.Sqrt(promised / n / n))
            : found <= mean * (1 + (4 / Math.Sqrt(n))) && within / n >= 0.95 - (4 * Math.Sqrt(0.05 / n));
    }

    private static bool Wear(int seasons, ulong seed)
    {
        var simulated = new SimulatedDrift(seed) { Looks = 10 };
        var rules = simulated.Rules;
        var today = SimulatedDrift.Autumn.AddDays(150);
        int share = 0, within = 0;
        for (var i = 0; i < seasons; i++)
        {
            var path = simulated.Worn(151 + SpreaderDrift.Horizon);
            var (calibration, looks) = simulated.Season(day => path[day], out var start);
            var drift = SpreaderDrift.Of(calibration, looks, rules, today);
            var truth = Elementary.Expm1(start + path[150]);
            if (truth >= drift.Low && truth <= drift.High) share++;
            // The first day the path is beyond the tolerance; null for none within the horizon.
            DateOnly? day = null;
            for (var t = 0; t <= SpreaderDrift.Horizon && day is null; t++)
                if (Math.Abs(Elementary.Expm1(start + path[150 + t])) > rules.Tolerance) day = today.AddDays(t);
            if ((day ?? DateOnly.MaxValue) >= (drift.LeavesEarliest ?? DateOnly.MaxValue)
                && (day ?? DateOnly.MaxValue) <= (drift.LeavesLatest ?? DateOnly.MaxValue)) within++;
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"steady wear and wander, {seasons} seasons: the 95 % interval of the share held the truth in {(double)share / seasons:P1}; that of the day it leaves the tolerance in {(double)within / seasons:P1}"));
        return (double)share / seasons is > 0.93 and < 0.99 && (double)within / seasons > 0.93;
    }
}
