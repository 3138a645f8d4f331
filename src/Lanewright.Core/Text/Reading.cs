namespace Lanewright.Core.Text;

/// <summary>A number of the program's own inside a phrase, such as <c>32.2 km/h</c>: a reader sees it with the reader's decimal mark.</summary>
/// <param name="Text">The number with a decimal point, with or without a unit after a blank.</param>
public readonly record struct Reading(string Text)
{
    /// <summary>With a decimal point.</summary>
    public override string ToString() => Text;

    /// <summary>With a decimal mark.</summary>
    internal string With(char mark)
    {
        var end = Text.IndexOf(' ', StringComparison.Ordinal);
        return end < 0 ? Text.Replace('.', mark) : Text[..end].Replace('.', mark) + Text[end..];
    }
}
