using Lanewright.Benchmarks;

// Times the program. Usage: dotnet run --project benchmarks -c Release -- [analysis|montecarlo|start|all]
var what = args.Length == 0 ? "all" : args[0];
if (args.Length > 1 || what is not ("analysis" or "montecarlo" or "start" or "all"))
{
    Console.Error.WriteLine("usage: [analysis|montecarlo|start|all]");
    return 1;
}

var table = new FigureTable();
var fine = true;
if (what is "start" or "all") fine &= StartTimes.Measure(table);
if (what is "analysis" or "all") fine &= Harness.Run<AnalysisBenchmarks>(table);
if (what is "montecarlo" or "all")
{
    fine &= Harness.Run<MassModelBenchmarks>(table);
    fine &= Harness.Run<DropTestBenchmarks>(table);
}

table.Print();
return fine ? 0 : 2;
