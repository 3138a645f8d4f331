using Lanewright.Core.Quantities;

namespace Lanewright.Core.Exchange;

/// <summary>What a field holds.</summary>
public enum FieldShape
{
    /// <summary>One line of text.</summary>
    Text,

    /// <summary>Text of several lines.</summary>
    Notes,

    /// <summary>A number with a unit.</summary>
    Quantity,

    /// <summary>The name of a unit.</summary>
    Unit,

    /// <summary>A plain number, whole or not.</summary>
    Number,

    /// <summary>Yes or no.</summary>
    YesNo,

    /// <summary>One of a few words.</summary>
    Choice,

    /// <summary>A day, year-month-day.</summary>
    Date,
}

/// <summary>A field that a reading function asks for, and what was read there.</summary>
/// <param name="Path">Path from the root, such as <c>moisture.share</c>.</param>
/// <param name="Doc">What it means.</param>
/// <param name="Need">Whether it must be there, within its group when it has one.</param>
/// <param name="Shape">What it holds.</param>
public sealed record AskedField(string Path, string Doc, Need Need, FieldShape Shape)
{
    /// <summary>The words it may hold, with their meanings; empty for a field that is no choice.</summary>
    public IReadOnlyList<(string Text, string Doc)> Words { get; init; } = [];

    /// <summary>What a quantity or a unit may measure; empty otherwise.</summary>
    public IReadOnlyList<Dimension> Dimensions { get; init; } = [];

    /// <summary>Most characters; 0 when nothing is said.</summary>
    public int MaxLength { get; init; }

    /// <summary>The unit of a number without one; null when such a number is asked about.</summary>
    public Unit? UnitWhenNone { get; init; }

    /// <summary>
    /// What was read, written so that it reads the same everywhere (decimal point, units of the program's own spelling);
    /// null when the field was absent or wrong.
    /// </summary>
    public string? Text { get; init; }
}
