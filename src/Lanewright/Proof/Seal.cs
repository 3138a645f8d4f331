using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace Lanewright.Proof;

/// <summary>What a file's seal says.</summary>
/// <param name="PublicKey">The key that sealed it, as in <see cref="YardKey.Public"/>.</param>
/// <param name="Holds">Whether every byte of the file is as it was when it was sealed.</param>
internal sealed record SealReading(string PublicKey, bool Holds);

/// <summary>
/// The seal of a file: a line of text at a place where the file's format allows a comment, with a signature over every other byte of
/// the file and the place of the seal. So there is no byte whose change is not found. See docs/formats/certificate.md.
/// </summary>
internal static class Seal
{
    private const string Mark = "lanewright-seal/1 key=";
    private const string Between = " signature=";
    private const int KeyDigits = 182;
    private const int SignatureDigits = 128;
    private const int Length = 22 + KeyDigits + 11 + SignatureDigits;
    private const int Tail = 4096;

    /// <summary>A PDF file with its statement and its seal in comments before its last cross-reference.</summary>
    internal static byte[] Pdf(byte[] pdf, byte[] statement, YardKey key)
    {
        var at = pdf.AsSpan().LastIndexOf("startxref"u8);
        if (at < 0) throw new ArgumentException("A PDF file was expected.", nameof(pdf));
        byte[] before = [.. pdf[..at], .. Encoding.ASCII.GetBytes($"%{SealedStatement.Line(statement)}\n%")];
        return Bytes(before, [.. "\n"u8, .. pdf[at..]], key);
    }

    /// <summary>An XML file with its statement and its seal in comments at its end.</summary>
    internal static byte[] Xml(byte[] xml, byte[] statement, YardKey key) =>
        Bytes([.. xml, .. Encoding.ASCII.GetBytes($"<!--{SealedStatement.Line(statement)}-->\n<!--")], [.. "-->\n"u8], key);

    /// <summary>Puts the seal of a zip file into its own comment.</summary>
    internal static void Zip(string path, YardKey key)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.ReadWrite);
        // The record that ends a zip file (APPNOTE 4.3.16) has 22 bytes when it has no comment, whose length is its last field.
        Span<byte> end = stackalloc byte[22];
        file.Position = file.Length - end.Length;
        file.ReadExactly(end);
        if (BinaryPrimitives.ReadUInt32LittleEndian(end) != 0x06054b50 || BinaryPrimitives.ReadUInt16LittleEndian(end[20..]) != 0)
            throw new ArgumentException("A zip file without a comment was expected.", nameof(path));
        BinaryPrimitives.WriteUInt16LittleEndian(end[20..], Length);
        file.Position = file.Length - end.Length;
        file.Write(end);
        file.Position = 0;
        var hash = Hash(file, file.Length, file.Length);
        file.Position = file.Length;
        file.Write(Encoding.ASCII.GetBytes(Text(hash, key)));
        file.Flush(flushToDisk: true);
    }

    /// <summary>What the seal of a file says; null when it has none.</summary>
    internal static SealReading? Read(Stream file)
    {
        var start = Math.Max(0, file.Length - Tail);
        var tail = new byte[file.Length - start];
        file.Position = start;
        file.ReadExactly(tail);
        var at = tail.AsSpan().LastIndexOf(Encoding.ASCII.GetBytes(Mark));
        if (at < 0 || at + Length > tail.Length) return null;
        var text = Encoding.Latin1.GetString(tail, at, Length);
        var publicKey = text.Substring(Mark.Length, KeyDigits);
        var signature = text[^SignatureDigits..];
        if (text.Substring(Mark.Length + KeyDigits, Between.Length) != Between || !IsHex(publicKey) || !IsHex(signature)) return null;
        file.Position = 0;
        var hash = Hash(file, start + at, file.Length, start + at + Length);
        return new(publicKey, YardKey.Verify(publicKey, hash, Convert.FromHexString(signature)));
    }

    private static byte[] Bytes(byte[] before, byte[] after, YardKey key)
    {
        using var all = new MemoryStream();
        all.Write(before);
        all.Write(after);
        all.Position = 0;
        var hash = Hash(all, before.Length, all.Length);
        return [.. before, .. Encoding.ASCII.GetBytes(Text(hash, key)), .. after];
    }

    private static string Text(byte[] hash, YardKey key) => $"{Mark}{key.Public}{Between}{Convert.ToHexStringLower(key.Sign(hash))}";

    // SHA-256 over a name for this use, the place of the seal, and every byte before and after it.
    private static byte[] Hash(Stream file, long place, long length, long? after = null)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData("lanewright-seal/1\n"u8);
        Span<byte> number = stackalloc byte[8];
        BinaryPrimitives.WriteInt64BigEndian(number, place);
        hash.AppendData(number);
        Append(place);
        if (after is { } rest) file.Position = rest;
        Append(length - (after ?? place));
        return hash.GetHashAndReset();

        void Append(long count)
        {
            var buffer = new byte[81920];
            while (count > 0)
            {
                var read = file.Read(buffer, 0, (int)Math.Min(buffer.Length, count));
                if (read == 0) throw new EndOfStreamException();
                hash.AppendData(buffer, 0, read);
                count -= read;
            }
        }
    }

    private static bool IsHex(string text) => text.All(c => c is (>= '0' and <= '9') or (>= 'a' and <= 'f'));
}
