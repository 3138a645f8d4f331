using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;
using Lanewright.Core.Weighing;

namespace Lanewright.Campaigns;

/// <summary>What a simulated calibration answered, and the truth.</summary>
internal sealed record SimulatedAnswer(string What, double Truth, double Value, double Half);

/// <summary>
/// Delivery curves, gate tables and courses whose truth is known, tested with wrong scales, rounded readings, cut-off counts and
/// timing errors, in the order in which they happen in a yard.
/// </summary>
internal static class SimulatedCurves
{
    private const double Pound = 0.45359237;
    private const double FullFlow = 300 * Pound / 60;

    private static readonly double SqrtThree = Math.Sqrt(3);
    private static readonly double SqrtSix = Math.Sqrt(6);

    private static readonly Scale Pallet = new()
    {
        Id = "pallet", Kind = ScaleKind.Pallet, Class = ScaleClass.III, Capacity = Mass.FromPounds(2000), Division = Mass.FromPounds(0.5),
    };

    /// <summary>Shapes of curves: share of full delivery by share of full drive.</summary>
    internal static readonly (string Name, Func<double, double> Share)[] Shapes =
    [
        ("line from 12 %", x => Math.Max(0, (x - 0.12) / 0.88)),
        ("rising ever less", x => Math.Max(0, 1 - Math.Exp(-2 * (x - 0.1))) / (1 - Math.Exp(-1.8))),
        ("S-shaped", x => x * x * (3 - (2 * x))),
        ("line with a limit at 77 %", x => Math.Clamp((x - 0.12) / 0.65, 0, 1)),
    ];

    internal static IEnumerable<SimulatedAnswer> Curve(RandomSource random, Func<double, double> share, int settings, int runs, double smallMore)
    {
        var scatter = SimulatedYard.LogUniform(random, SimulatedYard.LeastScatter, SimulatedYard.MostScatter);
        var scale = new SimulatedYard.ScaleTruth(Pallet, true, random);
        var weigher = new Weigher(Pallet, true, Pallet.Capacity!.Value, null);
        var points = new List<SettingDelivery>();
        for (var i = 0; i < settings; i++)
        {
            var setting = 0.2 + (0.8 * i / (settings - 1));
            var flow = FullFlow * share(setting);
            var list = new List<RatioRun>();
            for (var j = 0; j < runs; j++)
            {
                var id = $"{i}.{j}";
                var seconds = 60 + (6 * random.NextDouble());
                var own = scatter * Math.Pow(share(setting) / share(0.5), -smallMore);
                var mass = flow * seconds * (1 + (own * random.NextNormal()));
                var shown = seconds + (0.3 * random.NextNormal());
                list.Add(new(
                    id, "", Caught(mass, id, scale, weigher, random),
                    Measured.Of(shown, 0.3, ErrorSource.Normal($"run:{id}:time", "timing"))));
            }

            points.Add(new(setting, RatioEstimate.Of(list)));
        }

        var fit = DeliveryFit.Of(points);
        var one = points[random.NextInt(settings)];
        yield return new("at a setting", FullFlow * share(one.Setting), one.Estimate.Known.Value, one.Estimate.Error().Coverage(0.95));
        var between = 0.2 + (0.8 * random.NextDouble());
        yield return Of("between settings", FullFlow * share(between), fit.At(between));
        // At full delivery many settings deliver the same.
        if (share(between) < 0.97 && fit.SettingFor(FullFlow * share(between)) is { } setting0) yield return Of("setting for a delivery", between, setting0);
        if (share(0.5) == Shapes[0].Share(0.5) && fit.Beginning() is { } begin) yield return Of("beginning", 0.12, begin);
        if (share(0.9) == 1 && fit.NothingGainedFrom(0.95) is { } knee) yield return Of("nothing gained from", 0.77, knee);
    }

    internal static IEnumerable<SimulatedAnswer> Gate(RandomSource random, int openings, int runs, double bow)
    {
        var scatter = SimulatedYard.LogUniform(random, SimulatedYard.LeastScatter, SimulatedYard.MostScatter);
        var scale = new SimulatedYard.ScaleTruth(Pallet, true, random);
        var weigher = new Weigher(Pallet, true, Pallet.Capacity!.Value, null);
        var offset = -0.3 + (0.6 * random.NextDouble());
        // Kilograms a turn by inches of opening from 1 to 4, bowed upward in the middle.
        double Truth(double inches) =>
            (offset + (3 * inches)) * (1 + (bow * (1 - Square((inches - 2.5) / 1.5)))) * Pound;
        var points = new List<SettingDelivery>();
        for (var i = 0; i < openings; i++)
        {
            var inches = 1 + (3.0 * i / (openings - 1));
            var list = new List<RatioRun>();
            for (var j = 0; j < runs; j++)
            {
                var id = $"{i}.{j}";
                var turns = 30 + (10 * random.NextDouble());
                var mass = Truth(inches) * turns * (1 + (scatter * random.NextNormal()));
                list.Add(new(
                    id, "", Caught(mass, id, scale, weigher, random),
                    Measured.Of(SimulatedYard.Counted(turns, random), 1 / SqrtSix, ErrorSource.Triangular($"run:{id}:turns", "counting"))));
            }

            points.Add(new(Units.Inch.ToSi(inches), RatioEstimate.Of(list)));
        }

        var at = 1 + (3 * random.NextDouble());
        yield return Of("between openings", Truth(at), GateFit.Of(points).At(Units.Inch.ToSi(at)));

        static double Square(double x) => x * x;
    }

    internal static IEnumerable<SimulatedAnswer> Course(RandomSource random, int passes, double least, double most)
    {
        var scatter = SimulatedYard.LogUniform(random, least, most);
        var truth = SimulatedYard.LogUniform(random, 2.5, 20);
        const double Stated = 304.8;
        const double PlusMinus = 0.5;
        var real = Stated + (PlusMinus * ((2 * random.NextDouble()) - 1));
        var course = Measured.Of(Stated, PlusMinus / SqrtThree, ErrorSource.Rectangular("course", "course"));
        var runs = new List<RatioRun>();
        for (var i = 0; i < passes; i++)
        {
            var pulses = SimulatedYard.Counted(truth * real * (1 + (scatter * random.NextNormal())), random);
            runs.Add(new($"{i}", "", Measured.Of(pulses, 1 / SqrtSix, ErrorSource.Triangular($"run:{i}:pulses", "counting")), course));
        }

        yield return Of("pulses per distance", truth, CourseEstimate.Of(runs, "passes:scatter"));
    }

    private static Measured Caught(
        double mass, string id, SimulatedYard.ScaleTruth scale, Weigher weigher, RandomSource random)
    {
        var bin = (40 + (20 * random.NextDouble())) * Pound;
        var net = weigher.Net(new WholeCatch(scale.Reads(bin), scale.Reads(bin + mass)), id, "");
        return net.Value > 0 ? net : Measured.Of(Pound / 4, net.StandardUncertainty, ErrorSource.Normal($"run:{id}:least", "next to nothing"));
    }

    private static SimulatedAnswer Of(string what, double truth, CombinedRatios found) =>
        new(what, truth, found.Value.Value, found.Error.Coverage(0.95));
}
