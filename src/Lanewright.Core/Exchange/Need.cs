namespace Lanewright.Core.Exchange;

/// <summary>Whether a field must be there.</summary>
public enum Need
{
    /// <summary>Without it the sheet cannot be used: its absence is a finding.</summary>
    Required,

    /// <summary>It may be left out, left blank or be null.</summary>
    Optional,
}
