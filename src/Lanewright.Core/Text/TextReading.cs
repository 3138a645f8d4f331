using Lanewright.Core.Quantities;

namespace Lanewright.Core.Text;

/// <summary>One meaning that a text may have.</summary>
/// <param name="Value">The value it would be.</param>
/// <param name="Unit">The unit it would be in, or null for a plain number.</param>
/// <param name="Words">The meaning written out; read as that quantity, the words have this meaning and no other.
/// </param>
/// <typeparam name="T">What was asked for.</typeparam>
public sealed record TextChoice<T>(T Value, Unit? Unit, string Words);

/// <summary>A number with its unit, as it was typed.</summary>
/// <param name="Value">The number, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit.</param>
public readonly record struct Amount(double Value, Unit Unit)
{
    /// <summary>The value in SI.</summary>
    public double Si => Unit.ToSi(Value);
}

/// <summary>What came of reading a text: exactly one of a value, a question and a problem.</summary>
/// <typeparam name="T">What was asked for.</typeparam>
public sealed class TextReading<T>
{
    private readonly T? value;

    private TextReading(
        TextOutcome outcome, T? value, Unit? unit, IReadOnlyList<TextChoice<T>> choices, TextProblem problem,
        string read, Phrase expected)
    {
        Outcome = outcome;
        this.value = value;
        Unit = unit;
        Choices = choices;
        Problem = problem;
        Read = read;
        Wanted = expected;
    }

    /// <summary>What came of it.</summary>
    public TextOutcome Outcome { get; }

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">The outcome is not a value.</exception>
    public T Value => Outcome == TextOutcome.Value
        ? value!
        : throw new InvalidOperationException("The text was not read as one value; look at the outcome first.");

    /// <summary>The unit that the value was typed in, or null for a plain number and when there is no value.</summary>
    public Unit? Unit { get; }

    /// <summary>The possible meanings of a question, two or more; otherwise empty.</summary>
    public IReadOnlyList<TextChoice<T>> Choices { get; }

    /// <summary>What is wrong, or <see cref="TextProblem.None"/>.</summary>
    public TextProblem Problem { get; }

    /// <summary>The part of the text that the outcome is about, shortened if it is long.</summary>
    public string Read { get; }

    /// <summary>For a problem, what was expected, in plain English with the culture's marks; otherwise empty.</summary>
    public string Expected => Wanted.ToString();

    /// <summary>What was expected, to be said in the reader's language.</summary>
    public Phrase Wanted { get; }

    /// <summary>The value, if there is one.</summary>
    public bool TryGet(out T result)
    {
        result = Outcome == TextOutcome.Value ? value! : default!;
        return Outcome == TextOutcome.Value;
    }

    internal static TextReading<T> Of(IReadOnlyList<TextChoice<T>> meanings, string read) =>
        meanings.Count == 1
            ? new(TextOutcome.Value, meanings[0].Value, meanings[0].Unit, [], TextProblem.None, read, "")
            : new(TextOutcome.Question, default, null, meanings, TextProblem.None, read, "");

    internal static TextReading<T> Failed(TextProblem problem, string read, Phrase expected) =>
        new(TextOutcome.Problem, default, null, [], problem, read, expected);
}
