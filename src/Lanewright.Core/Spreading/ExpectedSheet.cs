using Lanewright.Core.Quantities;
using Lanewright.Core.Statistics;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Spreading;

/// <summary>The observations to expect of a test that has not been done.</summary>
internal static class ExpectedSheet
{
    // Counts so many that counting adds nothing, for when no constant is expected.
    private const double ManyCounts = 1e7;

    /// <summary>
    /// The scatter that would be seen between runs, as a share: the spreader's own, that of starting and stopping, and
    /// the runs' reading errors, which are looked up in the analysis of one run.
    /// </summary>
    internal static double SeenScatter(PlanRequest request, double mass)
    {
        var startStop = request.StartStop.Si / mass;
        var results = SheetAnalysis.Analyse(With(request, mass, new double[1])).Results;
        var own = results.Count == 1 ? results[0].Runs[0].OwnUncertainty : 0;
        return Math.Sqrt((request.ExpectedScatter * request.ExpectedScatter) + (startStop * startStop) + (own * own));
    }

    /// <summary>The sheet to expect of so many runs that scatter as much.</summary>
    internal static TestSheet Of(PlanRequest request, int runs, double mass, double seenScatter) =>
        With(request, mass, Scores(runs, seenScatter));

    private static TestSheet With(PlanRequest request, double mass, double[] scores)
    {
        var list = new Run[scores.Length];
        for (var i = 0; i < list.Length; i++)
            list[i] = Make(request, i, mass, 1 + scores[i]);
        return new()
        {
            Kind = TestKind.DropTest,
            Spreader = new() { Id = "planned", Form = request.Form, Unit = UnitOf(request.Form) },
            Material = new() { Name = "planned" },
            Scale = request.Scale,
            CommonError = request.CommonError,
            WantedUncertainty = request.Wanted,
            Probability = request.Probability,
            Runs = list,
        };
    }

    private static Run Make(PlanRequest request, int index, double mass, double factor)
    {
        var count = request.Form switch
        {
            ConstantForm.PulsesPerMass => mass * (request.ExpectedConstant ?? (ManyCounts / mass)),
            ConstantForm.MassFlow => mass / (request.Delivery?.Si ?? request.ExpectedConstant ?? (mass / 60)),
            _ => mass / (request.ExpectedConstant ?? (mass / ManyCounts)),
        };
        // The scatter is put on the count, so that every run weighs the same.
        count *= factor;
        return new()
        {
            Id = $"{index + 1}",
            Pulses = request.Form is ConstantForm.PulsesPerMass or ConstantForm.MassPerPulse
                ? PulseCount.FromSi(count)
                : null,
            Revolutions = request.Form is ConstantForm.MassPerRevolution ? RevolutionCount.FromSi(count) : null,
            Time = request.Form is ConstantForm.MassFlow ? Duration.FromSi(count) : null,
            Catch = CatchOf(request, mass),
        };
    }

    private static Catch CatchOf(PlanRequest request, double mass)
    {
        switch (request.Method)
        {
            case CatchMethod.Truck:
                return new TruckCatch(
                    request.TruckGross, request.TruckGross - Mass.FromSi(mass), new(default, null), true, []);
            case CatchMethod.Whole:
                return new WholeCatch(request.ContainerTare, request.ContainerTare + Mass.FromSi(mass));
            default:
                var count = Math.Max(1, (int)Math.Ceiling((mass / request.ContainerFill.Si) - 1e-9));
                var one = new Container(
                    request.ContainerTare, request.ContainerTare + Mass.FromSi(mass / count));
                return new ContainerCatch([.. Enumerable.Repeat(one, count)]);
        }
    }

    // Scatter of the stated size, spread as the middles of equal chances of a normal, with that standard deviation.
    private static double[] Scores(int runs, double scatter)
    {
        var scores = new double[runs];
        if (runs == 1) return scores;
        for (var i = 0; i < runs; i++)
            scores[i] = NormalDistribution.Quantile((i + 0.5) / runs);
        var size = Descriptive.StandardDeviation(scores);
        for (var i = 0; i < runs; i++)
            scores[i] *= scatter / size;
        return scores;
    }

    private static Unit UnitOf(ConstantForm form) => form switch
    {
        ConstantForm.PulsesPerMass => Units.PulsePerKilogram,
        ConstantForm.MassPerPulse => Units.KilogramPerPulse,
        ConstantForm.MassPerRevolution => Units.KilogramPerRevolution,
        _ => Units.KilogramPerSecond,
    };
}
