using Microsoft.AspNetCore.Identity;

namespace Lanewright.Accounts;

/// <summary>A person who may sign in. The user name is the person's name in the register, as written on entries.</summary>
public sealed class Account : IdentityUser
{
    /// <summary>The role's word, one of the register's.</summary>
    public string Role { get; set; } = "viewer";

    /// <summary>Whether the person may no longer sign in. The account stays, since entries bear its name.</summary>
    public bool Disabled { get; set; }

    /// <summary>When the person last signed in, UTC; null for never.</summary>
    public DateTimeOffset? LastSignIn { get; set; }
}

/// <summary>A code that gives one account once. The code itself is not kept, only its hash.</summary>
internal sealed class PairingCode
{
    public long Id { get; set; }

    /// <summary>SHA-256 of the code, 64 lower-case hexadecimal digits.</summary>
    public required string Hash { get; set; }

    /// <summary>The only person who may use it; null for anybody who has it (the codes that the program prints).</summary>
    public string? Person { get; set; }

    /// <summary>The role it gives.</summary>
    public required string Role { get; set; }

    /// <summary>Who made it; null for the program itself.</summary>
    public string? MadeBy { get; set; }

    /// <summary>Until when it may be used, UTC.</summary>
    public required DateTimeOffset Until { get; set; }

    /// <summary>When it was used, UTC; null while it was not.</summary>
    public DateTimeOffset? Used { get; set; }
}

/// <summary>Lets another program use the API. The token itself is not kept, only its hash.</summary>
public sealed class ApiToken
{
    /// <summary>Identity.</summary>
    public long Id { get; set; }

    /// <summary>What it is for; its entries stand under this name with a mark.</summary>
    public required string Name { get; set; }

    /// <summary>SHA-256 of the token, 64 lower-case hexadecimal digits.</summary>
    public required string Hash { get; set; }

    /// <summary>The role's word: what it may do.</summary>
    public required string Role { get; set; }

    /// <summary>Who made it.</summary>
    public required string MadeBy { get; set; }

    /// <summary>When it was made, UTC.</summary>
    public required DateTimeOffset Made { get; set; }

    /// <summary>Until when it may be used, UTC.</summary>
    public required DateTimeOffset Until { get; set; }

    /// <summary>When it was last used, UTC, to the hour; null for never.</summary>
    public DateTimeOffset? LastUsed { get; set; }

    /// <summary>When it was withdrawn, UTC; null while it was not.</summary>
    public DateTimeOffset? Withdrawn { get; set; }
}

/// <summary>Something that happened to accounts; only added to.</summary>
public sealed class AccountEvent
{
    /// <summary>Order of the events.</summary>
    public long Id { get; set; }

    /// <summary>When, UTC.</summary>
    public required DateTimeOffset At { get; set; }

    /// <summary>Whose account it was about, as typed where nobody is signed in.</summary>
    public required string Person { get; set; }

    /// <summary>What happened, in words.</summary>
    public required string What { get; set; }

    /// <summary>Who did it to the account; null for the person, or for somebody unknown.</summary>
    public string? By { get; set; }

    /// <summary>The network address it came from; null for a command.</summary>
    public string? Address { get; set; }
}
