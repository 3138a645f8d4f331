using System.Globalization;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Charts;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Register;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Documents;

/// <summary>
/// Makes certificates from reports. The same figures as on every page: nothing is computed here but the coverage factor.
/// </summary>
public static class CertificateMaker
{
    /// <summary>Why there can be no certificate of a report; null when there can.</summary>
    /// <param name="usable">Whether there is an answer and nothing says stop.</param>
    /// <param name="date">Day of the work.</param>
    public static Phrase? Refusal(bool usable, DateOnly? date) =>
        !usable ? (Phrase)"There is no certificate: what says STOP must be cleared first."
        : date is null ? (Phrase)"date: nothing was read; a certificate needs the day of the work. Write it as 2026-01-31."
        : null;

    /// <summary>The certificate of a drop test or a check.</summary>
    /// <param name="report">The report, usable and with a date.</param>
    /// <param name="readFindings">Findings of reading the sheet.</param>
    /// <param name="context">Where it comes from.</param>
    public static Certificate Of(TestReport report, IReadOnlyList<Finding> readFindings, CertificateContext context)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(readFindings);
        ArgumentNullException.ThrowIfNull(context);
        var sheet = report.Sheet;
        var words = new CertificateWords(context.Culture, context.Units ?? sheet.Preferences);
        var check = sheet.Kind is TestKind.Verification;
        var facts = new DropTestFacts(sheet, words);
        return Numbered(new()
        {
            Number = "",
            Title = words.Say(TitleOf(context.Yard)),
            Standing = words.Say(StandingOf(context.Yard)),
            Kind = ReportWords.Of(sheet.Kind),
            KindName = words.Say(check ? "Check of a spreader: delivered against weighed" : "Calibration of a spreader by drop test"),
            Name = sheet.Title,
            Invented = sheet.Invented,
            Item = $"{sheet.Spreader.Id}",
            Date = sheet.Date!.Value,
            Place = sheet.Place,
            People = string.Join(", ", sheet.People),
            Context = context,
            Facts = [facts.Item(), facts.Conditions(), .. Decided(context, words)],
            Method = facts.Method(report),
            Results = [.. report.Results.SelectMany(result => ResultsOf(sheet, result, words))],
            Conformity = ConformityOf(sheet, report, context, words),
            Lines = facts.Meaning(report),
            Tables = report.Results.Count > 0 ? [facts.Runs(report.Results)] : [],
            Pictures = [.. report.Results.SelectMany((result, i) => new[]
            {
                RunsPicture.Svg(result, $"runs{i}", context.Culture), BudgetPicture.Svg(result, $"budget{i}", context.Culture),
            })],
            Scales = [words.Scale(sheet.Scale)],
            Deviations = DeviationsOf([.. readFindings, .. report.Findings], words),
            Authorised = context.Decision?.By ?? sheet.Decision?.By ?? "",
        });
    }

    /// <summary>The certificate of another calibration.</summary>
    /// <param name="report">The report, usable and with a date.</param>
    /// <param name="readFindings">Findings of reading the sheet.</param>
    /// <param name="context">Where it comes from.</param>
    public static Certificate Of(CalibrationReport report, IReadOnlyList<Finding> readFindings, CertificateContext context)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(readFindings);
        ArgumentNullException.ThrowIfNull(context);
        var head = report.Head;
        var words = new CertificateWords(context.Culture, context.Units ?? head.Preferences);
        return Numbered(new()
        {
            Number = "",
            Title = words.Say(TitleOf(context.Yard)),
            Standing = words.Say(StandingOf(context.Yard)),
            Kind = report.Kind.Word,
            KindName = words.Say(Phrase.FromString(report.Kind.Name)),
            Name = head.Title,
            Invented = head.Invented,
            Item = head.Spreader.Length > 0 ? $"{head.Spreader}" : head.Title.Length > 0 ? $"{head.Title}" : Phrase.FromString(report.Kind.Name),
            Date = head.Date!.Value,
            Place = head.Place,
            People = head.People,
            Context = context,
            Facts =
            [
                new(words.Say("Item"),
                [
                    (words.Say("Spreader"), head.Spreader), (words.Say("Calibration"), words.Say(Phrase.FromString(report.Kind.Name))),
                    (words.Say("Remark"), head.Note),
                ]),
                .. Decided(context, words),
            ],
            Method =
            [
                words.Say(Phrase.FromString(report.Kind.Doc)),
                words.Say($"Worked out by Lanewright {context.Version} from the observations of the record; formulas, limits and sources are in its documentation, docs/method."),
            ],
            Results = [.. report.Figures.Where(figure => double.IsFinite(figure.Value.Value)).Select(figure => new CertificateResult(
                figure.Label, figure.UnitFor(words.Units), figure.Value.Value, figure.Expanded is > 0 ? figure.Expanded : null,
                figure.Value.StandardUncertainty, figure.Probability, figure.Text(words.Culture, words.Units)))],
            Lines = [.. report.Lines.Select(line => line.Text(words.Culture, words.Units))],
            Tables = [.. report.Tables.Select(table => new CertificateTable(
                words.Say(table.Title), [.. table.Columns.Select(column => column.Heading(words.Culture, words.Units))],
                [.. table.Rows.Select(row => (IReadOnlyList<string>)[.. row.Select((cell, i) => cell.Text(table.Columns[i], words.Culture, words.Units))])],
                [.. table.Columns.Select(column => column.Dimension is not null)]))],
            Pictures = [.. report.Pictures.Select((picture, i) => picture.Svg($"picture{i}", words.Culture, words.Units))],
            Scales = [.. report.Scales.Select(words.Scale)],
            Deviations = DeviationsOf([.. readFindings, .. report.Findings], words),
            Authorised = context.Decision?.By ?? "",
        });
    }

    private static Certificate Numbered(Certificate certificate) => certificate with { Number = Statement.NumberOf(certificate) };

    private static Phrase TitleOf(YardFacts yard) => yard.Accreditation.Length > 0 ? "Calibration certificate" : "Calibration record";

    private static Phrase StandingOf(YardFacts yard) => yard.Accreditation.Length > 0
        ? (Phrase)$"Issued under the accreditation that the yard states: {yard.Accreditation}."
        : "In-house record: not issued under an accreditation.";

    // As found before as left: what the spreader did with the constant in use stands beside the new one.
    private static IEnumerable<CertificateResult> ResultsOf(TestSheet sheet, TestResult result, CertificateWords words)
    {
        if (sheet.Kind is not TestKind.Verification && result.Delivery is { } found)
        {
            yield return new(
                At("As found: delivered of what was asked"), Units.Percent, found.Share.Value, found.Expanded,
                found.Share.StandardUncertainty, result.Probability,
                QuantityText.WriteWithUncertainty(found.Share.Value, found.Expanded, Units.Percent, words.Culture));
        }

        Phrase name = sheet.Kind is TestKind.Verification ? "Delivered of what the controller says" : "Calibration constant";
        yield return new(
            At(sheet.Material.Moisture is null ? name : $"{name}, dry material"), result.Unit, result.Value.Value, result.Expanded,
            result.Value.StandardUncertainty, result.Probability,
            QuantityText.WriteWithUncertainty(result.Value.Value, result.Expanded, result.Unit, words.Culture));
        if (sheet.Kind is not TestKind.Verification && result.KeyIn is { } key)
            yield return new(At("To key in"), result.Unit, key.Value, null, 0, result.Probability, words.Keyed(key, result.Unit));

        Phrase At(Phrase what) => result.Setting.Length > 0 ? $"{what} at setting {result.Setting}" : what;
    }

    private static CertificateConformity? ConformityOf(TestSheet sheet, TestReport report, CertificateContext context, CertificateWords words)
    {
        if (report.Results.Select(result => result.Delivery).FirstOrDefault(found => found is not null) is not { } delivery) return null;
        Phrase what = sheet.Kind is TestKind.Verification ? "Delivered against weighed" : "The constant in use before the test";
        var tolerance = words.Percent(delivery.Tolerance);
        var verdict = delivery.Conformity switch
        {
            Conformity.Pass => (Phrase)$"PASS: {what} is within ± {tolerance}, even with the uncertainty against it.",
            Conformity.Fail => $"FAIL: {what} is outside ± {tolerance}, even with the uncertainty in its favour.",
            _ => $"CANNOT TELL: {what} has an interval that reaches across ± {tolerance}; chance of being within {words.Percent(delivery.ChanceWithin)}.",
        };
        Phrase source = context.YardTolerance is not { } yard ? "as the sheet states it"
            : Math.Abs(yard - delivery.Tolerance) < 1e-12 ? "from the yard's rules"
            : (Phrase)$"as the sheet states it; the yard's rules now say ± {words.Percent(yard)}";
        return new(
            ReportWords.Of(delivery.Conformity), words.Say(verdict),
            words.Say(
                $"Tolerance ± {tolerance}, {source}. Decision rule: pass when the whole {words.Percent(report.Results[0].Probability)} interval is within the"
                + $" tolerance, fail when all of it is outside, otherwise cannot tell; the guard band is the expanded uncertainty (JCGM 106:2012)."),
            delivery.Share.Value, delivery.Expanded, delivery.Tolerance);
    }

    private static IEnumerable<CertificateFacts> Decided(CertificateContext context, CertificateWords words)
    {
        if (context.Decision is not { } decision) return [];
        Phrase verdict = decision.Verdict switch
        {
            "adopt" => "adopted",
            "reject" => "rejected",
            "repeat" => "to be repeated",
            var other => (Phrase)$"{other}",
        };
        return
        [
            new(words.Say("Decision"),
            [
                (words.Say("Decided"), words.Say($"{verdict}, by {decision.By}")), (words.Say("Because"), decision.Why),
                (words.Say("Keyed in"), decision.Keyed), (words.Say("Controller shows"), decision.ReadBack),
            ]),
        ];
    }

    // What holds for several settings is said once.
    private static List<string> DeviationsOf(IReadOnlyList<Finding> findings, CertificateWords words) =>
    [
        .. findings.OrderByDescending(finding => finding.Severity).Select(finding =>
            $"{words.Say(ReportWords.Label(finding.Severity))} {FindingText.Message(finding, words.Culture, words.Units)} ({finding.Code})").Distinct(),
    ];
}
