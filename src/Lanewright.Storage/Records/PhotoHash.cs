using System.Security.Cryptography;

namespace Lanewright.Storage.Records;

/// <summary>The hash by which a photo is known.</summary>
public static class PhotoHash
{
    /// <summary>SHA-256 as 64 lower-case hexadecimal digits.</summary>
    public static string Of(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
