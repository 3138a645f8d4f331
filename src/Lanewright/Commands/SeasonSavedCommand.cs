using System.CommandLine;
using Lanewright.Documents;
using Lanewright.Office;
using Lanewright.Storage;

namespace Lanewright.Commands;

/// <summary><c>lanewright season saved</c>: what this season's calibrations saved, from the records, with what is assumed.</summary>
internal static class SeasonSavedCommand
{
    internal static Command Make()
    {
        var pdf = new Option<string?>("--pdf") { Description = "Also write the report as PDF." };
        var xlsx = new Option<string?>("--xlsx") { Description = "Also write the report as a spreadsheet." };
        var parquet = new Option<string?>("--parquet") { Description = "Also write the report as Parquet." };
        var paper = new Option<string>("--paper") { Description = "Paper of the PDF: a4 or letter.", DefaultValueFactory = _ => "letter" };
        paper.AcceptOnlyFromAmong("a4", "letter");
        var data = RecordsOptions.Data();
        var command = new Command("saved", "Tons, chloride and money that calibration saved this season, from the records.") { pdf, xlsx, parquet, paper, data };
        command.SetAction((parsed, stop) => LogsCommand.ToldAsync(parsed, () => RecordsOptions.WithStoreAsync(parsed, data, null, async store =>
        {
            var (output, error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
            if (CommonOptions.LanguageOf(parsed, Core.Text.Language.English, error) is not { } language) return CommonOptions.CouldNotRead;
            OfficeLanguage.Speak(language);
            using var office = new OfficeData(store, TimeProvider.System);
            var report = (await new OfficeReports(office).MakeAsync("saved", stop))!;
            ReportFiles.Print(report, output);
            if (!await ReportFiles.WriteAsync(report, parsed.GetValue(pdf), parsed.GetValue(xlsx), parsed.GetValue(paper) == "a4" ? Paper.A4 : Paper.Letter, error, stop))
                return CommonOptions.CouldNotRead;
            if (parsed.GetValue(parquet) is { } table) ReportTable.WriteParquet(table, report);
            return CommonOptions.Answered;
        }, stop, Opening.Existing)));
        return command;
    }
}
