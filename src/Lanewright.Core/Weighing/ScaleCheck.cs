using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Weighing;

/// <summary>Looks at a scale itself, before any reading.</summary>
public static class ScaleCheck
{
    private const int LongAgoDays = 366;

    /// <summary>Findings about what is known of the scale.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="field">Where it stands in the sheet.</param>
    /// <param name="testDate">Day of the test, when known.</param>
    public static IEnumerable<Finding> Of(Scale scale, string field, DateOnly? testDate)
    {
        ArgumentNullException.ThrowIfNull(scale);
        var name = FindingValue.Text("scale", scale.Id);
        if (!scale.HasOwnTolerance && scale.Class is not ScaleClass.None && !ScaleTolerance.Has(scale.Class, scale.Rules))
            yield return WeighingFindings.ClassUnderRules.At(field + ".class", name);
        else if (!scale.HasTolerance)
            yield return WeighingFindings.NoTolerance.At(field + ".class", name);
        if (scale.Division is not { Si: > 0 })
            yield return WeighingFindings.NoDivision.At(field + ".division", name);
        if (scale is { Capacity: { } capacity, Division: { Si: > 0 } division })
        {
            var most = ScaleTolerance.MostDivisions(scale.Class, scale.Rules);
            var divisions = capacity.Si / division.Si;
            // A plate's figures are decimal, so the quotient may miss a whole number by rounding.
            if (divisions > most * (1 + 1e-9))
            {
                yield return WeighingFindings.TooManyDivisions.At(
                    field + ".division", name,
                    FindingValue.Number("divisions", divisions, Dimension.Fraction),
                    FindingValue.Number("most", most, Dimension.Fraction));
            }
        }

        if (scale.Verified is not { } verified)
        {
            yield return WeighingFindings.NotVerified.At(field + ".verified", name);
        }
        else if (testDate is { } day)
        {
            var days = day.DayNumber - verified.DayNumber;
            if (days < 0)
                yield return WeighingFindings.VerifiedLater.At(field + ".verified", name);
            else if (days > LongAgoDays)
                yield return WeighingFindings.VerifiedLongAgo.At(
                    field + ".verified", name, FindingValue.Number("days", days, Dimension.Fraction));
        }
    }
}
