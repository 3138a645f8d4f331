using System.Diagnostics;

namespace Lanewright.Benchmarks;

/// <summary>
/// How long a person waits for the command line: whole processes, one after the other, 10 runs each after one that does
/// not count. The empty console program, built the same way, is the floor that .NET itself sets on the machine.
/// </summary>
internal static class StartTimes
{
    private const int Runs = 10;

    internal static bool Measure(FigureTable table)
    {
        var root = Root();
        var wrapper = Path.Combine(root, "lanewright");
        var sheet = Path.Combine(root, "examples", "hr-104-closed-loop.json");
        // The wrapper builds the program when it is out of date.
        Time(wrapper, "--version");
        var empty = EmptyProgram.Build(root);
        (string What, string File, string[] Arguments)[] commands =
        [
            ("start: empty console program", empty, []),
            ("start: lanewright --version", Path.Combine(root, "out", "bin", "lanewright"), ["--version"]),
            ("start: lanewright analyse --trials 0", Path.Combine(root, "out", "bin", "lanewright"), ["analyse", sheet, "--trials", "0"]),
            ("start: lanewright analyse", Path.Combine(root, "out", "bin", "lanewright"), ["analyse", sheet]),
            ("start: ./lanewright analyse (with the wrapper)", wrapper, ["analyse", sheet]),
        ];
        var times = commands.Select(_ => new List<double>(Runs)).ToArray();
        // In turn, so that a change of the machine's pace meets all of them.
        for (var run = 0; run <= Runs; run++)
        {
            for (var c = 0; c < commands.Length; c++)
            {
                var seconds = Time(commands[c].File, commands[c].Arguments);
                if (run > 0) times[c].Add(seconds);
            }
        }

        for (var c = 0; c < commands.Length; c++)
            table.Add(commands[c].What, times[c], c == 0 ? null : FigureTable.Median(times[0]), null);
        return true;
    }

    private static double Time(string file, params string[] arguments)
    {
        var start = new ProcessStartInfo(file, arguments) { RedirectStandardOutput = true };
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        var seconds = clock.Elapsed.TotalSeconds;
        return process.ExitCode == 0
            ? seconds
            : throw new InvalidOperationException($"{file} ended with exit code {process.ExitCode}.");
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Lanewright.slnx")))
        {
            folder = folder.Parent
                ?? throw new InvalidOperationException("The benchmarks run from inside the repository.");
        }

        return folder.FullName;
    }
}
