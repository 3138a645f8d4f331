using System.CommandLine;
using System.Diagnostics;
using Lanewright.Core.Practice;
using Lanewright.Core.Text;
using Lanewright.Host;
using Lanewright.Office;
using Lanewright.Season;
using Lanewright.Storage;
using Lanewright.Storage.Database;
using Lanewright.Storage.Entries;
using static Lanewright.Office.OfficeText;

namespace Lanewright.Commands;

/// <summary><c>lanewright demo</c>: an invented yard in a temporary folder, served on this machine.</summary>
internal static class DemoCommand
{
    private const ulong Seed = 20260901;

    internal static Command Make()
    {
        var port = new Option<int>("--port")
        {
            Description = "Port on localhost; 0 for any free one.",
            DefaultValueFactory = _ => 5181,
        };
        var command = new Command("demo", "Show an invented yard: 40 spreaders, three seasons of tests, two months of a winter in logs.") { port };
        command.SetAction(async (parsed, stop) =>
        {
            if (CommonOptions.LanguageOf(parsed, Language.English, parsed.InvocationConfiguration.Error) is not { } language)
                return CommonOptions.CouldNotRead;
            OfficeLanguage.Speak(language);
            var output = parsed.InvocationConfiguration.Output;
            var started = Stopwatch.StartNew();
            var folder = Directory.CreateTempSubdirectory("lanewright-demo-").FullName;
            try
            {
                var store = await EntryStore.OpenAsync(RecordsPlace.InFolder(folder), stop: stop);
                var today = DateOnly.FromDateTime(DateTime.UtcNow);
                await FillAsync(store, today, stop);
                await using var app = Server.Build(new(parsed.GetValue(port)) { Language = language }, store);
                await app.StartAsync(stop);
                var address = new Uri(app.Urls.First());
                output.WriteLine(Say($"An invented yard (seed {(long)Seed}, {Day(today)}), kept in {folder} until this ends."));
                output.WriteLine(Say($"Office: http://localhost:{address.Port}/office"));
                output.WriteLine(Say($"Yard:   http://localhost:{address.Port}/yard/   (Ctrl+C stops)"));
                // Nobody waits for the winter: the office answers before its logs are in.
                output.WriteLine(Say("Its two months of logs come in by themselves; the map is ready last."));
                using var ending = CancellationTokenSource.CreateLinkedTokenSource(stop, app.Lifetime.ApplicationStopping);
                var winter = Task.Run(() => WinterAsync(store, today, started, output, ending.Token), CancellationToken.None);
                await app.WaitForShutdownAsync(stop);
                await winter.ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
                store.Release();
                return CommonOptions.Answered;
            }
            catch (IOException wrong)
            {
                parsed.InvocationConfiguration.Error.WriteLine(Say($"The demo could not start: {wrong.Message} Choose another --port."));
                return CommonOptions.CouldNotRead;
            }
            finally
            {
                Directory.Delete(folder, recursive: true);
            }
        });
        return command;
    }

    private static async Task WinterAsync(EntryStore store, DateOnly today, Stopwatch started, TextWriter output, CancellationToken stop)
    {
        await DemoSeason.WriteAsync(store, Seed, today, stop);
        var logs = started.Elapsed;
        DemoSeason.Match(store.Place.DataFolder!, stop);
        output.WriteLine(Say($"The logs are in {Seconds(logs)} s after the start, the map after {Seconds(started.Elapsed)} s."));

        static string Seconds(TimeSpan time) => QuantityText.WriteNumber(time.TotalSeconds, Culture, NumberForm.Decimals(1));
    }

    /// <summary>Puts the demo world into the records.</summary>
    internal static async Task FillAsync(EntryStore store, DateOnly today, CancellationToken stop)
    {
        foreach (var batch in DemoWorld.Make(Seed, today).Chunk(EntryStore.MostEntries))
        {
            var drafts = batch.Select(entry => new EntryDraft
            {
                Id = entry.Id.ToString("D"),
                Kind = entry.Kind,
                Subject = entry.Subject,
                Person = entry.Person,
                Device = entry.Device.ToString("D"),
                Seq = entry.Sequence,
                At = entry.At,
                Zone = entry.Zone,
                Payload = entry.Payload,
            }).ToList();
            var answer = await store.AppendAsync(drafts, stop);
            if (answer.Results.Any(result => result.Status != AppendStatus.Accepted))
                throw new InvalidOperationException("An entry of the demo world was not accepted.");
        }
    }
}
