using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Register;
using Lanewright.Core.Spreading;
using Lanewright.Core.Tests;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Files;
using Lanewright.Proof;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Lanewright.App.Tests.Commands;

/// <summary>
/// Certificates read back from the PDF by a library of its own (PdfPig). What must be on them: ISO/IEC 17025:2017, 7.8.2 and 7.8.4,
/// from memory, and NIST SOP 1 (see docs/formats/certificate.md).
/// </summary>
public sealed class CertificateTests
{
    private static readonly DateTimeOffset Issued = new(2026, 11, 25, 12, 34, 0, TimeSpan.Zero);

    /// <summary>Three languages, US and SI, decimal point and comma.</summary>
    public static IReadOnlyList<(TextCulture Culture, UnitPreferences Units)> Readers { get; } =
    [
        .. new[] { TextCulture.UnitedStates, TextCulture.French, TextCulture.CanadianFrench, TextCulture.Finnish, TextCulture.UnitedStates.In(Language.Finnish) }
            .SelectMany(culture => new[] { (culture, UnitPreferences.UnitedStates), (culture, UnitPreferences.Metric) }),
    ];

    public static TheoryData<string> DropTests => ["hr-104-check.yaml", "hr-104-closed-loop.json", "hr-117-open-loop.yaml", "hr-121-weighed-truck.csv", "fm-03-closed-loop.yaml"];

