using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Storage.Folding;
using Lanewright.Storage.Records;
using Microsoft.AspNetCore.Components;

namespace Lanewright.Office;

/// <summary>How the office writes days, numbers and words.</summary>
internal static class OfficeText
{
    /// <summary>Numbers and words of the request that is being answered.</summary>
    internal static TextCulture Culture => OfficeLanguage.Current;

    /// <summary>What a person reads in a field of a record, and may type there: as it is kept, with the reader's decimal mark.</summary>
    internal static string Shown(AskedField field, string kept)
    {
        if (field.Shape is not (FieldShape.Quantity or FieldShape.Number)) return kept;
        var end = kept.IndexOf(' ', StringComparison.Ordinal);
        var number = end < 0 ? kept : kept[..end];
        return QuantityText.ReadNumber(number, TextCulture.Invariant).TryGet(out _)
            ? number.Replace('.', Culture.DecimalMark) + kept[number.Length..]
            : kept;
    }

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
        DueReason.FailedCheck => Say($"its last check found {Percent(item.Share)} off"),
        DueReason.NeverCalibrated => Say("no adopted calibration is known"),
        DueReason.Drifted => Say($"its checks, loads or sister trucks show that it has drifted by {Percent(item.Share)}"),
        DueReason.Changed => Say($"{Word(item.Change!.Value)} changed on {Day(item.Since)}"),
        _ => Say("not yet calibrated this season"),
    };

    internal static Phrase Word(SpreaderChange change) => change switch
    {
        SpreaderChange.Hydraulics => (Phrase)"hydraulics",
        SpreaderChange.Metering => "auger or chain",
        SpreaderChange.Gate => "gate",
        SpreaderChange.Sensor => "sensor",
        SpreaderChange.Tyres => "tyres",
        SpreaderChange.Battery => "battery",
        SpreaderChange.Material => "material",
        SpreaderChange.Supplier => "supplier or pile",
        _ => "something",
    };

    /// <summary>What a role of the register is called.</summary>
    internal static string Role(string word) => word switch
    {
        "viewer" => Say("viewer"),
        "operator" => Say("operator"),
        "technician" => Say("technician"),
        "supervisor" => Say("supervisor"),
        _ => word,
    };

    /// <summary>What was decided of a test.</summary>
    internal static string Decision(string verdict) => verdict switch
    {
        "adopt" => Say("adopted"),
        "repeat" => Say("to be repeated"),
        "reject" => Say("rejected"),
        _ => verdict,
    };

    /// <summary>Who decided what of a test.</summary>
    internal static string Decided(TestRow row) => row.Verdict is not { } verdict ? Say("Not decided.")
        : row.Keyed is { } keyed ? Say($"Decided by {row.DecidedBy}: {Decision(verdict)}, keyed in {keyed}.")
        : Say($"Decided by {row.DecidedBy}: {Decision(verdict)}.");

    /// <summary>What a severity is called in a table.</summary>
    internal static string SeverityWord(string? word) => word switch
    {
        "stop" => Say("stop"),
        "warn" => Say("warn"),
        "note" => Say("note"),
        _ => word ?? "",
    };

    /// <summary>The texts of a field in conflict, each with its person.</summary>
    internal static string Heads(FieldState field) => string.Join(Say(" or "), field.Heads.Select(head => $"{head.Text} ({head.Entry.Person})"));

    /// <summary>A text with [parts] in tags: the first part in the first tag and so on; everything else is shown as it is.</summary>
    internal static MarkupString Marked(Phrase phrase, params ReadOnlySpan<string> tags)
    {
        var text = HtmlEncoder.Default.Encode(Say(phrase));
        var from = 0;
        foreach (var tag in tags)
        {
            var open = text.IndexOf('[', from);
            var close = text.IndexOf(']', Math.Max(open, 0));
            if (open < 0 || close < 0) break;
            var part = $"<{tag}>{text[(open + 1)..close]}</{tag.Split(' ')[0]}>";
            text = text[..open] + part + text[(close + 1)..];
            from = open + part.Length;
        }

        return new(text);
    }

    /// <summary>The tag of a link.</summary>
    internal static string Link(string address) => $"a href=\"{HtmlEncoder.Default.Encode(address)}\"";

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
