using System.Buffers;
using System.Text;
using Lanewright.Documents;

namespace Lanewright.Proof;

/// <summary>A certificate's statement as it travels in the certificate: in base 64, so that it can stand in any comment.</summary>
internal static class SealedStatement
{
    private static readonly SearchValues<byte> Digits =
        SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/="u8);

    private const string Mark = "lanewright-statement/1 ";

    internal static string Line(byte[] statement) => Mark + Convert.ToBase64String(statement);

    /// <summary>The statement of a file; null when there is none that can be read.</summary>
    internal static Statement? Find(ReadOnlySpan<byte> file)
    {
        var at = file.LastIndexOf(Encoding.ASCII.GetBytes(Mark));
        if (at < 0) return null;
        var rest = file[(at + Mark.Length)..];
        var end = rest.IndexOfAnyExcept(Digits);
        try
        {
            return Statement.Read(Convert.FromBase64String(Encoding.ASCII.GetString(end < 0 ? rest : rest[..end])));
        }
        catch (FormatException)
        {
            return null;
        }
    }
}
