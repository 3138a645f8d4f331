using System.Security.Claims;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using static Lanewright.Office.OfficeText;

namespace Lanewright.Accounts;

/// <summary>Makes, takes and withdraws the tokens with which other programs use the API.</summary>
internal sealed class ApiTokens(AccountsContext data, AccountLog log, TimeProvider clock)
{
    /// <summary>Longest name: with the mark on it, it is still a person's name of an entry.</summary>
    internal const int LongestName = 50;

    /// <summary>Ends the name under which a token's entries stand, so that nobody takes it for a person's.</summary>
    internal const string Mark = " (token)";

    /// <summary>Begins every token, so that one left in a file is found by a search.</summary>
    internal const string Prefix = "lanewright-token-";

    /// <summary>Days that a token may be used, as offered.</summary>
    internal static readonly IReadOnlyList<int> Lives = [30, 90, 365, 1100];

    private const int SecretBytes = 32;

    // How exactly the last use is known: not every request is worth a write.
    private static readonly TimeSpan UseStep = TimeSpan.FromHours(1);

    /// <summary>Every token, those in use first, the latest made first.</summary>
    internal async Task<IReadOnlyList<ApiToken>> ListAsync(CancellationToken stop) =>
        await data.Tokens.AsNoTracking().OrderBy(one => one.Withdrawn != null).ThenByDescending(one => one.Id).ToListAsync(stop);

    /// <summary>What is wrong with a token as asked for, in words; null for nothing.</summary>
    internal async Task<string?> FaultAsync(string name, string role, string days, CancellationToken stop)
    {
        if (name.Length is 0 or > LongestName || name.Any(char.IsControl))
            return Say($"What for: {name.Length} characters were read; 1 to {LongestName} were expected.");
        if (!AccountsDesk.IsRole(role)) return Say("Role: viewer, operator, technician or supervisor was expected.");
        if (!Lives.Any(life => days == Days(life))) return Say($"Valid for: {string.Join(", ", Lives.Select(Days))} days were expected.");
        var now = clock.GetUtcNow();
        return await data.Tokens.AnyAsync(one => one.Name == name && one.Withdrawn == null && one.Until >= now, stop)
            ? Say($"There is a token '{name}' already; withdraw it first, or choose another name.")
            : null;
    }

    /// <summary>Makes a token, whose fault was asked for before, and keeps its hash. The token itself is given this once.</summary>
    internal async Task<string> MakeAsync(string name, string role, int days, string by, string? address, CancellationToken stop)
    {
        var token = Prefix + Convert.ToBase64String(RandomNumberGenerator.GetBytes(SecretBytes)).TrimEnd('=').Replace('+', '-').Replace('/', '_');
        var now = clock.GetUtcNow();
        data.Tokens.Add(new() { Name = name, Hash = PairingCodes.Hash(token), Role = role, MadeBy = by, Made = now, Until = now.AddDays(days) });
        await data.SaveChangesAsync(stop);
        await log.AddAsync(name + Mark, $"token made as {role} for {Days(days)} days", by, address);
        return token;
    }

    /// <summary>Withdraws a token at once; gives what is wrong in words, or null.</summary>
    internal async Task<string?> WithdrawAsync(string id, string by, string? address, CancellationToken stop)
    {
        if (!long.TryParse(id, System.Globalization.CultureInfo.InvariantCulture, out var number)
            || await data.Tokens.FirstOrDefaultAsync(one => one.Id == number, stop) is not { } token)
            return Say("There is no such token any more.");
        if (token.Withdrawn is not null) return null;
        token.Withdrawn = clock.GetUtcNow();
        await data.SaveChangesAsync(stop);
        await log.AddAsync(token.Name + Mark, "token withdrawn", by, address);
        return null;
    }

    /// <summary>What a token stands for, as claims; null when it is not known, withdrawn or too old.</summary>
    internal async Task<ClaimsIdentity?> FindAsync(string typed, CancellationToken stop)
    {
        // The hash is of 256 random bits: looking it up tells nothing by its time.
        var hash = PairingCodes.Hash(typed);
        var now = clock.GetUtcNow();
        var token = await data.Tokens.AsNoTracking().FirstOrDefaultAsync(one => one.Hash == hash, stop);
        if (token is null || token.Withdrawn is not null || token.Until < now) return null;
        if (token.LastUsed is null || now - token.LastUsed > UseStep)
        {
            await data.Tokens.Where(one => one.Id == token.Id)
                .ExecuteUpdateAsync(set => set.SetProperty(one => one.LastUsed, (DateTimeOffset?)now), stop);
        }

        return new([new(ClaimTypes.Name, token.Name + Mark), new(ClaimTypes.Role, token.Role)], TokenSignIn.Way);
    }

    /// <summary>Whether a name looks like that of a token; a person may not have such a one.</summary>
    internal static bool LooksLike(string name) => name.TrimEnd().EndsWith(Mark.Trim(), StringComparison.OrdinalIgnoreCase);

    private static string Days(int days) => days.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
