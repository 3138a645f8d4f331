using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Accounts;

/// <summary>Makes and takes the codes with which people get their accounts. A code works once.</summary>
internal sealed class PairingCodes(AccountsContext data, TimeProvider clock)
{
    /// <summary>How long a code that the program prints may be used.</summary>
    internal static readonly TimeSpan PrintedLife = TimeSpan.FromMinutes(10);

    /// <summary>How long an invitation may be used: the person may be on the other shift.</summary>
    internal static readonly TimeSpan InvitationLife = TimeSpan.FromHours(48);

    // Sixteen of these 32 signs are 80 bits. Without I, L, O and U, which are misread.
    private const string Signs = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    private const int Length = 16;

    /// <summary>Makes a code and keeps its hash.</summary>
    /// <param name="person">Who may use it; null for anybody who has it.</param>
    /// <param name="role">The role's word.</param>
    /// <param name="madeBy">Who made it; null for the program.</param>
    /// <param name="life">How long it may be used.</param>
    /// <param name="stop">Ends the wait.</param>
    internal async Task<string> MakeAsync(string? person, string role, string? madeBy, TimeSpan life, CancellationToken stop)
    {
        var code = RandomNumberGenerator.GetString(Signs, Length);
        var now = clock.GetUtcNow();
        // A new code for a person replaces the one before; those of the program replace each other.
        await data.Codes.Where(one => one.Until < now || (one.Used == null && one.Person == person)).ExecuteDeleteAsync(stop);
        data.Codes.Add(new() { Hash = Hash(code), Person = person, Role = role, MadeBy = madeBy, Until = now + life });
        await data.SaveChangesAsync(stop);
        return string.Join('-', code.Chunk(4).Select(four => new string(four)));
    }

    /// <summary>The code that a person may use now; null when it is wrong, used up, too old or another person's.</summary>
    internal async Task<PairingCode?> FindAsync(string typed, string person, CancellationToken stop)
    {
        var hash = Encoding.ASCII.GetBytes(Hash(Clean(typed)));
        var now = clock.GetUtcNow();
        PairingCode? found = null;
        // Every open code is compared, each in constant time, so that the time tells nothing.
        foreach (var one in await data.Codes.AsNoTracking().Where(one => one.Used == null && one.Until >= now).ToListAsync(stop))
        {
            if (CryptographicOperations.FixedTimeEquals(hash, Encoding.ASCII.GetBytes(one.Hash))) found = one;
        }

        return found?.Person is null || string.Equals(found.Person, person, StringComparison.OrdinalIgnoreCase) ? found : null;
    }

    /// <summary>Uses a code up; false when somebody was quicker.</summary>
    internal async Task<bool> UseAsync(PairingCode code, CancellationToken stop)
    {
        var now = clock.GetUtcNow();
        return await data.Codes.Where(one => one.Id == code.Id && one.Used == null)
            .ExecuteUpdateAsync(set => set.SetProperty(one => one.Used, now), stop) == 1;
    }

    /// <summary>A code as typed, without what people put between and around, and with misread signs put right.</summary>
    internal static string Clean(string typed) => string.Concat(typed.ToUpperInvariant()
        .Select(c => c switch { 'O' => '0', 'I' or 'L' => '1', _ => c }).Where(c => Signs.Contains(c, StringComparison.Ordinal)));

    /// <summary>SHA-256 of a secret of our own making, which is too long to be guessed: all that is kept of it.</summary>
    internal static string Hash(string code) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(code)));
}
