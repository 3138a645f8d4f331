namespace Lanewright.Core.Practice;

/// <summary>An entry of the demo world, in the form in which a page would send it.</summary>
/// <param name="Id">Made from the seed, in the form of a UUID version 7.</param>
/// <param name="Kind">Kind of entry.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Person">Who.</param>
/// <param name="Device">Device it is said to come from.</param>
/// <param name="Sequence">Count of the device.</param>
/// <param name="At">When, UTC.</param>
/// <param name="Zone">Name of the local zone.</param>
/// <param name="Payload">JSON.</param>
public sealed record PracticeEntry(
    Guid Id, string Kind, string Subject, string Person, Guid Device, long Sequence, DateTimeOffset At, string Zone,
    string Payload);
