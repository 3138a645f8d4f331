using System.CommandLine;
using Lanewright.Host;

namespace Lanewright.Commands;

/// <summary><c>lanewright serve</c>: the pages, on this machine.</summary>
internal static class ServeCommand
{
    private const int DefaultPort = 5180;

    internal static Command Make()
    {
        var port = new Option<int>("--port")
        {
            Description = "Port on localhost.",
            DefaultValueFactory = _ => DefaultPort,
        };
        var data = new Option<string>("--data")
        {
            Description = "Folder of the records.",
            DefaultValueFactory = _ => "lanewright-data",
        };
        var command = new Command("serve", "Serve the pages on this machine.") { port, data };
        command.SetAction(async (parsed, stop) =>
        {
            var options = new ServerOptions(parsed.GetValue(port), parsed.GetValue(data)!);
            await using var app = Server.Build(options);
            await app.StartAsync(stop);
            parsed.InvocationConfiguration.Output.WriteLine($"Lanewright: http://localhost:{options.Port}/ (Ctrl+C stops)");
            await app.WaitForShutdownAsync(stop);
            return CommonOptions.Answered;
        });
        return command;
    }
}
