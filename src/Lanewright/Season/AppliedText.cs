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
            (show.Say(Word(question.By)), false), (show.Say($"spread, {mass.Symbol}"), true), ("±", true), ("±, %", true), (show.Say($"driven, {length.Symbol}"), true),
            (show.Say("of target"), true), (show.Say("over"), true), (show.Say("under"), true), (show.Say("rows"), true));
        foreach (var line in answer.Lines) Add(line.Name.Length == 0 ? show.Say("(not said)") : line.Name, line);
        if (answer.Lines.Count > 1) Add(show.Say("all"), answer.Total);
        foreach (var line in table.Lines()) yield return line;
        yield return "";
        var share = PercentText.Write(question.Probability, show.Culture);
        foreach (var line in Wrapped.Lines(
            "", show.Say($"± holds {share} of the errors of constants, their scales and counting. It does not average out over a season, since one constant is wrong by the same share all the time. Drift after a calibration is not in it. Over and under: share of the time that was more than {PercentText.Write(question.Band, show.Culture)} away from its target.")))
            yield return line;
        if (answer.Total.CountsWithoutConstant > 0)
            yield return show.Say($"{show.Number(answer.Total.CountsWithoutConstant, Units.Pulse)} counts are in no mass: no constant was valid for their spreader at that moment.");
        if (answer.Total.Resets > 0) yield return show.Say($"{answer.Total.Resets} times a counter began again; what it had counted since the row before is not known.");
        if (answer.Total.Gaps > 0) yield return show.Say($"{answer.Total.Gaps} rows come after a gap; their time is in no over or under.");

        void Add(string name, AppliedLine line) => table.Add(
            name, Fixed(line.Mass.Value, mass, show), Fixed(line.Expanded, mass, show),
            line.Mass.Value > 0 ? show.Percent(line.Expanded / line.Mass.Value) : "", Fixed(line.Metres, length, show),
            line.TargetMass > 0 ? show.Percent(line.AppliedOnTarget / line.TargetMass) : "",
            line.Seconds > 0 ? show.Percent(line.OverSeconds / line.Seconds) : "", line.Seconds > 0 ? show.Percent(line.UnderSeconds / line.Seconds) : "",
            line.Rows.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    /// <summary>What lines are about.</summary>
    internal static Phrase Word(AppliedBy by) => by switch
    {
        AppliedBy.Season => "season",
        AppliedBy.Depot => "depot",
        AppliedBy.Spreader => "spreader",
        AppliedBy.Day => "day",
        AppliedBy.Storm => "storm",
        AppliedBy.Route => "route",
        AppliedBy.Segment => "segment",
        _ => "material",
    };

    private static string Fixed(double si, Unit unit, Show show) => QuantityText.WriteValue(si, unit, show.Culture, NumberForm.Decimals(1));
}
