using Lanewright.Core.Diagnosis;
using Lanewright.Core.Quantities;
using Lanewright.Core.Statistics;
using Lanewright.Core.Weighing;
using R = Lanewright.Core.Diagnosis.EffectRanges;

namespace Lanewright.Core.Practice;

/// <summary>A run that is to be made.</summary>
/// <param name="Setting">Drive setting as a share.</param>
/// <param name="Seconds">Length.</param>
/// <param name="Speed">Speed on the road, m/s; 0 in the yard.</param>
public sealed record PlannedRun(double Setting, double Seconds, double Speed = 0);

/// <summary>
/// A practice spreader with its scale, its history and its sisters, all drawn from a seed, and what is wrong with it. Everything
/// is invented.
/// </summary>
public sealed record PracticeSetup
{
    private static readonly double[][] DropSettings = [[0.5], [0.3, 0.6], [0.3, 0.5, 0.8]];
    private static readonly double[][] TimedSettings = [[0.3, 0.6], [0.3, 0.5, 0.8], [0.25, 0.4, 0.6, 0.8]];

    /// <summary>The day of every practice test.</summary>
    public static readonly DateOnly Today = new(2026, 10, 6);

    /// <summary>What kind of test it is.</summary>
    public required TestSituation Situation { get; init; }

    /// <summary>What is wrong.</summary>
    public required Cause Cause { get; init; }

    /// <summary>How much of it.</summary>
    public required FaultDials Dials { get; init; }

    /// <summary>The spreader.</summary>
    public required SimulatedTruck Truck { get; init; }

    /// <summary>The scale as it is marked.</summary>
    public required Scale Scale { get; init; }

    /// <summary>Whether the catch is weighed in pails; else in one bin, or with the truck.</summary>
    public required bool Pails { get; init; }

    /// <summary>Whether numbers are written in kilograms.</summary>
    public required bool Metric { get; init; }

    /// <summary>Weight of an empty pail or bin, kg.</summary>
    public required double Tare { get; init; }

    /// <summary>The constant in the controller as the paper says, mass for each pulse, kg.</summary>
    public required double Keyed { get; init; }

    /// <summary>The runs of the test.</summary>
    public required IReadOnlyList<PlannedRun> Runs { get; init; }

    /// <summary>Number of runs that warming oil, drift and leak are spread over.</summary>
    public required int SessionRuns { get; init; }

    /// <summary>Mass that the session is to drop, kg; the feed falls over it when it falls with the hopper.</summary>
    public required double SessionMass { get; init; }

    /// <summary>The run whose readings swapped digits are looked for in; null for the whole sheet.</summary>
    public int? SwapIn { get; init; }

    /// <summary>Earlier constants.</summary>
    public required IReadOnlyList<EarlierConstant> Earlier { get; init; }

    /// <summary>What sisters did.</summary>
    public required IReadOnlyList<SisterChange> Sisters { get; init; }

    /// <summary>What the register says.</summary>
    public required SpreaderFacts Facts { get; init; }

    /// <summary>Whether turns, times, engine speed and gate were written down.</summary>
    public required Written Written { get; init; }

    /// <summary>Mass for one turn that the earlier tests point to, kg.</summary>
    public double MassByTurn => Truck.MassByTurn;

    /// <summary>The controller's constant is keyed in with this step, as a share; invented.</summary>
    public const double KeyStep = 0.001;

