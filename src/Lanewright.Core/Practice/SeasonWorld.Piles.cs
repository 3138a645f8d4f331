using Lanewright.Core.Statistics;

namespace Lanewright.Core.Practice;

/// <summary>A survey of a pile as somebody measured it.</summary>
/// <param name="At">Seconds since the season's begin.</param>
/// <param name="IsCone">A cone; otherwise a windrow with half a cone at each end.</param>
/// <param name="Width">Diameter, or width at the foot, m.</param>
/// <param name="Length">Length at the foot, ends included, m; 0 for a cone.</param>
/// <param name="Angle">Slope, degrees.</param>
/// <param name="Truth">True mass, kg.</param>
public sealed record SeasonSurvey(long At, bool IsCone, double Width, double Length, double Angle, double Truth);

/// <summary>A depot's pile through the season.</summary>
public sealed record SeasonPile
{
    /// <summary>True mass at the begin, kg.</summary>
    public required double Start { get; init; }

    /// <summary>True mass delivered to it, kg.</summary>
    public required double Delivered { get; init; }

    /// <summary>True mass at the end, kg.</summary>
    public required double End { get; init; }

    /// <summary>Tickets of deliveries.</summary>
    public required IReadOnlyList<SeasonTicket> Deliveries { get; init; }

    /// <summary>Surveys in order: at the begin, in the middle, at the end.</summary>
    public required IReadOnlyList<SeasonSurvey> Surveys { get; init; }

    /// <summary>Bulk density as it was measured once for all surveys, kg/m³.</summary>
    public required double Density { get; init; }
}

/// <content>Piles.</content>
public sealed partial class SeasonWorld
{
    /// <summary>Relative standard uncertainty of the pile's density.</summary>
    public const double DensityUncertainty = 0.02;

    /// <summary>Standard uncertainty of a length or width of a pile, m.</summary>
    public const double TapeUncertainty = 0.1;

    /// <summary>Standard uncertainty of the slope, degrees.</summary>
    public const double AngleUncertainty = 0.5;

    private const double Pi = 3.141592653589793;

    /// <summary>A depot's pile.</summary>
    /// <param name="depot">Place of the depot.</param>
    /// <param name="tickets">Tickets of all its spreaders.</param>
    public SeasonPile Pile(int depot, IEnumerable<SeasonTicket> tickets)
    {
        ArgumentNullException.ThrowIfNull(tickets);
        var all = tickets.OrderBy(t => t.At).ToList();
        var random = new RandomSource(Settings.Seed, 1_000_000 + (ulong)depot);
        var taken = all.Sum(Taken);
        var start = (0.5 * taken) + 200_000;
        var trucks = (int)(0.6 * taken / 22_000);
        var deliveries = new List<SeasonTicket>();
        for (var i = 0; i < trucks; i++)
        {
            var mass = 20_000 + (4000 * random.NextDouble());
            var at = (long)((i + random.NextDouble()) * (Length - (20 * 86400L)) / trucks) + (5 * 86400L);
            deliveries.Add(new(at, "delivery", Math.Round((mass * (1 + VehicleScale(depot).Gain)) + (TicketUncertainty * random.NextNormal())), mass));
        }

        deliveries.Sort((a, b) => a.At.CompareTo(b.At));
        var density = 1250 + (100 * random.NextDouble());
        double MassAt(long at) => start + deliveries.Where(t => t.At <= at).Sum(t => t.Truth) - all.Where(t => t.At <= at).Sum(Taken);
        return new()
        {
            Start = start,
            Delivered = deliveries.Sum(t => t.Truth),
            End = MassAt(Length),
            Deliveries = deliveries,
            Surveys = [.. new[] { 0, Storms[Storms.Count / 2].From - 7200, Length }.Select(at => Survey(random, at, MassAt(at), density))],
            Density = density * (1 + (DensityUncertainty * random.NextNormal())),
        };
    }

    private static double Taken(SeasonTicket ticket) => ticket.Kind == "load" ? ticket.Truth : -ticket.Truth;

    // A pile of the true volume, and what tape and inclinometer made of it.
    private static SeasonSurvey Survey(RandomSource random, long at, double mass, double density)
    {
        var volume = Math.Max(1, mass / density);
        var angle = 32 + (5 * random.NextDouble());
        var slope = Elementary.Sin(angle * Pi / 180) / Elementary.Cos(angle * Pi / 180);
        var cone = volume < 250;
        var width = cone ? CubeRoot(24 * volume / (Pi * slope)) : 14.0;
        var height = width / 2 * slope;
        var length = cone ? 0 : width + ((volume - (Pi * width * width * height / 12)) / (width * height / 2));
        return new(
            at, cone, width + (TapeUncertainty * random.NextNormal()), cone ? 0 : length + (TapeUncertainty * random.NextNormal()),
            angle + (AngleUncertainty * random.NextNormal()), mass);
    }

    private static double CubeRoot(double x)
    {
        var root = 1 + (x / 3);
        for (var i = 0; i < 200; i++)
        {
            var next = ((2 * root) + (x / (root * root))) / 3;
            if (next >= root) break;
            root = next;
        }

        return root;
    }
}
