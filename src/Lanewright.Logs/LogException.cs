namespace Lanewright.Logs;

/// <summary>What keeps logs from being read or stored, in words for the person who asked: what was read, what was expected,
/// what to do.</summary>
public sealed class LogException : Exception
{
    /// <summary>With words.</summary>
    public LogException(string message)
        : base(message)
    {
    }

    /// <summary>With words and what lies behind them.</summary>
    public LogException(string message, Exception inner)
        : base(message, inner)
    {
    }

    /// <summary>Without words; only for the framework.</summary>
    public LogException()
    {
    }
}
