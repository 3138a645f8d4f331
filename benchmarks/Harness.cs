using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace Lanewright.Benchmarks;

/// <summary>Runs a class of benchmarks in a short job and puts its figures into the table.</summary>
internal static class Harness
{
    internal static bool Run<T>(FigureTable table)
    {
        // Few, short iterations in this process: enough for a median, so that all of it ends within minutes.
        var job = Job.Default
            .WithToolchain(new InProcessEmitToolchain(logOutput: false))
            .WithWarmupCount(15)
            .WithIterationCount(15)
            .WithIterationTime(Perfolizer.Horology.TimeInterval.FromMilliseconds(150));
        var config = DefaultConfig.Instance
            .AddJob(job)
            .AddDiagnoser(MemoryDiagnoser.Default)
            .WithOptions(ConfigOptions.DisableLogFile);
        var summary = BenchmarkRunner.Run<T>(config);
        double? baseline = null;
        foreach (var report in summary.Reports.OrderByDescending(r => r.BenchmarkCase.Descriptor.Baseline))
        {
            if (report.ResultStatistics is not { } statistics) continue;
            var times = statistics.OriginalValues.Select(ns => ns / 1e9).ToList();
            table.Add(
                report.BenchmarkCase.Descriptor.WorkloadMethodDisplayInfo.Trim('\''), times, baseline,
                report.GcStats.GetBytesAllocatedPerOperation(report.BenchmarkCase));
            if (report.BenchmarkCase.Descriptor.Baseline) baseline = FigureTable.Median(times);
        }

        return !summary.HasCriticalValidationErrors && summary.Reports.All(r => r.Success);
    }
}
