using Lanewright.App.Tests.Languages;
using Lanewright.Core.Text;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Tokens;

namespace Lanewright.App.Tests.Papers;

/// <summary>Papers as another library (PdfPig) reads them back, and what every paper must hold.</summary>
internal static class ReadPaper
{
    /// <summary>Everything on the paper, words parted by one blank, in the order in which they were set.</summary>
    public static string Text(PdfDocument pdf) => string.Join(' ', pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text));

    /// <summary>The language that the file names.</summary>
    public static string LanguageOf(PdfDocument pdf)
    {
        Assert.True(pdf.Structure.Catalog.CatalogDictionary.TryGet(NameToken.Create("Lang"), out var language));
        return language switch { StringToken text => text.Data, HexToken text => text.Data, _ => "" };
    }

    /// <summary>Fails when a letter lies outside of the margins, or text upon other text.</summary>
    public static void NothingOverflows(PdfDocument pdf, double margin)
    {
        foreach (var page in pdf.GetPages())
        {
            var outside = page.Letters.Where(letter =>
                letter.BoundingBox.Left < margin || letter.BoundingBox.Right > page.Width - margin || letter.BoundingBox.Bottom < margin / 2
                || letter.BoundingBox.Top > page.Height - (margin / 2)).Select(letter => letter.Value);
            Assert.Equal("", string.Concat(outside));
            var words = page.GetWords().Where(word => word.BoundingBox.Width > 0).ToList();
            for (var i = 0; i < words.Count; i++)
                for (var k = i + 1; k < words.Count; k++)
                    Assert.False(Overlap(words[i], words[k]), $"page {page.Number}: '{words[i].Text}' lies upon '{words[k].Text}'");
        }
    }

    /// <summary>Fails when a text that the tables have in this language stands in English.</summary>
    /// <param name="text">What the paper says.</param>
    /// <param name="language">Its language.</param>
    /// <param name="typed">What people typed, in whatever language.</param>
    public static void NoEnglishIsLeft(string text, Language language, params string[] typed)
    {
        if (language == Language.English) return;
        foreach (var one in typed.Where(one => one.Length > 0)) text = text.Replace(one, "", StringComparison.Ordinal);
        Spoken.BringTables();
        var left = language.Table.Where(one => one.Key != one.Value && !one.Key.Contains('{', StringComparison.Ordinal) && Spoken.IsProse(one.Key)
            && one.Key.Length > 8 && text.Contains(one.Key, StringComparison.Ordinal)).Select(one => one.Key);
        Assert.Equal("", string.Join(" | ", left));
    }

    // Two texts may touch; boxes of letters reach a little over the letters.
    private static bool Overlap(Word a, Word b) =>
        Math.Min(a.BoundingBox.Right, b.BoundingBox.Right) - Math.Max(a.BoundingBox.Left, b.BoundingBox.Left) > 1
        && Math.Min(a.BoundingBox.Top, b.BoundingBox.Top) - Math.Max(a.BoundingBox.Bottom, b.BoundingBox.Bottom) > 1;
}
