using System.CommandLine;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;

namespace Lanewright.Commands;

/// <summary><c>lanewright schema</c>: the JSON Schema of a file, written by the code that reads it.</summary>
internal static class SchemaCommand
{
    internal static Command Make()
    {
        var what = new Argument<string>("what")
        {
            HelpName = "what",
            Description = "sheet (a drop test or its check), plan, or the kind of another calibration; a wrong one is answered with the list.",
        };
        what.AcceptOnlyFromAmong(["sheet", "plan", .. Calibration.Kinds.Select(kind => kind.Word)]);
        var command = new Command("schema", "Print the JSON Schema of a sheet or of a plan's file.") { what };
        command.SetAction(parsed =>
        {
            var wanted = parsed.GetValue(what);
            parsed.InvocationConfiguration.Output.Write(
                Calibration.Find(wanted) is { } kind ? Calibration.Schema(kind) : wanted == "plan" ? Schemas.Plan() : Schemas.Sheet());
            return CommonOptions.Answered;
        });
        return command;
    }
}
