using System.CommandLine;
using System.Net;
using Lanewright.Core.Text;
using Lanewright.Network;
using Lanewright.Office;
using Lanewright.Storage.Database;

namespace Lanewright.Commands;

/// <summary>What <c>serve</c> is told about the network.</summary>
internal sealed class NetworkOptionsGroup
{
    private readonly Option<bool> lan = new("--lan")
    {
        Description = "Serve the network over https, with accounts.",
    };

    private readonly Option<bool> proxy = new("--proxy")
    {
        Description = "Serve a reverse proxy on this machine, with accounts; needs --name.",
    };

    private readonly Option<string[]> names = new("--name")
    {
        Description = "Host name under which the pages are opened; may be given more than once.",
    };

    private readonly Option<string?> certificate = new("--certificate")
    {
        Description = "With --lan: a certificate that browsers know, PEM or .pfx, instead of one of our own.",
    };

    private readonly Option<string?> key = new("--key") { Description = "Its key, PEM." };

    private readonly Option<string?> passwordFile = new("--password-file")
    {
        Description = "File with the password of the .pfx file or the key.",
    };

    private readonly Option<int?> trustPort = new("--trust-port")
    {
        Description = "With --lan: port of the page that explains the certificate; the next after --port when left out.",
    };

    internal IEnumerable<Option> All => [lan, proxy, names, certificate, key, passwordFile, trustPort];

    /// <summary>Port of the page that explains the certificate.</summary>
    internal int TrustPort(ParseResult parsed, int port) => parsed.GetValue(trustPort) ?? (port == 0 ? 0 : port + 1);

    /// <summary>How the network is served; null for this machine only.</summary>
    /// <exception cref="RecordsException">What was given does not go together, or a certificate cannot be used.</exception>
    internal NetworkOptions? Read(ParseResult parsed, string dataFolder, TimeProvider clock)
    {
        var given = (parsed.GetValue(names) ?? []).Select(HostName).Distinct().ToList();
        var (onLan, behindProxy) = (parsed.GetValue(lan), parsed.GetValue(proxy));
        var file = parsed.GetValue(certificate);
        if (onLan && behindProxy) throw Wrong("--lan and --proxy do not go together: behind a proxy only the proxy listens on the network.");
        if (!onLan && (file ?? parsed.GetValue(key) ?? parsed.GetValue(passwordFile)) is not null)
            throw Wrong("--certificate, --key and --password-file belong to --lan. Add it.");
        if (file is null && (parsed.GetValue(key) ?? parsed.GetValue(passwordFile)) is not null)
            throw Wrong("A key was given without its certificate. Add --certificate FILE.");
        if (behindProxy)
        {
            return given.Count > 0
                ? new(given, null)
                : throw Wrong("--proxy needs --name: the host name under which browsers open the pages, such as --name calibration.example.org.");
        }

        if (!onLan) return given.Count == 0 ? null : throw Wrong("--name belongs to --lan or --proxy. Add one of them.");
        if (file is not null)
        {
            var (certificates, served) = GivenCertificate.Read(
                file, parsed.GetValue(key), parsed.GetValue(passwordFile), given, clock.GetUtcNow());
            return new(served, certificates);
        }

        IReadOnlyList<IPAddress> addresses = [.. OwnNames.Addresses(), IPAddress.Loopback, IPAddress.IPv6Loopback];
        var own = ServerCertificates.InFolder(Path.Combine(dataFolder, "certificates"), given, addresses, clock);
        return new([.. given.Concat(OwnNames.Names).Distinct()], own);
    }

    private static string HostName(string typed)
    {
        var name = typed.Trim().ToLowerInvariant();
        var isName = name.Length is > 0 and <= 253 && !IPAddress.TryParse(name, out _) && name.Split('.').All(part =>
            part.Length is > 0 and <= 63 && part.All(c => char.IsAsciiLetterOrDigit(c) || c == '-') && part[0] != '-' && part[^1] != '-');
        return isName
            ? name
            : throw Wrong($"--name: '{Core.Text.Excerpt.Of(typed)}' was read; a host name such as garage.local was expected, without https:// and port.");
    }

    private static RecordsException Wrong(Phrase message) => new(RecordsFault.Denied, OfficeText.Say(message));
}
