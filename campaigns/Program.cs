using System.Globalization;
using Lanewright.Campaigns;

// Long runs that print their figures. Usage: dotnet run --project campaigns -c Release -- NAME [count] [seed]
return args switch
{
    ["coverage", ..] when args.Length <= 3 => CoverageCampaign.Run(Count(2000), (ulong)Seed()),
    ["curves", ..] when args.Length <= 3 => CurveCampaign.Run(Count(2000), (ulong)Seed()),
    ["liquid-coverage", ..] when args.Length <= 3 => LiquidCoverage.Run(Count(2000), (ulong)Seed()),
    ["use-coverage", ..] when args.Length <= 3 => LiquidCoverage.Uses(Count(2000), (ulong)Seed()),
    ["diagnosis"] => DiagnosisCampaign.Run(500, DiagnosisCampaign.ReportedSeed),
    ["diagnosis", "--cases", _] => DiagnosisCampaign.Run(Number(2), DiagnosisCampaign.ReportedSeed),
    ["diagnosis", "--cases", _, "--seed", _] => DiagnosisCampaign.Run(Number(2), (ulong)Number(4)),
    ["season-drift", ..] when args.Length <= 3 => DriftCampaign.Run(Count(2000), (ulong)Seed()),
    ["kills", ..] when args.Length <= 3 => await KillsAsync(),
    ["wal-cuts", ..] when args.Length <= 3 => await CutsAsync(),
    ["register", ..] when args.Length <= 3 =>
        await RegisterTiming.RunAsync(Count(3000), args.Length > 2 ? Seed() : 50_000, CancellationToken.None),
    ["pages", ..] when args.Length <= 4 =>
        await PagesTiming.RunAsync(Count(3000), args.Length > 2 ? Seed() : 50_000, args.Length > 3 ? args[3] : null, CancellationToken.None),
    ["booklet", ..] when args.Length <= 2 => BookletTiming.Run(Count(500)),
    ["season-rows", ..] when args.Length <= 2 => SeasonRows.Import(Count(20)),
    ["season-applied", ..] when args.Length <= 2 => SeasonRows.Applied(Count(100)),
    ["season-watch", ..] when args.Length <= 4 => SeasonWatch.Run(Count(10), Seed(), args.Length > 3 ? Number(3) : 40),
    ["season-ledger", ..] when args.Length <= 3 => LedgerCoverage.Run(Count(2500), Seed()),
    ["season-agency", ..] when args.Length <= 3 => SeasonAgency.Run(Count(2500), args.Length > 2 ? Number(2) : 300),
    ["season-packs", ..] when args.Length <= 3 => LogPackKillsRun(),
    ["season-coverage", ..] when args.Length <= 3 => Coverage(),
    ["season-kills", ..] when args.Length <= 3 => LogKillsRun(),
    ["season-mutations", ..] when args.Length <= 3 => Mutations(),
    ["map-matching"] => MapMatching.Run(20, null),
    ["map-matching", _] => MapMatching.Run(20, args[1]),
    ["yard"] => await YardTiming.RunAsync(),
    ["pictures"] => await Pictures.RunAsync(),
    _ => Usage(),
};

int Count(int otherwise) => args.Length > 1 ? int.Parse(args[1], NumberStyles.None, CultureInfo.InvariantCulture) : otherwise;

int Seed() => args.Length > 2 ? int.Parse(args[2], NumberStyles.None, CultureInfo.InvariantCulture) : 1;

int Number(int at) => int.Parse(args[at], NumberStyles.None, CultureInfo.InvariantCulture);

int Coverage()
{
    var tally = SeasonCoverage.Run(Count(50), Seed());
    Console.WriteLine($"{tally.Seasons} seasons");
    Console.WriteLine(SeasonCoverage.Say("spreaders", tally.Spreaders));
    Console.WriteLine(SeasonCoverage.Say("depots", tally.Depots));
    Console.WriteLine(SeasonCoverage.Say("whole seasons", tally.Wholes));
    Console.WriteLine(LedgerCoverage.Say("spreaders by season", tally.SpreadersBySeason));
    Console.WriteLine(LedgerCoverage.Say("depots by season", tally.DepotsBySeason));
    return tally.Spreaders.Held is var held && held >= 0.93 * tally.Spreaders.All && held <= 0.97 * tally.Spreaders.All ? 0 : 1;
}

