using Lanewright.Core.Statistics;

namespace Lanewright.Core.Practice;

/// <summary>What an invented season is to be like.</summary>
public sealed record SeasonSettings
{
    /// <summary>Seed: the same seed and settings give the same season.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>How many spreaders, 1 to 5000.</summary>
    public int Spreaders { get; init; } = 32;

    /// <summary>Seconds between two rows of a log, 1 to 600.</summary>
    public int Interval { get; init; } = 10;

    /// <summary>How many storms, 1 to 40.</summary>
    public int Storms { get; init; } = 12;

    /// <summary>Share of spreaders in which a lasting change of the constant is planted, 0 to 1.</summary>
    public double Drifting { get; init; } = 0.2;

    /// <summary>Day on which the season begins.</summary>
    public DateOnly Begins { get; init; } = new(2026, 11, 2);

    /// <summary>How many days it lasts, 30 to 200.</summary>
    public int Days { get; init; } = 150;

    /// <summary>The spreaders, with the constants that are keyed in; null: <see cref="Spreaders"/> of them are made up.</summary>
    public IReadOnlyList<SeasonUnit>? Fleet { get; init; }

    /// <summary>Name of a spreader of which one load's ticket is lost; null: none is.</summary>
    public string? LostTicketOf { get; init; }
}

/// <summary>A spreader that a season is to be made for.</summary>
/// <param name="Name">Name.</param>
/// <param name="Depot">Name of its depot.</param>
/// <param name="MassPerCount">What its controller reckons with, kg for one count; above 0.</param>
/// <param name="Uncertainty">Relative standard uncertainty of that; 0 or more.</param>
/// <param name="Drift">A lasting change that is planted, as a share; 0 for none.</param>
/// <param name="DriftDay">Day of the season on which it happens.</param>
public sealed record SeasonUnit(string Name, string Depot, double MassPerCount, double Uncertainty, double Drift = 0, int DriftDay = 0);

/// <summary>How the true constant of a spreader changes.</summary>
public enum SeasonDrift
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>At once.</summary>
    Step,

    /// <summary>Evenly up to the end of the season.</summary>
    Ramp,
}

/// <summary>How a spreader's log is kept.</summary>
public enum SeasonLogKind
{
    /// <summary>A running counter that begins at 0 with each storm.</summary>
    Running,

    /// <summary>Counts of each interval, local time, decimal comma.</summary>
    Interval,

    /// <summary>A counter of 16 bits that runs over; rows doubled and out of order.</summary>
    Rollover,

    /// <summary>Mass as the controller reports it, with rows missing.</summary>
    Mass,
}

/// <summary>A scale with its true error.</summary>
/// <param name="Id">Name.</param>
/// <param name="Gain">True gain less 1.</param>
/// <param name="Uncertainty">What is stated about it: relative standard uncertainty.</param>
public sealed record SeasonScale(string Id, double Gain, double Uncertainty);

/// <summary>A storm of the season. Times are seconds since the season's begin.</summary>
/// <param name="Name">Name.</param>
/// <param name="From">Begin.</param>
/// <param name="To">End.</param>
public sealed record SeasonStorm(string Name, long From, long To);

/// <summary>A constant as it was found, with its error.</summary>
/// <param name="Id">Identity.</param>
/// <param name="From">Valid from, seconds since the season's begin.</param>
/// <param name="To">Valid up to; null: to the end.</param>
/// <param name="MassPerCount">What was found, kg.</param>
/// <param name="Uncertainty">What is stated: relative standard uncertainty without the scale.</param>
/// <param name="DegreesOfFreedom">Behind that.</param>
public sealed record SeasonCalibration(string Id, long From, long? To, double MassPerCount, double Uncertainty, int DegreesOfFreedom);

/// <summary>A spreader with its truth.</summary>
public sealed record SeasonSpreader
{
    /// <summary>Place in the season, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>Depot, by place.</summary>
    public required int Depot { get; init; }

    /// <summary>How its log is kept.</summary>
    public required SeasonLogKind Log { get; init; }

    /// <summary>True mass for one count at the season's begin, kg (for a log of mass: for one kilogram reported).</summary>
    public required double Truth { get; init; }

    /// <summary>True scatter from load to load, as a share.</summary>
    public required double LoadScatter { get; init; }

