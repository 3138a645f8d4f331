using System.Globalization;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Tests.Quantities;

/// <summary>Holds the tables of <c>docs/method/quantities.md</c> to the program, and the program to them.</summary>
public sealed class MethodPageTests
{
    private static readonly Dictionary<string, string[]> Rows = ReadUnitRows();

    public static TheoryData<string> Symbols => [.. Units.All.Select(unit => unit.Symbol)];

    [Fact]
    public void The_page_has_every_unit_and_no_other() =>
        Assert.Equal(Units.All.Select(unit => unit.Symbol).Order(), Rows.Keys.Order());

    [Theory]
    [MemberData(nameof(Symbols))]
    public void The_page_has_the_factor_that_is_used(string symbol)
    {
        var unit = Units.Find(symbol)!;
        var cells = Rows[symbol];
        var factor = cells[1].Split('/').Select(Exact).ToArray();
        var expected = factor.Length == 1 ? factor[0] : factor[0] / factor[1];
        Assert.Equal((double)expected, unit.DifferenceToSi(1), (double)expected * 4e-16);
        if (unit.Dimension == Dimension.Temperature)
            Assert.Equal((double)(Exact(cells[2]) * expected), unit.ToSi(0), 1e-13);
    }

    private static decimal Exact(string text) => decimal.Parse(text.Trim(), CultureInfo.InvariantCulture);

    private static Dictionary<string, string[]> ReadUnitRows()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "Lanewright.slnx")))
            folder = folder.Parent;
        return File.ReadLines(Path.Combine(folder.FullName, "docs", "method", "quantities.md"))
            .SkipWhile(line => line != "## Units")
            .TakeWhile(line => line != "## Numbers as text")
            .Where(line => line.StartsWith("| ", StringComparison.Ordinal))
            .Select(line => line.Trim('|', ' ').Split(" | "))
            .Where(cells => cells[0] != "unit")
            .ToDictionary(cells => cells[0]);
    }
}
