using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Spreading;

/// <summary>
/// Works out a test before it is done: each choice of runs and mass is given to the analysis as the observations that
/// would be expected, so the plan promises what the report says of such observations. Formulas: docs/method/plan.md.
/// </summary>
public static class Planner
{
    private const double PoundKilograms = 0.45359237;
    private const double CubicYard = 0.9144 * 0.9144 * 0.9144;

    // One run cannot show its own scatter, so it is no choice.
    private const int FewestRuns = 2;

    private const int MostContainers = 40;

    // 10 lb to 8,000 lb in steps that a person would choose.
    private static readonly double[] Pounds =
        [10, 20, 35, 50, 75, 100, 150, 200, 300, 400, 500, 750, 1000, 1500, 2000, 3000, 4000, 6000, 8000];

    private static readonly double[] Kilograms =
        [5, 10, 15, 25, 35, 50, 75, 100, 150, 200, 250, 350, 500, 750, 1000, 1500, 2000, 3000, 4000];

    /// <summary>Plans. A request that makes no sense gives a finding, never an exception.</summary>
    public static TestPlan Plan(PlanRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var findings = new List<Finding>();
        findings.AddRange(ScaleCheck.Of(request.Scale, "scale", null));
        Notes(request, findings);
        if (!Sensible(request, findings))
            return new(request, CautionsFor(request.Method), null, [], [], findings);
        var most = MostMass(request);
        var choices = new List<PlanChoice>();
        foreach (var mass in MassesUpTo(request, most))
            choices.AddRange(Choices(request, FewestRuns, request.MostRuns, mass));

        // Two runs can agree by chance and cannot say which is wrong when they do not.
        var best = choices.Where(c => c.Enough && c.Runs >= 3).MinBy(c => (c.Runs, c.Total.Si));
        if (choices.Count == 0)
        {
            findings.Add(PlanFindings.NothingFits.At(
                "scale.capacity", FindingValue.Number("room", most, Dimension.Mass),
                FindingValue.Number("least", MassesUpTo(request, double.PositiveInfinity).First(), Dimension.Mass)));
        }
        else if (best is null)
        {
            findings.Add(PlanFindings.OutOfReach.At(
                "wantedUncertainty", FindingValue.Text("scale", request.Scale.Id),
                FindingValue.Number("runs", request.MostRuns, Dimension.Fraction),
                FindingValue.Number("mass", choices.Max(c => c.MassPerRun.Si), Dimension.Mass),
                FindingValue.Number("wanted", request.Wanted, Dimension.Fraction),
                FindingValue.Number("best", choices.Min(c => c.Expected), Dimension.Fraction)));
        }

        var ordered = findings.OrderByDescending(f => f.Severity).ToList();
        return new(request, CautionsFor(request.Method), best, choices, Practices(request, most), ordered);
    }

    private static IEnumerable<PlanChoice> Choices(PlanRequest request, int fewest, int most, double mass)
    {
        // Nobody can say whether the scale's error will be common: what would be seen differs too, so both are worked
        // out from the start, and the worse is taken.
        PlanRequest[] cases = request.CommonError is null
            ? [request with { CommonError = true }, request with { CommonError = false }]
            : [request];
        var scatters = Array.ConvertAll(cases, c => ExpectedSheet.SeenScatter(c, mass));
        Duration? time = request.Delivery is { Si: > 0 } flow ? Duration.FromSi(mass / flow.Si) : null;
        var containers = request.Method is CatchMethod.Containers
            ? (int)Math.Ceiling((mass / request.ContainerFill.Si) - 1e-9)
            : 0;
        for (var runs = fewest; runs <= most; runs++)
        {
            var expected = 0.0;
            for (var i = 0; i < cases.Length; i++)
                expected = Math.Max(expected, Expected(ExpectedSheet.Of(cases[i], runs, mass, scatters[i])));
            yield return new(runs, Mass.FromSi(mass), expected, containers, time, expected <= request.Wanted);
        }
    }

    private static double Expected(TestSheet sheet)
    {
        var results = SheetAnalysis.Analyse(sheet).Results;
        return results.Count == 1 ? results[0].RelativeExpanded : double.PositiveInfinity;
    }

    // Half the truck, what the scale can carry, or as many containers as anybody would fill for a run.
    private static double MostMass(PlanRequest request) => request.Method switch
    {
        CatchMethod.Truck => request.TruckGross.Si / 2,
        CatchMethod.Whole => (request.Scale.Capacity?.Si ?? double.PositiveInfinity) - request.ContainerTare.Si,
        _ => MostContainers * request.ContainerFill.Si,
    };

