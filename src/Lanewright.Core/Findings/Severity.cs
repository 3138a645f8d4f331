namespace Lanewright.Core.Findings;

/// <summary>How much a finding matters.</summary>
public enum Severity
{
    /// <summary>Good to know; the answer stands.</summary>
    Note,

    /// <summary>The answer stands, but something should be looked at first.</summary>
    Warn,

    /// <summary>Do not use this answer.</summary>
    Stop,
}
