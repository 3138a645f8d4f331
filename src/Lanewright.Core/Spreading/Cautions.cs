namespace Lanewright.Core.Spreading;

/// <summary>One caution, shown before anything else.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Text">What to do.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record Caution(string Code, string Text, string Source);

/// <summary>
/// The usual cautions for a drop test. They remind; they replace neither local rules nor training, lockout procedures
/// or the maker's instructions.
/// </summary>
public static class Cautions
{
    /// <summary>Cautions for every test.</summary>
    public static IReadOnlyList<Caution> Always { get; } =
    [
        new(
            "caution.local-rules",
            "Local rules, the maker's instructions and licensed practice come first. Know them before you start.",
            "Minnesota LTAP, Technology Exchange, Summer 2010"),
        new(
            "caution.rotating-parts",
            "Auger, chain and spinner catch sleeves and kill. Nobody reaches in while the engine runs: lock out and tag "
            + "before hands go near, and run for the test only as long as needed with everyone clear.",
            "Wisconsin FACE 04WI093; OSHA 29 CFR 1910.147 (f)(1) from a secondary copy; OSHA letter of 1 July 2015"),
        new(
            "caution.spinner-off",
            "Set the spinner to zero or move it clear before the metering starts, and warn everyone outside first.",
            "Minnesota LTAP, Technology Exchange, Summer 2010; Minnesota field handbook, 2nd revision, 2012"),
        new(
            "caution.two-people",
            "Two people: one at the controls, one at the catch, in sight of each other.",
            "Minnesota field handbook, 2nd revision, 2012"),
        new(
            "caution.loader",
            "Keep people on foot and loaders apart. Nobody walks behind a moving truck or loader.",
            "New York FACE 04NY002; Minnesota FACE 00MN030"),
        new(
            "caution.chocks",
            "Chock the wheels, set the brake, prop a raised body before anyone goes under it.",
            "customary, no published source found"),
        new(
            "caution.protection",
            "Wear high visibility clothing, eye and hearing protection and gloves that a shaft cannot pull in; keep sand "
            + "dust down (it may carry silica).",
            "customary; OSHA 29 CFR 1926.1153 from a secondary copy"),
    ];

    /// <summary>For catching in containers.</summary>
    public static IReadOnlyList<Caution> Containers { get; } =
    [
        new(
            "caution.lifting",
            "Lift with a second person or a machine. A full 5 gal pail of salt is about 53 lb, over the 51 lb that the "
            + "NIOSH equation starts from in ideal posture; fill to two thirds, about 36 lb.",
            "NIOSH 94-110 (revised 2021); pail computed at 80 lb/ft3"),
    ];

    /// <summary>For a catch lifted by machine.</summary>
    public static IReadOnlyList<Caution> Lifted { get; } =
    [
        new(
            "caution.suspended",
            "Nobody stands under or beside a lifted catch; check forks, hook and slings for the load.",
            "customary, no published source found"),
    ];

    /// <summary>For weighing the truck.</summary>
    public static IReadOnlyList<Caution> Truck { get; } =
    [
        new(
            "caution.truck-scale",
            "Drive on and off the scale at walking pace, with nobody on the deck but who has to be.",
            "customary, no published source found"),
    ];
}
