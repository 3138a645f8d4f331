using System.Runtime.CompilerServices;

namespace Lanewright.Core.Statistics;

/// <summary>What the fits share: checks of their points and small formulas.</summary>
internal static class FitMath
{
    internal static void RequirePoints(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int least)
    {
        if (x.Length != y.Length)
            throw new ArgumentException("There must be as many y as x.", nameof(y));
        if (x.Length < least)
            throw new ArgumentException("There are fewer points than the fit has parameters.", nameof(x));
        RequireFinite(x);
        RequireFinite(y);
    }

    internal static void RequireFinite(
        ReadOnlySpan<double> values, [CallerArgumentExpression(nameof(values))] string? name = null)
    {
        foreach (var value in values)
        {
            if (!double.IsFinite(value))
                throw new ArgumentException("Every value must be a finite number.", name);
        }
    }

    internal static void RequireWeights(ReadOnlySpan<double> weights, int count)
    {
        if (weights.Length != count)
            throw new ArgumentException("There must be as many weights as points.", nameof(weights));
        foreach (var weight in weights)
        {
            if (!(weight > 0 && double.IsFinite(weight)))
                throw new ArgumentException("Every weight must be a finite number above 0.", nameof(weights));
        }
    }

    internal static void RequireUncertainties(ReadOnlySpan<double> ux, ReadOnlySpan<double> uy, int count)
    {
        if (ux.Length != count)
            throw new ArgumentException("There must be as many uncertainties as points.", nameof(ux));
        if (uy.Length != count)
            throw new ArgumentException("There must be as many uncertainties as points.", nameof(uy));
        for (var i = 0; i < count; i++)
        {
            if (!(ux[i] >= 0 && uy[i] >= 0 && double.IsFinite(ux[i]) && double.IsFinite(uy[i])))
                throw new ArgumentException("Every uncertainty must be a finite number, not negative.", nameof(uy));
            if (ux[i] == 0 && uy[i] == 0)
                throw new ArgumentException("A point must be uncertain in x or in y.", nameof(uy));
        }
    }

    internal static void RequireDifferent(ReadOnlySpan<double> x)
    {
        if (x.IndexOfAnyExcept(x[0]) < 0)
            throw new ArgumentException("A line needs points at two different x at least.", nameof(x));
    }

    internal static double Deviation(double sumOfSquares, int degreesOfFreedom) =>
        degreesOfFreedom > 0 ? Math.Sqrt(sumOfSquares / degreesOfFreedom) : double.NaN;

    /// <summary>Whether a change of the slope is beneath notice: against its uncertainty or its last bits. NaN is
    /// not.</summary>
    internal static bool HasSettled(double change, double slope, double uncertainty) =>
        Math.Abs(change) <= (1e-12 * uncertainty) + (1e-15 * Math.Abs(slope));

    internal static double RSquared(double residuals, double total) =>
        total > 0 ? 1 - (residuals / total) : double.NaN;

    internal static double Hypotenuse(double a, double b) => Math.Sqrt((a * a) + (b * b));
}
