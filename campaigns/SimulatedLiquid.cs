using System.Globalization;
using System.Text;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;
using Lanewright.Core.Liquids;
using Lanewright.Core.Quantities;
using Lanewright.Core.Statistics;
using Lanewright.Core.Weighing;

namespace Lanewright.Campaigns;

/// <summary>How the liquid's density becomes known, or that no weight is needed.</summary>
internal enum LiquidWay
{
    /// <summary>A hydrometer in the caught liquid.</summary>
    Hydrometer,

    /// <summary>A strength that somebody states.</summary>
    Strength,

    /// <summary>A vessel with marks.</summary>
    Vessel,
}

/// <summary>One stratum of simulated flow-meter calibrations.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Way">How volume becomes known.</param>
/// <param name="Range">How far off hydrometer (specific gravity), strength (share) or vessel (share of a catch) may be.</param>
/// <param name="Common">Whether the scale's error is common.</param>
/// <param name="Runs">How many runs.</param>
/// <param name="Litres">Size of a catch.</param>
internal sealed record LiquidStratum(string Name, LiquidWay Way, double Range, bool Common, int Runs, double Litres);

/// <summary>
/// Makes flow-meter calibrations whose constant is known, as sheets, and lets them be worked out. Brine of 20 to 23 % at 0 to
/// 25 °C; scale, hydrometer, thermometer, vessel, tables and air are off as they are said to be able to be.
/// </summary>
internal static class SimulatedLiquid
{
    /// <summary>Range of the meters' scatter, drawn with equal chance on a logarithmic axis.</summary>
    internal const double LeastScatter = 0.003;

    /// <summary>Upper end of that range.</summary>
    internal const double MostScatter = 0.03;

    private static readonly Scale Bench = new()
    {
        Id = "bench",
        Kind = ScaleKind.Platform,
        Class = ScaleClass.III,
        Capacity = Mass.FromKilograms(60),
        Division = Mass.FromKilograms(0.02),
    };

    internal static IReadOnlyList<LiquidStratum> Strata { get; } =
    [
        new("hydrometer, common error, 2 runs", LiquidWay.Hydrometer, 0.001, true, 2, 20),
        new("hydrometer, common error, 3 runs", LiquidWay.Hydrometer, 0.001, true, 3, 20),
        new("hydrometer, common error, 6 runs", LiquidWay.Hydrometer, 0.001, true, 6, 20),
        new("hydrometer, separate errors, 3 runs", LiquidWay.Hydrometer, 0.001, false, 3, 20),
        new("hydrometer, separate errors, small catch, 6 runs", LiquidWay.Hydrometer, 0.001, false, 6, 4),
        new("strength ± 1 %, common error, 6 runs", LiquidWay.Strength, 0.01, true, 6, 20),
        new("strength ± 3 %, common error, 6 runs", LiquidWay.Strength, 0.03, true, 6, 20),
        new("vessel ± 0.5 %, 3 runs", LiquidWay.Vessel, 0.005, true, 3, 20),
        new("vessel ± 0.5 %, 6 runs", LiquidWay.Vessel, 0.005, true, 6, 20),
        new("vessel ± 2 %, 6 runs", LiquidWay.Vessel, 0.02, true, 6, 20),
    ];

    /// <summary>Whether the interval holds the truth, and its half width as a share.</summary>
    internal static (bool Held, double Width) Try(LiquidStratum stratum, RandomSource random)
    {
        var (json, truth) = Draw(stratum, random);
        var reading = Calibration.Read(JsonTree.Read(json), Calibration.Find("liquid-meter")!);
        var figure = reading.Value!.Analyse().Figures[0];
        return (Math.Abs(figure.Value.Value - truth) <= figure.Expanded, figure.Expanded!.Value / figure.Value.Value);
    }

    private static (string Json, double Truth) Draw(LiquidStratum stratum, RandomSource random)
    {
        var scatter = LeastScatter * Math.Pow(MostScatter / LeastScatter, random.NextDouble());
        var truth = 50_000 * Math.Pow(10, random.NextDouble());
        var strength = 0.20 + (0.03 * random.NextDouble());
        var kelvins = 273.15 + (25 * random.NextDouble());
        var density = Solution.Density(SaltKind.SodiumChloride, strength, kelvins)!.Value
            + (Solution.PlusMinus(SaltKind.SodiumChloride, kelvins) * Either(random));
        var air = 1.2 + (0.2 * Either(random));
        var marks = stratum.Range * stratum.Litres * Either(random);
        var scale = new SimulatedYard.ScaleTruth(Bench, stratum.Common, random);
        var runs = new StringBuilder();
        for (var i = 0; i < stratum.Runs; i++)
        {
            var volume = stratum.Litres / 1000 * (0.9 + (0.2 * random.NextDouble()));
            var exact = volume * truth * (1 + (scatter * random.NextNormal()));
            var phase = random.NextDouble();
            var pulses = Math.Floor(exact + phase) - Math.Floor(phase);
            runs.Append(i == 0 ? "" : ", ").Append(CultureInfo.InvariantCulture, $"{{ \"pulses\": {pulses:0}, ");
            if (stratum.Way is LiquidWay.Vessel)
            {
                var read = (volume * 1000) + marks + (0.002 * stratum.Litres * Either(random));
                runs.Append(CultureInfo.InvariantCulture, $"\"volume\": \"{read:0.000000} L\" }}");
            }
            else
            {
                // What a scale adjusted with steel weights in air shows of the liquid.
                var mass = volume * (density - air) / (1 - (air / 8000));
                var tare = scale.Reads(1.5).Si;
                var gross = scale.Reads(1.5 + mass).Si;
                runs.Append(CultureInfo.InvariantCulture, $"\"whole\": {{ \"tare\": \"{tare:0.00} kg\", \"gross\": \"{gross:0.00} kg\" }} }}");
            }
        }

        var gravity = (density * (1 + (25e-6 * (kelvins - Hydrometer.SixtyFahrenheit))) / 999.0141) + (stratum.Range * Either(random));
        var seen = stratum.Way is LiquidWay.Hydrometer
            ? string.Create(CultureInfo.InvariantCulture, $"\"specificGravity\": {gravity:0.000000}, \"readingPlusMinus\": {stratum.Range}")
            : string.Create(
                CultureInfo.InvariantCulture,
                $"\"strength\": \"{100 * (strength + (stratum.Range * Either(random))):0.00000} %\", \"strengthPlusMinus\": \"{100 * stratum.Range} %\"");
        var thermometer = kelvins - 273.15 + Either(random);
        var how = stratum.Way is LiquidWay.Vessel
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"\"vessel\": {{ \"plusMinus\": \"{stratum.Range * stratum.Litres} L\", \"reading\": \"{0.002 * stratum.Litres} L\" }}")
            : string.Create(
                CultureInfo.InvariantCulture,
                $"\"scale\": {{ \"id\": \"bench\", \"capacity\": \"60 kg\", \"division\": \"0.02 kg\", \"class\": \"iii\" }}, "
                + $"\"commonError\": {(stratum.Common ? "true" : "false")}, \"liquid\": {{ \"salt\": \"sodium-chloride\", {seen}, "
                + $"\"temperature\": \"{thermometer:0.0000} °C\", \"temperaturePlusMinus\": 1 }}");
        return ($"{{ \"kind\": \"liquid-meter\", {how}, \"runs\": [{runs}] }}", truth);
    }

    private static double Either(RandomSource random) => (2 * random.NextDouble()) - 1;
}
