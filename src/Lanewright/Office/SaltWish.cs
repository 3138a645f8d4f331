namespace Lanewright.Office;

/// <summary>What a salt report is to be made of, as it was typed.</summary>
/// <param name="By">What its lines are about.</param>
/// <param name="Moisture">Water in the salt.</param>
/// <param name="Purity">Sodium chloride in what is not water.</param>
/// <param name="Units">si or us.</param>
public sealed record SaltWish(string By, string Moisture, string Purity, string Units)
{
    /// <summary>The address of the report as a file, or as a page for an empty form.</summary>
    internal string Address(string form) =>
        $"/office/season/salt{(form.Length > 0 ? "." : "")}{form}?by={Uri.EscapeDataString(By)}&moisture={Uri.EscapeDataString(Moisture)}&purity={Uri.EscapeDataString(Purity)}&units={Uri.EscapeDataString(Units)}";
}
