using System.CommandLine;
using System.CommandLine.Parsing;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Office;
using Lanewright.Print;

namespace Lanewright.Commands;

/// <summary>What every command is told the same way, and how it ends.</summary>
internal static class CommonOptions
{
    /// <summary>Answered.</summary>
    internal const int Answered = 0;

    /// <summary>Could not read what was given.</summary>
    internal const int CouldNotRead = 1;

    /// <summary>Answered, but the answer must not be used.</summary>
    internal const int DoNotUse = 2;

    internal static Option<bool> Json() => new("--json") { Description = "Write the result for machines, as JSON." };

    internal static Option<string> Culture() => new("--culture")
    {
        Description = "Decimal mark and customary units of what is shown and typed: "
            + string.Join(", ", TextCulture.All.Select(c => c.Name)) + ".",
        DefaultValueFactory = _ => TextCulture.UnitedStates.Name,
    };

    private const string LanguageName = "--language";

    /// <summary>The language of the words, for every command.</summary>
    internal static Option<string?> Language() => new(LanguageName)
    {
        Description = "Language of what is shown: en, fr or fi; that of --culture when left out, where French and Finnish ones bring their own.",
        Recursive = true,
    };

    /// <summary>Units for a command that reads no sheet.</summary>
    internal static Option<string?> UnitsShown() => new("--units") { Description = "Units of what is shown: us or si." };

    internal static Option<string> Units() => new("--units")
    {
        Description = "Units of what is shown: us or si; those of the sheet when left out.",
    };

    /// <summary>The culture and language of the options, which the command speaks from here on; null after saying which there are.</summary>
    internal static TextCulture? CultureOf(ParseResult parsed, Option<string> option, TextWriter error)
    {
        var name = parsed.GetValue(option)!;
        if (!TextCulture.TryFind(name, out var culture))
        {
            error.WriteLine(Known(parsed).Say($"--culture: '{Excerpt.Of(name)}' was read; expected one of {string.Join(", ", TextCulture.All.Select(c => c.Name))}."));
            return null;
        }

        if (LanguageOf(parsed, culture.Language, error) is not { } language) return null;
        OfficeLanguage.Speak(language);
        return culture.In(language);
    }

    /// <summary>The language that the culture of a command brings; English without one.</summary>
    internal static Language OfCulture(ParseResult parsed) =>
        parsed.CommandResult.Command.Options.OfType<Option<string>>().FirstOrDefault(option => option.Name == "--culture") is { } culture
        && TextCulture.TryFind(parsed.GetValue(culture) ?? "", out var found) ? found.Language : Core.Text.Language.English;

    /// <summary>What was typed as the language; null when nothing was.</summary>
    internal static string? TypedLanguage(ParseResult parsed) =>
        parsed.RootCommandResult.Command.Options.OfType<Option<string?>>().FirstOrDefault(option => option.Name == LanguageName) is { } option
            ? parsed.GetValue(option) : null;

    /// <summary>The language asked for, or another one without; null after saying which there are.</summary>
    internal static Language? LanguageOf(ParseResult parsed, Language otherwise, TextWriter error)
    {
        if (TypedLanguage(parsed) is not { } typed) return otherwise;
        if (Core.Text.Language.All.FirstOrDefault(known => known.Code.Equals(typed, StringComparison.OrdinalIgnoreCase)) is { } language)
            return language;
        error.WriteLine(otherwise.Say($"--language: '{Excerpt.Of(typed)}' was read; expected one of {string.Join(", ", Core.Text.Language.All.Select(known => known.Code))}."));
        return null;
    }

    /// <summary>The language typed, or that of the culture, as far as either can be read.</summary>
    internal static Language Known(ParseResult parsed) =>
        TypedLanguage(parsed) is { } typed && Core.Text.Language.TryFind(typed, out var language) ? language : OfCulture(parsed);

    /// <summary>Lets what the command says from here on be in its language; false after saying which there are.</summary>
    internal static bool Speak(ParseResult parsed)
    {
        if (LanguageOf(parsed, OfCulture(parsed), parsed.InvocationConfiguration.Error) is not { } language) return false;
        OfficeLanguage.Speak(language);
        return true;
    }

    /// <summary>The units of an option, or of the sheet without one; null after saying which there are.</summary>
    internal static UnitPreferences? UnitsOf(string? name, UnitPreferences otherwise, TextCulture culture, TextWriter error)
    {
        switch (name?.ToUpperInvariant())
        {
            case null: return otherwise;
            case "US": return UnitPreferences.UnitedStates;
            case "SI": return UnitPreferences.Metric;
            default:
                error.WriteLine(culture.Say($"--units: '{Excerpt.Of(name)}' was read; expected us or si."));
                return null;
        }
    }

    /// <summary>
    /// Says what is wrong with a command line. The whole help would bury it, and does not belong to the output.
    /// </summary>
    internal static async Task<int> Misspelt(ParseResult parsed)
    {
        var language = Known(parsed);
        if (parsed is { CommandResult.Command: RootCommand root, UnmatchedTokens: [var typed, ..] })
        {
            var known = root.Subcommands.Select(c => c.Name).ToList();
            var near = string.Join(", ", Nearest.Close(typed, known));
            await Console.Error.WriteLineAsync(language.Say($"'{Excerpt.Of(typed)}' was read; expected one of {string.Join(", ", known)}."));
            if (near.Length > 0) await Console.Error.WriteLineAsync(language.Say($"Meant, perhaps: {near}."));
        }
        else
        {
            foreach (var error in parsed.Errors)
                await Console.Error.WriteLineAsync(language.Say(Misspelling.Said(error.Message)));
        }

        var path = "";
        for (var command = parsed.CommandResult; command.Command is not RootCommand; command = (CommandResult)command.Parent!)
            path = $"{command.Command.Name} {path}";
        await Console.Error.WriteLineAsync(language.Say($"Help: lanewright {path}--help"));
        return CouldNotRead;
    }

    internal static void Print(IEnumerable<string> lines, TextWriter output)
    {
        foreach (var line in lines)
            output.WriteLine(line);
    }

    /// <summary>Says why a file could not be used.</summary>
    internal static int Refuse(
        string file, IReadOnlyList<Finding> findings, bool json, Show show, TextWriter output, TextWriter error)
    {
        if (json)
        {
            output.Write(FindingsWriter.Write(findings, show.Culture, show.Units));
            return CouldNotRead;
        }

        error.WriteLine(show.Say($"{Excerpt.Of(file, 200)} cannot be used as it is:"));
        Print(FindingLines.Of(findings, show), error);
        return CouldNotRead;
    }
}
