using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Calibrations;

/// <summary>
/// What was computed from a calibration's sheet: figures with their intervals, sentences, tables, pictures and findings.
/// Values are in SI; every reader shows them in units and decimal mark of the person's own.
/// </summary>
public sealed class CalibrationReport
{
    private readonly List<Figure> figures = [];
    private readonly List<ReportLine> lines = [];
    private readonly List<ReportTable> tables = [];
    private readonly List<ReportPicture> pictures = [];
    private readonly List<Finding> findings = [];
    private readonly List<Scale> scales = [];

    internal CalibrationReport(CalibrationKind kind, CalibrationHead head)
    {
        Kind = kind;
        Head = head;
    }

    /// <summary>Which calibration it is.</summary>
    public CalibrationKind Kind { get; }

    /// <summary>What the sheet says of itself.</summary>
    public CalibrationHead Head { get; }

    /// <summary>The figures, the most wanted first.</summary>
    public IReadOnlyList<Figure> Figures => figures;

    /// <summary>What they mean, in sentences.</summary>
    public IReadOnlyList<ReportLine> Lines => lines;

    /// <summary>Tables.</summary>
    public IReadOnlyList<ReportTable> Tables => tables;

    /// <summary>Pictures.</summary>
    public IReadOnlyList<ReportPicture> Pictures => pictures;

    /// <summary>The scales behind it; empty for calibrations that weigh nothing.</summary>
    public IReadOnlyList<Scale> Scales => scales;

    /// <summary>The card for the cab; null for calibrations that make none.</summary>
    public CabCard? Card { get; internal set; }

    /// <summary>Everything the technician must know, gravest first.</summary>
    public IReadOnlyList<Finding> Findings => [.. findings.OrderByDescending(f => f.Severity)];

    /// <summary>Whether there is an answer and nothing says stop.</summary>
    public bool Usable => figures.Count > 0 && findings.TrueForAll(f => f.Severity is not Severity.Stop);

    /// <summary>Adds a figure whose interval follows from its error sources.</summary>
    /// <param name="name">What it is, for people.</param>
    /// <param name="value">The value, SI.</param>
    /// <param name="unit">The unit it is always shown in; null for the reader's own unit of <paramref name="dimension"/>.</param>
    /// <param name="dimension">What it measures.</param>
    /// <param name="main">Whether it is a result to be listed and kept, not only an explanation.</param>
    /// <param name="error">The distribution of its error; from its sources when null.</param>
    internal Figure Add(
        Phrase name, Measured value, Dimension dimension, Unit? unit = null, bool main = true, ErrorDistribution? error = null)
    {
        var figure = new Figure(
            name, value, dimension, unit, main, value.Variance == 0 && error is null ? null : Expanded(value, error), Head.Probability);
        figures.Add(figure);
        return figure;
    }

    internal void Say(string template, params FindingValue[] values) => lines.Add(new(template, values));

    internal void Add(ReportTable table) => tables.Add(table);

    internal void Add(ReportPicture picture) => pictures.Add(picture);

    /// <summary>Names a scale behind the report, and looks at it.</summary>
    internal void Add(Scale scale, string field)
    {
        if (!scales.Contains(scale)) scales.Add(scale);
        Add(ScaleCheck.Of(scale, field, Head.Date));
    }

    internal void Add(Finding finding) => findings.Add(finding);

    internal void Add(IEnumerable<Finding> more) => findings.AddRange(more);

    // Known spreads by the distribution of the errors; a spread taken from few observations by the t distribution (GUM G.4).
    private double Expanded(Measured value, ErrorDistribution? error)
    {
        if (error is not null) return error.Coverage(Head.Probability);
        return double.IsPositiveInfinity(WelchSatterthwaite.EffectiveDegreesOfFreedom(value))
            ? ErrorDistribution.Of(value).Coverage(Head.Probability)
            : WelchSatterthwaite.Of(value, Head.Probability).Expanded;
    }
}

/// <summary>One figure of a report.</summary>
/// <param name="Label">What it is, for people.</param>
/// <param name="Value">The value, SI, with its error sources.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Unit">The unit it is always shown in; null for the reader's own.</param>
/// <param name="IsMain">Whether it is a result to be listed and kept.</param>
/// <param name="Expanded">Half the width of its interval, SI; null for a figure that is exact or a mere calculation.</param>
/// <param name="Probability">Coverage probability of the interval.</param>
public sealed record Figure(
    Phrase Label, Measured Value, Dimension Dimension, Unit? Unit, bool IsMain, double? Expanded, double Probability)
{
    /// <summary>What it is, in English.</summary>
    public string Name => Label.ToString();

    /// <summary>The unit a reader sees it in.</summary>
    public Unit UnitFor(UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return Unit ?? units[Dimension];
    }

    /// <summary>The value with its interval as text, e.g. <c>20,011 ± 40 pulse/mile</c>.</summary>
    public string Text(TextCulture culture, UnitPreferences units)
    {
        var unit = UnitFor(units);
        return Expanded is { } u && u > 0
            ? QuantityText.WriteWithUncertainty(Value.Value, u, unit, culture)
            : QuantityText.Write(Value.Value, unit, culture, NumberForm.Significant(4));
    }
}

