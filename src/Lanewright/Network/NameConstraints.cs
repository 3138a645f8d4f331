using System.Formats.Asn1;
using System.Net;
using System.Security.Cryptography.X509Certificates;

namespace Lanewright.Network;

/// <summary>
/// The names for which our authority may vouch (RFC 5280, 4.2.1.10). Whoever stole its key could not pass for a site
/// of the internet on a phone that trusts it.
/// </summary>
internal static class NameConstraints
{
    private const string Oid = "2.5.29.30";

    // GeneralName: dNSName is [2], iPAddress is [7].
    private const int DnsName = 2;
    private const int IpAddress = 7;

    /// <summary>The private and shared networks (RFC 1918, 3927, 4193, 4291, 6598) and this machine itself.</summary>
    internal static readonly IReadOnlyList<IPNetwork> Private =
    [
        .. new[]
            {
                "10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "100.64.0.0/10", "169.254.0.0/16", "127.0.0.0/8", "fc00::/7", "fe80::/10",
                "::1/128",
            }
            .Select(IPNetwork.Parse),
    ];

    // Endings that the internet does not hand out (RFC 6762, RFC 8375; .internal and .lan by practice).
    private static readonly string[] Endings = ["localhost", "local", "home.arpa", "internal", "lan"];

    /// <summary>The extension for the names served, everything below the private endings, and the private networks.</summary>
    internal static X509Extension For(IEnumerable<string> names)
    {
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        using (writer.PushSequence(new Asn1Tag(TagClass.ContextSpecific, 0)))
        {
            foreach (var name in Endings.Concat(names.Where(name => !Covers(Endings, name))).Distinct(StringComparer.OrdinalIgnoreCase))
            {
                using (writer.PushSequence())
                    writer.WriteCharacterString(UniversalTagNumber.IA5String, name, new Asn1Tag(TagClass.ContextSpecific, DnsName));
            }

            foreach (var network in Private)
            {
                using (writer.PushSequence())
                    writer.WriteOctetString([.. network.BaseAddress.GetAddressBytes(), .. Mask(network)], new Asn1Tag(TagClass.ContextSpecific, IpAddress));
            }
        }

        return new X509Extension(Oid, writer.Encode(), critical: true);
    }

    /// <summary>Whether an authority may vouch for a name.</summary>
    internal static bool Allows(X509Certificate2 authority, string name)
    {
        var extension = authority.Extensions.FirstOrDefault(one => one.Oid?.Value == Oid);
        return extension is null || Covers(Names(extension.RawData), name);
    }

    private static List<string> Names(byte[] encoded)
    {
        var names = new List<string>();
        var subtrees = new AsnReader(encoded, AsnEncodingRules.DER).ReadSequence().ReadSequence(new Asn1Tag(TagClass.ContextSpecific, 0));
        while (subtrees.HasData)
        {
            var one = subtrees.ReadSequence();
            if (one.PeekTag() is { TagValue: DnsName } tag) names.Add(one.ReadCharacterString(UniversalTagNumber.IA5String, tag));
        }

        return names;
    }

    private static bool Covers(IEnumerable<string> allowed, string name) => allowed.Any(one =>
        name.Equals(one, StringComparison.OrdinalIgnoreCase) || name.EndsWith("." + one, StringComparison.OrdinalIgnoreCase));

    private static byte[] Mask(IPNetwork network)
    {
        var mask = new byte[network.BaseAddress.GetAddressBytes().Length];
        for (var bit = 0; bit < network.PrefixLength; bit++) mask[bit / 8] |= (byte)(0x80 >> (bit % 8));
        return mask;
    }
}
