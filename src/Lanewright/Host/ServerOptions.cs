using Lanewright.Accounts;
using Lanewright.Core.Text;
using Lanewright.Network;

namespace Lanewright.Host;

/// <summary>How to serve.</summary>
/// <param name="Port">Port; 0 for any free one.</param>
/// <param name="WebRoot">Folder of the pages; wwwroot beside the program when null.</param>
/// <param name="Accounts">Whether people have accounts.</param>
internal sealed record ServerOptions(int Port, string? WebRoot = null, AccountsMode Accounts = AccountsMode.Local)
{
    /// <summary>How the network reaches the server; null for this machine only.</summary>
    internal NetworkOptions? Network { get; init; }

    /// <summary>Folder of the keys that protect sessions; null to forget them when the server ends.</summary>
    internal string? KeyFolder { get; init; }

    /// <summary>How many requests an address may send, where people have accounts.</summary>
    internal RequestLimits Limits { get; init; } = new();

    /// <summary>The language of those who did not choose one and whose browser wants none of ours.</summary>
    internal Language Language { get; init; } = Language.English;

    /// <summary>The clock of accounts and certificates.</summary>
    internal TimeProvider Clock { get; init; } = TimeProvider.System;
}
