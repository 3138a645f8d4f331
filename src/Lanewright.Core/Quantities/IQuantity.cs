namespace Lanewright.Core.Quantities;

/// <summary>A value of one <see cref="Quantities.Dimension"/>, kept in SI; never NaN and never infinite.</summary>
/// <typeparam name="TSelf">The quantity itself.</typeparam>
public interface IQuantity<TSelf>
    where TSelf : struct, IQuantity<TSelf>
{
    /// <summary>What is measured.</summary>
    static abstract Dimension Dimension { get; }

    /// <summary>The quantity from its value in SI.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="value"/> is NaN or infinite, or outside what the
    /// quantity allows.</exception>
    static abstract TSelf FromSi(double value);

    /// <summary>Whether <see cref="FromSi"/> takes the value: any finite one, unless the quantity says less.</summary>
    static virtual bool Allows(double si) => double.IsFinite(si);

    /// <summary>The value in SI.</summary>
    double Si { get; }
}

/// <summary>A quantity whose zero is nothing at all, so that sums, multiples and ratios of it mean something.</summary>
/// <typeparam name="TSelf">The quantity itself.</typeparam>
public interface IScalable<TSelf> : IQuantity<TSelf>
    where TSelf : struct, IScalable<TSelf>;
