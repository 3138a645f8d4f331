namespace Lanewright.Core.Text;

/// <summary>What came of reading a text: a value, a question back to the person, or a problem.</summary>
public enum TextOutcome
{
    /// <summary>The text has exactly one meaning.</summary>
    Value,

    /// <summary>The text has more than one meaning; the person is asked which.</summary>
    Question,

    /// <summary>The text has no meaning as this quantity.</summary>
    Problem,
}
