using System.Globalization;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Text;

/// <summary>
/// The shortest decimal number of a unit that comes back as the same value in SI. Converting to the unit and back
/// rounds twice, so the number that was typed is found by trying: 17 digits always tell two doubles apart.
/// </summary>
internal static class ShortestNumber
{
    private const int MostDigits = 17;

    internal static DecimalDigits In(Unit unit, double si)
    {
        var value = unit.FromSi(si);
        if (!double.IsFinite(value))
            throw new ArgumentOutOfRangeException(nameof(si), si, $"The value has no finite number in {unit}.");
        for (var digits = 1; digits <= MostDigits; digits++)
        {
            var text = value.ToString($"E{digits - 1}", CultureInfo.InvariantCulture);
            if (unit.ToSi(NumberReader.Parse(text)) == si)
                return DecimalDigits.Of(text);
        }

        foreach (var near in Neighbours(value))
        {
            if (unit.ToSi(near) == si)
                return DecimalDigits.Of(near);
        }

        return DecimalDigits.Of(value);
    }

    private static double[] Neighbours(double value) =>
    [
        Math.BitIncrement(value), Math.BitDecrement(value), Math.BitIncrement(Math.BitIncrement(value)),
        Math.BitDecrement(Math.BitDecrement(value)),
    ];
}