    public static TheoryData<string> Others =>
        [.. Directory.GetFiles(Repository.File("examples", "calibrations")).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(DropTests))]
    public void Every_figure_of_a_test_stands_on_its_certificate(string name)
    {
        var tree = SheetFile.Read(Repository.File("examples", name));
        var reading = SheetReader.Read(tree);
        var report = SheetAnalysis.Analyse(reading.Value!);
        if (CertificateMaker.Refusal(report.Usable, report.Sheet.Date) is not null)
        {
            Assert.False(report.Usable);
            return;
        }

        foreach (var (units, culture, paper) in ((UnitPreferences, TextCulture, Paper)[])
            [(UnitPreferences.UnitedStates, TextCulture.UnitedStates, Paper.Letter), (UnitPreferences.Metric, TextCulture.German, Paper.A4)])
        {
            var certificate = CertificateMaker.Of(report, reading.Findings, Context(culture, units));
            using var pdf = PdfDocument.Open(CertificatePdf.Draw(certificate, paper));
            var words = WordsOf(pdf);
            Assert.InRange(pdf.NumberOfPages, 1, 2 + ((report.Results.Count - 1) / 2));
            Within(pdf);
            foreach (var result in report.Results)
            {
                var (value, expanded) = QuantityText.WriteTogether(result.Value.Value, result.Expanded, result.Unit, culture);
                Holds(words, value, expanded);
                foreach (var run in result.Runs)
                {
                    Holds(words, run.Id, QuantityText.WriteValue(run.Ratio, result.Unit, culture, NumberForm.Significant(4)));
                    Holds(words, QuantityText.WriteTogether(run.Net.Value, run.Net.StandardUncertainty, units[Dimension.Mass], culture).Value);
                }

                Holds(words, QuantityText.WriteNumber(result.Expanded / result.Value.StandardUncertainty, culture, NumberForm.Decimals(2)));
                if (result.Delivery is { } delivery) Holds(words, PercentText.Write(delivery.Tolerance, culture));
            }

            var text = string.Join(' ', words);
            var sheet = report.Sheet;
            foreach (var needed in (string[])
                [
                    "In-house record: not issued under an accreditation.", sheet.Spreader.Id, sheet.Material.Name, sheet.Scale.Id, certificate.Number,
                    "2026-11-25 12:34 UTC", sheet.Date!.Value.ToString("yyyy-MM-dd", null), "signature",
                    "relates only to the item", "End of the document.", $"Page {pdf.NumberOfPages} of {pdf.NumberOfPages}",
                ])
                Assert.Contains(needed, text, StringComparison.Ordinal);
            Holds(words, "Hollin Ridge County, Road Department,");
            foreach (var finding in report.Findings) Assert.Contains($"({finding.Code})", text, StringComparison.Ordinal);
            Assert.Contains(certificate.Number, pdf.Information.Title, StringComparison.Ordinal);
            Assert.Equal("Hollin Ridge County, Road Department", pdf.Information.Author);
            Assert.Contains(sheet.Spreader.Id, pdf.Information.Subject, StringComparison.Ordinal);
            Assert.Contains("20261125123400", pdf.Information.CreationDate, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Others))]
    public void Every_figure_of_another_calibration_stands_on_its_certificate(string name)
    {
        var tree = SheetFile.Read(Repository.File("examples", "calibrations", name));
        var report = Calibration.Read(tree, Calibration.KindOf(tree)!).Value!.Analyse();
        if (report.Head.Date is null) return;
        foreach (var units in (UnitPreferences[])[UnitPreferences.UnitedStates, UnitPreferences.Metric])
        {
            using var pdf = PdfDocument.Open(CertificatePdf.Draw(CertificateMaker.Of(report, [], Context(TextCulture.UnitedStates, units)), Paper.A4));
            Within(pdf);
            var words = WordsOf(pdf);
            foreach (var figure in report.Figures) Holds(words, figure.Text(TextCulture.UnitedStates, units));
            foreach (var table in report.Tables)
                foreach (var row in table.Rows)
                    for (var i = 0; i < row.Count; i++) Holds(words, row[i].Text(table.Columns[i], TextCulture.UnitedStates, units));
            foreach (var scale in report.Scales) Holds(words, scale.Id + ":");
        }
    }

    [Fact]
    public void The_longest_names_stay_within_the_page()
    {
        var reading = SheetReader.Read(SheetFile.Read(Repository.File("examples", "hr-104-closed-loop.json")));
        var wide = new string('W', 200);
        var sheet = reading.Value! with
        {
            Title = wide,
            Place = string.Join(' ', Enumerable.Repeat("Ylivieska-Hollinmäki", 10)),
            People = [wide, wide],
            Spreader = reading.Value!.Spreader with { Id = wide[..60], Metering = wide },
            Material = reading.Value!.Material with { Name = wide },
            Scale = reading.Value!.Scale with { Id = wide[..60] },
            Runs = [.. reading.Value!.Runs.Select(run => run with { Id = wide[..60], Setting = wide })],
        };
        var context = Context(TextCulture.UnitedStates, UnitPreferences.Metric) with
        {
            Yard = new() { Name = wide[..120], Address = wide, Customer = wide[..120], Accreditation = wide[..120] },
            Record = new(wide[..100], long.MaxValue, new('f', 64)),
            Decision = new("adopt", wide[..100], wide, wide, wide),
            Zone = "America/Argentina/ComodRivadavia",
        };
        foreach (var paper in Enum.GetValues<Paper>())
        {
            using var pdf = PdfDocument.Open(CertificatePdf.Draw(CertificateMaker.Of(SheetAnalysis.Analyse(sheet), [], context), paper));
            Within(pdf);
            Assert.Contains("Calibration certificate", string.Join(' ', WordsOf(pdf)), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_same_content_has_the_same_number_and_another_figure_another_one()
    {
        var reading = SheetReader.Read(SheetFile.Read(Repository.File("examples", "hr-104-closed-loop.json")));
        var report = SheetAnalysis.Analyse(reading.Value!);
        var one = CertificateMaker.Of(report, [], Context(TextCulture.UnitedStates, UnitPreferences.UnitedStates));
        var later = CertificateMaker.Of(report, [], Context(TextCulture.German, UnitPreferences.Metric) with { Issued = Issued.AddDays(3) });
        Assert.Equal(one.Number, later.Number);
        var runs = reading.Value!.Runs;
        var other = SheetAnalysis.Analyse(reading.Value! with { Runs = [runs[0] with { Pulses = PulseCount.FromPulses(runs[0].Pulses!.Value.Pulses + 1) }, .. runs.Skip(1)] });
        Assert.NotEqual(one.Number, CertificateMaker.Of(other, [], Context(TextCulture.UnitedStates, UnitPreferences.UnitedStates)).Number);
    }

    // Certificates that were issued in English keep their numbers: these names are part of what is hashed.
    [Theory]
    [InlineData("hr-104-closed-loop.json", "As found: delivered of what was asked|Calibration constant|To key in")]
    [InlineData("hr-104-check.yaml", "Delivered of what the controller says")]
    [InlineData("hr-117-open-loop.yaml", "Calibration constant at setting 50 %|To key in at setting 50 %|Calibration constant at setting 70 %|To key in at setting 70 %")]
    public void Names_in_the_statement_are_English_in_every_language(string name, string names)
    {
        foreach (var (culture, _) in Readers)
        {
            var certificate = Of(name, Context(culture, UnitPreferences.Metric))!;
            var statement = Statement.Read(Statement.Write(certificate))!;
            Assert.Equal(names.Split('|'), Enumerable.Range(0, certificate.Results.Count).Select(i => statement[$"results[{i}].name"]));
        }
    }

    [Fact]
    public void A_record_has_one_number_and_one_statement_whoever_reads_it()
    {
        foreach (var name in DropTests.Concat(Others).Select(row => row.Data))
        {
            if (Of(name, Context(TextCulture.UnitedStates, UnitPreferences.UnitedStates)) is not { } first) continue;
            var statement = Statement.Read(Statement.Write(first))!;
            foreach (var (culture, units) in Readers)
            {
                var other = Of(name, Context(culture, units) with { Issued = Issued.AddDays(1) })!;
                Assert.Equal(first.Number, other.Number);
                Assert.Empty(Statement.Differences(statement, Statement.Read(Statement.Write(other))!));
            }
        }
    }

    [Theory]
    [InlineData("certificate.txt", "ends in .pdf or .xml")]
    [InlineData("no-such-folder/certificate.pdf", "cannot be written")]
    public void A_file_that_cannot_be_written_is_said(string to, string what)
    {
        var run = CommandLine.Run("certificate", Repository.File("examples", "hr-104-closed-loop.json"), "--out", to);
        Assert.Equal(1, run.Code);
        Assert.Contains(what, run.Errors, StringComparison.Ordinal);
        Assert.False(File.Exists(to));
    }

    [Fact]
    public void A_sheet_that_must_not_be_used_or_has_no_day_makes_no_certificate()
    {
        var target = Path.Combine(Path.GetTempPath(), $"certificate-{Guid.NewGuid():N}.pdf");
        var none = CommandLine.Run("certificate", Repository.File("examples", "calibrations", "film-at-five-below.yaml"), "--out", target);
        Assert.Equal(2, none.Code);
        Assert.Contains("needs the day of the work", none.Errors, StringComparison.Ordinal);
        Assert.False(File.Exists(target));
    }

    internal static Certificate? Of(string name, CertificateContext context)
    {
        var folder = File.Exists(Repository.File("examples", name)) ? Repository.File("examples") : Repository.File("examples", "calibrations");
        return CertificateRoad.Of(SheetFile.Read(Path.Combine(folder, name)), context).Certificate;
    }

    internal static CertificateContext Context(TextCulture culture, UnitPreferences units) => new(
        new YardFacts { Name = "Hollin Ridge County, Road Department", Address = "1 Quarry Road" }, null, Issued, "0.0.0", culture, units);

    private static List<string> WordsOf(PdfDocument pdf) => [.. pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text)];

    private static void Holds(List<string> words, params string[] texts)
    {
        foreach (var part in texts.SelectMany(text => text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))) Assert.Contains(part, words);
    }

    private static void Within(PdfDocument pdf)
    {
        foreach (Page page in pdf.GetPages())
        {
            Assert.All(page.Letters, letter => Assert.InRange(letter.BoundingBox.Left, 40, page.Width));
            Assert.All(page.Letters, letter => Assert.InRange(letter.BoundingBox.Right, 40, page.Width - 40));
            Assert.All(page.Letters, letter => Assert.InRange(letter.BoundingBox.Bottom, 20, page.Height - 40));
        }
    }
}
