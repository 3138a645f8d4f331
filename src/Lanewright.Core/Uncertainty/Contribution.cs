namespace Lanewright.Core.Uncertainty;

/// <summary>How far one standard deviation of an error source moves a result.</summary>
/// <param name="Source">The source.</param>
/// <param name="Amount">Sensitivity times standard uncertainty, with its sign, in the result's SI unit.</param>
public readonly record struct Contribution(ErrorSource Source, double Amount);