/// <summary>A sentence with numbers in the reader's units; placeholders as in a finding.</summary>
/// <param name="Template">The sentence; <c>{name}</c> stands for a value.</param>
/// <param name="Values">The values.</param>
public sealed record ReportLine(string Template, IReadOnlyList<FindingValue> Values)
{
    /// <summary>The sentence.</summary>
    public string Text(TextCulture culture, UnitPreferences units) => FindingText.Fill(Template, Values, culture, units);
}

/// <summary>A column of a table.</summary>
/// <param name="Label">Its heading.</param>
/// <param name="Dimension">What its numbers measure; null for words.</param>
/// <param name="Unit">The unit of its numbers; null for the reader's own.</param>
/// <param name="Digits">Significant digits of its numbers.</param>
public sealed record ReportColumn(Phrase Label, Dimension? Dimension = null, Unit? Unit = null, int Digits = 4)
{
    /// <summary>Its heading in English, without the unit.</summary>
    public string Name => Label.ToString();

    /// <summary>The heading with the unit.</summary>
    public string Heading(TextCulture culture, UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(units);
        ArgumentNullException.ThrowIfNull(culture);
        var unit = UnitFor(units);
        var name = culture.Say(Label);
        return unit is null || QuantityText.Symbol(unit, culture) is not { Length: > 0 } symbol ? name : $"{name}, {symbol}";
    }

    /// <summary>The unit a reader sees; null for words.</summary>
    public Unit? UnitFor(UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return Dimension is { } d ? Unit ?? units[d] : null;
    }
}

/// <summary>A cell: a word, a number in SI, or nothing.</summary>
/// <param name="Word">The word; null for a number.</param>
/// <param name="Si">The number, SI; NaN for none.</param>
/// <param name="Unit">A unit of its own, shown beside the number; null for the unit of the column.</param>
/// <param name="Term">The word as a text of the code, said in the reader's language; null for what a person typed.</param>
public readonly record struct ReportCell(string? Word, double Si, Unit? Unit = null, Phrase? Term = null)
{
    /// <summary>A word of the program's own.</summary>
    public static ReportCell Said(Phrase term)
    {
        ArgumentNullException.ThrowIfNull(term);
        return new(term.ToString(), double.NaN, null, term);
    }

    /// <summary>A number.</summary>
    public static implicit operator ReportCell(double si) => new(null, si);

    /// <summary>A word.</summary>
    public static implicit operator ReportCell(string word) => new(word, double.NaN);

    /// <summary>The cell as text.</summary>
    public string Text(ReportColumn column, TextCulture culture, UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(culture);
        if (Term is not null) return culture.Say(Term);
        if (Word is not null) return Word;
        if (!double.IsFinite(Si)) return "";
        if (Unit is { } own) return QuantityText.Write(Si, own, culture, NumberForm.Significant(column.Digits));
        // Counted things have no decimals.
        var isCount = column.Dimension is Dimension.Pulses or Dimension.Revolutions && Math.Floor(Si) == Si;
        var form = isCount ? NumberForm.Decimals(0) : NumberForm.Significant(column.Digits);
        return column.UnitFor(units) is { } unit
            ? QuantityText.WriteValue(Si, unit, culture, form)
            : QuantityText.WriteNumber(Si, culture, form);
    }
}

/// <summary>A table.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, a cell for each column.</param>
public sealed record ReportTable(
    Phrase Title, IReadOnlyList<ReportColumn> Columns, IReadOnlyList<IReadOnlyList<ReportCell>> Rows)
{
    /// <summary>What it shows, in English.</summary>
    public string Caption => Title.ToString();
}

/// <summary>A picture, drawn when somebody looks.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="Svg">Draws it: prefix of its ids, culture, units.</param>
public sealed record ReportPicture(Phrase Title, Func<string, TextCulture, UnitPreferences, string> Svg)
{
    /// <summary>What it shows, in English.</summary>
    public string Name => Title.ToString();
}
