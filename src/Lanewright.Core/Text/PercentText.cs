namespace Lanewright.Core.Text;

/// <summary>Shares as percent, with the digits a person can use: about two significant ones, three near the whole.</summary>
public static class PercentText
{
    /// <summary>The share with its sign only when negative, e.g. <c>2.9 %</c> for 0.0287.</summary>
    /// <param name="share">A finite share; 1 is the whole.</param>
    /// <param name="culture">Whose decimal mark is written.</param>
    public static string Write(double share, TextCulture culture)
    {
        // The limits are where rounding to the digits of one class would reach the next.
        var decimals = Math.Abs(share) switch { < 0.00995 => 2, < 0.9995 => 1, _ => 0 };
        var text = QuantityText.WriteNumber(share * 100, culture, NumberForm.Decimals(decimals));
        var whole = culture.DecimalMark + "0";
        return (decimals == 1 && text.EndsWith(whole, StringComparison.Ordinal) ? text[..^whole.Length] : text) + " %";
    }
}
