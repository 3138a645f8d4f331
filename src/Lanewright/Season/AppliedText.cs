using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Logs.Applied;
using Lanewright.Print;

namespace Lanewright.Season;

/// <summary>A ledger of what was spread, as text for a terminal.</summary>
internal static class AppliedText
{
    internal static IEnumerable<string> Lines(AppliedAnswer answer, AppliedQuestion question, Show show)
    {
        var metric = show.Units == UnitPreferences.Metric;
        var mass = metric ? Units.Tonne : Units.ShortTon;
        var length = metric ? Units.Kilometre : Units.Mile;
        var table = new TextTable(
            (question.By.ToString().ToLowerInvariant(), false), ($"spread, {mass.Symbol}", true), ("±", true), ("±, %", true), ($"driven, {length.Symbol}", true),
            ("of target", true), ("over", true), ("under", true), ("rows", true));
        foreach (var line in answer.Lines) Add(line.Name.Length == 0 ? "(not said)" : line.Name, line);
        if (answer.Lines.Count > 1) Add("all", answer.Total);
        foreach (var line in table.Lines()) yield return line;
        yield return "";
        var share = PercentText.Write(question.Probability, show.Culture);
        foreach (var line in Wrapped.Lines(
            "", $"± holds {share} of the errors of constants, their scales and counting. It does not average out over a season, since one constant is wrong by the same "
            + $"share all the time. Drift after a calibration is not in it. Over and under: share of the time that was more than {PercentText.Write(question.Band, show.Culture)} away from its target."))
            yield return line;
        if (answer.Total.CountsWithoutConstant > 0)
            yield return $"{show.Number(answer.Total.CountsWithoutConstant, Units.Pulse)} counts are in no mass: no constant was valid for their spreader at that moment.";
        if (answer.Total.Resets > 0) yield return $"{answer.Total.Resets} times a counter began again; what it had counted since the row before is not known.";
        if (answer.Total.Gaps > 0) yield return $"{answer.Total.Gaps} rows come after a gap; their time is in no over or under.";

        void Add(string name, AppliedLine line) => table.Add(
            name, Fixed(line.Mass.Value, mass, show), Fixed(line.Expanded, mass, show),
            line.Mass.Value > 0 ? show.Percent(line.Expanded / line.Mass.Value) : "", Fixed(line.Metres, length, show),
            line.TargetMass > 0 ? show.Percent(line.AppliedOnTarget / line.TargetMass) : "",
            line.Seconds > 0 ? show.Percent(line.OverSeconds / line.Seconds) : "", line.Seconds > 0 ? show.Percent(line.UnderSeconds / line.Seconds) : "",
            line.Rows.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    private static string Fixed(double si, Unit unit, Show show) => QuantityText.WriteValue(si, unit, show.Culture, NumberForm.Decimals(1));
}