    /// <summary>Draws a setup.</summary>
    /// <param name="cause">What is to be wrong.</param>
    /// <param name="situation">One kind of test in which that can show itself.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="stream">Number of the case.</param>
    public static PracticeSetup Draw(Cause cause, TestSituation situation, ulong seed, ulong stream)
    {
        var random = new RandomSource(seed, (stream * 4) + 1);
        var road = situation is TestSituation.RoadCheck;
        var timed = situation is TestSituation.TimedDrop;
        var pails = !road && !timed && random.NextDouble() < 0.6;
        if (cause is Cause.ContainerMissing) pails = true;
        var metric = random.NextDouble() < 0.3;
        var truck = DrawTruck(random, cause);
        var scale = DrawScale(road, pails, metric);
        var runs = DrawRuns(random, situation, truck, pails);
        double[] marks = [1.5, 2, 2.5, 3, 4];
        var mark = 2.0;
        if (truck.Chain)
        {
            mark = marks[random.NextInt(3) + 1];
            truck = truck with { Second = Length.FromSi(mark * 0.0254) };
        }

        var dials = FaultDraw.Of(cause, random, runs.Count, truck.Teeth, mark, marks, [.. runs.Select(r => r.Speed).Where(s => s > 0)]);
        var history = Years(random, dials.WearBySeason);
        var shaftError = Elementary.Exp(R.ShaftDrift * random.NextNormal());
        // The speeds of the last test; a delivery was found at these and at the mass for a turn of that day.
        var shaft = runs.Select(r => r.Setting).Append(0.3).Append(0.9).Distinct()
            .Select(s => new ShaftSpeed(s, truck.Shaft(s, new()) * shaftError)).OrderBy(s => s.Setting).ToList();
        var massByCount = timed ? truck.MassByTurn : truck.MassByTurn / truck.Teeth;
        var earlier = new List<EarlierConstant>();
        foreach (var (years, level, u) in history)
        {
            var at = massByCount * Elementary.Exp(level + (u * random.NextNormal()));
            var day = Today.AddDays(-(int)(365 * years));
            if (!timed)
            {
                earlier.Add(new(day, 1 / at, u));
                continue;
            }

            if (years > 1) continue;
            foreach (var speed in shaft)
                earlier.Add(new(day, at * speed.Turns, u, Percent(speed.Setting)));
        }

        // The controller has the last constant, rounded to its step.
        var last = timed || earlier.Count == 0 ? 1 / massByCount : earlier[^1].Value;
        return new()
        {
            Situation = situation,
            Cause = cause,
            Dials = dials,
            Truck = truck,
            Scale = scale,
            Pails = pails,
            Metric = metric,
            Tare = pails ? Between(random, R.LeastPail, R.MostPail) : Between(random, R.LeastBin, R.MostBin),
            Keyed = 1 / (Math.Round(last / (last * KeyStep)) * last * KeyStep),
            Runs = runs,
            SessionRuns = runs.Count,
            SessionMass = runs.Sum(r => r.Seconds * truck.Shaft(r.Setting, new()) * truck.MassByTurn),
            Earlier = earlier,
            Sisters = DrawSisters(random, dials),
            Facts = DrawFacts(random, cause, truck, marks, mark, shaft, road),
            Written = new(
                random.NextDouble() < 0.75, timed || random.NextDouble() < 0.9, random.NextDouble() < 0.85, random.NextDouble() < 0.8,
                random.NextDouble() < 0.35, random.NextDouble() < (road ? 0.7 : 0.85)),
        };
    }

    /// <summary>The same with nothing wrong: what would have been seen.</summary>
    public PracticeSetup Healthy() => this with { Dials = new(), Cause = Cause.NothingWrong };

    internal static string Percent(double share) =>
        Math.Round(share * 100).ToString("0", System.Globalization.CultureInfo.InvariantCulture) + " %";

    private static double Between(RandomSource random, double least, double most) =>
        least * Elementary.Exp(random.NextDouble() * Elementary.Log(most / least));

    private static SimulatedTruck DrawTruck(RandomSource random, Cause cause)
    {
        var chain = cause is Cause.GateMoved || (random.NextInt(2) == 0 && cause is not Cause.FeederDead);
        int[] teeth = [8, 10, 12, 16, 20, 24, 30, 36];
        return new()
        {
            Chain = chain,
            Size = Length.FromSi(chain ? 0.35 + (0.25 * random.NextDouble()) : 0.13 + (0.05 * random.NextDouble())),
            Second = Length.FromSi(chain ? 0.05 : 0.06),
            Advance = Length.FromSi(chain ? 0.06 + (0.05 * random.NextDouble()) : 0.13 + (0.05 * random.NextDouble())),
            Feeders = !chain && (cause is Cause.FeederDead || random.NextInt(3) == 0) ? 2 : 1,
            Density = Density.FromSi(1150 + (250 * random.NextDouble())),
            Teeth = teeth[random.NextInt(teeth.Length)],
            Displacement = Volume.FromSi(250e-6 + (200e-6 * random.NextDouble())),
            Pump = Volume.FromSi(12e-6 + (8e-6 * random.NextDouble())),
            Engine = RotationalSpeed.FromSi(25),
            Scatter = Between(random, R.LeastScatter, R.MostScatter),
        };
    }

    // The plates of three scales of a yard; invented, sizes as the trade sells them.
    private static Scale DrawScale(bool road, bool pails, bool metric)
    {
        var unit = metric ? Units.Kilogram : Units.Pound;
        var (id, kind, scaleClass, capacity, division) = road
            ? ("vehicle scale", ScaleKind.Vehicle, ScaleClass.IIIL, metric ? 50_000.0 : 120_000, metric ? 10.0 : 20)
            : pails
                ? ("bench scale", ScaleKind.Platform, ScaleClass.III, metric ? 60.0 : 150, metric ? 0.02 : 0.05)
                : ("pallet scale", ScaleKind.Pallet, ScaleClass.III, metric ? 1000.0 : 2000, metric ? 0.2 : 0.5);
        return new()
        {
            Id = id,
            Kind = kind,
            Class = scaleClass,
            Capacity = Mass.FromSi(unit.ToSi(capacity)),
            Division = Mass.FromSi(unit.ToSi(division)),
            Verified = Today.AddDays(-100),
        };
    }

