using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Uncertainty;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Tests.Weighing;

/// <summary>Scales for the tests, all invented, and short ways to weigh on them.</summary>
internal static class Scales
{
    internal static readonly Scale Platform500 = new()
    {
        Id = "platform",
        Kind = ScaleKind.Platform,
        Capacity = Mass.FromPounds(500),
        Division = Mass.FromPounds(0.05),
        Class = ScaleClass.III,
        Verified = new(2026, 1, 12),
    };

    internal static readonly Scale Vehicle = new()
    {
        Id = "yard",
        Kind = ScaleKind.Vehicle,
        Capacity = Mass.FromPounds(200_000),
        Division = Mass.FromPounds(20),
        Class = ScaleClass.IIIL,
        Verified = new(2026, 1, 12),
    };

    internal static Mass Lb(double pounds) => Mass.FromPounds(pounds);

    internal static Measured Weigh(
        Scale scale, Catch what, bool common = false, ICollection<Finding>? findings = null, string run = "1") =>
        new Weigher(scale, common, Mass.FromPounds(1000), findings).Net(what, run, "runs[0]");

    internal static double Pounds(double kilograms) => Mass.FromSi(kilograms).Pounds;

    internal static double LineInPounds(Measured net, string partOfName) =>
        Pounds(Budget.Of(net).Single(l => l.Family.Contains(partOfName, StringComparison.Ordinal)).StandardUncertainty);
}
