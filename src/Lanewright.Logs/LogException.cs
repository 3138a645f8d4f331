using Lanewright.Core.Text;

namespace Lanewright.Logs;

/// <summary>What keeps logs from being read or stored, in words for the person who asked: what was read, what was expected,
/// what to do.</summary>
public sealed class LogException : Exception
{
    /// <summary>With words.</summary>
    public LogException(Phrase message)
        : base(message?.ToString())
    {
        ArgumentNullException.ThrowIfNull(message);
        Said = message;
    }

    /// <summary>With words and what lies behind them.</summary>
    public LogException(Phrase message, Exception inner)
        : base(message?.ToString(), inner)
    {
        ArgumentNullException.ThrowIfNull(message);
        Said = message;
    }

    /// <summary>The message, for a reader of any language.</summary>
    public Phrase Said { get; }
}
