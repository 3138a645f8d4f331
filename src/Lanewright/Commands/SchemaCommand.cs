using System.CommandLine;
using Lanewright.Core.Exchange;

namespace Lanewright.Commands;

/// <summary><c>lanewright schema</c>: the JSON Schema of a file, written by the code that reads it.</summary>
internal static class SchemaCommand
{
    internal static Command Make()
    {
        var what = new Argument<string>("what") { Description = "sheet or plan." };
        what.AcceptOnlyFromAmong("sheet", "plan");
        var command = new Command("schema", "Print the JSON Schema of a sheet or of a plan's file.") { what };
        command.SetAction(parsed =>
        {
            parsed.InvocationConfiguration.Output.Write(
                parsed.GetValue(what) == "plan" ? Schemas.Plan() : Schemas.Sheet());
            return CommonOptions.Answered;
        });
        return command;
    }
}
