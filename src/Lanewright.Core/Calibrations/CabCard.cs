namespace Lanewright.Core.Calibrations;

/// <summary>What hangs in the cab: the rate card of one spreader, ready to be drawn.</summary>
public sealed record CabCard
{
    /// <summary>The spreader's number.</summary>
    public required string Spreader { get; init; }

    /// <summary>Material it holds for.</summary>
    public required string Material { get; init; }

    /// <summary>Gate opening as the driver reads it; empty when the spreader has none.</summary>
    public required string Gate { get; init; }

    /// <summary>The value in the controller, with its unit; empty for an open loop.</summary>
    public required string Constant { get; init; }

    /// <summary>How sure it is, plus or minus, as a share; null when not stated.</summary>
    public double? PlusMinus { get; init; }

    /// <summary>Day of the calibration.</summary>
    public DateOnly? Calibrated { get; init; }

    /// <summary>Day by which it is due again.</summary>
    public DateOnly? NextDue { get; init; }

    /// <summary>Who calibrated it.</summary>
    public required string By { get; init; }

    /// <summary>The record behind it; the QR code holds it.</summary>
    public required string Record { get; init; }

    /// <summary>True for an open loop: the table holds settings; otherwise the highest speed for each rate.</summary>
    public bool IsOpenLoop { get; init; }

    /// <summary>Lane width, m.</summary>
    public double LaneWidth { get; init; }

    /// <summary>Lanes that one pass covers.</summary>
    public double Lanes { get; init; }

    /// <summary>The table.</summary>
    public required ReportTable Table { get; init; }

    /// <summary>The yard's own targets; null when none are stated.</summary>
    public ReportTable? Targets { get; init; }

    /// <summary>Whether it is made up for demonstration.</summary>
    public bool Invented { get; init; }
}
