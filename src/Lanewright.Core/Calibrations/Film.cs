using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Liquids;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Calibrations;

/// <summary>
/// What a rate does in an even film of water: strength, freezing point with the spread between sources, and the salt the film
/// would need. An estimate that explains, never an order (docs/method/film.md).
/// </summary>
public static class Film
{
    /// <summary>The kind.</summary>
    public static CalibrationKind Kind { get; } = new(
        "film", "Salt in a film of water", "When does the wet film freeze with this much salt on it?", Ask);

    private static Action<CalibrationReport>? Ask(Fields fields, CalibrationHead head)
    {
        var salt = fields.Choice("salt", "Which salt.", LiquidWords.Salts);
        var rate = fields.Quantity<LaneRate>("rate", "Salt on one lane, dry and pure.", Need.Optional, null, LaneRate.FromSi(1e-5), LaneRate.FromSi(2));
        var width = fields.Quantity<Length>("laneWidth", "Width of the lane; needed with rate.", Need.Optional, null, Length.FromSi(2), Length.FromSi(6));
        var area = fields.Quantity<AreaRate>(
            "areaRate", "Or salt by area.", Need.Optional, Units.GramPerSquareMetre, AreaRate.FromSi(1e-5), AreaRate.FromSi(0.5));
        var depth = fields.Quantity<Length>("film", "Depth of the film of water, such as 0.1 mm.", Need.Required, null, Length.FromSi(1e-6), Length.FromSi(0.02));
        var pavement = fields.Quantity<Temperature>(
            "pavement", "Temperature of the pavement.", Need.Required, null, Temperature.FromSi(213.15), Temperature.FromSi(323.15));
        if (rate is not null && width is null) fields.Report(FilmFindings.NoWidth, "laneWidth");
        if (rate is null && area is null) fields.Report(FilmFindings.NoRate, "areaRate");
        if (salt is not { } s || depth is not { } d || pavement is not { } p) return null;
        var mass = area?.Si ?? (rate is { } r && width is { } w ? r.Si / w.Si : (double?)null);
        return mass is { } m ? report => Work(report, s, m, d.Si * 1000, p.Si) : null;
    }

    private static void Work(CalibrationReport report, SaltKind salt, double mass, double water, double pavement)
    {
        var strength = WetFilm.Strength(mass, water);
        report.Add("salt by area", mass, Dimension.AreaRate, Units.GramPerSquareMetre, false);
        report.Add("strength of the film", strength, Dimension.Fraction, Units.Percent, true);
        if (FreezingPoint.Of(salt, strength) is { } point)
        {
            report.Add("freezing point of the film", point.Kelvins, Dimension.Temperature, null, true);
            report.Say(
                point.Kelvins + point.PlusMinus < pavement ? "By equilibrium the film stays liquid at {pavement}."
                : point.Kelvins - point.PlusMinus > pavement ? "By equilibrium the film freezes at {pavement}."
                : "Whether the film freezes at {pavement} cannot be told: sources differ by as much.",
                FindingValue.Number("pavement", pavement, Dimension.Temperature));
        }
        else
        {
            report.Add(FilmFindings.NotKnown.At("areaRate"));
        }

        if (WetFilm.Needed(salt, water, pavement) is { } needed)
        {
            report.Add("salt the film needs", needed, Dimension.AreaRate, Units.GramPerSquareMetre, true);
            report.Say(
                "Traffic throws salt off: one study measured 70 % gone after 100 to 150 vehicles, so what the film needs is no rate to spread.");
        }
        else
        {
            report.Add(FilmFindings.TooCold.At("pavement", FindingValue.Number("pavement", pavement, Dimension.Temperature)));
        }

        report.Say("An estimate for an even film, without losses, snow still falling or salt left from before. It explains; the yard's own rates and its supervisor decide.");
    }
}

/// <summary>Findings of the estimate for a film.</summary>
public static class FilmFindings
{
    /// <summary>A rate for a lane without the lane's width.</summary>
    public static readonly FindingKind NoWidth = new(
        "film.no-width", Severity.Stop, "A rate for a lane is stated without the lane's width.", "State laneWidth, or the salt by area.");

    /// <summary>No rate.</summary>
    public static readonly FindingKind NoRate = new(
        "film.no-rate", Severity.Stop, "How much salt lies on the road is not stated.", "State areaRate, or rate with laneWidth.");

    /// <summary>No freezing point for that strength.</summary>
    public static readonly FindingKind NotKnown = new(
        "film.not-known", Severity.Warn, "At this strength the sources give no freezing point, or lie too far apart.",
        "Take less salt or a deeper film.");

    /// <summary>Too cold for the salt.</summary>
    public static readonly FindingKind TooCold = new(
        "film.too-cold", Severity.Warn, "At {pavement} no strength of this salt that is known keeps a film liquid.",
        "Plow, use abrasives, or another material by the yard's rules.");

    /// <summary>All of them.</summary>
    public static IReadOnlyList<FindingKind> All { get; } = [NoWidth, NoRate, NotKnown, TooCold];
}
