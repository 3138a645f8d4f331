using System.CommandLine;
using Lanewright.Accounts;
using Lanewright.Core.Text;
using Lanewright.Host;
using Lanewright.Network;
using Lanewright.Office;
using Lanewright.Storage;
using Lanewright.Storage.Database;
using Lanewright.Storage.Transfer;
using static Lanewright.Office.OfficeText;

namespace Lanewright.Commands;

/// <summary><c>lanewright serve</c>: the pages, on this machine or, with accounts, on a network.</summary>
internal static class ServeCommand
{
    private const int DefaultPort = 5180;

    internal static Command Make()
    {
        var port = new Option<int>("--port")
        {
            Description = "Port; 0 for any free one.",
            DefaultValueFactory = _ => DefaultPort,
        };
        var data = RecordsOptions.Data();
        var database = RecordsOptions.Database();
        var keyFolder = RecordsOptions.KeyFolder();
        var group = new NetworkOptionsGroup();
        var command = new Command("serve", "Serve the pages on this machine; with --lan or --proxy, on a network.")
        {
            port, data, database, keyFolder,
        };
        foreach (var option in group.All) command.Add(option);
        command.SetAction((parsed, stop) => RecordsOptions.ToldAsync(parsed, () =>
        {
            // What is wrong with the network's options is said before any records are made.
            var folder = Path.GetFullPath(parsed.GetValue(data)!);
            var language = OfficeText.Culture.Language;
            var keys = RecordsOptions.KeyFolderOf(parsed, data, keyFolder);
            var network = group.Read(parsed, folder, TimeProvider.System);
            return RecordsOptions.WithStoreAsync(
                parsed, data, database,
                async store =>
                {
                    using var held = ServingLock.Take(store.Place);
                    foreach (var note in store.Notes) parsed.InvocationConfiguration.Error.WriteLine(Say(note));
                    var chosen = parsed.GetValue(port);
                    await (network is null
                        ? LocalAsync(parsed, new(chosen) { KeyFolder = keys, Language = language }, store, stop)
                        : NetworkAsync(
                            parsed, new(chosen, Accounts: AccountsMode.Accounts) { Network = network, KeyFolder = keys, Language = language },
                            group.TrustPort(parsed, chosen), store, stop));
                    return CommonOptions.Answered;
                },
                stop);
        }));
        return command;
    }

    private static async Task LocalAsync(ParseResult parsed, ServerOptions options, EntryStore store, CancellationToken stop)
    {
        await using var app = Server.Build(options, store);
        await StartAsync(app, options.Port, "--port", stop);
        parsed.InvocationConfiguration.Output.WriteLine(Say($"Lanewright: http://localhost:{PortOf(app)}/ (Ctrl+C stops)"));
        await app.WaitForShutdownAsync(stop);
    }

    private static async Task NetworkAsync(
        ParseResult parsed, ServerOptions options, int trustPort, EntryStore store, CancellationToken stop)
    {
        var code = await AccountsSetup.PrepareAsync(store.Place, TimeProvider.System, stop);
        await using var app = Server.Build(options, store);
        await StartAsync(app, options.Port, "--port", stop);
        var network = options.Network!;
        var told = new NetworkWords(network, PortOf(app));
        var output = parsed.InvocationConfiguration.Output;
        CommonOptions.Print(told.Addresses(), output);
        if (network.Certificates?.Authority is { } authority)
        {
            await using var trust = TrustSite.Build(trustPort, authority, told.First, options.Language);
            await StartAsync(trust, trustPort, "--trust-port", stop);
            CommonOptions.Print(told.Trust(PortOf(trust), authority, isTerminal: !Console.IsOutputRedirected), output);
            CommonOptions.Print(told.Code(code), output);
            await app.WaitForShutdownAsync(stop);
            return;
        }

        CommonOptions.Print(told.Code(code), output);
        await app.WaitForShutdownAsync(stop);
    }

    private static int PortOf(WebApplication app) => new Uri(app.Urls.First()).Port;

    private static async Task StartAsync(WebApplication app, int port, string option, CancellationToken stop)
    {
        try
        {
            await app.StartAsync(stop);
        }
        catch (IOException wrong)
        {
            throw new RecordsException(
                RecordsFault.Busy,
                $"Port {port} is in use, perhaps by Lanewright itself. Close the other program, or choose another port with {option}.", wrong);
        }
        catch (System.Net.Sockets.SocketException wrong)
        {
            throw new RecordsException(
                RecordsFault.Denied, $"Port {port} may not be used by this user ({wrong.Message}). Choose one above 1023 with {option}.", wrong);
        }
    }
}
