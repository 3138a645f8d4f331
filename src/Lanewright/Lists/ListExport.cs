using Lanewright.Core.Text;
using Lanewright.Office;

namespace Lanewright.Lists;

/// <summary>A list of the register as rows that come in again unchanged.</summary>
internal static class ListExport
{
    internal static IEnumerable<string[]> Rows(RegisterKind kind, IReadOnlyList<RegisterRow> register)
    {
        yield return [.. kind.Fields.Select(field => field.Path)];
        foreach (var row in register)
        {
            // What is written in an old form is read and written anew; what cannot be read stays as it stands.
            var known = row.Texts.Where(text => kind.Fields.Any(field => field.Path == text.Key)).ToDictionary(StringComparer.Ordinal);
            var read = kind.Take(known, TextCulture.Invariant).Fields.Where(field => field.Text is not null)
                .ToDictionary(field => field.Path, field => field.Text!, StringComparer.Ordinal);
            yield return [.. kind.Fields.Select(field => read.GetValueOrDefault(field.Path) ?? known.GetValueOrDefault(field.Path, ""))];
        }
    }
}
