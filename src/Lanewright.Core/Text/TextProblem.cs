namespace Lanewright.Core.Text;

/// <summary>Why a text has no meaning as the quantity asked for.</summary>
public enum TextProblem
{
    /// <summary>There is no problem.</summary>
    None,

    /// <summary>Nothing was typed.</summary>
    Empty,

    /// <summary>The text is longer than any number with its unit.</summary>
    TooLong,

    /// <summary>The text does not begin with a number, or the number is not formed like one.</summary>
    NotANumber,

    /// <summary>A whole number was asked for.</summary>
    NotWhole,

    /// <summary>What follows the number is not a unit that is known here.</summary>
    UnknownUnit,

    /// <summary>The number has no unit, and nothing says which was meant.</summary>
    MissingUnit,

    /// <summary>The unit measures something else.</summary>
    WrongDimension,

    /// <summary>The number is larger, or nearer to zero, than can be kept, or the quantity cannot have it.</summary>
    OutOfRange,
}