    private static IEnumerable<double> MassesUpTo(PlanRequest request, double most)
    {
        var (steps, unit) = request.Units is UnitSystem.Si ? (Kilograms, 1) : (Pounds, PoundKilograms);
        foreach (var step in steps)
        {
            if (step * unit <= most * (1 + 1e-9)) yield return step * unit;
        }
    }

    private static List<PracticeCheck> Practices(PlanRequest request, double most)
    {
        PlanChoice? Three(double mass) => mass <= most ? Choices(request, 3, 3, mass).Single() : null;

        var list = new List<PracticeCheck>();
        if (request.Method is CatchMethod.Truck)
        {
            list.Add(new(
                "At least about a cubic yard when the truck is weighed, three runs (common practice, no source).",
                Three(CubicYard * request.BulkDensity.Si)));
        }
        else
        {
            list.Add(new(
                "300 lb when the catch is weighed, three runs (common practice, no source).",
                Three(300 * PoundKilograms)));
            list.Add(new(
                "500 lb when the catch is weighed, three runs (common practice, no source).",
                Three(500 * PoundKilograms)));
            list.Add(new(
                "Three pails two thirds full (Minnesota field handbook, 2nd revision, 2012).",
                Three(request.ContainerFill.Si)));
        }

        list.Add(new("Drive at about half; trim the drive first (common practice, no source).", null));
        list.Add(new(
            "Engine at normal working speed: at least 1,500 rpm (Minnesota field handbook, 2012); others ask for 1,200 to "
            + "1,400 rpm (common practice, no source).",
            null));
        list.Add(new("The same material as on the road (Minnesota field handbook, 2012).", null));
        list.Add(new(
            "Let the flow become steady before the catch starts, three samples, two people (Minnesota field handbook, 2012).",
            null));
        return list;
    }

    /// <summary>The cautions for a way of weighing.</summary>
    internal static IReadOnlyList<Caution> CautionsFor(CatchMethod method) =>
    [
        .. Cautions.Always,
        .. method switch
        {
            CatchMethod.Containers => Cautions.Containers,
            CatchMethod.Whole => Cautions.Lifted,
            _ => Cautions.Truck,
        },
    ];

    private static void Notes(PlanRequest request, List<Finding> findings)
    {
        if (request.CommonError is null)
            findings.Add(PlanFindings.CommonErrorUnknown.At(
                "commonError", FindingValue.Text("scale", request.Scale.Id)));
        if (request.ExpectedConstant is null && request.Form is not ConstantForm.MassFlow)
            findings.Add(PlanFindings.ConstantUnknown.At("expectedConstant"));
        if (request.Delivery is null) findings.Add(PlanFindings.DeliveryUnknown.At("delivery"));
        var filled = request.ContainerFill + request.ContainerTare;
        if (request.Method is CatchMethod.Containers && filled.Pounds > 51)
            findings.Add(PlanFindings.HeavyContainer.At(
                "containerFill", FindingValue.Number("mass", filled.Si, Dimension.Mass)));
    }

    private static bool Sensible(PlanRequest request, List<Finding> findings)
    {
        var count = findings.Count;
        Positive(request.ContainerFill.Si, "containerFill");
        Positive(request.TruckGross.Si, "truckGross");
        Positive(request.BulkDensity.Si, "bulkDensity");
        Positive(request.Wanted, "wantedUncertainty");
        Positive(request.ExpectedScatter, "expectedScatter");
        Positive(request.ExpectedConstant ?? 1, "expectedConstant");
        Positive(request.Delivery?.Si ?? 1, "delivery");
        // Two runs are shown but never advised, so a plan needs room for a third.
        More(request.MostRuns, 2, "mostRuns");
        var heaviest = request.Method switch
        {
            CatchMethod.Truck => request.TruckGross,
            CatchMethod.Whole => request.ContainerTare,
            _ => request.ContainerTare + request.ContainerFill,
        };
        if (request.Scale.Capacity is { } capacity && heaviest.Si > capacity.Si * (1 + 1e-9))
            findings.Add(PlanFindings.Overload.At(
                request.Method is CatchMethod.Truck ? "truckGross" : "containerFill",
                FindingValue.Number("load", heaviest.Si, Dimension.Mass),
                FindingValue.Number("capacity", capacity.Si, Dimension.Mass),
                FindingValue.Text("scale", request.Scale.Id)));
        return findings.Count == count;

        void Positive(double value, string field) => More(value, 0, field);

        void More(double value, double least, string field)
        {
            if (!(value > least))
                findings.Add(PlanFindings.Impossible.At(
                    field, FindingValue.Text("what", field), FindingValue.Number("least", least, Dimension.Fraction)));
        }
    }
}
