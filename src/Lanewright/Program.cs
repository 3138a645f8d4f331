using System.CommandLine;
using System.Text;
using Lanewright.Commands;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
var root = new RootCommand("Lanewright: calibrate winter-road spreaders and prove it.")
{
    PlanCommand.Make(),
    AnalyseCommand.Analyse(),
    AnalyseCommand.Check(),
    ConvertCommand.Make(),
    TidyCommand.Make(),
    SchemaCommand.Make(),
    ServeCommand.Make(),
};
return await root.Parse(args).InvokeAsync();
