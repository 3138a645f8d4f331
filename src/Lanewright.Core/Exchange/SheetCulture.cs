using Lanewright.Core.Findings;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// The culture in which a file's numbers are written. It belongs to the file, so that the file means the same wherever
/// it is read.
/// </summary>
internal static class SheetCulture
{
    private const string Field = "culture";

    /// <summary>The culture the tree names; the invariant one when it names none or an unknown one.</summary>
    internal static TextCulture Of(SheetTree tree) =>
        tree.Root is { Kind: NodeKind.Map } root && root.Find(Field) is { Kind: NodeKind.Text } node
        && TextCulture.TryFind(node.Literal.Trim(), out var culture)
            ? culture
            : TextCulture.Invariant;

    /// <summary>Asks for the field, so that it is known and described, and reports a culture that is not known.</summary>
    internal static void Ask(Fields fields)
    {
        var name = fields.Text(
            Field,
            "Whose decimal mark and customary units the file's numbers follow, such as en-US or de-DE; without it a point "
            + "is the decimal mark, and what could be read two ways is asked about.",
            Need.Optional, 20);
        if (name is null || TextCulture.TryFind(name, out _)) return;
        fields.Report(
            SheetFindings.UnknownCulture, Field, FindingValue.Text("read", name),
            FindingValue.Text("known", string.Join(", ", TextCulture.All.Select(c => c.Name).Where(n => n.Length > 0))));
    }
}
