using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Lanewright.Core.Spreading;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Exchange;

/// <summary>
/// Gives the error sources of one sheet an identity among all sheets. Run 1 of one sheet has nothing to do with run 1 of
/// another, while a scale is the same scale in both: so every source but a scale's is marked with a key made from the
/// sheet's content. The same observations always have the same key.
/// </summary>
public static class SheetKey
{
    private const string ScalePrefix = "scale:";

    /// <summary>The first 8 bytes of the SHA-256 of the canonical sheet, as 16 hexadecimal digits.</summary>
    public static string Of(TestSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(SheetWriter.Write(sheet)));
        return Convert.ToHexStringLower(hash.AsSpan(0, 8));
    }

    /// <summary>The value with its sources marked.</summary>
    public static Measured Mark(Measured value, string key)
    {
        var parts = new Contribution[value.Contributions.Length];
        for (var i = 0; i < parts.Length; i++)
        {
            var (source, amount) = value.Contributions[i];
            parts[i] = new(Marked(source, key), amount);
        }

        return Measured.Of(value.Value, parts);
    }

    private static ErrorSource Marked(ErrorSource source, string key) =>
        source.Id.StartsWith(ScalePrefix, StringComparison.Ordinal)
            ? source
            : ErrorSource.Of(
                string.Create(CultureInfo.InvariantCulture, $"sheet:{key}:{source.Id}"), source.Family, source.Shape,
                source.DegreesOfFreedom, source.Ensemble is { } e ? $"sheet:{key}:{e}" : null);
}
