using Lanewright.Core.Practice;
using Lanewright.Core.Season.Roads;
using Lanewright.Logs;
using Lanewright.Logs.Applied;
using Lanewright.Logs.Practice;
using Lanewright.Logs.Roads;
using Lanewright.Logs.Store;

namespace Lanewright.Storage.Tests;

/// <summary>Roads from files, and logged rows on them.</summary>
public sealed class RoadTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("lanewright-roads-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public void Roads_of_OpenStreetMap_are_cut_where_they_meet()
    {
        var reading = Read(
            """
            <?xml version="1.0"?>
            <osm version="0.6">
              <node id="1" lat="45.00" lon="-93.00"/><node id="2" lat="45.01" lon="-93.00"/><node id="3" lat="45.02" lon="-93.00"/>
              <node id="4" lat="45.01" lon="-93.01"/><node id="5" lat="45.01" lon="-92.99"/>
              <way id="10"><nd ref="1"/><nd ref="2"/><nd ref="3"/><tag k="highway" v="primary"/><tag k="name" v="Mill Road"/><tag k="lanes" v="4"/><tag k="width" v="48 ft"/></way>
              <way id="11"><nd ref="4"/><nd ref="2"/><nd ref="5"/><tag k="highway" v="residential"/><tag k="oneway" v="-1"/><tag k="lanes" v="two"/></way>
              <way id="12"><nd ref="1"/><nd ref="4"/><tag k="highway" v="footway"/></way>
              <way id="13"><nd ref="1"/><nd ref="99"/><tag k="highway" v="service"/></way>
              <way id="14"><nd ref="3"/><nd ref="5"/><tag k="highway" v="motorway"/></way>
            </osm>
            """);
        Assert.Equal(["way 10:0", "way 10:1", "way 11:0", "way 11:1", "way 14"], reading.Pieces.Select(piece => piece.Id));
        var main = reading.Pieces[0];
        Assert.Equal(("Mill Road", "1", "2", true, 4.0), (main.Name, main.From, main.To, main.IsTwoWay, main.Lanes));
        Assert.Equal(48 * 0.3048, main.Width!.Value, 1e-12);
        // Driven against its points: turned about.
        Assert.Equal(("5", "2", false, (double?)null), (reading.Pieces[2].From, reading.Pieces[2].To, reading.Pieces[2].IsTwoWay, reading.Pieces[2].Lanes));
        Assert.False(reading.Pieces[4].IsTwoWay);
        Assert.Equal(["way 11", "way 13", "way 13"], reading.Refused.Select(one => one.What));
        Assert.Contains("'two' was read", reading.Refused[0].Why.ToString(), StringComparison.Ordinal);
        Assert.Contains("node 99", reading.Refused[1].Why.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Roads_of_GeoJSON_come_back_as_they_were_kept()
    {
        var reading = Read(
            """
            {"type":"FeatureCollection","features":[
              {"type":"Feature","id":"a","properties":{"ref":"12","lanes":2,"width":"7,2 m","oneway":true},"geometry":{"type":"LineString","coordinates":[[-93,45],[-93,45.01],[-93,45.02]]}},
              {"type":"Feature","properties":{"id":7},"geometry":{"type":"MultiLineString","coordinates":[[[-93.01,45.01],[-93,45.01]],[[-92.9,45],[-92.9,45]]]}},
              {"type":"Feature","id":"a","properties":null,"geometry":{"type":"LineString","coordinates":[[0,91],[0,0]]}},
              {"type":"Feature","properties":{},"geometry":{"type":"Circle"}}, {"type":"Feature","geometry":{"type":"Point","coordinates":[0,0]}}]}
            """);
        Assert.Equal(["a:0", "a:1", "7/1"], reading.Pieces.Select(piece => piece.Id));
        Assert.All(reading.Pieces.Take(2), piece => Assert.Equal(("12", false, 2.0), (piece.Name, piece.IsTwoWay, piece.Lanes)));
        Assert.Equal(["7/2", "a", "feature 4"], reading.Refused.Select(one => one.What).Order(StringComparer.Ordinal));
        Assert.Equal(7.2, reading.Pieces[0].Width);
        var folder = new LogFolder(root);
        Assert.Null(RoadStore.Read(folder));
        RoadStore.Write(folder, reading.Pieces);
        var kept = RoadStore.Read(folder)!;
        Assert.Equal(reading.Pieces.Select(piece => (piece.Id, piece.Name, piece.IsTwoWay, piece.Lanes)), kept.Segments.Select(one => (one.Piece.Id, one.Piece.Name, one.Piece.IsTwoWay, one.Piece.Lanes)));
        Assert.Equal(reading.Pieces.SelectMany(piece => piece.Points), kept.Segments.SelectMany(one => one.Piece.Points));
    }

    [Theory]
    [InlineData("", "expected GeoJSON")]
    [InlineData("{", "expected GeoJSON")]
    [InlineData("[1,2]", "expected GeoJSON with features")]
    [InlineData("{\"features\":[]}", "holds no road")]
    [InlineData("{\"features\":[1,null,{\"geometry\":{\"type\":\"LineString\",\"coordinates\":[[\"x\",1],[2,3]]}}]}", "holds no road")]
    [InlineData("{\"features\":[{\"id\":\"\\ud800\"}]}", "expected GeoJSON")]
    [InlineData("<gpx/>", "or OpenStreetMap as XML")]
    [InlineData("<osm><way", "expected GeoJSON")]
    [InlineData("<!DOCTYPE osm [<!ENTITY a \"b\">]><osm>&a;</osm>", "expected GeoJSON")]
    [InlineData("<osm><way id='1'/><node id='x' lat='y'/></osm>", "holds no road")]
    public void A_file_without_roads_is_refused_in_words(string text, string what) =>
        Assert.Contains(what, Assert.Throws<LogException>(() => Read(text)).Message, StringComparison.Ordinal);

    [Fact]
    public void Every_row_of_an_invented_season_is_put_on_its_road_and_the_sums_stay()
    {
        var season = Path.Combine(root, "season");
        SeasonWriter.Write(SeasonWorld.Make(new() { Spreaders = 4, Storms = 1, Interval = 20, Seed = 4 }), season);
        var folder = SeasonCoverage.Take(season, Path.Combine(root, "data"));
        var network = new RoadNetwork(RoadFile.Read(Path.Combine(season, "roads.geojson")).Pieces);
        var matched = RoadMatching.Run(folder, network, new(), null, TestContext.Current.CancellationToken).ToList();
        Assert.Equal(4, matched.Count);
        // Logs of mass say nothing of places.
        Assert.Equal(1, matched.Count(one => one.Points == 0));
        Assert.All(matched.Where(one => one.Points > 0), one => Assert.True(one.Points > 300 && one.Matched > 0.99 * one.Points, one.ToString()));

        var constants = ConstantTable.Read(Path.Combine(season, "constants.csv"));
        var whole = AppliedLedger.Compute(folder, new() { By = AppliedBy.Season, Constants = constants }).Total;
        var answer = AppliedLedger.Compute(folder, new() { By = AppliedBy.Segment, Constants = constants });
        Assert.Equal(whole.Mass.Value, answer.Total.Mass.Value, whole.Mass.Value * 1e-12);
        var on = answer.Lines.Where(line => line.Name.Length > 0).ToList();
        Assert.True(on.Count > 100);
        // Roads are named after the spreader they were made for.
        foreach (var spreader in matched.Where(one => one.Points > 0).Select(one => one.Spreader))
        {
            var own = AppliedLedger.Compute(folder, new() { By = AppliedBy.Spreader, Constants = constants }).Lines.Single(line => line.Name == spreader.Spreader);
            var roads = on.Where(line => line.Name.StartsWith(spreader.Spreader + " ", StringComparison.Ordinal)).Sum(line => line.Mass.Value);
            Assert.InRange(roads / own.Mass.Value, 0.9, 1.1);
        }
    }

    private RoadReading Read(string text)
    {
        var file = Path.Combine(root, "roads");
        File.WriteAllText(file, text);
        return RoadFile.Read(file);
    }
}
