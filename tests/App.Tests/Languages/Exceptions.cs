using System.Text.RegularExpressions;

namespace Lanewright.App.Tests.Languages;

/// <summary>Texts that are not translated, and why. Everything else must stand in the tables.</summary>
internal static partial class Exceptions
{
    /// <summary>Types whose texts are no words for people, or words that belong to no language.</summary>
    private static readonly (string Type, string Why)[] NoWords =
    [
        ("Lanewright.Accounts.Migrations.", "names in a database"),
        ("Lanewright.Storage.Migrations.", "names in a database"),
        ("Lanewright.Storage.Database.SqlitePragmas", "SQL"),
        ("Lanewright.Accounts.SqliteAccountsDesign", "for programmers"),
        ("Lanewright.Core.Quantities.", "names and spellings of units, as people type them"),
        ("Lanewright.Core.Text.UnitWords", "spellings of units"),
        ("Lanewright.Core.Text.TextCulture", "names of cultures"),
        ("Lanewright.Core.Catalogue.", "headings of docs/formats/findings.md"),
        ("Lanewright.Core.Charts.SvgText", "markup"),
        ("Lanewright.Network.QrPicture", "markup"),
        ("Lanewright.Core.Exchange.Schemas", "titles inside JSON Schema"),
        ("Lanewright.Core.Exchange.SchemaText", "keys of JSON Schema"),
        ("Lanewright.Core.Exchange.SchemaFields", "keys of JSON Schema"),
        ("Lanewright.Core.Practice.DemoWorld", "data of the demo: names that people would have typed"),
        ("Lanewright.Core.Practice.PracticeSetup", "data of practice: names that people would have typed"),
        ("Lanewright.Core.Practice.PracticeSheet", "data of practice: names that people would have typed"),
        ("Lanewright.Core.Practice.PracticeTest", "data of practice: names that people would have typed"),
        ("Lanewright.Core.Practice.SimulatedTruck", "names of error sources that are not shown"),
        ("Lanewright.Core.Statistics.", "messages for programmers"),
        ("Lanewright.Core.Practice.SeasonWorld", "data of practice: names that people would have typed"),
        ("Lanewright.Logs.Practice.", "files of practice: names that people would have typed, and what lies beside them"),
        ("Lanewright.Logs.Store.Engine", "SQL"),
        ("Lanewright.Logs.Store.LogPacking", "SQL"),
        ("Lanewright.Logs.Store.MatchedSegments", "SQL"),
        ("Lanewright.Logs.Store.RowTable", "SQL"),
        ("Lanewright.Logs.Store.SourceFile", "SQL"),
        ("Lanewright.Logs.Store.StoredRows", "SQL"),
        ("Lanewright.Logs.Applied.Applied", "SQL"),
        ("Lanewright.Logs.Applied.TableFile", "SQL"),
        ("Lanewright.Logs.Rows.RowReader", "kept with refused rows in a file; RefusedFile.Said says it"),
        ("System.Text.RegularExpressions.Generated.", "patterns"),
        ("Microsoft.AspNetCore.Http.Generated.", "what takes requests apart, for the server's log"),
        ("Lanewright.Commands.Misspelling", "patterns"),
    ];

    /// <summary>Single texts, each with its reason.</summary>
    private static readonly Dictionary<string, string> Texts = new(StringComparer.Ordinal)
    {
        ["scale "] = "names a family of error sources; Phrase.OfFamily says it",
        [": rounding of readings"] = "the same",
        [": error of each reading"] = "the same",
        [": error in proportion to load"] = "the same",
        ["runs at "] = "names a place among the findings",
        [" MB"] = "a symbol",
        [" rpm"] = "a symbol",
        [" min"] = "a symbol",
        [" (Parameter"] = "takes the message of an exception apart",
        [" (token)"] = "ends the name of a token in the records",
        [" UTC"] = "a symbol",
        ["-found "] = "a name in a page",
        ["field wide"] = "a name in a page",
        ["CN=Lanewright at "] = "a name in a certificate",
        ["It turned out to be: "] = "kept in the records",
        ["invited as "] = "kept in the log of accounts; AccountLog.Said says it",
        ["paired as "] = "the same",
        ["paired anew as "] = "the same",
        ["role changed from "] = "the same",
        [" to "] = "the same",
        ["token made as "] = "the same",
        [" for "] = "the same",
        [" days"] = "the same",
        ["keyed in"] = "heads a column of a file",
        ["known to"] = "heads a column of a file",
        [" or "] = "takes the English word apart, which is the same in every language",
        ["The office wrote an entry that the records do not take: "] = "message for programmers",
        [" does not measure "] = "message for programmers",
        ["The value has no finite number in "] = "message for programmers",
        ["Liberation Sans"] = "the name of a font",
        ["III L"] = "the name of a class of scales",
        ["yyyy-MM-dd HH:mm 'UTC'"] = "the pattern of a moment",
        [":of "] = "part of the identity of an error source",
        ["of survey "] = "the same",
        ["salt in "] = "names a family of error sources that is not shown",
        ["Imported from "] = "kept in the records",
        ["Point "] = "message for programmers",
        [" is earlier than the one before."] = "the same",
        [" bytes)"] = "kept with a refused row in a file",
        ["node "] = "names a piece of a file",
        ["way "] = "the same",
        ["feature "] = "the same",
        [" min  "] = "a symbol",
        ["Lines for each: "] = "begins a help text that stands in the tables whole",
        ["What it lists: "] = "the same",
        [". Without it watershed where routes are given, else route."] = "the same",
        ["An exercise, 1 (easy) to "] = "the same",
        [" (hard)."] = "the same",
        ["Decimal mark and customary units of what is shown and typed: "] = "the same",
        [" | test CODE | name CODE | tests | causes | known | sheet | hint | help | quit"] = "what can be typed in practice",
        ["wanted "] = "the name given to an entry without one",
    };

    /// <summary>Whether a type's texts are not for the tables; phrases always are.</summary>
    public static bool IsExcepted(Literal literal) =>
        Texts.ContainsKey(literal.Text) || NoWords.Any(part => literal.Type.StartsWith(part.Type, StringComparison.Ordinal));

    /// <summary>Phrases that are no text for the tables.</summary>
    public static bool IsSkipped(Literal literal) => Citation().IsMatch(literal.Text) || Machinery().IsMatch(literal.Text);

    /// <summary>Names and marks in a page that are alike in every language.</summary>
    public static bool IsName(string text) => text is "Lanewright" or "- Lanewright" or "CSV" or "Parquet" or "A5" or "± t" or "Android" or "XXXX-XXXX-XXXX-XXXX";

    [GeneratedRegex("FACE|OSHA|LTAP|^NIOSH|field handbook, 2nd revision, 2012$|, appendix ")]
    private static partial Regex Citation();

    // Kinds of media, headers, markup, markup's own words, SQL.
    [GeneratedRegex("^(application|text)/|^(private|public), max-age|^default-src |^same-origin$|^Bearer |^Authorization: |^character varying|^Data Source=|^xMidYMid|^yyyy-|^lanewright[ -][a-z]|^(CREATE|DELETE|PRAGMA|SELECT|VACUUM) |^double precision$")]
    private static partial Regex Machinery();
}
