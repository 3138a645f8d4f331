using System.Globalization;
using System.Text;
using Lanewright.Core.Text;
using Lanewright.Logs.Store;

namespace Lanewright.Logs.Applied;

/// <summary>A ledger as a file; values in SI.</summary>
public static class AppliedFile
{
    private const string Columns =
        "name,mass_kg,u_kg,expanded_kg,target_kg,applied_on_target_kg,driven_m,seconds,over_s,under_s,rows,gaps,resets,counts_without_constant,constants";

    /// <summary>Writes CSV; the last line, named in <c>name</c> as "all", is the sum.</summary>
    /// <exception cref="LogException">The file cannot be written.</exception>
    public static void WriteCsv(string path, AppliedAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        try
        {
            using var writer = new StreamWriter(path, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { NewLine = "\n" };
            writer.WriteLine(Columns);
            foreach (var line in answer.Lines.Append(answer.Total with { Name = "all" }))
                writer.WriteLine('"' + line.Name.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"," + string.Join(',', Numbers(line).Select(n => n.ToString("R", CultureInfo.InvariantCulture))));
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw new LogException($"{Excerpt.Of(path, 200)} could not be written: {wrong.Message}", wrong);
        }
    }

    /// <summary>Writes Parquet, without the sum.</summary>
    /// <exception cref="LogException">The file cannot be written.</exception>
    public static void WriteParquet(string path, AppliedAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        using var engine = Engine.Open(Path.GetTempPath());
        var columns = Columns.Split(',');
        engine.Run($"CREATE TABLE ledger (name VARCHAR, {string.Join(", ", columns[1..].Select(c => c + " DOUBLE"))})");
        foreach (var some in answer.Lines.Select(line => $"({Engine.Text(line.Name)}, {string.Join(", ", Numbers(line).Select(Engine.Number))})").Chunk(500))
            engine.Run("INSERT INTO ledger VALUES " + string.Join(", ", some));
        engine.Run($"COPY ledger TO {Engine.Text(path)} (FORMAT parquet)");
    }

    private static double[] Numbers(AppliedLine line) =>
    [
        line.Mass.Value, line.Mass.StandardUncertainty, line.Expanded, line.TargetMass, line.AppliedOnTarget, line.Metres, line.Seconds, line.OverSeconds,
        line.UnderSeconds, line.Rows, line.Gaps, line.Resets, line.CountsWithoutConstant, line.Constants,
    ];
}
