using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Lanewright.Commands;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Catalogue;
using Lanewright.Core.Diagnosis;
using Lanewright.Core.Findings;
using Lanewright.Core.Practice;
using Lanewright.Documents;
using Lanewright.Files;
using Lanewright.Logs.Profiles;
using Lanewright.Storage.Database;

namespace Lanewright.App.Tests.Languages;

/// <summary>Every text that people see, gathered from the compiled code, the catalogues and the yard's modules.</summary>
internal static partial class Spoken
{
    private static readonly Type[] OfEachAssembly = [typeof(Finding), typeof(Certificate), typeof(LogProfile), typeof(RecordsPlace), typeof(SheetFile)];

    private static readonly Lazy<IReadOnlyList<Literal>> Found = new(() => [.. OfEachAssembly.SelectMany(type => Literals.Of(type.Assembly.Location))]);

    /// <summary>Lets every assembly bring its tables, which it does when it is first used.</summary>
    public static void BringTables()
    {
        foreach (var type in OfEachAssembly) RuntimeHelpers.RunModuleConstructor(type.Module.ModuleHandle);
    }

    public static IReadOnlyList<Literal> All => Found.Value;

    /// <summary>The texts that the tables must have.</summary>
    public static IReadOnlySet<string> Keys { get; } = new SortedSet<string>(
        Code().Concat(Catalogues()).Concat(Helps()).Concat(YardTexts.Files.SelectMany(file => YardTexts.Keys(File.ReadAllText(file)))).Where(HasWords),
        StringComparer.Ordinal);

    /// <summary>Two words in a row, as a sentence or a label has and a name in a file has not.</summary>
    public static bool IsProse(string text) => Prose().IsMatch(Places().Replace(text, " "));

    private static IEnumerable<string> Code() => All
        .Where(literal => literal.Use is Use.Phrase || (literal.Use is Use.Other && !IsPiece(literal) && IsProse(literal.Text) && !Exceptions.IsExcepted(literal)))
        .Where(literal => !Exceptions.IsSkipped(literal)).Select(literal => literal.Text);

    // The help of every command.
    private static IEnumerable<string> Helps() => CommandTree.Described(CommandTree.Make()).Select(one => one.Description).OfType<string>();

    // Single words among the data, which the code does not show to be texts.
    private static IEnumerable<string> Catalogues() =>
    [
        .. FindingCatalogue.All.SelectMany(kind => new[] { kind.Message, kind.Action }),
        .. Calibration.Kinds.SelectMany(kind => new[] { kind.Name, kind.Doc }),
        .. CauseTable.All.SelectMany(cause => new[] { cause.Name, cause.AlsoSeen }),
        .. NextTests.All.Select(test => test.How), .. PracticeExercises.All.Select(exercise => exercise.Title),
    ];

    /// <summary>A text that begins or ends with a blank was meant to be joined with others.</summary>
    public static bool IsPiece(Literal literal) => literal.Use is Use.Piece or Use.Markup
        || (literal.Use is Use.Other && (literal.Text.StartsWith(' ') || literal.Text.EndsWith(' ')) && Blank().IsMatch(literal.Text));

    private static bool HasWords(string text) => Places().Replace(text, "").Any(char.IsLetter);

    [GeneratedRegex(@"\p{L}{2,}[,;:.!?)”""]* [(""“]?\p{L}|^\p{Lu}\p{L}+[.:?]$")]
    private static partial Regex Prose();

    // A word beside the blank at the end, and not a name with an equals sign as in a debugger's text.
    [GeneratedRegex(@"^[^=]*$(?<=\p{L}{2,}[.,:]? +|(?=^ +[(“]?\p{L}{2,}).*)")]
    private static partial Regex Blank();

    [GeneratedRegex(@"\{\w+(:\w+)?\}")]
    private static partial Regex Places();
}
