using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Core.Weighing;

namespace Lanewright.Documents;

/// <summary>How numbers and texts are written on a certificate.</summary>
/// <param name="Culture">Decimal mark and language.</param>
/// <param name="Units">Units of what is no result.</param>
internal sealed record CertificateWords(TextCulture Culture, UnitPreferences Units)
{
    /// <summary>A text of the code in the reader's language.</summary>
    internal string Say(Phrase phrase) => Culture.Say(phrase);

    internal string Percent(double share) => PercentText.Write(share, Culture);

    internal string Signed(double share) => (share > 0 ? "+" : "") + Percent(share);

    internal string Number(double si, Unit unit, int digits = 4) => QuantityText.WriteValue(si, unit, Culture, NumberForm.Significant(digits));

    internal string Symbol(Unit unit) => QuantityText.Symbol(unit, Culture);

    /// <summary>What to key in, with as many digits as the controller's step has.</summary>
    internal string Keyed(KeyIn key, Unit unit)
    {
        var step = (decimal)unit.DifferenceFromSi(key.Step);
        var decimals = 0;
        for (var scaled = step; decimals < 12 && Math.Abs(scaled - Math.Round(scaled)) > 0.000001m; scaled *= 10) decimals++;
        return QuantityText.Write(key.Value, unit, Culture, NumberForm.Decimals(decimals));
    }

    /// <summary>A scale with what is known of it.</summary>
    internal CertificateScale Scale(Scale scale)
    {
        List<string> parts = [Say(Kind(scale.Kind))];
        if (scale.Capacity is { } capacity) parts.Add(Say($"capacity {Exact(capacity)}"));
        if (scale.Division is { } division) parts.Add(Say($"division {Exact(division)}"));
        if (scale.Tolerance is { Si: > 0 } own) parts.Add(Say($"limits of error ± {Exact(own)}"));
        else if (scale.RelativeTolerance is { Si: > 0 } share) parts.Add(Say($"limits of error ± {Percent(share.Si)} of the load"));
        else if (scale.Class is not ScaleClass.None)
        {
            Phrase rules = scale.Rules is ScaleRules.Oiml ? "OIML R 76-1, in service" : "NIST Handbook 44, 2.20, maintenance";
            parts.Add(Say($"class {Class(scale.Class)}, limits of error of {rules}"));
        }

        return new(scale.Id, string.Join("; ", parts), scale.Verified);
    }

    /// <summary>A figure as somebody stated it: up to six digits, without zeros at its end.</summary>
    internal string Stated(double si, Unit unit)
    {
        var text = QuantityText.WriteValue(si, unit, Culture, NumberForm.Significant(6));
        if (text.Contains(Culture.DecimalMark, StringComparison.Ordinal)) text = text.TrimEnd('0').TrimEnd(Culture.DecimalMark);
        return $"{text} {Symbol(unit)}".TrimEnd();
    }

    private string Exact(Mass mass) => Stated(mass.Si, Units[Dimension.Mass]);

    private static string Class(ScaleClass c) => c switch { ScaleClass.III => "III", ScaleClass.IIIL => "III L", _ => "IIII" };

    private static Phrase Kind(ScaleKind kind) => kind switch
    {
        ScaleKind.Floor => "floor scale",
        ScaleKind.Pallet => "pallet scale",
        ScaleKind.Forklift => "forklift scale",
        ScaleKind.Hanging => "hanging scale",
        ScaleKind.Vehicle => "vehicle scale",
        ScaleKind.WheelLoad => "wheel-load weighers",
        _ => "platform scale",
    };
}
