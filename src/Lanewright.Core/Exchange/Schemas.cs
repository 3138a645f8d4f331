namespace Lanewright.Core.Exchange;

/// <summary>The JSON Schemas of the files people write.</summary>
public static class Schemas
{
    /// <summary>The schema of a sheet.</summary>
    public static string Sheet() =>
        SchemaFields.Describe("urn:lanewright:sheet:1", "Sheet of a drop test or a verification", SheetReader.Read);

    /// <summary>The schema of a plan's file.</summary>
    public static string Plan() => SchemaFields.Describe("urn:lanewright:plan:1", "What is known before a drop test", PlanReader.Read);
}
