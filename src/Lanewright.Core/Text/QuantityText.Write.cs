using System.Globalization;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Text;

/// <content>Writing.</content>
public static partial class QuantityText
{
    /// <summary>
    /// The quantity in <paramref name="unit"/>, e.g. <c>1,250.5 lb</c>; it reads back as that quantity to the digits shown.
    /// <see cref="NumberForm.RoundTrip"/> gives the shortest number that reads back as exactly the same SI value; where
    /// no number in this unit does, the nearest (within one part in 2^51).
    /// </summary>
    /// <exception cref="ArgumentException"><paramref name="unit"/> measures something else.</exception>
    public static string Write<T>(T quantity, Unit unit, TextCulture culture, NumberForm form = default)
        where T : struct, IQuantity<T>
    {
        ArgumentNullException.ThrowIfNull(unit);
        return unit.Dimension == T.Dimension
            ? Write(quantity.Si, unit, culture, form)
            : throw new ArgumentException($"{unit} does not measure {T.Dimension}.", nameof(unit));
    }

    /// <summary>The same for a value in SI whose dimension is the unit's.</summary>
    public static string Write(double si, Unit unit, TextCulture culture, NumberForm form = default) =>
        WriteValue(si, unit, culture, form) + " " + Symbol(unit, culture);

    /// <summary>The number alone, for where the unit stands beside it.</summary>
    public static string WriteValue(double si, Unit unit, TextCulture culture, NumberForm form = default)
    {
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(culture);
        return form == NumberForm.RoundTrip
            ? NumberLayout.Lay(ShortestNumber.In(unit, Finite.Check(si)), culture)
            : WriteNumber(unit.FromSi(si), culture, form);
    }

    /// <summary>A plain number.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="value"/> is NaN or infinite.</exception>
    public static string WriteNumber(double value, TextCulture culture, NumberForm form = default)
    {
        ArgumentNullException.ThrowIfNull(culture);
        Finite.Check(value);
        var format = form switch
        {
            { FixedDecimals: { } decimals } => $"F{decimals}",
            { SignificantDigits: { } digits } => $"E{digits - 1}",
            _ => "R",
        };
        return NumberLayout.Lay(value.ToString(format, CultureInfo.InvariantCulture), culture);
    }

    /// <summary>The unit's symbol as the culture writes it: "gal" where the gallon has one customary meaning.</summary>
    public static string Symbol(Unit unit, TextCulture culture)
    {
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(culture);
        return UnitWords.Symbol(unit, culture);
    }
}
