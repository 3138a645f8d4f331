using Lanewright.Core.Text;

namespace Lanewright.Storage.Database;

/// <summary>What kept the records from being read or written.</summary>
public enum RecordsFault
{
    /// <summary>The file or database is damaged, or is not Lanewright's.</summary>
    Damaged,

    /// <summary>Written by a newer version of the program.</summary>
    Newer,

    /// <summary>The folder or file may not be read or written.</summary>
    Denied,

    /// <summary>There is no room left.</summary>
    Full,

    /// <summary>Another program holds it; trying again may help.</summary>
    Busy,

    /// <summary>The database server cannot be reached.</summary>
    Unreachable,
}

/// <summary>
/// The records cannot be read or written, for a reason outside the program. The message is for people: it names the
/// file, what is wrong, and what to do. Nothing that was confirmed is lost by it.
/// </summary>
public sealed class RecordsException : Exception
{
    /// <summary>Makes one.</summary>
    public RecordsException(RecordsFault fault, Phrase message, Exception? inner = null)
        : base(message?.ToString(), inner)
    {
        ArgumentNullException.ThrowIfNull(message);
        Fault = fault;
        Said = message;
    }

    /// <summary>The reason.</summary>
    public RecordsFault Fault { get; }

    /// <summary>The message, for a reader of any language.</summary>
    public Phrase Said { get; }
}
