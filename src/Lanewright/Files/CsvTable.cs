namespace Lanewright.Files;

/// <summary>A kind of table that a sheet in CSV may hold.</summary>
/// <param name="Word">The word in the first cell of the table's heading, e.g. <c>run</c>; read without regard to
/// case.</param>
/// <param name="List">The sheet's list that the table's rows are items of, e.g. <c>runs</c>.</param>
/// <param name="Label">The field of an item that the first cell of its row fills, e.g. <c>id</c>.</param>
/// <param name="Under">The word of another table, or null. Then each row belongs to the item of that table which its
/// first cell names, and <paramref name="List"/> is a list of that item.</param>
public sealed record CsvTable(string Word, string List, string Label, string? Under = null);
