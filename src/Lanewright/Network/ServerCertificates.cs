using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Lanewright.Office;
using Lanewright.Storage.Database;

namespace Lanewright.Network;

/// <summary>The certificate a server shows: one of our own that renews itself, or one that was given.</summary>
internal sealed class ServerCertificates
{
    private const string AuthorityFile = "authority.pem", AuthorityKeyFile = "authority-key.pem";
    private const string ServerFile = "server.pem", ServerKeyFile = "server-key.pem";

    private readonly Lock renewing = new();
    private readonly Func<DateTimeOffset, X509Certificate2>? renew;
    private readonly TimeProvider clock;
    private X509Certificate2 current;

    private ServerCertificates(X509Certificate2 current, Func<DateTimeOffset, X509Certificate2>? renew, TimeProvider clock) =>
        (this.current, this.renew, this.clock) = (current, renew, clock);

    /// <summary>Our own authority; null for a certificate that was given.</summary>
    internal X509Certificate2? Authority { get; private init; }

    /// <summary>Certificates between the server's and the authority's, for one that was given.</summary>
    internal X509Certificate2Collection Chain { get; private init; } = [];

    /// <summary>Whether the certificate is one of our own.</summary>
    internal bool IsOwn => Authority is not null;

    /// <summary>The certificate to show now. One of our own is renewed while the server runs, too.</summary>
    internal X509Certificate2 Current()
    {
        lock (renewing)
        {
            if (renew is not null && current.NotAfter - clock.GetUtcNow().LocalDateTime < YardAuthority.RenewBefore)
                current = renew(clock.GetUtcNow());
            return current;
        }
    }

    /// <summary>A certificate that was given.</summary>
    internal static ServerCertificates Given(X509Certificate2 certificate, X509Certificate2Collection chain) =>
        new(certificate, null, TimeProvider.System) { Chain = chain };

    /// <summary>Our own, from a folder; authority and certificate are made where they are missing, too old or for other names.</summary>
    /// <param name="folder">The folder, for the owner alone.</param>
    /// <param name="given">Names that somebody asked for.</param>
    /// <param name="addresses">Addresses of this machine; its own names are added.</param>
    /// <param name="clock">The clock by which certificates end.</param>
    /// <exception cref="RecordsException">The folder cannot be used, or the authority may not vouch for a name.</exception>
    internal static ServerCertificates InFolder(
        string folder, IReadOnlyList<string> given, IReadOnlyList<IPAddress> addresses, TimeProvider clock)
    {
        var all = given.Concat(OwnNames.Names).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        try
        {
            OwnerFiles.Folder(folder);
            var authority = Read(folder, AuthorityFile, AuthorityKeyFile);
            if (authority is not null && given.FirstOrDefault(name => !NameConstraints.Allows(authority, name)) is { } foreign)
            {
                throw new RecordsException(
                    RecordsFault.Denied,
                    OfficeText.Say(
                        $"The yard's certificate authority may not vouch for '{foreign}': the names were fixed when it was made. Leave"
                        + $" --name {foreign} away, or delete {folder} to make a new authority, which every phone must trust anew."));
            }

            var now = clock.GetUtcNow();
            if (authority is null || authority.NotAfter.ToUniversalTime() < now.UtcDateTime + YardAuthority.ServerLife)
            {
                authority = YardAuthority.Make(all, now);
                Write(folder, AuthorityFile, AuthorityKeyFile, authority);
            }

            // A machine that got another name since is still served under its addresses and the names it had.
            List<string> names = [.. all.Where(name => NameConstraints.Allows(authority, name))];

            var server = Read(folder, ServerFile, ServerKeyFile);
            if (server is null || !IsFor(server, authority, names, addresses)) server = Renew(now);
            return new(Usable(server), Renew, clock) { Authority = authority };

            X509Certificate2 Renew(DateTimeOffset at)
            {
                var made = YardAuthority.Sign(authority, names, addresses, at);
                Write(folder, ServerFile, ServerKeyFile, made);
                return Usable(made);
            }
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException or CryptographicException or ArgumentException)
        {
            throw new RecordsException(
                RecordsFault.Denied,
                OfficeText.Say(
                    $"The certificates in {folder} cannot be used ({wrong.Message}) Give this user read and write access, or delete"
                    + $" the folder to make new ones, which every phone must trust anew."), wrong);
        }
    }

    private static bool IsFor(
        X509Certificate2 server, X509Certificate2 authority, IReadOnlyList<string> names, IReadOnlyList<IPAddress> addresses)
    {
        var alternatives = server.Extensions.OfType<X509SubjectAlternativeNameExtension>().FirstOrDefault();
        return alternatives is not null
            && server.IssuerName.RawData.AsSpan().SequenceEqual(authority.SubjectName.RawData)
            && names.All(name => alternatives.EnumerateDnsNames().Contains(name, StringComparer.OrdinalIgnoreCase))
            && addresses.All(address => alternatives.EnumerateIPAddresses().Contains(address));
    }

    private static X509Certificate2? Read(string folder, string certificate, string key)
    {
        string file = Path.Combine(folder, certificate), keyFile = Path.Combine(folder, key);
        return File.Exists(file) && File.Exists(keyFile) ? X509Certificate2.CreateFromPemFile(file, keyFile) : null;
    }

    private static void Write(string folder, string certificate, string key, X509Certificate2 made)
    {
        using var secret = made.GetECDsaPrivateKey()!;
        OwnerFiles.Write(Path.Combine(folder, key), secret.ExportPkcs8PrivateKeyPem());
        OwnerFiles.Write(Path.Combine(folder, certificate), made.ExportCertificatePem());
    }

    // Windows serves only with keys that went through such a container.
    internal static X509Certificate2 Usable(X509Certificate2 certificate) =>
        X509CertificateLoader.LoadPkcs12(certificate.Export(X509ContentType.Pfx), null);
}
