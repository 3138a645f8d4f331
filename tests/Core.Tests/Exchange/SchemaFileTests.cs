using Lanewright.Core.Exchange;

namespace Lanewright.Core.Tests.Exchange;

public sealed class SchemaFileTests
{
    [Fact]
    public void The_published_schema_of_a_sheet_is_up_to_date() =>
        Repository.IsUpToDate(Schemas.Sheet(), "docs", "formats", "sheet.schema.json");

    [Fact]
    public void The_published_schema_of_a_plan_is_up_to_date() =>
        Repository.IsUpToDate(Schemas.Plan(), "docs", "formats", "plan.schema.json");
}