    /// <summary>Scatter of verification runs, as a share.</summary>
    public required double RunScatter { get; init; }

    /// <summary>Planted change.</summary>
    public required SeasonDrift Drift { get; init; }

    /// <summary>When it begins, seconds since the season's begin.</summary>
    public required long DriftFrom { get; init; }

    /// <summary>How far it goes, as a share.</summary>
    public required double DriftShare { get; init; }

    /// <summary>Constants, in order of time.</summary>
    public required IReadOnlyList<SeasonCalibration> Constants { get; init; }
}

/// <summary>A season of an invented garage or agency, whose truth is known. Everything in it is invented.</summary>
public sealed partial class SeasonWorld
{
    private const string Material = "white rock salt";
    private static readonly string[] CountyDepots = ["Quarry Road", "Alder Flat", "Northgate", "Saddle Pass"];

    private SeasonWorld(SeasonSettings settings) => Settings = settings;

    /// <summary>What it was made of.</summary>
    public SeasonSettings Settings { get; }

    /// <summary>Length of the season, seconds.</summary>
    public long Length => Settings.Days * 86400L;

    /// <summary>Depots.</summary>
    public IReadOnlyList<string> Depots { get; private set; } = [];

    /// <summary>The vehicle scale of each depot, and behind them the floor scale of each depot.</summary>
    public IReadOnlyList<SeasonScale> Scales { get; private set; } = [];

    /// <summary>Storms in order.</summary>
    public IReadOnlyList<SeasonStorm> Storms { get; private set; } = [];

    /// <summary>Spreaders in order.</summary>
    public IReadOnlyList<SeasonSpreader> Spreaders { get; private set; } = [];

    /// <summary>Name of the material that is spread.</summary>
    public static string MaterialName => Material;

    /// <summary>The scale on which a depot's loads are weighed.</summary>
    public SeasonScale VehicleScale(int depot) => Scales[depot];

    /// <summary>The scale on which a depot's catches are weighed.</summary>
    public SeasonScale FloorScale(int depot) => Scales[Depots.Count + depot];

    /// <summary>Makes a season.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A setting is outside its limits.</exception>
    public static SeasonWorld Make(SeasonSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        Within(settings.Spreaders, 1, 5000);
        Within(settings.Interval, 1, 600);
        Within(settings.Storms, 1, 40);
        Within(settings.Days, 30, 200);
        if (!(settings.Drifting is >= 0 and <= 1)) throw new ArgumentOutOfRangeException(nameof(settings), settings.Drifting, "Must be 0 to 1.");
        var world = new SeasonWorld(settings);
        var random = new RandomSource(settings.Seed);
        var depots = Math.Max(Math.Min(4, settings.Spreaders), settings.Spreaders / 25);
        world.Depots = settings.Fleet is { } fleet ? [.. fleet.Select(unit => unit.Depot).Distinct()] : [.. Enumerable.Range(0, depots).Select(i => i < CountyDepots.Length ? CountyDepots[i] : $"Depot {i + 1:000}")];
        world.Scales =
        [
            .. world.Depots.Select(depot => Scale(random, depot + " vehicle scale", 0.001)),
            .. world.Depots.Select(depot => Scale(random, depot + " floor scale", 0.003)),
        ];
        world.Storms = world.MakeStorms(random, settings.Storms);
        world.Spreaders = settings.Fleet is { } units
            ? [.. units.Select((unit, i) => world.Spreader(random, i, unit))]
            : [.. Enumerable.Range(0, settings.Spreaders).Select(i => world.Spreader(random, i))];
        return world;
    }

    /// <summary>The true mass for one count at a moment, without the scatter of loads.</summary>
    public double TruthAt(SeasonSpreader spreader, long at)
    {
        ArgumentNullException.ThrowIfNull(spreader);
        if (at < spreader.DriftFrom) return spreader.Truth;
        return spreader.Drift switch
        {
            SeasonDrift.Step => spreader.Truth * (1 + spreader.DriftShare),
            SeasonDrift.Ramp => spreader.Truth * (1 + (spreader.DriftShare * (at - spreader.DriftFrom) / (Length - spreader.DriftFrom))),
            _ => spreader.Truth,
        };
    }

