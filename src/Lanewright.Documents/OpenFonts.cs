using PdfSharp.Fonts;

namespace Lanewright.Documents;

/// <summary>The one font of all documents, Liberation Sans (SIL Open Font License 1.1), embedded so that they look alike everywhere.</summary>
internal sealed class OpenFonts : IFontResolver
{
    internal const string Family = "Liberation Sans";

    private static readonly Lock Gate = new();

    /// <summary>Names this resolver to the PDF library, once.</summary>
    internal static void Use()
    {
        lock (Gate) GlobalFontSettings.FontResolver ??= new OpenFonts();
    }

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName)
    {
        using var stream = typeof(OpenFonts).Assembly.GetManifestResourceStream(faceName);
        if (stream is null) return null;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        new(isBold ? "LiberationSans-Bold.ttf" : "LiberationSans-Regular.ttf");
}
