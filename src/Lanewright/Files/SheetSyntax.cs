namespace Lanewright.Files;

/// <summary>The syntax in which a sheet is written.</summary>
public enum SheetSyntax
{
    /// <summary>JSON, by programs.</summary>
    Json,

    /// <summary>YAML, by hand in an editor.</summary>
    Yaml,

    /// <summary>CSV, by hand in a spreadsheet.</summary>
    Csv,
}
