using System.CommandLine;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Files;
using Lanewright.Office;

namespace Lanewright.Commands;

/// <summary><c>lanewright tidy</c>: a sheet of any form as canonical JSON in SI.</summary>
internal static class TidyCommand
{
    internal static Command Make()
    {
        var file = new Argument<string>("sheet") { Description = "The sheet: a JSON, YAML or CSV file." };
        var command = new Command("tidy", "Print a sheet in its canonical form: JSON, all quantities in SI.") { file };
        command.SetAction(parsed =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var name = parsed.GetValue(file)!;
            if (!CommonOptions.Speak(parsed)) return CommonOptions.CouldNotRead;
            var reading = SheetReader.Read(SheetFile.Read(name));
            if (!reading.IsUsable)
                return CommonOptions.Refuse(
                    name, reading.Findings, false, new(OfficeText.Culture, UnitPreferences.UnitedStates), output,
                    parsed.InvocationConfiguration.Error);
            output.Write(SheetWriter.Write(reading.Value!));
            return CommonOptions.Answered;
        });
        return command;
    }
}
