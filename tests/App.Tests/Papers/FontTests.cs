using System.Buffers.Binary;
using Lanewright.App.Tests.Languages;
using Lanewright.Core.Tests;
using Lanewright.Core.Text;

namespace Lanewright.App.Tests.Papers;

/// <summary>The embedded fonts have every letter that the languages need, read from their own tables (OpenType 1.9, cmap, format 4).</summary>
public sealed class FontTests
{
    // The letters of French (Imprimerie nationale, from memory) and of Finnish with those of its foreign words.
    private const string Alphabets = "ÀÂÆÇÉÈÊËÎÏÔŒÙÛÜŸàâæçéèêëîïôœùûüÿ«»’…–—ÅÄÖåäöŠŽšž”\u00A0\u202F°±×÷²³½¼¾·€№%‰µ";

    [Theory]
    [InlineData("LiberationSans-Regular.ttf")]
    [InlineData("LiberationSans-Bold.ttf")]
    public void Every_letter_of_every_language_is_in_the_font(string name)
    {
        Spoken.BringTables();
        var font = File.ReadAllBytes(Repository.File("src", "Lanewright.Documents", "Fonts", name));
        var used = Language.All.SelectMany(language => language.Table.Values).SelectMany(text => text).Concat(Alphabets).Distinct().ToList();
        Assert.True(used.Count > 100);
        // The tick is the yard's, whose pages have the fonts of the device.
        var missing = used.Where(letter => letter != '\u2713' && !char.IsControl(letter) && Glyph(font, letter) == 0).Order();
        Assert.Equal("", string.Concat(missing.Select(letter => $"{letter} U+{(int)letter:X4} ")));
        // The reader of the font itself can fail: no font of Latin letters has this one.
        Assert.Equal(0, Glyph(font, '\u4E00'));
        Assert.NotEqual(Glyph(font, 'é'), Glyph(font, 'e'));
    }

    private static int Glyph(byte[] font, char letter)
    {
        var table = Subtable(font);
        var segments = Word(font, table + 6) / 2;
        for (var i = 0; i < segments; i++)
        {
            var end = table + 14 + (2 * i);
            if (Word(font, end) < letter) continue;
            var start = end + 2 + (2 * segments);
            if (Word(font, start) > letter) return 0;
            var delta = Word(font, start + (2 * segments));
            var place = start + (4 * segments);
            var range = Word(font, place);
            var glyph = range == 0 ? letter : Word(font, place + range + (2 * (letter - Word(font, start))));
            return glyph == 0 ? 0 : (glyph + delta) & 0xFFFF;
        }

        return 0;
    }

    private static int Subtable(byte[] font)
    {
        for (var i = 0; i < Word(font, 4); i++)
        {
            var record = 12 + (16 * i);
            if (!font.AsSpan(record, 4).SequenceEqual("cmap"u8)) continue;
            var cmap = BinaryPrimitives.ReadInt32BigEndian(font.AsSpan(record + 8));
            for (var k = 0; k < Word(font, cmap + 2); k++)
            {
                var at = cmap + BinaryPrimitives.ReadInt32BigEndian(font.AsSpan(cmap + 8 + (8 * k)));
                if (Word(font, at) == 4) return at;
            }
        }

        throw new InvalidDataException("The font has no cmap of format 4.");
    }

    private static int Word(byte[] font, int at) => BinaryPrimitives.ReadUInt16BigEndian(font.AsSpan(at));
}
