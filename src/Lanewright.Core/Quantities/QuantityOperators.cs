namespace Lanewright.Core.Quantities;

/// <summary>
/// The operators that every quantity has: order, and for those with a true zero also sum, difference, multiple and
/// ratio. A result that is not finite, or that the quantity does not allow, throws
/// <see cref="ArgumentOutOfRangeException"/>.
/// </summary>
public static class QuantityOperators
{
    extension<T>(T)
        where T : struct, IQuantity<T>
    {
        /// <summary>Whether the left value is the smaller.</summary>
        public static bool operator <(T left, T right) => left.Si < right.Si;

        /// <summary>Whether the left value is the greater.</summary>
        public static bool operator >(T left, T right) => left.Si > right.Si;

        /// <summary>Whether the left value is not the greater.</summary>
        public static bool operator <=(T left, T right) => left.Si <= right.Si;

        /// <summary>Whether the left value is not the smaller.</summary>
        public static bool operator >=(T left, T right) => left.Si >= right.Si;
    }

    extension<T>(T)
        where T : struct, IScalable<T>
    {
        /// <summary>Sum.</summary>
        public static T operator +(T left, T right) => T.FromSi(left.Si + right.Si);

        /// <summary>Difference.</summary>
        public static T operator -(T left, T right) => T.FromSi(left.Si - right.Si);

        /// <summary>The opposite.</summary>
        public static T operator -(T value) => T.FromSi(-value.Si);

        /// <summary>Multiple.</summary>
        public static T operator *(T left, double right) => T.FromSi(left.Si * right);

        /// <summary>Multiple.</summary>
        public static T operator *(double left, T right) => T.FromSi(left * right.Si);

        /// <summary>Part.</summary>
        public static T operator /(T left, double right) => T.FromSi(left.Si / right);

        /// <summary>Ratio of two values of one quantity.</summary>
        public static double operator /(T left, T right) => left.Si / right.Si;
    }
}
