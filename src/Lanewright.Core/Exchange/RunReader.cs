using System.Globalization;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Exchange;

/// <summary>Reads one run.</summary>
internal static class RunReader
{
    private const double MostCount = 1e12;

    internal static Run? Read(Fields fields, int index, BareUnits bare)
    {
        var id = fields.Text("id", "Name of the run; its place in the list when left out.", Need.Optional, 40)
            ?? (index + 1).ToString(CultureInfo.InvariantCulture);
        var pulses = fields.Quantity<PulseCount>(
            "pulses", "Counted sensor pulses.", Need.Optional, Units.Pulse, PulseCount.FromSi(0),
            PulseCount.FromSi(MostCount));
        var revolutions = fields.Quantity<RevolutionCount>(
            "revolutions", "Counted turns of the metering shaft.", Need.Optional, Units.Revolution,
            RevolutionCount.FromSi(0), RevolutionCount.FromSi(MostCount));
        var time = fields.Quantity<Duration>(
            "time", "How long it ran; seconds when no unit is given.", Need.Optional, Units.Second, Duration.FromSi(0),
            Duration.FromSi(86_400));
        var delivered = CatchReader.Weight(
            fields, "delivered", "What the controller said it delivered; for a verification.", bare);
        var setting = fields.Text("setting", "Drive setting, such as 50 % or a step number.", Need.Optional, 40);
        var engine = fields.Quantity<RotationalSpeed>(
            "engineSpeed", "Engine speed; rpm when no unit is given.", Need.Optional, Units.RevolutionPerMinute,
            RotationalSpeed.FromSi(0), RotationalSpeed.FromSi(200));
        var gate = fields.Quantity<Length>(
            "gate", "Gate opening.", Need.Optional, bare.Opening, Length.FromSi(0), Length.FromSi(2), true);
        var oil = fields.Choice("oil", "State of the hydraulic oil.", SheetWords.OilStates, Need.Optional);
        var note = fields.Notes("note", "Anything else.");
        if (CaughtIn(fields, id, bare) is not var (caught, filled)) return null;
        return new()
        {
            Id = id,
            Pulses = pulses,
            Revolutions = revolutions,
            Time = time,
            Delivered = delivered,
            Setting = setting ?? "",
            EngineSpeed = engine,
            Gate = gate,
            Oil = oil ?? OilState.NotStated,
            Note = note ?? "",
            Filled = filled,
            Catch = caught,
        };
    }

    /// <summary>How the material of a run was weighed, and how many containers it filled; null, with a finding, when that
    /// cannot be used.</summary>
    internal static (Catch Catch, long? Filled)? CaughtIn(Fields fields, string id, BareUnits bare)
    {
        var filled = fields.Count(
            "filled", "How many containers the run filled; when stated, as many must be weighed.", Need.Optional, 1, 1000);
        var catches = CatchReader.Read(fields, bare);
        if (catches.Count != 1)
        {
            fields.Report(
                catches.Count == 0 ? SheetFindings.NoWeighing : SheetFindings.SeveralWeighings, null,
                FindingValue.Text("run", id));
            return null;
        }

        // A catch weighed in part would give a wrong constant, so the run is not used at all.
        if (catches[0] is ContainerCatch { Containers.Count: var weighed } && filled is { } all && all != weighed)
        {
            fields.Report(
                SheetFindings.ContainersDiffer, "containers", FindingValue.Text("run", id), Place.Count("filled", all),
                Place.Count("weighed", weighed));
            return null;
        }

        return (catches[0], filled);
    }
}
