using Lanewright.Storage.Records;

namespace Lanewright.Office;

/// <summary>A list of the register, as it is shown.</summary>
/// <param name="Kind">Of what.</param>
/// <param name="Query">Which part of it.</param>
/// <param name="Page">Its records, those in use first.</param>
internal sealed record RegisterList(RegisterKind Kind, ListQuery Query, ListPage<RegisterRow> Page);

/// <summary>One record of a list.</summary>
/// <param name="Item">The record.</param>
/// <param name="Texts">Its fields.</param>
internal sealed record RegisterRow(RegisterItem Item, IReadOnlyDictionary<string, string> Texts)
{
    internal string Search => string.Join(' ', Texts.Values);

    internal string Id => Item.Id;

    internal string State => Item.Others.Length > 0 ? OfficeText.Say("two versions, to be settled") : Item.Retired ? OfficeText.Say("no longer in use") : "";
}
