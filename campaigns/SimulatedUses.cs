using System.Globalization;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;
using Lanewright.Core.Liquids;
using Lanewright.Core.Quantities;
using Lanewright.Core.Statistics;
using Lanewright.Core.Weighing;

namespace Lanewright.Campaigns;

/// <summary>
/// Makes static checks, brines and spread patterns whose truth is known, as sheets, and lets them be worked out. Each stratum
/// gives whether the interval holds the truth, and its half width.
/// </summary>
internal static class SimulatedUses
{
    // Pans every 0.6 m over 9 m of road; a lane of 3.6 m.
    private const int Pans = 15;
    private const double Between = 0.6;
    private const double Edge = 1.8;

    private static readonly Scale Pallet = new()
    {
        Id = "pallet",
        Kind = ScaleKind.Pallet,
        Class = ScaleClass.III,
        Capacity = Mass.FromKilograms(1000),
        Division = Mass.FromKilograms(0.2),
    };

    /// <summary>The strata.</summary>
    internal static IReadOnlyList<(string Name, Func<RandomSource, (bool Held, double Width)> Try)> Strata { get; } =
    [
        .. new[] { 1, 2, 3, 6 }.Select(runs => ($"static check, salt off by, {runs} runs at a point", (Func<RandomSource, (bool, double)>)(r => StaticCheck(runs, r)))),
        ("brine, strength by hydrometer ± 0.001", r => BrineStrength(0.001, r)),
        ("brine, strength by hydrometer ± 0.003", r => BrineStrength(0.003, r)),
        .. new[] { 2, 3, 5 }.Select(passes => ($"pattern, share in the lane, {passes} passes", (Func<RandomSource, (bool, double)>)(r => LaneShare(passes, r)))),
    ];

    private static (bool Held, double Width) StaticCheck(int count, RandomSource random)
    {
        var scatter = SimulatedYard.LeastScatter * Math.Pow(SimulatedYard.MostScatter / SimulatedYard.LeastScatter, random.NextDouble());
        var off = 0.1 * Either(random);
        var scale = new SimulatedYard.ScaleTruth(Pallet, true, random);
        var flow = 0.015 * 4 * 30 / 3.6;
        var runs = Enumerable.Range(0, count).Select(_ =>
        {
            var seconds = 90 + (60 * random.NextDouble());
            var read = seconds + (0.2 * random.NextNormal());
            var (tare, gross) = (scale.Reads(28).Si, scale.Reads(28 + (flow * seconds * (1 + off) * (1 + (scatter * random.NextNormal())))).Si);
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{{ \"dose\": \"15 g/m2\", \"width\": \"4 m\", \"speed\": \"30 km/h\", \"time\": \"{read:0.0000} s\", \"whole\": {{ \"tare\": \"{tare:0.0} kg\", \"gross\": \"{gross:0.0} kg\" }} }}");
        });
        return Try(
            "static-check",
            "\"scale\": { \"id\": \"pallet\", \"kind\": \"pallet\", \"capacity\": \"1000 kg\", \"division\": \"0.2 kg\", \"class\": \"iii\" }, "
            + $"\"commonError\": true, \"timingUncertainty\": \"0.2 s\", \"tolerance\": \"6 %\", \"runs\": [{string.Join(", ", runs)}]",
            off, false);
    }

    private static (bool Held, double Width) BrineStrength(double range, RandomSource random)
    {
        var strength = 0.15 + (0.1 * random.NextDouble());
        var kelvins = 273.15 + (20 * random.NextDouble());
        var density = Solution.Density(SaltKind.SodiumChloride, strength, kelvins)!.Value
            + (Solution.PlusMinus(SaltKind.SodiumChloride, kelvins) * Either(random));
        var gravity = (density * (1 + (25e-6 * (kelvins - Hydrometer.SixtyFahrenheit))) / 999.0141) + (range * Either(random));
        return Try(
            "brine",
            string.Create(
                CultureInfo.InvariantCulture,
                $"\"liquid\": {{ \"salt\": \"sodium-chloride\", \"specificGravity\": {gravity:0.000000}, \"readingPlusMinus\": {range}, "
                + $"\"temperature\": \"{kelvins - 273.15 + Either(random):0.0000} °C\", \"temperaturePlusMinus\": 1 }}"),
            strength, true);
    }

    private static (bool Held, double Width) LaneShare(int passes, RandomSource random)
    {
        var spread = 1 + (0.8 * random.NextDouble());
        var wobble = 0.05 + (0.25 * random.NextDouble());
        var noise = 0.02 + (0.1 * random.NextDouble());
        // What a pass leaves in the lane on average, from many passes that nobody weighed.
        var truth = 0.0;
        const int many = 2000;
        for (var i = 0; i < many; i++) truth += Share(Pass(spread, wobble, noise, random)) / many;
        var caught = Enumerable.Range(0, passes).Select(_ => Pass(spread, wobble, noise, random)).ToList();
        var pans = Enumerable.Range(0, Pans).Select(i => string.Create(
            CultureInfo.InvariantCulture,
            $"{{ \"at\": \"{Middle(i):0.0} m\", \"masses\": [{string.Join(", ", caught.Select(pass => pass[i].ToString("0", CultureInfo.InvariantCulture)))}] }}"));
        return Try(
            "pattern",
            $"\"lane\": {{ \"left\": \"-1.8 m\", \"right\": \"1.8 m\" }}, \"panWidth\": \"0.45 m\", \"massPlusMinus\": \"0.5 g\", \"catches\": [{string.Join(", ", pans)}]",
            truth, false);
    }

    private static double[] Pass(double spread, double wobble, double noise, RandomSource random)
    {
        var aside = wobble * random.NextNormal();
        return [.. Enumerable.Range(0, Pans).Select(i =>
        {
            var distance = (Middle(i) - 0.2 - aside) / spread;
            return 60 * Math.Exp(-0.5 * distance * distance) * Math.Max(0, 1 + (noise * random.NextNormal()));
        })];
    }

    private static double Share(double[] pass)
    {
        double inside = 0, all = 0;
        for (var i = 0; i < Pans; i++)
        {
            var from = Middle(i) - (Between / 2);
            inside += pass[i] * Math.Max(0, Math.Min(from + Between, Edge) - Math.Max(from, -Edge));
            all += pass[i] * Between;
        }

        return inside / all;
    }

    private static double Middle(int pan) => (pan - ((Pans - 1) / 2)) * Between;

    private static (bool Held, double Width) Try(string kind, string fields, double truth, bool byValue)
    {
        var reading = Calibration.Read(JsonTree.Read($"{{ \"kind\": \"{kind}\", {fields} }}"), Calibration.Find(kind)!);
        if (!reading.IsUsable) throw new InvalidOperationException(string.Join('\n', reading.Findings.Select(finding => $"{finding.Kind.Code} {finding.Field}")));
        var figure = reading.Value!.Analyse().Figures[0];
        return (Math.Abs(figure.Value.Value - truth) <= figure.Expanded, figure.Expanded!.Value / (byValue ? figure.Value.Value : 1));
    }

    private static double Either(RandomSource random) => (2 * random.NextDouble()) - 1;
}
