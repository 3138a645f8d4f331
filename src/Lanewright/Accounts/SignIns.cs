using System.Security.Claims;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using static Lanewright.Office.OfficeText;

namespace Lanewright.Accounts;

/// <summary>Whether a name and a password belong together.</summary>
/// <param name="Account">The account when they do; null otherwise.</param>
/// <param name="Why">Why not, for the person; null when they do.</param>
internal sealed record SignInAnswer(Account? Account, string? Why);

/// <summary>Checks passwords, one at a time, and locks an account for a while after wrong tries.</summary>
internal sealed class SignIns(UserManager<Account> users, AccountLog log, TimeProvider clock)
{
    /// <summary>Wrong tries in a row after which an account is locked.</summary>
    internal const int Tries = 5;

    /// <summary>How long it is locked.</summary>
    internal static readonly TimeSpan LockedFor = TimeSpan.FromMinutes(10);

    /// <summary>Name of the claim that holds the account's stamp; a session with another stamp is over.</summary>
    internal const string StampClaim = "stamp";

    // Tries at the same moment would not see each other's count; and a check is meant to cost time.
    private static readonly SemaphoreSlim OneAtATime = new(1, 1);

    private static string? nobodysHash;

    /// <summary>Checks a name and a password, and writes down what came of it.</summary>
    internal async Task<SignInAnswer> TryAsync(string name, string password, string? address, CancellationToken stop)
    {
        await OneAtATime.WaitAsync(stop);
        try
        {
            return await CheckAsync(name.Trim(), password.Length > PasswordRules.Most ? "" : password, address);
        }
        finally
        {
            OneAtATime.Release();
        }
    }

    /// <summary>The signed-in person as claims.</summary>
    internal static ClaimsPrincipal Principal(Account account) => new(new ClaimsIdentity(
        [
            new(ClaimTypes.NameIdentifier, account.Id),
            new(ClaimTypes.Name, account.UserName!),
            new(ClaimTypes.Role, account.Role),
            new(StampClaim, account.SecurityStamp ?? ""),
        ],
        AccountsSetup.Scheme));

    /// <summary>The account of a session as it is now; null when the session is over.</summary>
    internal static async Task<Account?> CurrentAsync(AccountsContext data, ClaimsPrincipal? session, CancellationToken stop)
    {
        var id = session?.FindFirstValue(ClaimTypes.NameIdentifier);
        var account = await data.Users.AsNoTracking().FirstOrDefaultAsync(one => one.Id == id, stop);
        return account is { Disabled: false } && account.SecurityStamp == session?.FindFirstValue(StampClaim) ? account : null;
    }

    private async Task<SignInAnswer> CheckAsync(string name, string password, string? address)
    {
        var wrong = Say("Name and password do not belong together.");
        if (await users.FindByNameAsync(name) is not { PasswordHash: { } hash } account)
        {
            // As long as for a person who exists.
            nobodysHash ??= users.PasswordHasher.HashPassword(new(), Guid.NewGuid().ToString());
            users.PasswordHasher.VerifyHashedPassword(new(), nobodysHash, password);
            await log.AddAsync(name, "sign-in refused: no such account", address: address);
            return new(null, wrong);
        }

        var now = clock.GetUtcNow();
        if (account.LockoutEnd > now)
        {
            await log.AddAsync(account.UserName!, "sign-in refused: locked", address: address);
            return new(null, Locked(account.LockoutEnd.Value - now));
        }

        if (users.PasswordHasher.VerifyHashedPassword(account, hash, password) is PasswordVerificationResult.Failed)
        {
            var locked = ++account.AccessFailedCount >= Tries;
            if (locked) (account.AccessFailedCount, account.LockoutEnd) = (0, now + LockedFor);
            await users.UpdateAsync(account);
            await log.AddAsync(account.UserName!, locked ? "locked after wrong passwords" : "sign-in refused: wrong password", address: address);
            return new(null, locked ? Locked(LockedFor) : wrong);
        }

        if (account.Disabled)
        {
            await log.AddAsync(account.UserName!, "sign-in refused: disabled", address: address);
            return new(null, Say("This account is out of use. Ask a supervisor."));
        }

        (account.AccessFailedCount, account.LockoutEnd, account.LastSignIn) = (0, null, now);
        await users.UpdateAsync(account);
        await log.AddAsync(account.UserName!, "signed in", address: address);
        return new(account, null);
    }

    private static string Locked(TimeSpan left) =>
        Say($"Too many wrong tries: this account is locked for another {(int)Math.Ceiling(left.TotalMinutes)} minute.|Too many wrong tries: this account is locked for another {(int)Math.Ceiling(left.TotalMinutes)} minutes.");
}
