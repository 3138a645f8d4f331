using Lanewright.Core.Spreading;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Exchange;

/// <summary>The words of a sheet and what they stand for, in both directions.</summary>
internal static class SheetWords
{
    internal static readonly Word<TestKind>[] Kinds =
    [
        new("drop-test", TestKind.DropTest, "What is the calibration constant?"),
        new("verification", TestKind.Verification, "Does the spreader deliver what its controller says?"),
    ];

    internal static readonly Word<ControlLoop>[] Loops =
    [
        new("closed", ControlLoop.Closed, "With feedback from a sensor on the metering device."),
        new("open", ControlLoop.Open, "Without feedback: a drive setting stands for a delivery."),
    ];

    internal static readonly Word<ConstantForm>[] Forms =
    [
        new("pulses-per-mass", ConstantForm.PulsesPerMass, "Sensor pulses for each pound or kilogram."),
        new("mass-per-pulse", ConstantForm.MassPerPulse, "Pounds, kilograms or grams for each sensor pulse."),
        new("mass-per-revolution", ConstantForm.MassPerRevolution, "Mass for each turn of the metering shaft."),
        new("mass-per-time", ConstantForm.MassFlow, "Mass for each minute at a stated drive setting."),
    ];

    internal static readonly Word<ScaleKind>[] ScaleKinds =
    [
        new("platform", ScaleKind.Platform, "Platform or bench scale."),
        new("floor", ScaleKind.Floor, "Floor scale."),
        new("pallet", ScaleKind.Pallet, "Pallet scale."),
        new("forklift", ScaleKind.Forklift, "Forklift scale."),
        new("hanging", ScaleKind.Hanging, "Hanging scale."),
        new("vehicle", ScaleKind.Vehicle, "Vehicle scale."),
        new("wheel-load", ScaleKind.WheelLoad, "Portable wheel-load weighers."),
    ];

    internal static readonly Word<ScaleClass>[] ScaleClasses =
    [
        new("iii", ScaleClass.III, "Class III."),
        new("iii-l", ScaleClass.IIIL, "Class III L: vehicle and axle-load scales."),
        new("iiii", ScaleClass.IIII, "Class IIII."),
    ];

    internal static readonly Word<ScaleRules>[] ScaleRuleBooks =
    [
        new("handbook-44", ScaleRules.Handbook44, "NIST Handbook 44, maintenance tolerances."),
        new("oiml", ScaleRules.Oiml, "OIML R 76, maximum permissible errors in service."),
    ];

    internal static readonly Word<OilState>[] OilStates =
    [
        new("cold", OilState.Cold, "Not yet at working temperature."),
        new("warm", OilState.Warm, "At working temperature."),
    ];

    internal static readonly Word<Verdict>[] Verdicts =
    [
        new("adopt", Verdict.Adopt, "Key the new value in."),
        new("reject", Verdict.Reject, "Keep the old value."),
        new("repeat", Verdict.Repeat, "Do the test again."),
    ];

    internal static readonly Word<UnitSystem>[] UnitSystems =
    [
        new("us", UnitSystem.UnitedStates, "Pounds, inches, feet where a number has no unit."),
        new("si", UnitSystem.Si, "Kilograms, millimetres, metres where a number has no unit."),
    ];

    internal static readonly Word<bool>[] MoistureBases =
    [
        new("wet", false, "Water by mass of the material as it is."),
        new("dry", true, "Water by mass of the dry material."),
    ];

    /// <summary>The word of a value; null for a value that has none (nothing stated).</summary>
    internal static string? Of<T>(Word<T>[] words, T value)
        where T : struct => Array.Find(words, w => EqualityComparer<T>.Default.Equals(w.Value, value))?.Text;
}
