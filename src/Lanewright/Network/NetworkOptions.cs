namespace Lanewright.Network;

/// <summary>How the network reaches a server.</summary>
/// <param name="Names">Host names under which it is opened, beside this machine's addresses.</param>
/// <param name="Certificates">The certificate it shows; null behind a reverse proxy, which has its own.</param>
internal sealed record NetworkOptions(IReadOnlyList<string> Names, ServerCertificates? Certificates)
{
    /// <summary>Whether a reverse proxy on this machine stands before it.</summary>
    internal bool BehindProxy => Certificates is null;

    /// <summary>
    /// Whether browsers know its certificate by themselves. Only then are they told to insist on https for good: with a
    /// certificate of our own, a browser that insists could not be brought to the page that explains how to trust it.
    /// </summary>
    internal bool IsPublic => Certificates is null or { IsOwn: false };
}
