using BenchmarkDotNet.Attributes;
using Lanewright.Core.Spreading;

namespace Lanewright.Benchmarks;

/// <summary>From a sheet of 10 runs of 8 containers to the report, without random trials.</summary>
public class AnalysisBenchmarks
{
    private readonly byte[] json = InventedSheet.Write(10, 8);
    private readonly TestSheet stated;
    private readonly TestSheet unstated;

    /// <summary>Makes the sheets.</summary>
    public AnalysisBenchmarks()
    {
        stated = InventedSheet.Read(json);
        unstated = stated with { CommonError = null };
    }

    /// <summary>The analysis alone.</summary>
    [Benchmark(Baseline = true, Description = "analyse 10 runs of 8 containers")]
    public TestReport Analyse() => SheetAnalysis.Analyse(stated);

    /// <summary>The analysis done both ways, because nobody said which error the readings share.</summary>
    [Benchmark(Description = "the same, commonError not stated")]
    public TestReport AnalyseBothWays() => SheetAnalysis.Analyse(unstated);

    /// <summary>From the bytes of the JSON file to the report.</summary>
    [Benchmark(Description = "read it from JSON, then analyse")]
    public TestReport ReadAndAnalyse() => SheetAnalysis.Analyse(InventedSheet.Read(json));
}
