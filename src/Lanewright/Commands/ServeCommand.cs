using System.CommandLine;
using Lanewright.Host;
using Lanewright.Storage.Database;
using Lanewright.Storage.Transfer;

namespace Lanewright.Commands;

/// <summary><c>lanewright serve</c>: the pages, on this machine.</summary>
internal static class ServeCommand
{
    private const int DefaultPort = 5180;

    internal static Command Make()
    {
        var port = new Option<int>("--port")
        {
            Description = "Port on localhost; 0 for any free one.",
            DefaultValueFactory = _ => DefaultPort,
        };
        var data = RecordsOptions.Data();
        var database = RecordsOptions.Database();
        var command = new Command("serve", "Serve the pages on this machine.") { port, data, database };
        command.SetAction((parsed, stop) => RecordsOptions.WithStoreAsync(
            parsed, data, database,
            async store =>
            {
                using var held = ServingLock.Take(store.Place);
                var output = parsed.InvocationConfiguration.Output;
                foreach (var note in store.Notes) parsed.InvocationConfiguration.Error.WriteLine(note);
                await using var app = Server.Build(new ServerOptions(parsed.GetValue(port)), store);
                try
                {
                    await app.StartAsync(stop);
                }
                catch (IOException wrong)
                {
                    throw new RecordsException(
                        RecordsFault.Busy,
                        $"Port {parsed.GetValue(port)} is in use, perhaps by Lanewright itself. Close the other program, or choose"
                        + " another port with --port.", wrong);
                }

                var address = new Uri(app.Urls.First());
                output.WriteLine($"Lanewright: http://localhost:{address.Port}/ (Ctrl+C stops)");
                await app.WaitForShutdownAsync(stop);
                return CommonOptions.Answered;
            },
            stop));
        return command;
    }
}
