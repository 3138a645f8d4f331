using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Calibrations;

/// <summary>One kind of calibration besides the drop test: what its sheet asks and what is computed from it.</summary>
/// <param name="Word">Its word in the sheet's field <c>kind</c>.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Doc">Which question it answers, as a sentence.</param>
/// <param name="Ask">Asks for its own fields; the answer works out the report, or is null when something it needs is
/// missing or wrong.</param>
public sealed record CalibrationKind(
    string Word, string Name, string Doc, Func<Fields, CalibrationHead, Action<CalibrationReport>?> Ask)
{
    /// <summary>Whether its result is a value that is keyed into the controller.</summary>
    public bool IsKeyedIn { get; init; }

    /// <summary>Asks for all fields of the sheet.</summary>
    public CalibrationSheet? Read(Fields fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        fields.Choice<KindMark>("kind", "Which calibration it is.", [new(Word, KindMark.This, Doc)]);
        var head = CalibrationHead.Read(fields);
        return Ask(fields, head) is { } work ? new(this, head, work) : null;
    }

    private enum KindMark
    {
        This,
    }
}

/// <summary>The sheet of a calibration, ready to be worked out.</summary>
/// <param name="Kind">Which calibration.</param>
/// <param name="Head">What it says of itself.</param>
/// <param name="Work">Works out the report.</param>
public sealed record CalibrationSheet(CalibrationKind Kind, CalibrationHead Head, Action<CalibrationReport> Work)
{
    /// <summary>The same sheet, whose numbers are read by now, shown in other units: also in its tables' words.</summary>
    /// <param name="units">The units; null for the sheet's own.</param>
    public CalibrationSheet In(UnitPreferences? units) => units is null
        ? this
        : this with { Head = Head with { Units = ReferenceEquals(units, UnitPreferences.Metric) ? UnitSystem.Si : UnitSystem.UnitedStates } };

    /// <summary>The report: a pure function of the sheet.</summary>
    public CalibrationReport Analyse()
    {
        var report = new CalibrationReport(Kind, Head);
        Work(report);
        return report;
    }
}
