namespace Lanewright.Core.Exchange;

/// <summary>Follows line and column through a text in UTF-8; both count from 1, a column is one character.</summary>
internal sealed class Utf8Place
{
    private int offset;

    internal int Line { get; private set; } = 1;

    internal int Column { get; private set; } = 1;

    /// <summary>Moves on to a byte of the text; never backwards.</summary>
    internal void MoveTo(ReadOnlySpan<byte> text, int target)
    {
        foreach (var one in text[offset..target])
        {
            if (one == (byte)'\n')
            {
                Line++;
                Column = 1;
            }
            else if ((one & 0xC0) != 0x80)
            {
                // Bytes of the form 10xxxxxx continue a character that was counted already.
                Column++;
            }
        }

        offset = target;
    }
}
