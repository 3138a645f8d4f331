namespace Lanewright.Core.Exchange;

/// <summary>
/// How much text one sheet may be. A sheet of a full day's test is some ten kilobytes, so a text beyond these limits
/// is not a sheet, or it was made to do harm. The limits are the project's own choice.
/// </summary>
public static class SheetLimits
{
    /// <summary>Longest text, in bytes of UTF-8: 4 MB.</summary>
    public const int Bytes = 4 * 1024 * 1024;

    /// <summary>Most maps and lists inside one another.</summary>
    public const int Depth = 32;

    /// <summary>Most maps, lists and scalars together.</summary>
    public const int Nodes = 100_000;

    /// <summary>Most findings that one reading lists; the rest are counted.</summary>
    public const int Findings = 500;
}
