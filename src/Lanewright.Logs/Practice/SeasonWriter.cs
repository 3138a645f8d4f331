using System.Globalization;
using System.Text;
using Lanewright.Core.Practice;

namespace Lanewright.Logs.Practice;

/// <summary>Writes an invented season as files (docs/formats/season.md): logs, profiles, tables and the truth.</summary>
public sealed class SeasonWriter
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly SeasonWorld world;
    private readonly string folder;
    private readonly DateTime begins;

    private SeasonWriter(SeasonWorld world, string folder)
    {
        this.world = world;
        this.folder = folder;
        begins = world.Settings.Begins.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc);
    }

    /// <summary>Writes a season into a folder that is new or empty.</summary>
    /// <returns>Rows of logs.</returns>
    /// <exception cref="LogException">There is something in the folder, or it cannot be written.</exception>
    public static long Write(SeasonWorld world, string folder)
    {
        ArgumentNullException.ThrowIfNull(world);
        ArgumentNullException.ThrowIfNull(folder);
        try
        {
            if (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any())
                throw new LogException($"There is something in {folder}; a season is written into a new folder. Name another.");
            Directory.CreateDirectory(folder);
            return new SeasonWriter(world, folder).All();
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw new LogException($"{folder} could not be written: {wrong.Message}", wrong);
        }
    }

    private long All()
    {
        Profiles();
        Constants();
        Storms();
        var tickets = new List<(SeasonSpreader? Spreader, int Depot, SeasonTicket Ticket)>();
        var applied = new double[world.Depots.Count];
        using var truth = Table("truth.csv", "spreader,depot,kg_per_count,drift,drift_from,drift_rel,load_sd_rel,counts,applied_kg,loaded_kg,returned_kg,logged_kg");
        using var verifications = Table(
            "verifications.csv", "verification,at,depot,spreader,constant,counts,expected_kg,weighed_kg,u_kg,scale,u_scale_rel,u_run_rel");
        using var logs = new SeasonLogs(Path.Combine(folder, "logs"), world, begins);
        var roads = new SeasonRoads(world);
        foreach (var spreader in world.Spreaders)
        {
            logs.Begin(spreader);
            var driven = world.Drive(spreader, row =>
            {
                logs.Row(row);
                roads.Row(spreader, row);
            });
            logs.End();
            applied[spreader.Depot] += driven.Applied;
            tickets.AddRange(driven.Tickets.Select(ticket => ((SeasonSpreader?)spreader, spreader.Depot, ticket)));
            Verifications(verifications, spreader, driven);
            Line(
                truth, spreader.Name, world.Depots[spreader.Depot], Text(spreader.Truth), Word(spreader.Drift),
                spreader.Drift is SeasonDrift.None ? "" : At(spreader.DriftFrom), Text(spreader.DriftShare), Text(spreader.LoadScatter),
                driven.Counts.ToString(CultureInfo.InvariantCulture), Kilograms(driven.Applied), Kilograms(Sum(driven, "load")), Kilograms(Sum(driven, "return")),
                Kilograms(logs.Logged));
        }

        using (var routes = Table("routes.csv", "route,watershed,lane_m")) roads.Write(Path.Combine(folder, "roads.geojson"), routes);
        Piles(tickets, applied);
        Tickets(tickets);
        using (var scales = Table("truth-scales.csv", "scale,gain_rel"))
            foreach (var scale in world.Scales) Line(scales, scale.Id, Text(scale.Gain));
        File.WriteAllText(
            Path.Combine(folder, "README.txt"),
            string.Create(CultureInfo.InvariantCulture,
                $"""
                An invented season, made to practise on. Nobody drove it and no such place exists.
                Seed {world.Settings.Seed}, {world.Settings.Spreaders} spreaders, {world.Storms.Count} storms, a row each {world.Settings.Interval} s, {logs.Rows} rows of logs.
                Planted: a lasting change of {world.Spreaders.Count(s => s.Drift is not SeasonDrift.None)} spreaders (truth.csv), doubled rows and rows out of order in
                logs/rollover-*.csv, missing rows in logs/mass-*.csv, a counter that begins again with each storm in logs/running-*.csv.
                {(world.Settings.LostTicketOf is { } one ? $"The ticket of one load of {one} is lost.\n" : "")}
                """), Utf8);
        return logs.Rows;
    }

    private void Profiles()
    {
        Directory.CreateDirectory(Path.Combine(folder, "profiles"));
        foreach (var kind in Enum.GetValues<SeasonLogKind>())
            File.WriteAllText(Path.Combine(folder, "profiles", Word(kind) + ".json"), SeasonLogs.Profile(kind), Utf8);
    }

    private void Constants()
    {
        using var table = Table("constants.csv", "constant,spreader,depot,from,to,kg_per_count,u_rel,dof,scale,u_scale_rel");
        foreach (var spreader in world.Spreaders)
            foreach (var one in spreader.Constants)
                Line(
                    table, one.Id, spreader.Name, world.Depots[spreader.Depot], At(one.From), one.To is { } to ? At(to) : "", Text(one.MassPerCount),
                    Text(one.Uncertainty), one.DegreesOfFreedom.ToString(CultureInfo.InvariantCulture), world.FloorScale(spreader.Depot).Id,
                    Text(world.FloorScale(spreader.Depot).Uncertainty));
    }

    private void Storms()
    {
        using var table = Table("storms.csv", "storm,from,to,depot");
        // The last trips end after the snow.
        foreach (var storm in world.Storms) Line(table, storm.Name, At(storm.From - 3600), At(storm.To + (6 * 3600)), "");
    }

    private void Verifications(StreamWriter table, SeasonSpreader spreader, SeasonDriven driven)
    {
        for (var i = 0; i < driven.Verifications.Count; i++)
        {
            var one = driven.Verifications[i];
            var scale = world.FloorScale(spreader.Depot);
            Line(
                table, $"{spreader.Name}-v{i + 1:00}", At(one.At), world.Depots[spreader.Depot], spreader.Name, one.Constant.Id,
                one.Counts.ToString(CultureInfo.InvariantCulture), Kilograms(one.Counts * one.Constant.MassPerCount), Kilograms(one.Weighed),
                Text(SeasonWorld.CatchUncertainty), scale.Id, Text(scale.Uncertainty), Text(spreader.RunScatter));
        }
    }

    private void Piles(List<(SeasonSpreader? Spreader, int Depot, SeasonTicket Ticket)> tickets, double[] applied)
    {
        using var table = Table(
            "piles.csv",
            "survey,at,depot,material,shape,width_m,length_m,height_m,angle_deg,u_width_m,u_length_m,u_height_m,u_angle_deg,density_kg_m3,u_density_rel,density_id");
        using var truth = Table("truth-depots.csv", "depot,material,applied_kg,pile_start_kg,delivered_kg,pile_end_kg");
        for (var depot = 0; depot < world.Depots.Count; depot++)
        {
            var name = world.Depots[depot];
            var pile = world.Pile(depot, tickets.Where(one => one.Depot == depot && one.Spreader is not null).Select(one => one.Ticket));
            tickets.AddRange(pile.Deliveries.Select(ticket => ((SeasonSpreader?)null, depot, ticket)));
            for (var i = 0; i < pile.Surveys.Count; i++)
            {
                var one = pile.Surveys[i];
                Line(
                    table, $"{name} {i + 1}", At(one.At), name, SeasonWorld.MaterialName, one.IsCone ? "cone" : "windrow", Kilograms(one.Width),
                    one.IsCone ? "" : Kilograms(one.Length), "", Kilograms(one.Angle), Text(SeasonWorld.TapeUncertainty), one.IsCone ? "" : Text(SeasonWorld.TapeUncertainty),
                    "", Text(SeasonWorld.AngleUncertainty), Kilograms(pile.Density), Text(SeasonWorld.DensityUncertainty), name + " density");
            }

            Line(truth, name, SeasonWorld.MaterialName, Kilograms(applied[depot]), Kilograms(pile.Start), Kilograms(pile.Delivered), Kilograms(pile.End));
        }
    }

    private void Tickets(List<(SeasonSpreader? Spreader, int Depot, SeasonTicket Ticket)> tickets)
    {
        using var table = Table("tickets.csv", "ticket,at,depot,spreader,kind,material,scale,net_kg,u_kg,u_scale_rel,moisture,u_moisture");
        var number = 0;
        var lost = tickets.Where(one => one.Spreader?.Name == world.Settings.LostTicketOf && one.Ticket.Kind == "load").Select(one => one.Ticket).MaxBy(ticket => ticket.Net);
        foreach (var (spreader, depot, ticket) in tickets.OrderBy(one => one.Ticket.At).ThenBy(one => one.Spreader?.Index ?? -1))
        {
            number++;
            if (ReferenceEquals(ticket, lost)) continue;
            Line(
                table, string.Create(CultureInfo.InvariantCulture, $"T{number:000000}"), At(ticket.At), world.Depots[depot], spreader?.Name ?? "", ticket.Kind,
                SeasonWorld.MaterialName, world.VehicleScale(depot).Id, Text(ticket.Net), Text(SeasonWorld.TicketUncertainty),
                Text(world.VehicleScale(depot).Uncertainty), "0.02", "0.005");
        }
    }

    private static double Sum(SeasonDriven driven, string kind) => driven.Tickets.Where(t => t.Kind == kind).Sum(t => t.Truth);

    private StreamWriter Table(string name, string columns)
    {
        var writer = new StreamWriter(Path.Combine(folder, name), append: false, Utf8) { NewLine = "\n" };
        writer.WriteLine(columns);
        return writer;
    }

    private static void Line(StreamWriter writer, params string[] fields) => writer.WriteLine(string.Join(',', fields));

    private string At(long seconds) => begins.AddSeconds(seconds).ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static string Kilograms(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);

    internal static string Word<T>(T value)
        where T : struct, Enum => value.ToString().ToLowerInvariant();
}
