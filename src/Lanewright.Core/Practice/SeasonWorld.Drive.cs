using Lanewright.Core.Statistics;

namespace Lanewright.Core.Practice;

/// <summary>One interval of a spreader's season, as it truly was.</summary>
/// <param name="At">Its end, seconds since the season's begin.</param>
/// <param name="Seconds">Its length; 0 for the first row of a trip.</param>
/// <param name="Storm">Place of the storm.</param>
/// <param name="Trip">Number of the trip within the storm.</param>
/// <param name="Counts">Whole counts that the log gains.</param>
/// <param name="Mass">Mass truly spread, kg.</param>
/// <param name="Speed">Ground speed, m/s.</param>
/// <param name="Target">Wanted mass by length of lane, kg/m.</param>
/// <param name="Latitude">Degrees.</param>
/// <param name="Longitude">Degrees.</param>
/// <param name="Route">Number of the route.</param>
public readonly record struct SeasonInterval(
    long At, double Seconds, int Storm, int Trip, int Counts, double Mass, double Speed, double Target, double Latitude, double Longitude, int Route);

/// <summary>A ticket as it was printed.</summary>
/// <param name="At">Seconds since the season's begin.</param>
/// <param name="Kind">load or return.</param>
/// <param name="Net">What it says, kg.</param>
/// <param name="Truth">True mass, kg.</param>
public sealed record SeasonTicket(long At, string Kind, double Net, double Truth);

/// <summary>A run in which counts were held against a weighing.</summary>
/// <param name="At">Seconds since the season's begin.</param>
/// <param name="Constant">The constant valid then.</param>
/// <param name="Counts">Counts.</param>
/// <param name="Weighed">What the scale said, kg.</param>
public sealed record SeasonVerification(long At, SeasonCalibration Constant, int Counts, double Weighed);

/// <summary>What a spreader's season came to.</summary>
public sealed record SeasonDriven
{
    /// <summary>Counts of the whole season.</summary>
    public required long Counts { get; init; }

    /// <summary>Mass truly spread, kg.</summary>
    public required double Applied { get; init; }

    /// <summary>Tickets in order.</summary>
    public required IReadOnlyList<SeasonTicket> Tickets { get; init; }

    /// <summary>Verification runs in order.</summary>
    public required IReadOnlyList<SeasonVerification> Verifications { get; init; }
}

/// <content>A spreader's season, interval by interval.</content>
public sealed partial class SeasonWorld
{
    /// <summary>Standard uncertainty of one ticket alone, kg.</summary>
    public const double TicketUncertainty = 8;

    /// <summary>Standard uncertainty of one weighing of a catch alone, kg.</summary>
    public const double CatchUncertainty = 0.3;

    private const double LaneRate = 0.0846; // kg/m of lane: 300 lb/lane-mile

    /// <summary>Drives a spreader through the season. The same for the same season, whichever others are driven.</summary>
    /// <param name="spreader">The spreader.</param>
    /// <param name="row">Takes each interval, in order.</param>
    public SeasonDriven Drive(SeasonSpreader spreader, Action<SeasonInterval> row)
    {
        ArgumentNullException.ThrowIfNull(spreader);
        ArgumentNullException.ThrowIfNull(row);
        var random = new RandomSource(Settings.Seed, (ulong)spreader.Index + 1);
        var drive = new Driving(this, spreader, random, row);
        for (var storm = 0; storm < Storms.Count; storm++)
            if (random.NextInt(10) > 0) drive.Storm(storm);
        return new() { Counts = drive.Counts, Applied = drive.Applied, Tickets = drive.Tickets, Verifications = Verify(spreader, random) };
    }

    private List<SeasonVerification> Verify(SeasonSpreader spreader, RandomSource random)
    {
        var runs = new List<SeasonVerification>();
        for (var at = 5 * 86400L; at < Length - 86400; at += (5 + random.NextInt(6)) * 86400L)
        {
            var constant = spreader.Constants.Last(one => one.From <= at);
            var counts = (int)(250 / constant.MassPerCount);
            var truth = counts * TruthAt(spreader, at) * (1 + (spreader.RunScatter * random.NextNormal()));
            runs.Add(new(at, constant, counts, (truth * (1 + FloorScale(spreader.Depot).Gain)) + (CatchUncertainty * random.NextNormal())));
        }

        return runs;
    }

    private sealed class Driving(SeasonWorld world, SeasonSpreader spreader, RandomSource random, Action<SeasonInterval> row)
    {
        private readonly double angle = random.NextDouble() * 6.283185307;
        private double hopper;
        private double owed;

        internal long Counts { get; private set; }

        internal double Applied { get; private set; }

        internal List<SeasonTicket> Tickets { get; } = [];

        internal void Storm(int number)
        {
            var storm = world.Storms[number];
            var rate = LaneRate * (0.7 + (0.2 * random.NextInt(4)));
            var at = storm.From + random.NextInt(1800);
            for (var trip = 0; at < storm.To - 3600; trip++)
            {
                Load(at);
                at = Trip(number, trip, at + 600, rate) + 300;
            }

            if (hopper > 200)
            {
                Ticket(at, "return", hopper);
                hopper = 0;
            }
        }

        private void Load(long at)
        {
            var mass = 5000 + (3000 * random.NextDouble()) - hopper;
            if (mass < 500) return;
            Ticket(at, "load", mass);
            hopper += mass;
        }

        private void Ticket(long at, string kind, double mass)
        {
            var net = (mass * (1 + world.VehicleScale(spreader.Depot).Gain)) + (TicketUncertainty * random.NextNormal());
            Tickets.Add(new(at, kind, Math.Round(net), mass));
        }

        // Spreads until the load is nearly out. The controller doses by its own constant, the spreader delivers by the true one.
        private long Trip(int storm, int trip, long at, double rate)
        {
            var constant = spreader.Constants.Last(one => one.From <= at);
            var truth = world.TruthAt(spreader, at) * (1 + (spreader.LoadScatter * random.NextNormal()));
            var route = random.NextInt(3);
            var metres = 0.0;
            var step = world.Settings.Interval;
            Row(storm, trip, at, 0, 0, 0, 0, rate, metres, route);
            for (var end = at + 5400; at < end;)
            {
                at += step;
                var speed = 7 + (5 * random.NextDouble());
                var standing = random.NextInt(12) == 0;
                if (standing) speed = 0;
                metres += speed * step;
                owed += speed * step * rate / constant.MassPerCount;
                var counts = (int)owed;
                owed -= counts;
                var mass = counts * truth;
                if (mass > hopper - 150) break;
                hopper -= mass;
                Row(storm, trip, at, step, counts, mass, speed, rate, metres, route);
            }

            return at;
        }

        private void Row(int storm, int trip, long at, int seconds, int counts, double mass, double speed, double rate, double metres, int route)
        {
            Counts += counts;
            Applied += mass;
            // Out and back along a straight road, as far as 15 km; degrees for metres near 45° north.
            var along = metres % 30_000;
            var away = along < 15_000 ? along : 30_000 - along;
            var direction = angle + route;
            row(new(
                at, seconds, storm, trip, counts, mass, speed, rate, 44.8 + (0.05 * spreader.Depot) + (away * Elementary.Sin(direction) / 111_000),
                -93.2 + (away * Elementary.Cos(direction) / 79_000), route));
        }
    }
}
