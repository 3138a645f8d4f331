using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Lanewright.Network;

/// <summary>Makes the yard's own certificate authority and the certificates it signs.</summary>
internal static class YardAuthority
{
    /// <summary>How long a server's certificate holds.</summary>
    internal static readonly TimeSpan ServerLife = TimeSpan.FromDays(90);

    /// <summary>It is made anew when less than this is left.</summary>
    internal static readonly TimeSpan RenewBefore = TimeSpan.FromDays(30);

    private const int AuthorityYears = 10;

    // Clocks of phones and laptops differ; a certificate that begins now would not hold yet for some.
    private static readonly TimeSpan ClockSlack = TimeSpan.FromDays(1);

    /// <summary>Makes an authority that may vouch for the names given and for private networks only.</summary>
    internal static X509Certificate2 Make(IEnumerable<string> names, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest(
            $"CN=Lanewright at {OwnNames.Host} {now.UtcDateTime:yyyy-MM-dd}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, true, 0, true));
        request.CertificateExtensions.Add(
            new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign | X509KeyUsageFlags.CrlSign, critical: true));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false));
        request.CertificateExtensions.Add(NameConstraints.For(names));
        return request.CreateSelfSigned(now - ClockSlack, now.AddYears(AuthorityYears));
    }

    /// <summary>Makes a server's certificate, with its key.</summary>
    internal static X509Certificate2 Sign(
        X509Certificate2 authority, IReadOnlyList<string> names, IEnumerable<IPAddress> addresses, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN={names[0]}", key, HashAlgorithmName.SHA256);
        var alternatives = new SubjectAlternativeNameBuilder();
        foreach (var name in names) alternatives.AddDnsName(name);
        foreach (var address in addresses) alternatives.AddIpAddress(address);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid("1.3.6.1.5.5.7.3.1")], critical: false));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false));
        request.CertificateExtensions.Add(X509AuthorityKeyIdentifierExtension.CreateFromCertificate(authority, true, false));
        request.CertificateExtensions.Add(alternatives.Build());
        var end = now + ServerLife;
        if (end > authority.NotAfter) end = authority.NotAfter;
        using var signed = request.Create(authority, now - ClockSlack, end, RandomNumberGenerator.GetBytes(16));
        return signed.CopyWithPrivateKey(key);
    }
}
