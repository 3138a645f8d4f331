using System.CommandLine;
using Lanewright.Core.Text;

namespace Lanewright.Commands;

/// <summary>Every command, and their help in the language of the reader.</summary>
internal static class CommandTree
{
    // What the help itself says between the descriptions, each on a line of its own.
    private static readonly Phrase[] Heads = ["Description:", "Usage:", "Arguments:", "Options:", "Commands:"];

    internal static RootCommand Make()
    {
        var root = Tree();
        foreach (var option in root.Options)
        {
            if (option.Name == "--help") option.Description = "Show how a command is used.";
            if (option.Name == "--version") option.Description = "Show the version.";
        }

        return root;
    }

    /// <summary>Writes the help that was asked for, in the language asked for or that the culture brings.</summary>
    internal static int Help(ParseResult parsed, TextWriter output)
    {
        var language = CommonOptions.TypedLanguage(parsed) is { } code ? Language.TryFind(code, out var asked) ? asked : Language.English
            : CommonOptions.OfCulture(parsed);
        if (language == Language.English) return parsed.Invoke(new() { Output = output });
        Translate(parsed.RootCommandResult.Command, language);
        using var said = new StringWriter();
        var end = parsed.Invoke(new() { Output = said });
        foreach (var line in said.ToString().TrimEnd().Split('\n'))
            output.WriteLine(Heads.FirstOrDefault(head => head.In(Language.English) == line.TrimEnd())?.In(language) ?? line.TrimEnd());
        return end;
    }

    /// <summary>Every description of every command, option and argument below.</summary>
    internal static IEnumerable<Symbol> Described(Command command) =>
        new Symbol[] { command }.Concat(command.Options).Concat(command.Arguments).Concat(command.Subcommands.SelectMany(Described)).Distinct();

    private static void Translate(Command root, Language language)
    {
        foreach (var one in Described(root))
            if (one.Description is { } english) one.Description = language.Say(english);
    }

    private static RootCommand Tree()
    {
        return new RootCommand("Lanewright: calibrate winter-road spreaders and prove it.")
        {
            PlanCommand.Make(),
            AnalyseCommand.Analyse(),
            AnalyseCommand.Check(),
            DiagnoseCommand.Make(),
            PracticeCommand.Make(),
            CardCommand.Make(),
            BookletCommand.Make(),
            CertificateCommand.Make(),
            VerifyCommand.Make(),
            VerifyCommand.Key(),
            ConvertCommand.Make(),
            TidyCommand.Make(),
            SchemaCommand.Make(),
            ServeCommand.Make(),
            DemoCommand.Make(),
            AccountsCommand.Make(),
            RecordsCommands.Backup(),
            RecordsCommands.Restore(),
            RecordsCommands.Export(),
            RecordsCommands.Import(),
            RecordsCommands.Rebuild(),
            RecordsCommands.Check(),
            RegisterCommand.Make(),
            LogsCommand.Make(),
            PracticeSeasonCommand.Make(),
            SeasonCommand.Make(),
            CommonOptions.Language(),
        };
    }
}
