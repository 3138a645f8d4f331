using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Lanewright.Core.Text;
using Lanewright.Office;
using Lanewright.Storage.Database;

namespace Lanewright.Network;

/// <summary>Reads a certificate that somebody brings, and says in words why it cannot be used.</summary>
internal static class GivenCertificate
{
    /// <summary>Reads certificate and key.</summary>
    /// <param name="file">PEM with the certificate and those between it and its authority, or a PKCS #12 file (.pfx, .p12).</param>
    /// <param name="keyFile">PEM with the key; null for PKCS #12.</param>
    /// <param name="passwordFile">A file whose first line is the password of the PKCS #12 file or key; null for none.</param>
    /// <param name="names">Names it must hold; when there are none, those in it are served.</param>
    /// <param name="now">Now.</param>
    /// <returns>The certificate and the names to serve.</returns>
    /// <exception cref="RecordsException">It cannot be used.</exception>
    internal static (ServerCertificates Certificates, IReadOnlyList<string> Names) Read(
        string file, string? keyFile, string? passwordFile, IReadOnlyList<string> names, DateTimeOffset now)
    {
        var password = passwordFile is null ? null : FirstLine(passwordFile);
        var isContainer = Path.GetExtension(file).ToUpperInvariant() is ".PFX" or ".P12";
        if (!isContainer && keyFile is null)
        {
            throw Wrong(
                $"--certificate {file} was given without its key. Add --key FILE.pem, or give a .pfx file that holds both.");
        }

        var (certificate, chain) = Guarded(file, () => isContainer ? Container(file, password) : Pem(file, keyFile!, password));
        if (!certificate.HasPrivateKey) throw Wrong($"{file} holds no private key. Export the certificate together with its key.");
        if (certificate.NotAfter.ToUniversalTime() < now.UtcDateTime)
            throw Wrong($"The certificate in {file} ended on {Day(certificate.NotAfter)}. Get a new one, then start again.");
        if (certificate.NotBefore.ToUniversalTime() > now.UtcDateTime)
            throw Wrong($"The certificate in {file} holds from {Day(certificate.NotBefore)} on. Check this machine's clock, or wait.");
        var held = certificate.Extensions.OfType<X509SubjectAlternativeNameExtension>()
            .SelectMany(one => one.EnumerateDnsNames()).ToList();
        if (names.FirstOrDefault(name => !certificate.MatchesHostname(name, allowWildcards: true, allowCommonName: false)) is { } missing)
        {
            throw Wrong(
                $"The certificate in {file} is not for '{missing}' but for {(held.Count == 0 ? OfficeText.Say("no host name") : string.Join(", ", held))}."
                + $" Give --name one of these, or another certificate.");
        }

        IReadOnlyList<string> served = names.Count > 0 ? names : [.. held.Where(name => !name.StartsWith("*.", StringComparison.Ordinal))];
        if (served.Count == 0) throw Wrong($"The certificate in {file} says no single host name. Say with --name which to serve.");
        return (ServerCertificates.Given(ServerCertificates.Usable(certificate), chain), served);
    }

    private static (X509Certificate2, X509Certificate2Collection) Pem(string file, string keyFile, string? password)
    {
        if (!File.Exists(keyFile)) throw new FileNotFoundException("The key is not there.", keyFile);
        var certificate = password is null
            ? X509Certificate2.CreateFromPemFile(file, keyFile)
            : X509Certificate2.CreateFromEncryptedPemFile(file, password, keyFile);
        var all = new X509Certificate2Collection();
        all.ImportFromPemFile(file);
        return (certificate, [.. all.Where(one => one.Thumbprint != certificate.Thumbprint)]);
    }

    private static (X509Certificate2, X509Certificate2Collection) Container(string file, string? password)
    {
        var all = X509CertificateLoader.LoadPkcs12CollectionFromFile(file, password, X509KeyStorageFlags.Exportable);
        var own = all.FirstOrDefault(one => one.HasPrivateKey) ?? all[0];
        return (own, [.. all.Where(one => one != own)]);
    }

    private static string FirstLine(string file) => Guarded(file, () => File.ReadLines(file).FirstOrDefault() ?? "");

    private static T Guarded<T>(string file, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception wrong) when (wrong is FileNotFoundException or DirectoryNotFoundException)
        {
            throw Wrong($"{(wrong as FileNotFoundException)?.FileName ?? file} was not found. Check the name.", wrong);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw Wrong($"{file} cannot be read: {wrong.Message}", wrong);
        }
        catch (Exception wrong) when (wrong is CryptographicException or ArgumentException)
        {
            throw Wrong(
                $"{file} and its key cannot be used: {wrong.Message} Expected: a certificate in PEM with --key, the key that belongs"
                + $" to it, also PEM; or a .pfx file, with --password-file when it has a password.", wrong);
        }
    }

    private static string Day(DateTime moment) => moment.ToUniversalTime().ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private static RecordsException Wrong(Phrase message, Exception? inner = null) => new(RecordsFault.Denied, OfficeText.Say(message), inner);
}
