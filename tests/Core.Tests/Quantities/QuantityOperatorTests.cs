using CsCheck;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Tests.Quantities;

public sealed class QuantityOperatorTests
{
    private static readonly Gen<double> Positive = Gen.Double[1e-3, 1e6];

    [Fact]
    public void Sums_differences_multiples_and_ratios_work_on_the_SI_value()
    {
        var four = Mass.FromKilograms(4);
        var one = Mass.FromKilograms(1);
        Assert.Equal(Mass.FromKilograms(5), four + one);
        Assert.Equal(Mass.FromKilograms(3), four - one);
        Assert.Equal(Mass.FromKilograms(-4), -four);
        Assert.Equal(Mass.FromKilograms(8), 2 * four);
        Assert.Equal(Mass.FromKilograms(8), four * 2);
        Assert.Equal(Mass.FromKilograms(2), four / 2);
        Assert.Equal(4.0, four / one);
    }

    [Fact]
    public void Order_is_the_order_of_the_SI_values()
    {
        var cold = Temperature.FromDegreesCelsius(-5);
        var warm = Temperature.FromDegreesFahrenheit(32);
        Assert.True(cold < warm);
        Assert.True(warm > cold);
        Assert.True(cold <= warm && warm >= cold);
        Assert.False(cold >= warm || cold > warm || warm <= cold || warm < cold);
    }

    [Fact]
    public void A_quotient_by_nothing_is_no_quantity()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.FromKilograms(1) / default(Duration));
        Assert.Throws<ArgumentOutOfRangeException>(() => default(Mass) / default(Duration));
        var most = Mass.FromKilograms(double.MaxValue);
        Assert.Throws<ArgumentOutOfRangeException>(() => most + most);
    }

    [Fact]
    public void Every_quotient_turns_back_into_its_dividend() =>
        Gen.Select(Positive, Positive).Sample(
            (a, b) =>
            {
                var mass = Mass.FromSi(a);
                var volume = Volume.FromSi(a);
                var pulses = PulseCount.FromSi(a);
                var turns = RevolutionCount.FromSi(a);
                var length = Length.FromSi(a);
                var time = Duration.FromSi(b);
                Near(a, ((mass / time) * time).Si);
                Near(a, (time * (mass / time)).Si);
                Near(b, (mass / (mass / time)).Si);
                Near(a, ((volume / time) * time).Si);
                Near(a, (time * (volume / time)).Si);
                Near(b, (volume / (volume / time)).Si);
                Near(a, ((length / time) * time).Si);
                Near(a, (time * (length / time)).Si);
                Near(b, (length / (length / time)).Si);
                Near(a, ((turns / time) * time).Si);
                Near(a, (time * (turns / time)).Si);
                Near(a, ((mass / Volume.FromSi(b)) * Volume.FromSi(b)).Si);
                Near(a, (Volume.FromSi(b) * (mass / Volume.FromSi(b))).Si);
                Near(b, (mass / (mass / Volume.FromSi(b))).Si);
                Near(a, ((mass / Area.FromSi(b)) * Area.FromSi(b)).Si);
                Near(a, (Area.FromSi(b) * (mass / Area.FromSi(b))).Si);
                Near(a, ((volume / Area.FromSi(b)) * Area.FromSi(b)).Si);
                Near(a, (Area.FromSi(b) * (volume / Area.FromSi(b))).Si);
                Near(a, ((volume / Mass.FromSi(b)) * Mass.FromSi(b)).Si);
                Near(a, (Mass.FromSi(b) * (volume / Mass.FromSi(b))).Si);
                Near(a, ((mass / PulseCount.FromSi(b)) * PulseCount.FromSi(b)).Si);
                Near(a, (PulseCount.FromSi(b) * (mass / PulseCount.FromSi(b))).Si);
                Near(a, ((mass / RevolutionCount.FromSi(b)) * RevolutionCount.FromSi(b)).Si);
                Near(a, (RevolutionCount.FromSi(b) * (mass / RevolutionCount.FromSi(b))).Si);
                Near(a, ((pulses / Mass.FromSi(b)) * Mass.FromSi(b)).Si);
                Near(a, (Mass.FromSi(b) * (pulses / Mass.FromSi(b))).Si);
                Near(b, (pulses / (pulses / Mass.FromSi(b))).Si);
                Near(a, ((pulses / Volume.FromSi(b)) * Volume.FromSi(b)).Si);
                Near(a, (Volume.FromSi(b) * (pulses / Volume.FromSi(b))).Si);
                Near(b, (pulses / (pulses / Volume.FromSi(b))).Si);
                Near(a, ((pulses / Length.FromSi(b)) * Length.FromSi(b)).Si);
                Near(a, (Length.FromSi(b) * (pulses / Length.FromSi(b))).Si);
                Near(b, (pulses / (pulses / Length.FromSi(b))).Si);
                Near(a, ((pulses / RevolutionCount.FromSi(b)) * RevolutionCount.FromSi(b)).Si);
                Near(a, (RevolutionCount.FromSi(b) * (pulses / RevolutionCount.FromSi(b))).Si);
                Near(b, (pulses / (pulses / RevolutionCount.FromSi(b))).Si);
                Near(a, ((length * Length.FromSi(b)) / Length.FromSi(b)).Si);
                Near(a * b, (Volume.FromSi(a) / Duration.FromSi(1) * Density.FromSi(b)).Si);
                Near(a / b, (VolumeFlow.FromSi(a) / MassFlow.FromSi(b)).Si);
                Near(a * b, (LiquidPerMass.FromSi(a) * MassFlow.FromSi(b)).Si);
                Near(a * b, (RotationalSpeed.FromSi(a) * MassPerRevolution.FromSi(b)).Si);
                Near(a * b, (RotationalSpeed.FromSi(a) * Duration.FromSi(b)).Si);
            },
            iter: 500,
            threads: 1);

    private static void Near(double expected, double actual) =>
        Assert.Equal(expected, actual, Math.Abs(expected) * 1e-15 * 4);
}
