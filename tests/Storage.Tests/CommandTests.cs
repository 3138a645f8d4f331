using System.CommandLine;
using System.Diagnostics;
using System.Text;
using Lanewright.Commands;

namespace Lanewright.Storage.Tests;

public sealed class CommandTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("lanewright-commands-").FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task Records_are_saved_brought_back_moved_proved_and_computed_again_by_command()
    {
        await using var records = TestRecords.InFolder();
        await TransferTests.FilledAsync(records);
        var data = records.Place.DataFolder!;

        Assert.Contains("Saved and proved", await RunAsync(0, RecordsCommands.Backup(), "--data", data, "--to", Named("b.zip")), StringComparison.Ordinal);
        Assert.Contains("already", await RunAsync(1, RecordsCommands.Restore(), Named("b.zip"), "--data", data), StringComparison.Ordinal);
        Assert.Contains("set-aside", await RunAsync(0, RecordsCommands.Restore(), Named("b.zip"), "--data", data, "--replace"), StringComparison.Ordinal);
        Assert.Contains("Whole: 4 entries, 1 photo.", await RunAsync(0, RecordsCommands.Check(), "--data", data), StringComparison.Ordinal);
        Assert.Contains("nothing was different", await RunAsync(0, RecordsCommands.Rebuild(), "--data", data), StringComparison.Ordinal);
        Assert.Contains("4 entries", await RunAsync(0, RecordsCommands.Export(), "--data", data, "--to", Named("e.zip")), StringComparison.Ordinal);
        Assert.Contains("new ones: 4", await RunAsync(0, RecordsCommands.Import(), Named("e.zip"), "--data", Named("other")), StringComparison.Ordinal);
        Assert.Contains("new ones: 0", await RunAsync(0, RecordsCommands.Import(), Named("e.zip"), "--data", Named("other")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Commands_that_find_no_records_say_so_and_make_none()
    {
        foreach (var command in new[] { RecordsCommands.Check(), RecordsCommands.Rebuild() })
            Assert.Contains("There are no records", await RunAsync(1, command, "--data", Named("none")), StringComparison.Ordinal);
        Assert.Contains("There are no records", await RunAsync(1, RecordsCommands.Backup(), "--data", Named("none"), "--to", Named("x.zip")), StringComparison.Ordinal);
        Assert.Contains("connection string", await RunAsync(1, RecordsCommands.Check(), "--database", "nonsense"), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(folder));
    }

    [Fact]
    public async Task Changed_records_are_proved_changed_by_command()
    {
        await using var records = TestRecords.InFolder();
        await TransferTests.FilledAsync(records);
        await records.TamperAsync("DROP TRIGGER entries_stay_1");
        await records.TamperAsync("UPDATE entries SET Person = 'somebody else' WHERE Number = 2");
        Assert.Contains("Entry 2 was changed", await RunAsync(2, RecordsCommands.Check(), "--data", records.Place.DataFolder!), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("convert", "1 lb", "kg")]
    [InlineData("analyse", "examples/hr-104-closed-loop.json")]
    [InlineData("check", "examples/hr-104-check.yaml")]
    [InlineData("plan", "examples/hr-104-plan.yaml")]
    public async Task Plain_commands_never_load_what_the_records_need(params string[] arguments)
    {
        // The runtime writes down every assembly it loads.
        var trace = Named("loaded.nettrace");
        var program = Lanewright.Campaigns.Kills.ProgramFile();
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = Lanewright.Campaigns.Kills.Root() };
        start.ArgumentList.Add(program);
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        start.Environment["DOTNET_EnableEventPipe"] = "1";
        start.Environment["DOTNET_EventPipeConfig"] = "Microsoft-Windows-DotNETRuntime:0x8:4";
        start.Environment["DOTNET_EventPipeOutputPath"] = trace;
        using var process = Process.Start(start)!;
        var output = await process.StandardOutput.ReadToEndAsync(Stop);
        await process.WaitForExitAsync(Stop);
        Assert.NotEmpty(output);

        var loaded = await File.ReadAllBytesAsync(trace, Stop);
        Assert.True(loaded.AsSpan().IndexOf(Encoding.Unicode.GetBytes("Lanewright.Core")) >= 0);
        foreach (var name in new[] { "EntityFrameworkCore", "Npgsql", "Microsoft.Data.Sqlite", "SQLitePCL", "DuckDB" })
            Assert.True(loaded.AsSpan().IndexOf(Encoding.Unicode.GetBytes(name)) < 0, $"{name} was loaded");
    }

    private string Named(string name) => Path.Combine(folder, name);

    private static async Task<string> RunAsync(int expected, Command command, params string[] arguments)
    {
        using var output = new StringWriter();
        var result = await command.Parse(arguments).InvokeAsync(new() { Output = output, Error = output }, Stop);
        Assert.Equal(expected, result);
        return output.ToString();
    }
}
