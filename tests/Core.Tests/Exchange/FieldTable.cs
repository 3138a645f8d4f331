using System.Globalization;
using System.Text;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Tests.Exchange;

/// <summary>The table of a file's fields for its page, written from the questions that the reader asks.</summary>
internal static class FieldTable
{
    private const string Start = "<!-- fields -->\n";
    private const string End = "<!-- /fields -->\n";

    /// <summary>A page with its table of fields written anew.</summary>
    public static string In<T>(string page, Func<Fields, T?> read)
        where T : class
    {
        var start = page.IndexOf(Start, StringComparison.Ordinal);
        var end = page.IndexOf(End, StringComparison.Ordinal);
        Assert.True(start >= 0 && end > start, "The page has no place for the table of fields.");
        return page[..(start + Start.Length)] + Of(read) + page[end..];
    }

    private static string Of<T>(Func<Fields, T?> read)
        where T : class
    {
        var plain = RecordingFields.Of(read);
        var unitedStates = RecordingFields.Of(read, UnitSystem.UnitedStates);
        var si = RecordingFields.Of(read, UnitSystem.Si);
        var table = new StringBuilder("| field | needed | meaning | what to write |\n|---|---|---|---|\n");
        for (var i = 0; i < plain.Count; i++)
        {
            var need = plain[i].Need == Need.Required ? "yes" : "";
            table.Append(CultureInfo.InvariantCulture, $"| `{plain[i].Path}` | {need} | {plain[i].Doc} | {What(plain[i], unitedStates[i].Bare, si[i].Bare)} |\n");
        }

        return table.ToString();
    }

    private static string What(FieldFact fact, Unit? unitedStates, Unit? si) => fact.Shape switch
    {
        FieldShape.Text => $"text, at most {fact.Most:0} characters",
        FieldShape.Notes => $"text of any lines, at most {fact.Most:0} characters",
        FieldShape.Quantity => Quantity(fact, unitedStates, si),
        FieldShape.Amount => Example(fact, null) + (fact.Path.StartsWith("spreader.", StringComparison.Ordinal)
            ? " and the like; a bare number is in the spreader's `unit`"
            : " and the like; with its unit"),
        FieldShape.Unit => "a unit: " + string.Join(", ", fact.Dimensions.Select(d => $"`{UnitPreferences.UnitedStates[d].Symbol}`")) + " and the like",
        FieldShape.Count => $"whole number, {fact.Least:0} to {fact.Most:0}",
        FieldShape.YesNo => "`yes` or `no`; in JSON also `true` or `false`",
        FieldShape.Choice => string.Join(", ", fact.Words.Select(word => $"`{word}`")),
        FieldShape.Date => "date like `2026-01-31`",
        FieldShape.Group => "group of fields",
        FieldShape.List => $"list, {fact.Least:0} to {fact.Most:0} items",
        _ => throw new NotSupportedException($"{fact.Path}: say what to write for {fact.Shape}."),
    };

    private static string Quantity(FieldFact fact, Unit? unitedStates, Unit? si)
    {
        var unit = Units.Of(fact.Dimensions[0]).First(u => u.FromSi(1) == 1);
        // A weight below zero is read so that the finding about it can say what it means; it is no limit worth telling.
        var limits = fact.Dimensions[0] == Dimension.Fraction ? $"{Number(fact.Least * 100)} % to {Number(fact.Most * 100)} %"
            : fact.Least < 0 ? $"up to {Number(fact.Most)} {unit.Symbol}"
            : $"{Number(fact.Least)} to {Number(fact.Most)} {unit.Symbol}";
        var bare = fact.UnitsAgreed ? $"; a bare number is in `{unitedStates!.Symbol}` with `units: us`, in `{si!.Symbol}` with `units: si`"
            : fact.Bare is { } own ? $"; a bare number is in `{own.Symbol}`"
            : fact.Dimensions[0] == Dimension.Fraction ? "; as percent or as a plain share"
            : "; with its unit";
        return $"{Example(fact, unitedStates)}; {limits}{bare}";
    }

    private static string Example(FieldFact fact, Unit? unit)
    {
        if (fact.Dimensions[0] == Dimension.Fraction) return fact.Least > 0.02 ? "`95 %`" : "`2 %`";
        var shown = unit ?? UnitPreferences.UnitedStates[fact.Dimensions[0]];
        var number = new[] { 12.5, 80, 0.5 }.First(n => shown.ToSi(n) >= fact.Least && shown.ToSi(n) <= fact.Most);
        return string.Join(", ", fact.Dimensions.Select(d => $"`{Number(number)} {(unit ?? UnitPreferences.UnitedStates[d]).Symbol}`"));
    }

    private static string Number(double value) => Shortened(
        Core.Text.QuantityText.WriteNumber(value, Core.Text.TextCulture.UnitedStates, Core.Text.NumberForm.Significant(6)));

    private static string Shortened(string number) =>
        number.Contains('.', StringComparison.Ordinal) ? number.TrimEnd('0').TrimEnd('.') : number;
}
