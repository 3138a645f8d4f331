using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Logs.Profiles;

/// <summary>What a file of logs is.</summary>
public enum LogFileKind
{
    /// <summary>Lines of separated fields.</summary>
    Csv,

    /// <summary>GPS exchange format, with counts in extensions.</summary>
    Gpx,

    /// <summary>Columns of Apache Parquet.</summary>
    Parquet,
}

/// <summary>What a column of a log means.</summary>
public enum LogRole
{
    /// <summary>The moment of the row, or its day when <see cref="Clock"/> has the rest.</summary>
    Time,

    /// <summary>Time of day, when it is in a column of its own.</summary>
    Clock,

    /// <summary>Which spreader.</summary>
    Spreader,

    /// <summary>Its depot.</summary>
    Depot,

    /// <summary>Counts of the metering device, or mass the controller reports.</summary>
    Counts,

    /// <summary>Distance driven.</summary>
    Distance,

    /// <summary>Ground speed.</summary>
    Speed,

    /// <summary>Rate that was asked for.</summary>
    Target,

    /// <summary>Lanes treated in one pass.</summary>
    Lanes,

    /// <summary>Width of the spread.</summary>
    Width,

    /// <summary>Latitude, WGS 84, degrees.</summary>
    Latitude,

    /// <summary>Longitude, WGS 84, degrees.</summary>
    Longitude,

    /// <summary>Name of the route.</summary>
    Route,

    /// <summary>Material.</summary>
    Material,

    /// <summary>Identity of the road segment.</summary>
    Segment,
}

/// <summary>What to do with a local time that occurs twice, when clocks are set back.</summary>
public enum DoubtfulTime
{
    /// <summary>The row is refused.</summary>
    Refuse,

    /// <summary>It is the first of the two.</summary>
    First,

    /// <summary>It is the second of the two.</summary>
    Second,
}

/// <summary>Where one thing is found in a log: in a column, or the same for the whole file.</summary>
/// <param name="Role">What it means.</param>
/// <param name="Column">Name of the column, or its number from 1 where there is no row of names; null when fixed.</param>
/// <param name="Fixed">The value for the whole file; null when it is in a column.</param>
/// <param name="Unit">Its unit; null for texts, degrees and plain numbers.</param>
/// <param name="Running">Whether the column is a total that runs on (a counter, an odometer) instead of what each row adds.</param>
/// <param name="Rollover">The count, in the column's own unit, at which the counter begins again at 0; null when it has none.</param>
/// <param name="Names">Other names: text of the file to name in the records.</param>
public sealed record LogColumn(
    LogRole Role, string? Column, string? Fixed, Unit? Unit, bool Running, double? Rollover, IReadOnlyDictionary<string, string> Names);

/// <summary>How one kind of log is read: the file <c>docs/formats/log-profile.md</c> describes.</summary>
public sealed record LogProfile
{
    /// <summary>What the files are; null: by the ending of the file's name.</summary>
    public LogFileKind? Kind { get; init; }

    /// <summary>Between fields of CSV.</summary>
    public char Separator { get; init; } = ',';

    /// <summary>How numbers are written: the culture of files, or one with a decimal comma.</summary>
    public TextCulture Culture { get; init; } = TextCulture.Invariant;

    /// <summary>Whether CSV begins with a row of names.</summary>
    public bool Header { get; init; } = true;

    /// <summary>Zone of times without an offset; kept with every row.</summary>
    public required TimeZoneInfo Zone { get; init; }

    /// <summary>What to do with a local time that occurs twice.</summary>
    public DoubtfulTime Doubtful { get; init; }

    /// <summary>How times are written.</summary>
    public required TimePattern Pattern { get; init; }

    /// <summary>A pause longer than this between two rows is a gap, seconds.</summary>
    public double LongestInterval { get; init; } = 300;

    /// <summary>Month with which a season begins, 1 to 12.</summary>
    public int SeasonBegins { get; init; } = 7;

    /// <summary>What is found where.</summary>
    public required IReadOnlyDictionary<LogRole, LogColumn> Columns { get; init; }

    /// <summary>SHA-256 of the profile's text: a file that was begun with one profile is not finished with another.</summary>
    public required string Hash { get; init; }

    /// <summary>The column of a role, or null.</summary>
    public LogColumn? Find(LogRole role) => Columns.GetValueOrDefault(role);
}
