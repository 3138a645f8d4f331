using System.Globalization;

namespace Lanewright.Core.Diagnosis;

/// <summary>What may have been meant by a number of which two digits were swapped.</summary>
public static class DigitSwaps
{
    /// <summary>The numbers that a number becomes when two neighbouring digits change places.</summary>
    /// <param name="number">The number as written, in its unit.</param>
    /// <param name="decimals">Decimals it is written with, 0 to 3.</param>
    public static IEnumerable<double> Of(double number, int decimals)
    {
        var scale = decimals switch { 0 => 1.0, 1 => 10, 2 => 100, _ => 1000 };
        if (!(number > 0) || number * scale > 1e12) yield break;
        var digits = ((long)Math.Round(number * scale)).ToString(CultureInfo.InvariantCulture);
        for (var i = 0; i + 1 < digits.Length; i++)
        {
            if (digits[i] == digits[i + 1] || (i == 0 && digits[1] == '0')) continue;
            var place = 1.0;
            for (var k = i + 2; k < digits.Length; k++) place *= 10;
            yield return number + (((digits[i + 1] - digits[i]) * 9 * place) / scale);
        }
    }
}
