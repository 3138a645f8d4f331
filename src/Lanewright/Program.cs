using System.CommandLine;
using System.CommandLine.Invocation;
using System.Text;
using Lanewright.Commands;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
var root = new RootCommand("Lanewright: calibrate winter-road spreaders and prove it.")
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
    CommonOptions.Language,
};
if (args.Length == 0) args = ["--help"];
var parsed = root.Parse(args);
return parsed.Action is ParseErrorAction
    ? await CommonOptions.Misspelt(parsed)
    : await parsed.InvokeAsync();
