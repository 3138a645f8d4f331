using Lanewright.Core.Exchange;

namespace Lanewright.Core.Tests.Exchange;

/// <summary>The pages of the files people write name every field, as the reader asks for it.</summary>
public sealed class FieldTableTests
{
    [Fact]
    public void The_page_of_the_sheet_has_every_field()
    {
        var page = Repository.Text("docs", "formats", "sheet.md");
        Repository.IsUpToDate(FieldTable.In(page, SheetReader.Read), "docs", "formats", "sheet.md");
        page = Repository.Text("docs", "formats", "sheet.md");
        Assert.All(RecordingFields.Of(SheetReader.Read), fact => Assert.Contains($"| `{fact.Path}` |", page, StringComparison.Ordinal));
    }

    [Fact]
    public void The_page_of_the_plan_has_every_field()
    {
        var page = Repository.Text("docs", "formats", "plan.md");
        Repository.IsUpToDate(FieldTable.In(page, PlanReader.Read), "docs", "formats", "plan.md");
    }
}
