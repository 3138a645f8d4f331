using Lanewright.Core.Findings;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// What a calibration constant can be at all, in SI of its form: far wider than any spreader's, and narrow enough that
/// nothing computed from it overflows.
/// </summary>
internal static class ConstantRange
{
    private const double Least = 1e-9;
    private const double Most = 1e9;

    /// <summary>The constant in SI, or null after reporting that it cannot be one.</summary>
    internal static double? Check(Fields fields, string name, string doc, Amount amount)
    {
        if (amount.Si is >= Least and <= Most) return amount.Si;
        if (!(amount.Si > 0))
        {
            fields.Report(SheetFindings.NotPositive, name);
            return null;
        }

        var isSmall = amount.Si < Least;
        var read = QuantityText.WriteNumber(amount.Value, TextCulture.Invariant, NumberForm.RoundTrip);
        fields.Report(
            isSmall ? ReadFindings.TooSmall : ReadFindings.TooBig, name,
            FindingValue.Text("read", $"{read} {amount.Unit.Symbol}"),
            FindingValue.Number("limit", isSmall ? Least : Most, amount.Unit.Dimension), FindingValue.Said("doc", doc));
        return null;
    }
}
