using System.Security;
using System.Text;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Text;

namespace Lanewright.Files;

/// <summary>Reads a sheet from a file in any of the three syntaxes. What goes wrong is a finding, never an exception.</summary>
public static class SheetFile
{
    /// <summary>
    /// Reads a file. Its syntax follows from its ending (.json, .yaml, .yml, .csv, .tsv) or, with another one, from how
    /// the text begins. A file over <see cref="SheetLimits.Bytes"/> is refused before it is read.
    /// </summary>
    public static SheetTree Read(string path, IReadOnlyList<CsvTable>? tables = null)
    {
        ArgumentNullException.ThrowIfNull(path);
        try
        {
            if (Directory.Exists(path))
                return SheetTree.Refused(ReadFindings.IsFolder.At("", FindingValue.Text("file", Excerpt.Of(path, 200))));

            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            if (file.CanSeek && SheetText.Oversize(file.Length) is { } tooLarge) return SheetTree.Refused(tooLarge);
            return Read(file, ByEnding(path), tables);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or SecurityException
            or NotSupportedException or ArgumentException)
        {
            return SheetTree.Refused(Failure(error, path));
        }
    }

    /// <summary>What it means to the person that the system could not read a file.</summary>
    public static Finding Failure(Exception error, string path)
    {
        ArgumentNullException.ThrowIfNull(error);
        var name = FindingValue.Text("file", Excerpt.Of(path, 200));
        return error switch
        {
            // An impossible name comes as an argument that is not accepted.
            FileNotFoundException or DirectoryNotFoundException or ArgumentException => ReadFindings.NoFile.At("", name),
            UnauthorizedAccessException or SecurityException => ReadFindings.FileDenied.At("", name),
            _ => ReadFindings.FileFailed.At("", name, FindingValue.Text("reason", Excerpt.Of(error.Message, 200))),
        };
    }

    /// <summary>Reads a sheet from a stream, no further than a little over the limit.</summary>
    /// <param name="stream">Where the bytes come from; it stays open.</param>
    /// <param name="syntax">The syntax, or null to tell it from the text.</param>
    /// <param name="tables">The tables of a sheet in CSV; those of a drop test when null.</param>
    /// <exception cref="IOException">The stream fails.</exception>
    public static SheetTree Read(Stream stream, SheetSyntax? syntax = null, IReadOnlyList<CsvTable>? tables = null)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var buffer = new byte[SheetLimits.Bytes + 1];
        var length = stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
        return Read(buffer.AsMemory(0, length), syntax, tables);
    }

    /// <summary>Reads a sheet from bytes in UTF-8; see the other overload for the arguments.</summary>
    public static SheetTree Read(
        ReadOnlyMemory<byte> utf8, SheetSyntax? syntax = null, IReadOnlyList<CsvTable>? tables = null)
    {
        if ((SheetText.Oversize(utf8.Length) ?? SheetText.BadUtf8(utf8.Span)) is { } refusal)
            return SheetTree.Refused(refusal);

        var text = Encoding.UTF8.GetString(utf8.Span).TrimStart('\uFEFF');
        if (string.IsNullOrWhiteSpace(text)) return SheetTree.Refused(ReadFindings.Empty.At(""));
        return (syntax ?? ByContent(text)) switch
        {
            SheetSyntax.Json => JsonTree.Read(utf8),
            SheetSyntax.Yaml => YamlTree.Read(text),
            _ => CsvTree.Read(text, tables ?? CsvTree.DropTestTables),
        };
    }

    /// <summary>The syntax that a file's ending names; null for any other ending.</summary>
    public static SheetSyntax? ByEnding(string path) => Path.GetExtension(path)?.ToUpperInvariant() switch
    {
        ".JSON" => SheetSyntax.Json,
        ".YAML" or ".YML" => SheetSyntax.Yaml,
        ".CSV" or ".TSV" => SheetSyntax.Csv,
        _ => null,
    };

    /// <summary>
    /// The syntax that a text seems to be in. JSON begins with a brace, a bracket or a comment of two slashes; the first
    /// row of CSV has a separator before any colon; anything else is YAML.
    /// </summary>
    public static SheetSyntax ByContent(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            var row = line.Trim();
            if (row.IsEmpty || row[0] == '#') continue;
            if (row[0] is '{' or '[' || row.StartsWith("//") || row.StartsWith("/*")) return SheetSyntax.Json;

            var mark = row.IndexOfAny(",;\t:");
            return CsvSeparator.Declared(row) is not null || (mark >= 0 && row[mark] != ':')
                ? SheetSyntax.Csv
                : SheetSyntax.Yaml;
        }

        return SheetSyntax.Yaml;
    }
}
