using Lanewright.App.Tests.Commands;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Tests;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Files;
using UglyToad.PdfPig;

namespace Lanewright.App.Tests.Papers;

/// <summary>Every paper in every language: it holds the record figure by figure, no English is left, nothing overflows.</summary>
[Trait("culture", "own")]
public sealed class PaperLanguageTests
{
    private static readonly DateTimeOffset Issued = new(2026, 11, 25, 12, 34, 0, TimeSpan.Zero);

    // 60 letters and more, some of them wide and some of them accented.
    private static readonly string Long = string.Concat(Enumerable.Repeat("Épandeuse-Öljylämmitin-WM ", 4)).Trim();
    private static readonly string Unbroken = new('W', 64);

    public static TheoryData<string, string> Everything
    {
        get
        {
            var all = new TheoryData<string, string>();
            foreach (var language in Language.All)
                foreach (var name in CertificateTests.DropTests.Concat(CertificateTests.Others).Select(row => row.Data)) all.Add(name, language.Code);
            return all;
        }
    }

    public static TheoryData<string> Languages => [.. Language.All.Select(language => language.Code)];

    public static TheoryData<string, string> Cards
    {
        get
        {
            var all = new TheoryData<string, string>();
            foreach (var language in Language.All)
                foreach (var name in (string[])["hr-104-rate-card.yaml", "hr-117-rate-card.yaml"]) all.Add(name, language.Code);
            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Everything))]
    public void A_certificate_holds_the_record_figure_by_figure_in_each_language(string name, string code)
    {
        foreach (var (culture, units, paper) in ((TextCulture, UnitPreferences, Paper)[])
            [(CultureOf(code), UnitPreferences.UnitedStates, Paper.Letter), (CultureOf(code), UnitPreferences.Metric, Paper.A4)])
        {
            if (CertificateTests.Of(name, CertificateTests.Context(culture, units)) is not { } certificate) continue;
            using var pdf = PdfDocument.Open(CertificatePdf.Draw(certificate, paper));
            var text = ReadPaper.Text(pdf);
            ReadPaper.NothingOverflows(pdf, 40);
            ReadPaper.NoEnglishIsLeft(text, culture.Language, [certificate.Name, .. certificate.Scales.Select(scale => scale.Name)]);
            Assert.Equal(culture.Name, ReadPaper.LanguageOf(pdf));
            Assert.Contains(culture.Language.Code switch { "fr" => "Procès-verbal d'étalonnage", "fi" => "Kalibrointipöytäkirja", _ => "Calibration record" }, text, StringComparison.Ordinal);
            var pages = pdf.NumberOfPages;
            Assert.Contains(
                culture.Language.Code switch { "fr" => $"Page {pages} sur {pages}", "fi" => $"Sivu {pages}/{pages}", _ => $"Page {pages} of {pages}" }, text, StringComparison.Ordinal);
            var words = text.Split(' ').ToHashSet(StringComparer.Ordinal);
            foreach (var said in certificate.Results.SelectMany(result => new[] { culture.Say(result.Name), result.Text })
                .Concat(certificate.Tables.SelectMany(table => table.Headings.Concat(table.Rows.SelectMany(row => row))))
                .Concat(certificate.Lines).Concat(certificate.Deviations).Concat(certificate.Method).Append(certificate.KindName))
                foreach (var part in said.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)) Assert.Contains(part, words);
            // Text that is tagged is text that a screen reader finds: all of it, but the artifacts at the foot.
            var tagged = pdf.GetPages().SelectMany(page => page.GetMarkedContents()).SelectMany(Contents).Sum(content => content.Letters.Count);
            Assert.Equal(pdf.GetPages().Sum(page => page.Letters.Count), tagged);
        }
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void The_longest_names_overflow_nothing(string code)
    {
        var culture = CultureOf(code);
        foreach (var name in (string[])[Long, Unbroken])
        {
            foreach (var (file, units, paper) in ((string, UnitPreferences, Paper)[])
                [("hr-104-closed-loop.json", UnitPreferences.Metric, Paper.A4), ("hr-117-open-loop.yaml", UnitPreferences.UnitedStates, Paper.Letter)])
            {
                var reading = SheetReader.Read(SheetFile.Read(Repository.File("examples", file)));
                var sheet = reading.Value! with
                {
                    Title = name, Place = name, People = [name, name],
                    Spreader = reading.Value!.Spreader with { Id = name, Metering = name },
                    Material = reading.Value!.Material with { Name = name },
                    Scale = reading.Value!.Scale with { Id = name },
                    Runs = [.. reading.Value!.Runs.Select(run => run with { Id = name, Setting = run.Setting.Length > 0 ? name : "" })],
                };
                var context = CertificateTests.Context(culture, units) with
                {
                    Yard = new() { Name = name, Address = name, Customer = name, Accreditation = name },
                    Record = new("0193a1b2-0000-7000-8000-00000000000a", long.MaxValue, new('f', 64)),
                    Decision = new("adopt", name, name, name, name), Zone = "America/Argentina/ComodRivadavia",
                };
                using var pdf = PdfDocument.Open(CertificatePdf.Draw(CertificateMaker.Of(SheetAnalysis.Analyse(sheet), [], context), paper));
                ReadPaper.NothingOverflows(pdf, 40);
                ReadPaper.NoEnglishIsLeft(ReadPaper.Text(pdf), culture.Language);
            }

            foreach (var paper in Enum.GetValues<CardPaper>())
            {
                foreach (var file in (string[])["hr-104-rate-card.yaml", "hr-117-rate-card.yaml"])
                {
                    var card = CardOf(file) with { Spreader = name, Material = name, Gate = name, Constant = "123456.789 pulse/lb", By = name, Record = name };
                    using var pdf = PdfDocument.Open(CabCardPdf.Draw(card, paper, culture, UnitPreferences.Metric));
                    ReadPaper.NothingOverflows(pdf, 20);
                }
            }

            var report = new ReportSheet(
                "x", name, $"{name} {name}", [new(name), new(name, true), new(name), new(name), new(name), new(name)],
                [.. Enumerable.Repeat((IReadOnlyList<ReportSheetCell>)[name, new("1", 1), name, name, name, ""], 30)]) { Culture = culture };
            using var drawn = PdfDocument.Open(ReportPdf.Draw(report, name, Issued, Paper.A4));
            ReadPaper.NothingOverflows(drawn, 40);
            Assert.Equal(culture.Name, ReadPaper.LanguageOf(drawn));
        }
    }

    [Theory]
    [MemberData(nameof(Cards))]
    public void A_card_holds_its_figures_in_each_language(string name, string code)
    {
        var culture = CultureOf(code);
        var card = CardOf(name);
        foreach (var (units, paper) in ((UnitPreferences, CardPaper)[])[(UnitPreferences.UnitedStates, CardPaper.Letter), (UnitPreferences.Metric, CardPaper.A5)])
        {
            using var pdf = PdfDocument.Open(CabCardPdf.Draw(card, paper, culture, units));
            Assert.Equal(1, pdf.NumberOfPages);
            ReadPaper.NothingOverflows(pdf, 20);
            var text = ReadPaper.Text(pdf);
            ReadPaper.NoEnglishIsLeft(text, culture.Language);
            Assert.Equal(culture.Name, ReadPaper.LanguageOf(pdf));
            var words = text.Split(' ').ToHashSet(StringComparer.Ordinal);
            foreach (var part in card.Table.Rows.SelectMany(row => row.Select((cell, i) => cell.Text(card.Table.Columns[i], culture, units))).SelectMany(cell => cell.Split(' ')))
                Assert.Contains(part, words);
            if (code == "en") continue;
            Assert.DoesNotMatch(@"\d\.\d", text);
            var results = CertificateTests.Of(name, CertificateTests.Context(culture, units))!.Results.Select(result => culture.Say(result.Name));
            Assert.DoesNotMatch(@"\d\.\d", string.Join(' ', results));
        }
    }

    [Theory]
    [InlineData("fr-CA", "Procès-verbal d'étalonnage", "Sûr à ± 1,4 %")]
    [InlineData("fi-FI", "Kalibrointipöytäkirja", "Tarkkuus ± 1,4 %")]
    [InlineData("en-US", "Calibration record", "Sure to ± 1.4 %")]
    public void The_commands_follow_the_culture(string culture, string title, string sure)
    {
        using var first = new TemporaryFile("", ".pdf");
        using var second = new TemporaryFile("", ".xml");
        using var third = new TemporaryFile("", ".pdf");
        var (certificate, xml, card) = (first.Path, second.Path, third.Path);
        var sheet = Repository.File("examples", "hr-104-check.yaml");
        Assert.Equal(0, CommandLine.Run("certificate", sheet, "--culture", culture, "--out", certificate).Code);
        Assert.Equal(0, CommandLine.Run("certificate", sheet, "--culture", culture, "--out", xml).Code);
        Assert.Equal(0, CommandLine.Run("card", Repository.File("examples", "calibrations", "hr-104-rate-card.yaml"), "--culture", culture, "--out", card).Code);
        using var one = PdfDocument.Open(certificate);
        Assert.Contains(title, ReadPaper.Text(one), StringComparison.Ordinal);
        Assert.Contains($"<dcc:usedLangCodeISO639_1>{culture[..2]}<", File.ReadAllText(xml), StringComparison.Ordinal);
        using var other = PdfDocument.Open(card);
        Assert.Contains(sure, ReadPaper.Text(other), StringComparison.Ordinal);
        // The words apart from the numbers.
        Assert.Equal(0, CommandLine.Run("certificate", sheet, "--culture", culture, "--language", "en", "--out", certificate).Code);
        using var english = PdfDocument.Open(certificate);
        Assert.Contains("Calibration record", ReadPaper.Text(english), StringComparison.Ordinal);
    }

    private static IEnumerable<UglyToad.PdfPig.Content.MarkedContentElement> Contents(UglyToad.PdfPig.Content.MarkedContentElement element) =>
        element.Children.SelectMany(Contents).Prepend(element);

    private static TextCulture CultureOf(string code) => code switch { "fr" => TextCulture.CanadianFrench, "fi" => TextCulture.Finnish, _ => TextCulture.UnitedStates };

    private static CabCard CardOf(string name) =>
        Calibration.Read(SheetFile.Read(Repository.File("examples", "calibrations", name)), RateCard.Kind).Value!.Analyse().Card!;
}
