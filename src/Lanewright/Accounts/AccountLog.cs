using Microsoft.EntityFrameworkCore;

namespace Lanewright.Accounts;

/// <summary>Writes down what happens to accounts. Nothing is changed or removed by the program.</summary>
internal sealed class AccountLog(AccountsContext data, TimeProvider clock)
{
    private const int LongestName = 100;

    /// <summary>Writes an event down at once.</summary>
    /// <param name="person">Whose account; what was typed where that is not known.</param>
    /// <param name="what">What happened.</param>
    /// <param name="by">Who did it to the account; null for the person.</param>
    /// <param name="address">Network address; null for a command.</param>
    internal async Task AddAsync(string person, string what, string? by = null, string? address = null)
    {
        data.Log.Add(new()
        {
            At = clock.GetUtcNow(),
            Person = Shown(person),
            What = what,
            By = by,
            Address = address,
        });
        // It is written even when the person has gone away meanwhile.
        await data.SaveChangesAsync(CancellationToken.None);
    }

    /// <summary>The latest events, newest first.</summary>
    internal async Task<IReadOnlyList<AccountEvent>> LatestAsync(int most, CancellationToken stop) =>
        await data.Log.AsNoTracking().OrderByDescending(one => one.Id).Take(most).ToListAsync(stop);

    // What somebody typed as a name may be anything.
    private static string Shown(string person)
    {
        var text = string.Concat(person.Where(c => !char.IsControl(c) && !char.IsSurrogate(c))).Trim();
        return text.Length <= LongestName ? text : text[..LongestName];
    }
}
