using Lanewright.Core.Diagnosis;
using Lanewright.Core.Statistics;
using R = Lanewright.Core.Diagnosis.EffectRanges;

namespace Lanewright.Core.Practice;

/// <summary>Draws the size and place of a fault from the ranges that the diagnosis states.</summary>
public static class FaultDraw
{
    /// <summary>The dials of one cause.</summary>
    /// <param name="cause">The cause.</param>
    /// <param name="random">Where chance comes from.</param>
    /// <param name="runs">Number of runs of the session.</param>
    /// <param name="teeth">Teeth of the wheel by the register.</param>
    /// <param name="gate">Opening at the last calibration, in steps of the marks.</param>
    /// <param name="gates">The marks, in the same measure.</param>
    /// <param name="speeds">Speeds driven on the road, m/s; empty in the yard.</param>
    public static FaultDials Of(
        Cause cause, RandomSource random, int runs, int teeth, double gate, IReadOnlyList<double> gates, IReadOnlyList<double> speeds)
    {
        ArgumentNullException.ThrowIfNull(random);
        ArgumentNullException.ThrowIfNull(gates);
        ArgumentNullException.ThrowIfNull(speeds);
        var healthy = new FaultDials();
        return cause switch
        {
            Cause.SomethingElse => Else(),
            Cause.MassUnit => healthy with { MassUnit = EitherWay(R.PoundsPerKilogram) },
            Cause.TonKind => healthy with { Said = EitherWay(R.Tons[random.NextInt(R.Tons.Count)]) },
            Cause.TareForgotten => healthy with { TareForgotten = random.NextDouble() < 0.7 ? -1 : random.NextInt(runs) },
            Cause.ContainerMissing => healthy with { ContainerMissing = random.NextInt(runs) },
            Cause.DigitsSwapped => healthy with { DigitsSwapped = true },
            Cause.DigitDropped => healthy with { DigitDropped = random.NextInt(runs) },
            Cause.PersonChanged => healthy with { PersonRun = random.NextInt(runs), Person = Sign() * Log(R.LeastPerson, R.MostPerson) },
            Cause.FuelBurnt => healthy with { Fuel = Log(R.LeastFuel, R.MostFuel) },
            Cause.ScaleOff => healthy with { ScaleGain = Sign() * Log(R.LeastGain, R.MostGain) },
            Cause.ScaleDivision => healthy with { CoarserDivision = Coarser[random.NextInt(Coarser.Length)] },
            Cause.Spill => healthy with { Spill = Log(R.LeastSpill, R.MostSpill), SpillVaries = R.SpillVaries },
            Cause.RunOn => healthy with { RunOn = Log(R.LeastRunOn, R.MostRunOn) },
            Cause.Unprimed => healthy with { Priming = Log(R.LeastPriming, R.MostPriming) },
            Cause.Bridging => Bridging(),
            Cause.PulsesDoubled => healthy with { PulsesCounted = 2 },
            Cause.PulsesMissed => healthy with { PulsesMissed = Log(R.LeastMissed, R.MostMissed) },
            Cause.WrongTeeth => WrongTeeth(),
            Cause.FeederDead => healthy with { FeedersTurning = 0.5 },
            Cause.GateMoved => healthy with { Gate = Gate() },
            Cause.MaterialChanged => healthy with { Density = 1 + (Sign() * Log(R.LeastMaterial, R.MostMaterial)) },
            Cause.Wear => healthy with { WearBySeason = Log(R.LeastWear, R.MostWear) },
            Cause.Slip => healthy with { Slip = Log(R.LeastSlip, R.MostSlip) },
            Cause.HopperHead => healthy with { HeadLoss = Log(R.LeastHead, R.MostHead) },
            Cause.FlowLimit => healthy with { FlowLimit = Log(R.LeastLimit, R.MostLimit) },
            Cause.ColdOil => healthy with { ColdOil = Log(R.LeastCold, R.MostCold) },
            Cause.EngineSlow => healthy with { Engine = Log(R.SlowestEngine, R.SlowEngine) },
            Cause.MotorLeak => healthy with { Leak = Log(R.LeastLeak, R.MostLeak) },
            Cause.ValveShift => healthy with { ValveShift = Sign() * Log(R.LeastShift, R.MostShift) },
            Cause.ConstantLost => healthy with { ConstantInController = 1 + (Sign() * Log(R.LeastLost, R.MostLost)) },
            Cause.SpeedFrozen => healthy with { SpeedStuck = speeds.Count == 0 ? 10 : Log(0.6 * speeds.Min(), 1.5 * speeds.Max()) },
            Cause.SpeedConstant => healthy with { Distance = 1 + (Sign() * Log(R.LeastDistance, R.MostDistance)) },
            Cause.LaneConvention => healthy with { Said = EitherWay(2) },
            Cause.RoadWidth => healthy with { Said = EitherWay(4 / 3.0) },
            Cause.MileKilometre => healthy with { Said = EitherWay(R.KilometresPerMile) },
            Cause.RateUnit => healthy with { Said = EitherWay(R.RateRatio) },
            _ => healthy,
        };

        double Sign() => random.NextInt(2) == 0 ? 1 : -1;

        double EitherWay(double ratio) => random.NextInt(2) == 0 ? ratio : 1 / ratio;

        double Log(double least, double most) => least * Elementary.Exp(random.NextDouble() * Elementary.Log(most / least));

        FaultDials Bridging()
        {
            var first = random.NextInt(runs);
            var bridged = new Dictionary<int, double> { [first] = Log(R.LeastBridging, R.MostBridging) };
            if (runs > 2 && random.NextInt(2) == 0)
                bridged[(first + 1 + random.NextInt(runs - 1)) % runs] = Log(R.LeastBridging, R.MostBridging);
            return healthy with { Bridged = bridged };
        }

        FaultDials WrongTeeth()
        {
            var others = R.Teeth.Where(t => t != teeth && t / (double)teeth is > 0.3 and < 3.2).ToList();
            return healthy with { Teeth = others[random.NextInt(others.Count)] / (double)teeth };
        }

        double Gate()
        {
            var marks = gates.Where(g => Math.Abs((g / gate) - 1) > 0.01).ToList();
            return marks.Count > 0 && random.NextDouble() < R.GateAtMark
                ? marks[random.NextInt(marks.Count)] / gate
                : 1 + (Sign() * Log(R.LeastGateSlip, R.MostGateSlip));
        }

        // Something that follows no pattern of the list: a shift and surges together.
        FaultDials Else()
        {
            var surges = new Dictionary<int, double>();
            for (var i = 0; i < runs; i++) surges[i] = 0.1 * random.NextNormal();
            return healthy with { Density = 1 + (0.2 * ((2 * random.NextDouble()) - 1)), Bridged = surges };
        }
    }

    private static readonly int[] Coarser = [2, 5, 10, 20];
}