int LogKillsRun()
{
    var tally = LogKills.Run(Count(100), Seed());
    Console.WriteLine($"{tally.Kills} kills of an import of {tally.Rows} rows, {tally.Ends} times to its end; {tally.Wrong} times something lost, doubled or different");
    return tally.Wrong == 0 ? 0 : 1;
}

int LogPackKillsRun()
{
    var tally = LogPackKills.Run(Count(100), Seed());
    Console.WriteLine($"{tally.Kills} kills of packing {tally.Files} files of {tally.Rows} rows, {tally.Ends} times to its end; {tally.Wrong} times a row lost, doubled or different");
    return tally.Wrong == 0 ? 0 : 1;
}

int Mutations()
{
    var tally = LogMutations.Run(Count(10_000), Seed());
    Console.WriteLine($"{tally.Files} damaged files: {tally.Refused} refused whole, {tally.Rows} rows accepted, {tally.RefusedRows} rows refused with a reason; {tally.Wrong.Count} wrong");
    foreach (var (why, count) in tally.Why.OrderByDescending(one => one.Value).Take(12)) Console.WriteLine($"  {count} {why}");
    foreach (var one in tally.Wrong.Take(20)) Console.WriteLine(one);
    return tally.Wrong.Count == 0 ? 0 : 1;
}

async Task<int> KillsAsync()
{
    var tally = await Kills.RunAsync(Count(500), Seed(), CancellationToken.None);
    Console.WriteLine(
        $"{tally.Kills} kills: {tally.Acknowledged} entries acknowledged, {tally.Lost} lost, {tally.Doubled} doubled; {tally.Kept} kept; "
        + $"chain {(tally.ChainWhole ? "whole" : "BROKEN")}; computed rows {(tally.ComputedSame ? "as rebuilt" : "DIFFER")}");
    return tally.IsGood ? 0 : 1;
}

async Task<int> CutsAsync()
{
    var tally = await WalCuts.RunAsync(Count(10_000), Seed(), CancellationToken.None);
    Console.WriteLine($"{tally.Cases} logs cut or garbled: {tally.Opened} opened whole, {tally.Refused} refused, {tally.Wrong} wrong");
    return tally.Wrong == 0 ? 0 : 1;
}

static int Usage()
{
    Console.Error.WriteLine(
        """
        usage: coverage [tests per stratum, 2000] [seed, 1]
               curves [tests per stratum, 2000] [seed, 1]   delivery curves, gate tables and ground speed
               liquid-coverage [calibrations per stratum, 2000] [seed, 1]
               use-coverage [calibrations per stratum, 2000] [seed, 1]   static checks, brines, spread patterns
               diagnosis [--cases N, 500] [--seed S, 20261]   practice spreaders with known faults
               season-drift [seasons per stratum, 2000] [seed, 1]   planted drift, false alarms, day of leaving the tolerance
               kills [kills, 500] [seed, 1]            SIGKILL of the server while clients send
               wal-cuts [cases, 10000] [seed, 1]       the database's log cut or garbled
               register [spreaders, 3000] [tests, 50000]   timing of a large register
               pages [spreaders, 3000] [tests, 50000] [folder to keep the register in]
                                                       timing of every page over a large register; memory of the server
               booklet [cards, 500]                    time and memory of one booklet of cab cards, against their limits
               season-rows [million rows, 20]          taking logs in from CSV: rows for each second
               season-applied [million rows, 100]      what was spread, over 1, 10, 100 million rows, against plain SQL
               season-watch [seasons, 10] [seed, 1] [spreaders, 40]
                                                       invented seasons: planted drift found, false alarms, balances
               season-ledger [seasons, 2500] [seed, 1] how often the ledger's intervals hold the truth, without files between
               season-agency [spreaders, 2500] [seconds between rows, 300]
                                                       a large agency's season from end to end: time and memory of each step
               season-packs [kills, 100] [seed, 1]     SIGKILL while logs are packed
               season-coverage [seasons, 50] [seed, 1] invented seasons: how often the ledger's intervals hold the truth
               season-kills [kills, 100] [seed, 1]     SIGKILL while logs are taken in
               season-mutations [files, 10000] [seed, 1]   damaged logs: every row accounted for
               map-matching [folder]                   error of map matching on invented roads; with a folder that holds the trace and
                                                       roads published by Newson and Krumm, on these too
               yard                                    timing of the yard pages in Chromium, against their limits
               pictures                                takes the pictures of the guide
        """);
    return 1;
}
