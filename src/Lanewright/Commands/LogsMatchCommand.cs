using System.CommandLine;
using Lanewright.Core.Quantities;
using Lanewright.Core.Season.Roads;
using Lanewright.Core.Text;
using Lanewright.Logs;
using Lanewright.Logs.Roads;
using Lanewright.Logs.Store;
using Lanewright.Print;

namespace Lanewright.Commands;

/// <summary><c>lanewright logs match</c>: finds the road segments that the logged rows lie on.</summary>
internal static class LogsMatchCommand
{
    private const int RefusedShown = 10;

    internal static Command Make()
    {
        var roads = new Option<string?>("--roads") { Description = "GeoJSON, or an OpenStreetMap extract as XML; kept for the next time. Without it the roads kept before." };
        var sigma = new Option<string>("--scatter") { Description = "Standard deviation of the logged places from the road.", DefaultValueFactory = _ => "4.07 m" };
        var season = new Option<string?>("--season") { Description = "Only this season, such as 2026-27." };
        var units = CommonOptions.UnitsShown();
        var culture = CommonOptions.Culture();
        var data = RecordsOptions.Data();
        var command = new Command("match", "Find the road segment of every logged row that has a place.") { roads, sigma, season, units, culture, data };
        command.SetAction((parsed, stop) => Task.FromResult(LogsCommand.Told(parsed, () =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var error = parsed.InvocationConfiguration.Error;
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            if (CommonOptions.UnitsOf(parsed.GetValue(units), UnitPreferences.UnitedStates, c, error) is not { } preferences) return CommonOptions.CouldNotRead;
            if (!QuantityText.Read<Length>(parsed.GetValue(sigma), c).TryGet(out var scatter) || scatter.Si is not (>= 0.5 and <= 100))
                throw new LogException($"--scatter: '{Excerpt.Of(parsed.GetValue(sigma))}' was read; expected a length from 0.5 m to 100 m, such as 4 m.");
            var folder = new LogFolder(parsed.GetValue(data)!);
            var network = Network(folder, parsed.GetValue(roads), c, output);
            var metric = preferences == UnitPreferences.Metric;
            var length = metric ? Units.Kilometre : Units.Mile;
            var table = new TextTable(
                (c.Say("season"), false), (c.Say("depot"), false), (c.Say("spreader"), false), (c.Say("rows with a place"), true), (c.Say("on a road"), true),
                (c.Say($"driven, {length.Symbol}"), true), (c.Say("breaks"), true), (c.Say("scatter, m"), true));
            var (points, matched) = (0L, 0L);
            foreach (var one in RoadMatching.Run(folder, network, new() { Sigma = scatter.Si }, parsed.GetValue(season), stop))
            {
                table.Add(
                    one.Spreader.Season, one.Spreader.Depot, one.Spreader.Spreader, Whole(one.Points), one.Points == 0 ? "" : PercentText.Write((double)one.Matched / one.Points, c),
                    QuantityText.WriteValue(one.Metres, length, c, NumberForm.Decimals(1)), Whole(one.Breaks), QuantityText.WriteNumber(one.Sigma, c, NumberForm.Decimals(1)));
                (points, matched) = (points + one.Points, matched + one.Matched);
            }

            if (points == 0) throw new LogException("No logged row has a place. A profile names the columns of latitude and longitude (docs/formats/log-profile.md).");
            CommonOptions.Print(table.Lines(), output);
            output.WriteLine(c.Say($"Rows on a road: {Whole(matched)} of {Whole(points)}. 'lanewright logs applied --by segment' and the office's map show what was spread where."));
            return CommonOptions.Answered;

            string Whole(long count) => QuantityText.WriteNumber(count, c, NumberForm.Decimals(0));
        })));
        return command;
    }

    private static RoadNetwork Network(LogFolder folder, string? file, TextCulture culture, TextWriter output)
    {
        if (file is null)
            return RoadStore.Read(folder) ?? throw new LogException("No roads are kept yet. Name a file of them with --roads.");
        var reading = RoadFile.Read(file);
        foreach (var refused in reading.Refused.Take(RefusedShown)) output.WriteLine(culture.Say($"{refused.What}: {refused.Why}"));
        if (reading.Refused.Count > RefusedShown) output.WriteLine(culture.Say($"and {reading.Refused.Count - RefusedShown} more like these"));
        var network = new RoadNetwork(reading.Pieces);
        RoadStore.Write(folder, reading.Pieces);
        output.WriteLine(culture.Say($"Pieces of road: {reading.Pieces.Count}, with lanes: {reading.Pieces.Count(piece => piece.Lanes is not null)}, with a width: {reading.Pieces.Count(piece => piece.Width is not null)}."));
        return network;
    }
}
