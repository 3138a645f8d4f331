using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.Text;
using Lanewright.Commands;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
if (args.Length == 0) args = ["--help"];
var parsed = CommandTree.Make().Parse(args);
return parsed.Action switch
{
    ParseErrorAction => await CommonOptions.Misspelt(parsed),
    HelpAction => CommandTree.Help(parsed, Console.Out),
    _ => await parsed.InvokeAsync(),
};
