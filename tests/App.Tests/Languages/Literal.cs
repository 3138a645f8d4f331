namespace Lanewright.App.Tests.Languages;

/// <summary>What the code does with a text.</summary>
internal enum Use
{
    /// <summary>It becomes a phrase at once: a key of the tables.</summary>
    Phrase,

    /// <summary>It is a piece of a text that is put together without the tables.</summary>
    Piece,

    /// <summary>It stands in a page's markup.</summary>
    Markup,

    /// <summary>It is the message of an exception: for programmers.</summary>
    Exception,

    /// <summary>Anything else: data, a name, a format.</summary>
    Other,
}

/// <summary>A text in the compiled code.</summary>
/// <param name="Type">The outermost type it stands in, with its namespace.</param>
/// <param name="Text">The text; of a phrase with values, its key.</param>
/// <param name="Use">What becomes of it.</param>
internal sealed record Literal(string Type, string Text, Use Use);
