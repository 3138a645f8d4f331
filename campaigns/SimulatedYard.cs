using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Statistics;
using Lanewright.Core.Weighing;

namespace Lanewright.Campaigns;

/// <summary>A simulated test and the truth behind it.</summary>
/// <param name="Sheet">What people would have seen.</param>
/// <param name="Truth">The constant that made it, SI.</param>
/// <param name="Scatter">The run-to-run scatter that made it, as a share.</param>
internal sealed record SimulatedTest(TestSheet Sheet, double Truth, double Scatter);

/// <summary>One stratum of the campaign.</summary>
internal sealed record Stratum(
    string Name, CatchMethod Method, Scale Scale, bool Common, int Runs, double LeastDrop, double MostDrop,
    bool OneSize, ConstantForm Form, int Growth = 0);

/// <summary>
/// Makes tests whose truth is known. Written apart from the analysis: the scale's error, its rounding, the counter and
/// the spreader's scatter are put on in the order in which they happen in a yard.
/// </summary>
internal static class SimulatedYard
{
    private const double Pound = 0.45359237;

    /// <summary>Range of the spreaders' scatter, drawn with equal chance on a logarithmic axis.</summary>
    internal const double LeastScatter = 0.003;

    /// <summary>Upper end of that range.</summary>
    internal const double MostScatter = 0.06;

    internal static SimulatedTest Draw(Stratum stratum, RandomSource random)
    {
        var scatter = LeastScatter * Math.Pow(MostScatter / LeastScatter, random.NextDouble());
        var truth = stratum.Form switch
        {
            ConstantForm.PulsesPerMass => LogUniform(random, 5, 200) / Pound,
            ConstantForm.MassFlow => LogUniform(random, 60, 600) * Pound / 60,
            _ => Pound / LogUniform(random, 5, 200),
        };
        var scale = new ScaleTruth(stratum.Scale, stratum.Common, random);
        var size = LogUniform(random, stratum.LeastDrop, stratum.MostDrop) * Pound;
        var runs = new Run[stratum.Runs];
        for (var i = 0; i < runs.Length; i++)
        {
            var mass = stratum.OneSize
                ? size * (0.95 + (0.1 * random.NextDouble()))
                : LogUniform(random, stratum.LeastDrop, stratum.MostDrop) * Pound;
            // The share by which a run scatters: the same for every size, or falling with it.
            var middle = Math.Sqrt(stratum.LeastDrop * stratum.MostDrop) * Pound;
            var share = scatter * Math.Pow(middle / mass, 0.5 * stratum.Growth);
            runs[i] = Make(stratum, i, mass, truth * (1 + (share * random.NextNormal())), scale, random);
        }

        var sheet = new TestSheet
        {
            Kind = TestKind.DropTest,
            Invented = true,
            Spreader = new() { Id = "simulated", Form = stratum.Form, Unit = UnitOf(stratum.Form) },
            Material = new() { Name = "simulated" },
            Scale = stratum.Scale,
            CommonError = stratum.Common,
            Runs = runs,
        };
        return new(sheet, truth, scatter);
    }

    private static Run Make(
        Stratum stratum, int index, double mass, double constant, ScaleTruth scale, RandomSource random)
    {
        var run = new Run { Id = $"{index + 1}", Catch = CatchOf(stratum, mass, scale, random) };
        switch (stratum.Form)
        {
            case ConstantForm.MassFlow:
                var seconds = (mass / constant) + (0.3 * random.NextNormal());
                return run with { Time = Duration.FromSi(seconds) };
            case ConstantForm.PulsesPerMass:
                return run with { Pulses = PulseCount.FromSi(Counted(mass * constant, random)) };
            default:
                return run with { Pulses = PulseCount.FromSi(Counted(mass / constant, random)) };
        }
    }

    // The counter shows the whole pulses that fell between a start and a stop at any place between two pulses.
    internal static double Counted(double exact, RandomSource random)
    {
        var phase = random.NextDouble();
        return Math.Floor(exact + phase) - Math.Floor(phase);
    }

    private static Catch CatchOf(Stratum stratum, double mass, ScaleTruth scale, RandomSource random)
    {
        switch (stratum.Method)
        {
            case CatchMethod.Truck:
                var empty = (34_000 + (6000 * random.NextDouble())) * Pound;
                var fuel = 5 * random.NextDouble() * Pound;
                var stated = Math.Round(fuel / Pound) * Pound;
                return new TruckCatch(
                    scale.Reads(empty + mass), scale.Reads(empty - fuel),
                    new(Mass.FromSi(stated), Mass.FromSi(0.5 * Pound)), true, []);
            case CatchMethod.Whole:
                var bin = (40 + (20 * random.NextDouble())) * Pound;
                return new WholeCatch(scale.Reads(bin), scale.Reads(bin + mass));
            default:
                var count = Math.Max(1, (int)Math.Ceiling(mass / (36 * Pound)));
                var containers = new Container[count];
                for (var i = 0; i < count; i++)
                {
                    var tare = (2 + random.NextDouble()) * Pound;
                    containers[i] = new(scale.Reads(tare), scale.Reads(tare + (mass / count)));
                }

                return new ContainerCatch(containers);
        }
    }

    private static Unit UnitOf(ConstantForm form) => form switch
    {
        ConstantForm.PulsesPerMass => Units.PulsePerPound,
        ConstantForm.MassFlow => Units.PoundPerMinute,
        _ => Units.PoundPerPulse,
    };

    internal static double LogUniform(RandomSource random, double low, double high) =>
        low * Math.Pow(high / low, random.NextDouble());

    /// <summary>What the scale really does to a load.</summary>
    internal sealed class ScaleTruth
    {
        private readonly Scale scale;
        private readonly bool common;
        private readonly RandomSource random;
        private readonly double gain;
        private readonly double offset;

        internal ScaleTruth(Scale scale, bool common, RandomSource random)
        {
            this.scale = scale;
            this.common = common;
            this.random = random;
            gain = scale.GainLimit(scale.Capacity!.Value.Si) * ((2 * random.NextDouble()) - 1);
            offset = scale.Division!.Value.Si * random.NextNormal();
        }

        internal Mass Reads(double load)
        {
            var error = common
                ? (gain * load) + offset
                : scale.ToleranceAt(load) * ((2 * random.NextDouble()) - 1);
            var d = scale.Division!.Value.Si;
            return Mass.FromSi(Math.Max(0, Math.Round((load + error) / d) * d));
        }
    }
}