    private static List<PlannedRun> DrawRuns(RandomSource random, TestSituation situation, SimulatedTruck truck, bool pails)
    {
        var runs = new List<PlannedRun>();
        if (situation is TestSituation.RoadCheck)
        {
            var passes = 3 + random.NextInt(3);
            for (var i = 0; i < passes; i++)
            {
                var speed = (20 + (5 * ((i + random.NextInt(2)) % 6))) / 3.6;
                runs.Add(new(0.5, (400 + (300 * random.NextDouble())) * 3, speed));
            }

            return runs;
        }

        var timed = situation is TestSituation.TimedDrop;
        var lists = timed ? TimedSettings : DropSettings;
        var settings = lists[random.NextInt(lists.Length)];
        var count = Math.Max(3 + random.NextInt(3), timed ? settings.Length * 2 : 0);
        var flow = truck.MassByTurn * truck.Shaft(0.5, new());
        var mass = pails ? 75 : 150.0;
        for (var i = 0; i < count; i++)
        {
            // One run is half as large, so that starts and stops show.
            var size = (i == 1 ? 0.5 : 1) * (0.92 + (0.16 * random.NextDouble()));
            var setting = settings[i % settings.Length];
            var there = truck.MassByTurn * truck.Shaft(setting, new());
            runs.Add(new(setting, timed ? 60 * size * Math.Min(1, 4 * mass / (there * 60)) : mass * size / Math.Min(there, 10 * flow)));
        }

        return runs;
    }

    // Years ago, level against now, standard uncertainty; oldest first.
    private static List<(double Years, double Level, double Uncertainty)> Years(RandomSource random, double wear)
    {
        var count = random.NextDouble() < 0.06 ? 0 : 1 + random.NextInt(5);
        var list = new List<(double, double, double)>();
        var level = 0.0;
        for (var i = 1; i <= count; i++)
        {
            level += wear + (R.SeasonDrift * random.NextNormal());
            list.Insert(0, (i, level, 0.003 + (0.007 * random.NextDouble())));
        }

        return list;
    }

    private static List<SisterChange> DrawSisters(RandomSource random, FaultDials dials)
    {
        var list = new List<SisterChange>();
        var count = random.NextInt(5);
        for (var i = 0; i < count; i++)
        {
            var (material, scale) = (random.NextDouble() < 0.6, random.NextDouble() < 0.5);
            var u = 0.005 + (0.01 * random.NextDouble());
            var change = (Math.Sqrt((u * u) + (R.SeasonDrift * R.SeasonDrift)) * random.NextNormal())
                + (material ? Elementary.Log(dials.Density) : 0) + (scale ? Elementary.Log(1 + dials.ScaleGain) : 0);
            // Some have a trouble of their own.
            if (random.NextDouble() < 0.1) change += 0.2 * random.NextNormal();
            list.Add(new($"sister {(char)('A' + i)}", change, u, material, scale));
        }

        return list;
    }

    private static SpreaderFacts DrawFacts(
        RandomSource random, Cause cause, SimulatedTruck truck, double[] marks, double mark, List<ShaftSpeed> shaft, bool road)
    {
        var events = new List<string>();
        foreach (var word in (string[])["hydraulics", "metering", "gate", "sensor", "tyres", "battery", "material", "supplier"])
            if (random.NextDouble() < Marks.EventChance(cause, word)) events.Add(word);
        return new()
        {
            Teeth = random.NextDouble() < 0.9 ? truck.Teeth : null,
            Gates = truck.Chain ? [.. marks.Select(m => m * 0.0254)] : [],
            Gate = truck.Chain ? mark * 0.0254 : null,
            Feeders = truck.Feeders,
            EngineSpeed = truck.Engine.Si,
            Shaft = shaft,
            Events = events,
            EventsKnown = true,
            OnTheRoad = road,
        };
    }
}

/// <summary>What the people write down beside counts and weights.</summary>
/// <param name="Turns">Turns of the shaft.</param>
/// <param name="Times">Length of runs.</param>
/// <param name="Engine">Engine speed.</param>
/// <param name="Gate">Gate opening.</param>
/// <param name="Filled">How many containers were filled.</param>
/// <param name="Pulses">Pulses, in a check.</param>
public sealed record Written(bool Turns, bool Times, bool Engine, bool Gate, bool Filled, bool Pulses);
