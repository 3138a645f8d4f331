using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Print;

/// <summary>How numbers are shown to one reader: decimal mark and units.</summary>
internal sealed record Show(TextCulture Culture, UnitPreferences Units)
{
    /// <summary>A text of the code in the reader's language.</summary>
    internal string Say(Phrase phrase) => Culture.Say(phrase);

    /// <summary>A number in a unit with so many significant digits, without the unit.</summary>
    internal string Number(double si, Unit unit, int digits = 4) =>
        QuantityText.WriteValue(si, unit, Culture, NumberForm.Significant(digits));

    /// <summary>A quantity with its unit.</summary>
    internal string With(double si, Unit unit, int digits = 4) =>
        QuantityText.Write(si, unit, Culture, NumberForm.Significant(digits));

    /// <summary>A mass in the reader's unit.</summary>
    internal string Mass(double kilograms, int digits = 4) => With(kilograms, Units[Dimension.Mass], digits);

    /// <summary>A share as percent.</summary>
    internal string Percent(double share) => PercentText.Write(share, Culture);

    /// <summary>A share with its sign.</summary>
    internal string SignedPercent(double share) => (share >= 0 ? "+" : "") + Percent(share);

    /// <summary>The exact step of a controller: as many digits as it has.</summary>
    internal string Keyed(KeyIn key, Unit unit)
    {
        var step = unit.FromSi(key.Step);
        var decimals = 0;
        while (decimals < 12 && Math.Abs((step * Math.Pow(10, decimals)) - Math.Round(step * Math.Pow(10, decimals))) > 1e-6)
            decimals++;
        return QuantityText.Write(key.Value, unit, Culture, NumberForm.Decimals(decimals));
    }
}
