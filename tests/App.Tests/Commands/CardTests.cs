using Lanewright.Core.Calibrations;
using Lanewright.Core.Quantities;
using Lanewright.Core.Tests;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Files;
using UglyToad.PdfPig;

namespace Lanewright.App.Tests.Commands;

/// <summary>The card for the cab, read back from the PDF file.</summary>
public sealed class CardTests
{
    [Theory]
    [InlineData("hr-117-rate-card.yaml", "a5")]
    [InlineData("hr-117-rate-card.yaml", "letter")]
    [InlineData("hr-104-rate-card.yaml", "a5")]
    [InlineData("hr-104-rate-card.yaml", "letter")]
    public void Every_figure_of_the_record_stands_on_the_card_large_enough_and_within_the_page(string name, string paper)
    {
        var target = Path.Combine(Path.GetTempPath(), $"card-{Guid.NewGuid():N}.pdf");
        try
        {
            var run = CommandLine.Run("card", Repository.File("examples", "calibrations", name), "--out", target, "--paper", paper);
            Assert.Equal(0, run.Code);
            using var pdf = PdfDocument.Open(target);
            Assert.Equal(1, pdf.NumberOfPages);
            var page = pdf.GetPage(1);
            var words = page.GetWords().Select(word => word.Text).ToList();
            var card = CardOf(name);
            foreach (var cell in card.Table.Rows.SelectMany(row => row))
                Assert.All(cell.Word!.Split(' '), part => Assert.Contains(part, words));
            Assert.Contains(card.Spreader, words);
            Assert.All(card.Gate.Split(' '), part => Assert.Contains(part, words));
            Assert.All(card.Constant.Split(' ', StringSplitOptions.RemoveEmptyEntries), part => Assert.Contains(part, words));
            Assert.Contains("2027-09-01", words);
            // The smallest type of the table is 12 pt: its words are those of its cells.
            var inTable = card.Table.Rows.SelectMany(row => row).SelectMany(cell => cell.Word!.Split(' ')).ToHashSet();
            var table = page.GetWords().Where(word => inTable.Contains(word.Text)).SelectMany(word => word.Letters).ToList();
            Assert.All(page.Letters, letter => Assert.InRange(letter.BoundingBox.Right, 0, page.Width));
            Assert.All(page.Letters, letter => Assert.InRange(letter.BoundingBox.Bottom, 0, page.Height));
            Assert.True(table.Max(letter => letter.PointSize) >= 12);
            Assert.Equal($"Rate card, spreader {card.Spreader}", pdf.Information.Title);
        }
        finally
        {
            File.Delete(target);
        }
    }

    [Fact]
    public void Long_names_are_made_to_fit()
    {
        var card = CardOf("hr-104-rate-card.yaml") with
        {
            Spreader = "HR-104-EXTRAORDINARILY-LONG-NUMBER-OF-A-SPREADER",
            Material = "white rock salt, treated with magnesium chloride and a corrosion inhibitor, delivered in October, pile of the north shed",
            Gate = "2 13/16 in at the second notch",
            Constant = "123456.789 pulse/lb",
            By = "M.O., T.K., R.V. and two apprentices of the depot",
        };
        using var pdf = PdfDocument.Open(CabCardPdf.Draw(card, CardPaper.A5, TextCulture.UnitedStates, UnitPreferences.UnitedStates));
        var page = pdf.GetPage(1);
        Assert.All(page.Letters, letter => Assert.InRange(letter.BoundingBox.Right, 0, page.Width));
    }

    [Fact]
    public void More_than_a_page_holds_is_refused_in_words()
    {
        var card = CardOf("hr-104-rate-card.yaml");
        var rows = Enumerable.Repeat(card.Table.Rows[0], 40).ToList();
        var wrong = Assert.Throws<ArgumentException>(() => CabCardPdf.Draw(
            card with { Table = card.Table with { Rows = rows } }, CardPaper.A5, TextCulture.UnitedStates, UnitPreferences.UnitedStates));
        Assert.Contains("40 rates", wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Asked_for_si_the_whole_card_is_in_si()
    {
        var target = Path.Combine(Path.GetTempPath(), $"card-{Guid.NewGuid():N}.pdf");
        try
        {
            var sheet = Repository.File("examples", "calibrations", "hr-117-rate-card.yaml");
            Assert.Equal(0, CommandLine.Run("card", sheet, "--out", target, "--units", "si").Code);
            using var pdf = PdfDocument.Open(target);
            var words = pdf.GetPage(1).GetWords().Select(word => word.Text).ToList();
            Assert.Contains(words, word => word.StartsWith("kg/", StringComparison.Ordinal));
            Assert.Contains("km/h", words);
            Assert.DoesNotContain(words, word => word.StartsWith("lb/", StringComparison.Ordinal) || word == "mph");
        }
        finally
        {
            File.Delete(target);
        }
    }

    [Fact]
    public void A_sheet_of_another_kind_makes_no_card()
    {
        var run = CommandLine.Run("card", Repository.File("examples", "hr-104-closed-loop.json"), "--out", "nothing.pdf");
        Assert.NotEqual(0, run.Code);
        Assert.Contains("rate card was expected", run.Errors, StringComparison.Ordinal);
        Assert.False(File.Exists("nothing.pdf"));
    }

    private static CabCard CardOf(string name)
    {
        var tree = SheetFile.Read(Repository.File("examples", "calibrations", name));
        return Calibration.Read(tree, RateCard.Kind).Value!.Analyse().Card!;
    }
}
