using Lanewright.Core.Quantities;

namespace Lanewright.Core.Text;

/// <content>Writing.</content>
public static partial class QuantityText
{
    /// <summary>
    /// The quantity in <paramref name="unit"/>, e.g. <c>1,250.5 lb</c>; it reads back as that quantity to the digits
    /// shown. <see cref="NumberForm.RoundTrip"/> gives the shortest number that reads back as exactly the same SI
    /// value; where no number in this unit does, the nearest (within one part in 2^51).
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
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="si"/> is NaN or infinite.</exception>
    public static string Write(double si, Unit unit, TextCulture culture, NumberForm form = default) =>
        WriteValue(si, unit, culture, form) + " " + Symbol(unit, culture);

    /// <summary>The number alone, for where the unit stands beside it.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="si"/> is NaN or infinite.</exception>
    public static string WriteValue(double si, Unit unit, TextCulture culture, NumberForm form = default)
    {
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(culture);
        return NumberLayout.Lay(Rounded(ShortestNumber.In(unit, Finite.Check(si)), form), culture);
    }

    /// <summary>A plain number.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="value"/> is NaN or infinite.</exception>
    public static string WriteNumber(double value, TextCulture culture, NumberForm form = default)
    {
        ArgumentNullException.ThrowIfNull(culture);
        return NumberLayout.Lay(Rounded(DecimalDigits.Of(Finite.Check(value)), form), culture);
    }

    /// <summary>
    /// A value and its uncertainty as two numbers in <paramref name="unit"/>: the uncertainty rounded to two
    /// significant digits, the value to the same place (JCGM 100:2008, 7.2.6). An uncertainty of zero leaves both as
    /// they are.
    /// </summary>
    /// <param name="si">The value in SI.</param>
    /// <param name="uncertaintySi">The uncertainty in SI, finite and not negative.</param>
    /// <param name="unit">The unit of both numbers.</param>
    /// <param name="culture">Whose marks are written.</param>
    public static (string Value, string Uncertainty) WriteTogether(
        double si, double uncertaintySi, Unit unit, TextCulture culture)
    {
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(culture);
        ArgumentOutOfRangeException.ThrowIfNegative(uncertaintySi);
        const int SignificantDigits = 2;
        var value = ShortestNumber.In(unit, Finite.Check(si));
        var uncertainty = DecimalDigits.Of(Finite.Check(unit.DifferenceFromSi(uncertaintySi)));
        if (!uncertainty.IsZero)
        {
            uncertainty = uncertainty.RoundedToDigits(SignificantDigits);
            value = value.RoundedTo(uncertainty.LastPlace);
        }

        return (NumberLayout.Lay(value, culture), NumberLayout.Lay(uncertainty, culture));
    }

    /// <summary>Value and uncertainty, e.g. <c>23.118 ± 0.041 g/m²</c>; see <see cref="WriteTogether"/>.</summary>
    public static string WriteWithUncertainty(double si, double uncertaintySi, Unit unit, TextCulture culture)
    {
        var (value, uncertainty) = WriteTogether(si, uncertaintySi, unit, culture);
        return $"{value} ± {uncertainty} {Symbol(unit, culture)}";
    }

    /// <summary>The unit's symbol as the culture writes it: "gal" where the gallon has one customary meaning.</summary>
    public static string Symbol(Unit unit, TextCulture culture)
    {
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(culture);
        return UnitWords.Symbol(unit, culture);
    }

    private static DecimalDigits Rounded(DecimalDigits number, NumberForm form) => form switch
    {
        { FixedDecimals: { } decimals } => number.RoundedTo(-decimals),
        { SignificantDigits: { } digits } => number.RoundedToDigits(digits),
        _ => number,
    };
}
