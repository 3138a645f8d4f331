using System.Text.RegularExpressions;
using Lanewright.Core.Text;

namespace Lanewright.Commands;

/// <summary>
/// What is wrong with a command line, as the library that reads it says in English, for a reader of any language. A sentence that is not
/// known here stays as it is; a test holds those that can come up.
/// </summary>
internal static partial class Misspelling
{
    internal static Phrase Said(string message)
    {
        foreach (var (pattern, said) in Sentences)
            if (pattern().Match(message) is { Success: true } match) return said(match.Groups);
        return message;
    }

    private static readonly (Func<Regex> Pattern, Func<GroupCollection, Phrase> Said)[] Sentences =
    [
        (Unknown, found => $"'{found[1].Value}' was read; no command, option or further argument of that name is known here."),
        (NoValue, found => $"Something was expected after {found[1].Value}."),
        (NoOption, found => $"{found[1].Value} is missing, and is needed."),
        (NoCommand, _ => "A command was expected."),
        (OneOnly, found => $"{found[1].Value} takes one value; {found[2].Value} were read."),
        (WrongType, found => $"{found[2].Value}: '{found[1].Value}' cannot be read as what was expected there."),
        (OneOf, found => $"'{found[1].Value}' was read; expected one of {string.Join(", ", Quoted().Matches(found[2].Value).Select(one => one.Groups[1].Value))}."),
    ];

    [GeneratedRegex("^Unrecognized command or argument '(.*)'\\.$", RegexOptions.Singleline)]
    private static partial Regex Unknown();

    [GeneratedRegex("^Required argument missing for (?:command|option): '(.*)'\\.$")]
    private static partial Regex NoValue();

    [GeneratedRegex("^Option '(.*)' is required\\.$")]
    private static partial Regex NoOption();

    [GeneratedRegex("^Required command was not provided\\.$")]
    private static partial Regex NoCommand();

    [GeneratedRegex("^(?:Option|Command) '(.*)' expects a single argument but (\\d+) were provided\\.$")]
    private static partial Regex OneOnly();

    [GeneratedRegex("^Cannot parse argument '(.*)' for (?:option|command) '(.*)' as expected type ", RegexOptions.Singleline)]
    private static partial Regex WrongType();

    [GeneratedRegex("^Argument '(.*?)' not recognized\\. Must be one of:(.*)$", RegexOptions.Singleline)]
    private static partial Regex OneOf();

    [GeneratedRegex("'([^']*)'")]
    private static partial Regex Quoted();
}
