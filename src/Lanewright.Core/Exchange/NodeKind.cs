namespace Lanewright.Core.Exchange;

/// <summary>What a place in a sheet's text holds.</summary>
public enum NodeKind
{
    /// <summary>Named fields, in the order written.</summary>
    Map,

    /// <summary>Items, in the order written.</summary>
    List,

    /// <summary>A text, as typed.</summary>
    Text,

    /// <summary>A number without quotes, kept as it was written and read with a decimal point.</summary>
    Number,

    /// <summary>The bare words <c>true</c> or <c>false</c>.</summary>
    Flag,

    /// <summary>Nothing: read as if the field were not there.</summary>
    Null,
}
