using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Register;

/// <summary>A spreader as the yard knows it: truck, hopper, metering and what its controller accepts.</summary>
public sealed record RegisterSpreader
{
    /// <summary>What a test needs of it; its <see cref="Spreader.Id"/> is the number on the door.</summary>
    public required Spreader Spreader { get; init; }

    /// <summary>Depot it belongs to, by name.</summary>
    public string Depot { get; init; } = "";

    /// <summary>Body or hopper, in words.</summary>
    public string Body { get; init; } = "";

    /// <summary>Gates and their openings, in words.</summary>
    public string Gates { get; init; } = "";

    /// <summary>Sensor on the metering device, in words.</summary>
    public string Sensor { get; init; } = "";

    /// <summary>Drive of the metering device, in words.</summary>
    public string Drive { get; init; } = "";

    /// <summary>Liquid system, in words; empty for none.</summary>
    public string Liquid { get; init; } = "";

    /// <summary>Material it usually carries, by name.</summary>
    public string Material { get; init; } = "";

    /// <summary>Mass it puts down in a season; null when nobody said.</summary>
    public Mass? SeasonMass { get; init; }

    /// <summary>Anything else.</summary>
    public string Note { get; init; } = "";

    /// <summary>True when it is no longer in use; its records stay.</summary>
    public bool Retired { get; init; }
}