    private static void Within(int value, int least, int most)
    {
        if (value < least || value > most) throw new ArgumentOutOfRangeException(nameof(value), value, $"Must be {least} to {most}.");
    }

    private static SeasonScale Scale(RandomSource random, string id, double uncertainty) => new(id, uncertainty * random.NextNormal(), uncertainty);

    // Storms at random, in equal parts of the season so that none overlap.
    private SeasonStorm[] MakeStorms(RandomSource random, int count)
    {
        var storms = new SeasonStorm[count];
        var part = Length / count;
        for (var i = 0; i < count; i++)
        {
            var length = Math.Min(6 + random.NextInt(19), (part / 3600) - 14) * 3600L;
            var from = (i * part) + ((1 + random.NextInt((int)Math.Max(1, (part - length) / 3600 - 13))) * 3600L);
            storms[i] = new($"Storm {i + 1:00}", from, from + length);
        }

        return storms;
    }

    private SeasonSpreader Spreader(RandomSource random, int index)
    {
        var depot = index % Depots.Count;
        // From depot to depot the kinds take turns, so that each depot has all of them.
        var kind = (SeasonLogKind)((index + (index / Depots.Count)) % 4);
        var truth = kind is SeasonLogKind.Mass ? 1 + (0.04 * random.NextNormal()) : 0.02 + (0.08 * random.NextDouble());
        var run = 0.004 + (0.008 * random.NextDouble());
        var drifting = random.NextDouble() < Settings.Drifting;
        var drift = !drifting ? SeasonDrift.None : random.NextInt(2) == 0 ? SeasonDrift.Step : SeasonDrift.Ramp;
        var spreader = new SeasonSpreader
        {
            Index = index,
            Name = $"HR-{101 + index}",
            Depot = depot,
            Log = kind,
            Truth = truth,
            LoadScatter = 0.004 + (0.006 * random.NextDouble()),
            RunScatter = run,
            Drift = drift,
            DriftFrom = drifting ? (20 + random.NextInt(70)) * 86400L : 0,
            DriftShare = drifting ? 0.05 * (random.NextInt(2) == 0 ? 1 : -1) : 0,
            Constants = [],
        };
        var constants = new List<SeasonCalibration> { Calibrate(random, spreader, 0, 0) };
        if (random.NextInt(5) == 0)
        {
            // Between two storms, so that no interval has two constants.
            var at = Storms[Storms.Count / 2].From - 3600;
            constants[0] = constants[0] with { To = at };
            constants.Add(Calibrate(random, spreader, 1, at));
        }

        return spreader with { Constants = constants };
    }

    private SeasonSpreader Spreader(RandomSource random, int index, SeasonUnit unit) => new()
    {
        Index = index,
        Name = unit.Name,
        Depot = Array.IndexOf([.. Depots], unit.Depot),
        Log = (SeasonLogKind)((index + (index / Depots.Count)) % 3),
        Truth = unit.MassPerCount * (1 + (unit.Uncertainty * random.NextNormal())),
        LoadScatter = 0.004 + (0.006 * random.NextDouble()),
        RunScatter = 0.004 + (0.008 * random.NextDouble()),
        Drift = unit.Drift == 0 ? SeasonDrift.None : SeasonDrift.Step,
        DriftFrom = unit.DriftDay * 86400L,
        DriftShare = unit.Drift,
        Constants = [new($"{unit.Name}-1", 0, null, unit.MassPerCount, unit.Uncertainty, 10)],
    };

    // A drop test: runs scatter by the spreader's own scatter, their mean is found on the depot's floor scale, and the stated
    // uncertainty comes from the same scatter, as it would in a real test.
    private SeasonCalibration Calibrate(RandomSource random, SeasonSpreader spreader, int number, long at)
    {
        var runs = 5 + random.NextInt(4);
        double sum = 0, squares = 0;
        for (var i = 0; i < runs; i++)
        {
            var run = spreader.RunScatter * random.NextNormal();
            sum += run;
            squares += run * run;
        }

        var mean = sum / runs;
        var spread = Math.Sqrt(Math.Max(0, squares - (runs * mean * mean)) / (runs - 1) / runs);
        var value = TruthAt(spreader, at) * (1 + mean) * (1 + FloorScale(spreader.Depot).Gain);
        return new($"{spreader.Name}-{number + 1}", at, null, value, spread, runs - 1);
    }
}
