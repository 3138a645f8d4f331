using Lanewright.Core.Register;
using Lanewright.Host;
using Lanewright.Office;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Accounts;

/// <summary>What is done to accounts: pairing, and what a supervisor does. Each gives what is wrong in words, or null.</summary>
internal sealed class AccountsDesk(
    AccountsContext data, UserManager<Account> users, PairingCodes codes, AccountLog log, TimeProvider clock)
{
    /// <summary>Longest name of a person, as in the register.</summary>
    internal const int LongestName = 60;

    // Pairings and changes one after the other: the last supervisor must not go by two doors at once.
    private static readonly SemaphoreSlim OneAtATime = new(1, 1);

    /// <summary>Every account, by name.</summary>
    internal async Task<IReadOnlyList<Account>> ListAsync(CancellationToken stop) =>
        await data.Users.AsNoTracking().OrderBy(one => one.UserName).ToListAsync(stop);

    /// <summary>Gives the person who has a code an account, or a new password and role where there is one.</summary>
    internal async Task<SignInAnswer> PairAsync(
        string name, string code, string password, string? address, CancellationToken stop)
    {
        await OneAtATime.WaitAsync(stop);
        try
        {
            name = name.Trim();
            if (await codes.FindAsync(code, name, stop) is not { } found)
            {
                await log.AddAsync(name, "pairing refused: wrong or old code", address: address);
                return new(null, OfficeText.Say("This code is not valid for this name: it may be misspelt, used already, or too old. Ask for a new one."));
            }

            // The invited name as the supervisor wrote it, since entries bear it.
            name = found.Person ?? name;
            if (!await codes.UseAsync(found, stop)) return new(null, OfficeText.Say("This code was used this very moment. Ask for a new one."));
            var account = await users.FindByNameAsync(name);
            var isNew = account is null;
            account ??= new() { UserName = name };
            account.Role = found.Role;
            account.PasswordHash = users.PasswordHasher.HashPassword(account, password);
            // Whoever pairs is signed in by it.
            (account.Disabled, account.AccessFailedCount, account.LockoutEnd, account.LastSignIn) = (false, 0, null, clock.GetUtcNow());
            // A new stamp ends every session under the old password.
            account.SecurityStamp = Guid.NewGuid().ToString("N");
            var result = isNew ? await users.CreateAsync(account) : await users.UpdateAsync(account);
            if (!result.Succeeded) throw new InvalidOperationException(string.Join(' ', result.Errors.Select(e => e.Description)));
            await log.AddAsync(
                account.UserName!, isNew ? $"paired as {account.Role}" : $"paired anew as {account.Role}", found.MadeBy, address);
            return new(account, null);
        }
        finally
        {
            OneAtATime.Release();
        }
    }

    /// <summary>Disables an account at once, in every session.</summary>
    internal Task<string?> DisableAsync(string id, string by, string? address) => ChangeAsync(id, by, address, account =>
    {
        (account.Disabled, account.SecurityStamp) = (true, Guid.NewGuid().ToString("N"));
        return "disabled";
    });

    /// <summary>Lets a disabled account sign in again with its password.</summary>
    internal Task<string?> EnableAsync(string id, string by, string? address) => ChangeAsync(id, by, address, account =>
    {
        (account.Disabled, account.LockoutEnd, account.AccessFailedCount) = (false, null, 0);
        return "enabled";
    });

    /// <summary>Ends every session of an account.</summary>
    internal Task<string?> SignOutEverywhereAsync(string id, string by, string? address) => ChangeAsync(id, by, address, account =>
    {
        account.SecurityStamp = Guid.NewGuid().ToString("N");
        return "signed out everywhere";
    });

    /// <summary>Gives an account another role.</summary>
    internal Task<string?> ChangeRoleAsync(string id, string role, string by, string? address) => IsRole(role)
        ? ChangeAsync(id, by, address, account =>
        {
            var before = account.Role;
            account.Role = role;
            return $"role changed from {before} to {role}";
        })
        : Task.FromResult<string?>(OfficeText.Say($"role: '{Excerpt(role)}' was read; viewer, operator, technician or supervisor was expected."));

    internal static bool IsRole(string word) => RegisterReader.Roles.Any(role => role.Text == word);

    private async Task<string?> ChangeAsync(string id, string by, string? address, Func<Account, string> change)
    {
        await OneAtATime.WaitAsync();
        try
        {
            if (await users.FindByIdAsync(id) is not { } account) return OfficeText.Say("There is no such account any more.");
            var before = Supervises(account);
            var what = change(account);
            if (before && !Supervises(account)
                && !(await data.Users.AsNoTracking().Where(one => one.Id != id).ToListAsync()).Any(Supervises))
            {
                data.ChangeTracker.Clear();
                return OfficeText.Say($"{account.UserName} is the only supervisor; make another one first.");
            }

            await users.UpdateAsync(account);
            await log.AddAsync(account.UserName!, what, by, address);
            return null;
        }
        finally
        {
            OneAtATime.Release();
        }
    }

    private static bool Supervises(Account account) =>
        !account.Disabled && account.Role == Rights.Word(PersonRole.Supervisor);

    private static string Excerpt(string text) => text.Length <= 40 ? text : text[..40];
}
