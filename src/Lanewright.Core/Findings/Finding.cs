using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Findings;

/// <summary>One number or word inside a finding, named as its text template names it.</summary>
/// <param name="Name">The placeholder in the template.</param>
/// <param name="Si">The number in SI, or NaN when the value is a word.</param>
/// <param name="Dimension">What the number measures; it decides the unit in which it is shown.</param>
/// <param name="Word">The word, or null when the value is a number.</param>
/// <param name="Term">The word as a text of the code, said in the reader's language; null for a number and for what a
/// person typed.</param>
public readonly record struct FindingValue(string Name, double Si, Dimension Dimension, string? Word, Phrase? Term = null)
{
    /// <summary>A number.</summary>
    public static FindingValue Number(string name, double si, Dimension dimension) => new(name, si, dimension, null);

    /// <summary>A word that a person typed or a file holds, shown as it is.</summary>
    public static FindingValue Text(string name, string word) => new(name, double.NaN, Dimension.Fraction, word);

    /// <summary>A word of the program's own, shown in the reader's language.</summary>
    public static FindingValue Said(string name, Phrase term)
    {
        ArgumentNullException.ThrowIfNull(term);
        return new(name, double.NaN, Dimension.Fraction, term.ToString(), term);
    }
}

/// <summary>
/// Something the technician must know: a stable code, how much it matters, the field it is about, and the numbers.
/// The words come from the catalogue (<see cref="FindingKind"/>) when it is shown, in the reader's units.
/// </summary>
/// <param name="Kind">What was found.</param>
/// <param name="Severity">How much it matters here.</param>
/// <param name="Field">Path of the field in the sheet, e.g. <c>runs[2].pulses</c>; empty when it is about the whole.</param>
/// <param name="Values">The numbers and words of the text.</param>
public sealed record Finding(FindingKind Kind, Severity Severity, string Field, IReadOnlyList<FindingValue> Values)
{
    /// <summary>The stable code, e.g. <c>run.few-pulses</c>.</summary>
    public string Code => Kind.Code;
}
