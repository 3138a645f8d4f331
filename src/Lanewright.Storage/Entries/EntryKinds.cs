namespace Lanewright.Storage.Entries;

/// <summary>The kinds of entries that are understood here; any other is kept unread.</summary>
public static class EntryKinds
{
    /// <summary>A test begins.</summary>
    public const string TestBegin = "test.begin";

    /// <summary>A field of a test's sheet, as typed.</summary>
    public const string TestField = "test.field";

    /// <summary>A photo belongs to a place of a test.</summary>
    public const string TestPhoto = "test.photo";

    /// <summary>What was decided on a test's result.</summary>
    public const string TestDecision = "test.decision";

    /// <summary>A remark on a test.</summary>
    public const string TestNote = "test.note";

    /// <summary>Something happened to a spreader.</summary>
    public const string SpreaderEvent = "spreader.event";

    /// <summary>The start of every kind about a test.</summary>
    public const string TestPrefix = "test.";

    /// <summary>The start of every kind that holds a whole record of the register.</summary>
    public const string RegisterPrefix = "register.";
}
