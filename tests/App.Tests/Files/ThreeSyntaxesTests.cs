using System.Text;
using Lanewright.Core.Exchange;
using Lanewright.Core.Tests.Exchange;
using Lanewright.Core.Text;
using Lanewright.Core.Weighing;
using Lanewright.Files;

namespace Lanewright.App.Tests.Files;

public sealed class ThreeSyntaxesTests
{
    private const string Json = """
        {
          "spreader": "HR-104", "method": "whole-truck", "day": "2026-01-31", "begun": "2026-01-31T07:45:00-05:00",
          "moist": true, "factor": 1.25, "scale": {"division": 0.5}, "checks": ["20 kg", "20.01 kg"], "notes": "a, b",
          "runs": [{"pulses": 3021, "gross": "412.5 lb", "tare": "21 lb"}, {"pulses": 3033, "gross": "187 kg"}]
        }
        """;

    private const string Yaml = """
        spreader: HR-104
        method: whole-truck
        day: 2026-01-31
        begun: 2026-01-31T07:45:00-05:00
        moist: yes
        factor: 1.25
        scale: {division: 0.5}
        checks: [20 kg, 20.01 kg]
        notes: a, b
        runs:
        - {pulses: "3,021", gross: 412.5 lb, tare: 21 lb}
        - pulses: 3033
          gross: 187 kg
        """;

    private const string Csv = """
        spreader,HR-104
        method,whole-truck
        day,2026-01-31
        begun,2026-01-31T07:45:00-05:00
        moist,yes
        factor,1.25
        scale.division,0.5
        checks[0],20,kg
        checks[1],20.01 kg
        notes,"a, b"

        drop,gross (lb),tare (lb)
        "3,021",412.5,21
        3033,187 kg
        """;

    [Fact]
    public void The_same_sheet_in_three_syntaxes_gives_the_same_record()
    {
        var json = Read(Json, SheetSyntax.Json);
        Assert.Equal(Words(json), Words(Read(Yaml, SheetSyntax.Yaml)));
        Assert.Equal(Words(json), Words(Read(Csv, SheetSyntax.Csv)));
        Assert.Equal(3021, json.Runs[0].Pulses);
        Assert.Equal(412.5 * 0.45359237, json.Runs[0].Gross.Kilograms, 12);
    }

    [Fact]
    public void The_example_of_the_page_on_csv_is_read_without_findings()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Lanewright.slnx")))
            folder = folder.Parent ?? throw new DirectoryNotFoundException("The solution is not above the tests.");
        var page = File.ReadAllText(Path.Combine(folder.FullName, "docs", "formats", "csv.md")).ReplaceLineEndings("\n");
        var tree = CsvTree.Read(page.Split("```\n")[1], CsvTree.DropTestTables);
        Assert.Empty(tree.Findings);
        var sheet = SheetReader.Read(tree);
        Assert.Empty(sheet.Findings);
        Assert.Equal([1251, 1265, 1240], sheet.Value!.Runs.Select(run => run.Pulses!.Value.Si));
        Assert.All(sheet.Value.Runs, run => Assert.Equal(2, Assert.IsType<ContainerCatch>(run.Catch).Containers.Count));
    }

    private static SampleSheet Read(string text, SheetSyntax syntax)
    {
        var tree = SheetFile.Read(Encoding.UTF8.GetBytes(text), syntax, [new CsvTable("drop", "runs", "pulses")]);
        var reading = TreeFields.Read(tree, TextCulture.UnitedStates, SampleSheet.Read);
        Assert.Empty(reading.Findings);
        return reading.Value!;
    }

    private static string Words(SampleSheet sheet) =>
        $"{sheet with { Checks = [], Runs = [] }} {string.Join(' ', sheet.Checks)} {string.Join(' ', sheet.Runs)}";
}
