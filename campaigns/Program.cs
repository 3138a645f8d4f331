using System.Globalization;
using Lanewright.Campaigns;

// Long simulations that print their figures. Usage: dotnet run --project campaigns -c Release -- coverage [tests] [seed]
if (args.Length is 0 or > 3 || args[0] != "coverage")
{
    Console.Error.WriteLine("usage: coverage [tests per stratum, 2000] [seed, 1]");
    return 1;
}

var tests = args.Length > 1 ? int.Parse(args[1], NumberStyles.None, CultureInfo.InvariantCulture) : 2000;
var seed = args.Length > 2 ? ulong.Parse(args[2], NumberStyles.None, CultureInfo.InvariantCulture) : 1;
return CoverageCampaign.Run(tests, seed);
