using System.Globalization;
using System.Text.Json;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Storage.Records;

namespace Lanewright.Office;

/// <summary>How the office writes days, numbers and words.</summary>
internal static class OfficeText
{
    /// <summary>Numbers and words of the request that is being answered.</summary>
    internal static TextCulture Culture => OfficeLanguage.Current;

    /// <summary>
    /// The language of the request with the decimal mark of those who read it: a certificate or a card leaves the office.
    /// </summary>
    internal static TextCulture Papers => Culture.Language.Code switch
    {
        "fr" => TextCulture.French,
        "fi" => TextCulture.Finnish,
        _ => Culture,
    };

    /// <summary>A text of the code in the language of the request.</summary>
    internal static string Say(Phrase phrase) => Culture.Say(phrase);

    internal static string Day(DateOnly? day) =>
        day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";

    internal static DateOnly? ReadDay(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    /// <summary>A moment of the records, which are in UTC.</summary>
    internal static string Moment(DateTimeOffset at) =>
        at.UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture) + " UTC";

    /// <summary>A count with its groups of digits.</summary>
    internal static string Count(int count) => QuantityText.WriteNumber(count, Culture, NumberForm.Decimals(0));

    internal static string Percent(double share) => PercentText.Write(share, Culture);

    /// <summary>Value with its expanded uncertainty, both in the unit of the result.</summary>
    internal static string Constant(TestResultRow result)
    {
        if (Units.Find(result.Unit) is not { } unit) return "";
        if (!(result.RelativeExpanded > 0)) return QuantityText.Write(result.Value, unit, Culture, NumberForm.Significant(4));
        var (value, expanded) = QuantityText.WriteTogether(
            result.Value, result.RelativeExpanded * Math.Abs(result.Value), unit, Culture);
        return $"{value} ± {expanded} {QuantityText.Symbol(unit, Culture)}";
    }

    internal static string Mass(double kilograms, bool metric) => metric
        ? QuantityText.Write(kilograms, Units.Tonne, Culture, NumberForm.Significant(2))
        : QuantityText.Write(kilograms, Units.ShortTon, Culture, NumberForm.Significant(2));

    internal static string Money(double amount) =>
        QuantityText.WriteNumber(Math.Round(amount / 10) * 10, Culture, NumberForm.Decimals(0));

    internal static string Because(DueItem item) => item.Reason switch
    {
        DueReason.FailedCheck => $"its last check found {Percent(item.Share)} off",
        DueReason.NeverCalibrated => "no adopted calibration is known",
        DueReason.Drifted => $"its checks show that it has drifted by {Percent(item.Share)}",
        DueReason.Changed => $"{Word(item.Change!.Value)} changed on {Day(item.Since)}",
        _ => "not yet calibrated this season",
    };

    internal static string Word(SpreaderChange change) => change switch
    {
        SpreaderChange.Hydraulics => "hydraulics",
        SpreaderChange.Metering => "auger or chain",
        SpreaderChange.Gate => "gate",
        SpreaderChange.Sensor => "sensor",
        SpreaderChange.Tyres => "tyres",
        SpreaderChange.Battery => "battery",
        SpreaderChange.Material => "material",
        SpreaderChange.Supplier => "supplier or pile",
        _ => "something",
    };

    /// <summary>A finding in a sentence or two: what was read, what was expected, what to do.</summary>
    internal static string Say(Finding finding) =>
        FindingText.Message(finding, Culture, UnitPreferences.UnitedStates) + " "
        + FindingText.Action(finding, Culture, UnitPreferences.UnitedStates);

    /// <summary>A text member of an entry's payload; empty when there is none.</summary>
    internal static string Member(string payload, string name)
    {
        using var json = JsonDocument.Parse(payload);
        return json.RootElement.ValueKind == JsonValueKind.Object
            && json.RootElement.TryGetProperty(name, out var member) && member.ValueKind == JsonValueKind.String
                ? member.GetString()!
                : "";
    }
}
