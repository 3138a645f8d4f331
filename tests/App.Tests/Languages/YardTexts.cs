using System.Text;
using System.Text.RegularExpressions;
using Lanewright.Core.Tests;

namespace Lanewright.App.Tests.Languages;

/// <summary>The texts of the pages' modules: those that go through the tables, and those that do not.</summary>
internal static partial class YardTexts
{
    public static IReadOnlyList<string> Files { get; } =
        [.. Directory.GetFiles(Repository.File("src", "Lanewright.Client", "yard"), "*.js").Order(StringComparer.Ordinal)];

    /// <summary>Modules that say nothing to a person, or only what the browser's own tools show.</summary>
    public static IReadOnlySet<string> Machinery { get; } = new HashSet<string>(StringComparer.Ordinal)
    {
        "core-worker.js", "service.js", "store.js", "words.js", "ids.js",
    };

    /// <summary>Texts that are no words for a person: calls of Core, records that every device must read alike.</summary>
    public static IReadOnlySet<string> NotSaid { get; } = new HashSet<string>(StringComparer.Ordinal)
    {
        "'Live'", "'Plan'", "'Keyed'", "'Form'", "'Kinds'", "'Diagnose'", "'Practice'", "'PracticeLists'", "'Lanewright'",
        "'Checked before the drop'", "`${CHECKED}, except: ${open.join(' ')}`", "`${CHECKED}: everything on the list.`",
        "'BroadcastChannel'", "'QuotaExceededError'", "'li.'", "'test.'", "'.whole.'", "'.truck.'", "`${path}.whole.`", "`${path}.truck.`",
        "`${textOf(page.fold, 'spreader.id') || t()} `", "'1234,5 (Canada, français)'", "'lb, in, lb/ft³'", "'kg, mm, kg/m³'",
        "'Language · Langue · Kieli'",
    };

    /// <summary>The keys in a module: <c>t('text')</c>, and <c>t`text ${value}`</c> with numbered places.</summary>
    public static IEnumerable<string> Keys(string module)
    {
        foreach (Match match in Said().Matches(module)) yield return Plain(match.Groups[1].Value);
        for (var at = module.IndexOf("t`", StringComparison.Ordinal); at >= 0; at = module.IndexOf("t`", at + 2, StringComparison.Ordinal))
            if (at == 0 || !char.IsLetterOrDigit(module[at - 1])) yield return Template(module, at + 2).Key;
    }

    /// <summary>The module without what goes through the tables and without remarks.</summary>
    public static string Rest(string module)
    {
        var rest = new StringBuilder(Remark().Replace(Said().Replace(module, "t()"), "$1"));
        for (var at = 0; at + 1 < rest.Length; at++)
        {
            if (rest[at] != 't' || rest[at + 1] != '`' || (at > 0 && char.IsLetterOrDigit(rest[at - 1]))) continue;
            // What is in the places is code, and looked at as such.
            var (_, end, code) = Template(rest.ToString(), at + 2);
            rest.Remove(at, end - at).Insert(at, $"t({string.Join(',', code)})");
        }

        return rest.ToString();
    }

    private static (string Key, int End, List<string> Code) Template(string module, int at)
    {
        var key = new StringBuilder();
        var code = new List<string>();
        var next = 0;
        while (module[at] != '`')
        {
            if (module[at] == '$' && module[at + 1] == '{')
            {
                var start = at += 2;
                for (var depth = 1; depth > 0; at++) depth += module[at] == '{' ? 1 : module[at] == '}' ? -1 : 0;
                code.Add(module[start..(at - 1)]);
                key.Append('{').Append(next++).Append('}');
                continue;
            }

            if (module[at] == '|') next = 0;
            key.Append(module[at++]);
        }

        return (key.ToString(), at + 1, code);
    }

    private static string Plain(string quoted) => quoted.Replace("\\'", "'", StringComparison.Ordinal);

    [GeneratedRegex(@"(?<![\w.])t\('((?:[^'\\]|\\.)*)'\)")]
    private static partial Regex Said();

    [GeneratedRegex(@"(^|\s)(?://[^\n]*|/\*[\s\S]*?\*/)")]
    private static partial Regex Remark();
}
