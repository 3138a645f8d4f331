using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Calibrations;

/// <summary>What every calibration's sheet says before its own fields.</summary>
public sealed record CalibrationHead
{
    /// <summary>A line that names it.</summary>
    public string Title { get; init; } = "";

    /// <summary>True for data made up for demonstration or practice.</summary>
    public bool Invented { get; init; }

    /// <summary>Day it was done.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Where.</summary>
    public string Place { get; init; } = "";

    /// <summary>Who.</summary>
    public string People { get; init; } = "";

    /// <summary>Units of numbers without one; null when the sheet does not say.</summary>
    public UnitSystem? Units { get; init; }

    /// <summary>Number of the spreader; empty when it is about none.</summary>
    public string Spreader { get; init; } = "";

    /// <summary>Coverage probability of the intervals.</summary>
    public double Probability { get; init; } = 0.95;

    /// <summary>Anything else.</summary>
    public string Note { get; init; } = "";

    /// <summary>Units for readers who did not choose any.</summary>
    public UnitPreferences Preferences =>
        Units is UnitSystem.Si ? UnitPreferences.Metric : UnitPreferences.UnitedStates;

    /// <summary>Units of bare numbers.</summary>
    internal BareUnits Bare => BareUnits.Of(Units);

    internal static CalibrationHead Read(Fields fields)
    {
        SheetCulture.Ask(fields);
        return new()
        {
            Title = fields.Text("title", "A line that names it.", Need.Optional) ?? "",
            Invented = fields.YesNo("invented", "Yes for data made up for demonstration or practice.", Need.Optional) ?? false,
            Date = fields.Date("date", "Day it was done.", Need.Optional),
            Place = fields.Text("place", "Where it was done.", Need.Optional) ?? "",
            People = fields.Text("people", "Who did it, names or initials separated by commas.", Need.Optional) ?? "",
            Units = fields.Choice(
                "units", "Units of numbers written without one; without this every number needs its unit.",
                SheetWords.UnitSystems, Need.Optional),
            Spreader = fields.Group("spreader", "The spreader.", SpreaderId, Need.Optional)?.Id ?? "",
            Probability = SheetReader.Share(
                fields, "probability", "Coverage probability of the intervals; 95 % when left out.", 0.5, 0.999)?.Si ?? 0.95,
            Note = fields.Notes("note", "Anything else.") ?? "",
        };
    }

    private static SpreaderName? SpreaderId(Fields fields) =>
        fields.Text("id", "Its number or name.", maxLength: 60) is { } id ? new(id) : null;

    private sealed record SpreaderName(string Id);
}
