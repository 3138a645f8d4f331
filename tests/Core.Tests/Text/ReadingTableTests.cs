using System.Globalization;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Text;

/// <summary>Every row of the tables in every culture, with the thread set to cultures that mislead other parsers.
/// </summary>
public sealed class ReadingTableTests
{
    public static MatrixTheoryData<string, string> Cultures => new(
        TextCulture.All.Select(culture => culture.Name), ["en-US", "de-DE", "tr-TR", "ar-SA"]);

    [Theory]
    [MemberData(nameof(Cultures))]
    public void Numbers_mean_what_the_table_says(string culture, string threadCulture)
    {
        Assert.True(TextCulture.TryFind(culture, out var found));
        var column = found == TextCulture.Invariant ? 3 : found.DecimalMark == ',' ? 2 : 1;
        Check(NumberTable.Rows, 160, column, threadCulture, text => Describe(QuantityText.ReadNumber(text, found)));
    }

    [Theory]
    [MemberData(nameof(Cultures))]
    public void Numbers_with_units_mean_what_the_table_says(string culture, string threadCulture)
    {
        Assert.True(TextCulture.TryFind(culture, out var found));
        var column = (int)found.CustomaryUnits is var customary && customary == 0 ? 3 : customary;
        Check(AmountTable.Rows, 200, column, threadCulture, text => Describe(QuantityText.ReadAny(text, found)));
    }

    private static void Check(
        string table, int atLeast, int column, string threadCulture, Func<string, string> read)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo(threadCulture);
            var rows = table.Split('\n');
            Assert.True(rows.Length >= atLeast, $"{rows.Length} rows");
            Assert.Empty(rows.Select(row => Mismatch(row, column, read)).OfType<string>());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static string? Mismatch(string row, int column, Func<string, string> read)
    {
        var cells = row.Split(" | ");
        Assert.True(cells.Length is 2 or 4, row);
        var text = cells[0].Replace('_', '\u00A0').Replace('~', '\u202F');
        var expected = cells[cells.Length == 2 ? 1 : column];
        var actual = read(text);
        return actual == expected ? null : $"{text}: expected {expected}, was {actual}";
    }

    private static string Describe(TextReading<double> reading) => reading.Outcome switch
    {
        TextOutcome.Value => Plain(reading.Value),
        TextOutcome.Question => string.Join(" or ", reading.Choices.Select(choice => Plain(choice.Value))),
        _ => reading.Problem.ToString(),
    };

    private static string Describe(TextReading<Amount> reading) => reading.Outcome switch
    {
        TextOutcome.Value => Plain(reading.Value),
        TextOutcome.Question => string.Join(" or ", reading.Choices.Select(choice => Plain(choice.Value))),
        _ => reading.Problem.ToString(),
    };

    private static string Plain(Amount amount) => Plain(amount.Value) + " " + amount.Unit.Symbol;

    private static string Plain(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
