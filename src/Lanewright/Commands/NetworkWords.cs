using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using Lanewright.Accounts;
using Lanewright.Network;
using static Lanewright.Office.OfficeText;

namespace Lanewright.Commands;

/// <summary>What <c>serve</c> prints about a network: where to go, whom to trust, the first code.</summary>
internal sealed class NetworkWords(NetworkOptions network, int port)
{
    /// <summary>The address to open, and to keep to: a browser keeps unsent tests by address.</summary>
    internal string First { get; } = All(network, port).First();

    internal IEnumerable<string> Addresses()
    {
        if (network.BehindProxy)
        {
            yield return Say($"Lanewright: {First} through the reverse proxy, which finds it at http://127.0.0.1:{port}/ (Ctrl+C stops)");
            yield break;
        }

        yield return Say($"Lanewright: {First} (Ctrl+C stops)");
        foreach (var other in All(network, port).Skip(1)) yield return $"            {other}";
        yield return Say("Keep to one address: what a phone has not sent yet belongs to the address it was opened under.");
    }

    internal IEnumerable<string> Trust(int trustPort, X509Certificate2 authority, bool isTerminal)
    {
        var page = new UriBuilder(First) { Scheme = "http", Port = trustPort }.Uri;
        yield return "";
        yield return Say($"Once for each phone, trust the yard's certificate: {page.ToString()}");
        yield return Say("Its fingerprint (SHA-256), to compare:");
        yield return $"  {TrustSite.Fingerprint(authority)}";
        if (!isTerminal) yield break;
        foreach (var line in QrPicture.Lines(page.ToString())) yield return line;
    }

    internal IEnumerable<string> Code(string? code)
    {
        if (code is null) yield break;
        yield return "";
        yield return Say(
            $"There is no account yet. For the first supervisor, open {First}pair within {(int)PairingCodes.PrintedLife.TotalMinutes} minutes, with this code:");
        yield return $"  {code}";
        yield return Say("For a later one: lanewright accounts pair");
    }

    // A name that somebody chose stays the same longest; then the addresses, which phones find without help.
    private static IEnumerable<string> All(NetworkOptions network, int port)
    {
        if (network.BehindProxy) return network.Names.Select(name => $"https://{name}/");
        var own = network.Certificates!.IsOwn ? OwnNames.Names : [];
        var chosen = network.Names.Except(own, StringComparer.OrdinalIgnoreCase);
        var addresses = network.Certificates.IsOwn
            ? OwnNames.Addresses().Select(address => address.AddressFamily is AddressFamily.InterNetwork ? $"{address}" : $"[{address}]").ToList()
            : new List<string>();
        var (longer, short4) = (addresses.Where(address => address[0] == '['), addresses.Where(address => address[0] != '['));
        return chosen.Concat(short4).Concat(own.Where(name => name.Contains('.'))).Concat(longer).Append("localhost")
            .Take(network.Certificates.IsOwn ? 8 : network.Names.Count).Select(host => $"https://{host}:{port}/");
    }
}
