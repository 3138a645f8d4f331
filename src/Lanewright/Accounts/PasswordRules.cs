using static Lanewright.Office.OfficeText;

namespace Lanewright.Accounts;

/// <summary>
/// What a password must be: long, and not one that everybody tries first. Nothing is asked about kinds of characters,
/// which makes passwords harder to keep in mind and not harder to guess.
/// </summary>
internal static class PasswordRules
{
    /// <summary>Fewest characters.</summary>
    internal const int Least = 12;

    /// <summary>Most characters; more would only make checking slow.</summary>
    internal const int Most = 200;

    // PBKDF2 with HMAC-SHA512, the framework's own form. The count is that of OWASP's Password Storage Cheat Sheet
    // (210,000, "as of December 2022"); the framework's default is lower.
    internal const int Iterations = 210_000;

    // Common passwords of at least twelve characters, and what is near at hand here. Compared without marks and spaces.
    private static readonly string[] Common =
    [
        "password", "passwort", "motdepasse", "contrasena", "letmein", "welcome", "willkommen", "changeme", "iloveyou", "sunshine",
        "princess", "football", "baseball", "superman", "trustno1", "monkey", "dragon", "master", "admin", "administrator",
        "supervisor", "technician", "operator", "lanewright", "spreader", "calibration", "snowplow", "winter", "qwerty", "qwertz",
        "qwertyuiop", "qwertzuiop", "asdfghjkl", "zxcvbnm", "1q2w3e4r", "1qaz2wsx", "abcdefgh", "secret",
    ];

    private static readonly string[] Rows =
        ["01234567890123456789", "98765432109876543210", "abcdefghijklmnopqrstuvwxyz", "qwertyuiopasdfghjklzxcvbnm", "qwertzuiopasdfghjklyxcvbnm"];

    /// <summary>What is wrong with a password for a person; null for nothing.</summary>
    internal static string? Fault(string person, string password)
    {
        if (password.Length < Least)
            return Say($"The password has {password.Length} characters; at least {Least} are needed. Several words in a row are good.");
        if (password.Length > Most) return Say($"The password has {password.Length} characters; at most {Most} are taken.");
        var letters = string.Concat(password.Where(char.IsLetterOrDigit)).ToLowerInvariant();
        var name = string.Concat(person.Where(char.IsLetterOrDigit)).ToLowerInvariant();
        if (password.Distinct().Count() < 5 || Rows.Any(row => letters.Length > 0 && row.Contains(letters, StringComparison.Ordinal)))
            return Say("The password is a row or repeats itself; it would be tried first. Choose another.");
        // What is left of a common one with digits hung on, said twice, or with the name before it.
        var kernel = letters.Trim("0123456789".ToCharArray());
        if (name.Length > 2) kernel = kernel.Replace(name, "", StringComparison.Ordinal);
        foreach (var common in Common) kernel = kernel.Replace(common, "", StringComparison.Ordinal);
        return kernel.Length < 4 && letters.Any(char.IsLetter)
            ? Say("The password is a common one, with or without digits; it would be tried first. Choose another.")
            : null;
    }
}
