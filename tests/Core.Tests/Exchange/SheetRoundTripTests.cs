using CsCheck;
using Lanewright.Core.Exchange;
using Lanewright.Core.Spreading;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Tests.Exchange;

public sealed class SheetRoundTripTests
{
    [Fact]
    public void A_sheet_that_is_written_reads_back_equal_bit_for_bit_and_writes_the_same_text_again() =>
        SheetGen.Sheet.Sample(
            sheet =>
            {
                var text = SheetWriter.Write(sheet);
                var reading = SheetReader.Read(JsonTree.Read(text));
                Assert.True(reading.Findings.Count == 0, text + string.Join('\n', reading.Findings));
                Assert.Null(Deep.Difference(sheet, reading.Value));
                Assert.Equal(text, SheetWriter.Write(reading.Value!));
            },
            iter: 1500,
            threads: 1);

    [Fact]
    public void The_generated_sheets_hold_every_kind_of_weighing_and_every_option()
    {
        var sheets = SheetGen.Some(200);
        var catches = sheets.SelectMany(s => s.Runs).Select(r => r.Catch.GetType()).Distinct().ToList();
        Assert.Equal(4, catches.Count);
        Assert.Equal(2, sheets.Select(s => s.Kind).Distinct().Count());
        Assert.Equal(4, sheets.Select(s => s.Spreader.Form).Distinct().Count());
        Assert.Contains(sheets, s => s.Decision is not null && s.EarlierScatter is not null && s.Material.Moisture is not null);
        Assert.Contains(sheets.SelectMany(s => s.Runs), r => r.Catch is TruckCatch { FuelBurnt: not null, Changes.Count: > 1 });
    }

    [Fact]
    public void The_comparison_sees_a_difference_in_the_last_bit()
    {
        var sheet = SheetGen.Some(1)[0];
        Assert.Null(Deep.Difference(sheet, sheet with { }));
        Assert.NotNull(Deep.Difference(sheet, sheet with { Tolerance = Math.BitIncrement(sheet.Tolerance) }));
        var run = sheet.Runs[^1];
        Run[] other = [.. sheet.Runs.SkipLast(1), run with { Note = run.Note + "x" }];
        Assert.NotNull(Deep.Difference(sheet, sheet with { Runs = other }));
    }
}
