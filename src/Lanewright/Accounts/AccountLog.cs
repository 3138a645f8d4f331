using Microsoft.EntityFrameworkCore;
using static Lanewright.Office.OfficeText;

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

    /// <summary>What happened, which is kept in English, in the reader's language.</summary>
    internal static string Said(string what) => what switch
    {
        "signed in" => Say("signed in"),
        "signed out" => Say("signed out"),
        "signed out everywhere" => Say("signed out everywhere"),
        "disabled" => Say("disabled"),
        "enabled" => Say("enabled"),
        "token withdrawn" => Say("token withdrawn"),
        "sign-in refused: no such account" => Say("sign-in refused: no such account"),
        "sign-in refused: locked" => Say("sign-in refused: locked"),
        "sign-in refused: wrong password" => Say("sign-in refused: wrong password"),
        "sign-in refused: disabled" => Say("sign-in refused: disabled"),
        "locked after wrong passwords" => Say("locked after wrong passwords"),
        "pairing refused: wrong or old code" => Say("pairing refused: wrong or old code"),
        "a code for a supervisor was printed" => Say("a code for a supervisor was printed"),
        _ => WithRole(what.Split(' ')) ?? what,
    };

    private static string? WithRole(string[] words) => words switch
    {
        ["invited", "as", var role] => Say($"invited as {Role(role)}"),
        ["paired", "as", var role] => Say($"paired as {Role(role)}"),
        ["paired", "anew", "as", var role] => Say($"paired anew as {Role(role)}"),
        ["role", "changed", "from", var before, "to", var after] => Say($"role changed from {Role(before)} to {Role(after)}"),
        ["token", "made", "as", var role, "for", var days, "days"] => Say($"token made as {Role(role)} for {days} days"),
        _ => null,
    };

    // What somebody typed as a name may be anything.
    private static string Shown(string person)
    {
        var text = string.Concat(person.Where(c => !char.IsControl(c) && !char.IsSurrogate(c))).Trim();
        return text.Length <= LongestName ? text : text[..LongestName];
    }
}
