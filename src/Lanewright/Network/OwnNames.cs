using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace Lanewright.Network;

/// <summary>The names and addresses of this machine.</summary>
internal static class OwnNames
{
    /// <summary>The machine's name in small letters, without a domain.</summary>
    internal static string Host { get; } = Clean(Dns.GetHostName());

    /// <summary>Names that lead to this machine, as far as its network knows them.</summary>
    internal static IReadOnlyList<string> Names { get; } = [.. new[] { Host, $"{Host}.local", "localhost" }.Distinct()];

    /// <summary>The machine's addresses in private networks, those of version 4 first; without the machine itself.</summary>
    internal static IReadOnlyList<IPAddress> Addresses()
    {
        var addresses = NetworkInterface.GetAllNetworkInterfaces()
            .Where(card => card.OperationalStatus is OperationalStatus.Up && card.NetworkInterfaceType is not NetworkInterfaceType.Loopback)
            .SelectMany(card => card.GetIPProperties().UnicastAddresses)
            .Select(one => one.Address)
            .Where(address => IsPrivate(address) && !address.IsIPv6LinkLocal);
        return [.. addresses.Distinct().OrderBy(address => address.AddressFamily is AddressFamily.InterNetworkV6).ThenBy(address => address.ToString(), StringComparer.Ordinal)];
    }

    /// <summary>Whether an address belongs to a private network.</summary>
    internal static bool IsPrivate(IPAddress address) => NameConstraints.Private.Any(network => network.Contains(address));

    private static string Clean(string name)
    {
        var first = name.Split('.')[0].ToLowerInvariant();
        return first.Length > 0 && first.All(c => char.IsAsciiLetterOrDigit(c) || c == '-') ? first : "localhost";
    }
}
