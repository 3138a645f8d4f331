using Lanewright.Logs.Profiles;

namespace Lanewright.Logs.Rows;

/// <summary>Why a row is not taken in.</summary>
public enum Refusal
{
    /// <summary>It is taken in.</summary>
    None,

    /// <summary>Another number of fields than the row of names has.</summary>
    Fields,

    /// <summary>A quote that is not closed on its line, or text behind a closed one.</summary>
    Quote,

    /// <summary>Longer than a row may be.</summary>
    TooLong,

    /// <summary>Bytes that are not UTF-8, or control characters.</summary>
    Characters,

    /// <summary>Something that must be there is empty.</summary>
    Empty,

    /// <summary>Not a time of the profile's pattern.</summary>
    Time,

    /// <summary>A local time that does not exist, since clocks were set ahead.</summary>
    TimeSkipped,

    /// <summary>A local time that occurs twice, since clocks were set back.</summary>
    TimeTwice,

    /// <summary>Before 2000 or after 2100, or outside the season that was asked for.</summary>
    Season,

    /// <summary>Not one number.</summary>
    Number,

    /// <summary>A number outside of what is possible.</summary>
    Range,

    /// <summary>A name longer than 60 characters, or one that cannot name a folder.</summary>
    Name,

    /// <summary>The same row once more.</summary>
    Duplicate,

    /// <summary>Another row for a moment that has one.</summary>
    SameMoment,

    /// <summary>Inside an interval that is taken in: its counts are in a later reading of the running counter.</summary>
    Late,
}

/// <summary>A row that was not taken in.</summary>
/// <param name="Line">Its line in the file, from 1.</param>
/// <param name="Why">Why.</param>
/// <param name="Role">The column it is about, or null for the whole row.</param>
/// <param name="Begin">Where its text begins in the part of the file that was read.</param>
/// <param name="Length">How many bytes it has there.</param>
/// <param name="Read">What was read in that column.</param>
internal readonly record struct RefusedRow(int Line, Refusal Why, LogRole? Role, int Begin, int Length, string Read);
