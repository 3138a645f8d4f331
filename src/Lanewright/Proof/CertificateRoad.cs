using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Documents;

namespace Lanewright.Proof;

/// <summary>A certificate, or why there is none.</summary>
/// <param name="Certificate">The certificate; null when there is none.</param>
/// <param name="Findings">What was found in reading and computing.</param>
/// <param name="Refusal">Why there is none; null when there is one.</param>
internal sealed record MadeCertificate(Certificate? Certificate, IReadOnlyList<Finding> Findings, Phrase? Refusal)
{
    /// <summary>Whether the sheet could be read at all.</summary>
    internal bool IsRead { get; init; } = true;
}

/// <summary>The one road from a sheet to its certificate, for every kind of calibration.</summary>
internal static class CertificateRoad
{
    internal static MadeCertificate Of(SheetTree tree, CertificateContext context) =>
        Calibration.KindOf(tree) is { } kind ? Of(Calibration.Read(tree, kind), context) : Of(SheetReader.Read(tree), context);

    internal static MadeCertificate Of(SheetReading<TestSheet> reading, CertificateContext context)
    {
        if (!reading.IsUsable) return Unread(reading.Findings);
        var report = SheetAnalysis.Analyse(reading.Value!);
        IReadOnlyList<Finding> findings = [.. reading.Findings, .. report.Findings];
        return CertificateMaker.Refusal(report.Usable, reading.Value!.Date) is { } refusal
            ? new(null, findings, refusal)
            : new(CertificateMaker.Of(report, reading.Findings, context), findings, null);
    }

    internal static MadeCertificate Of(SheetReading<CalibrationSheet> reading, CertificateContext context)
    {
        if (!reading.IsUsable) return Unread(reading.Findings);
        var report = reading.Value!.Analyse();
        IReadOnlyList<Finding> findings = [.. reading.Findings, .. report.Findings];
        return CertificateMaker.Refusal(report.Usable, report.Head.Date) is { } refusal
            ? new(null, findings, refusal)
            : new(CertificateMaker.Of(report, reading.Findings, context), findings, null);
    }

    private static MadeCertificate Unread(IReadOnlyList<Finding> findings) =>
        new(null, findings, "The sheet cannot be read as it is.") { IsRead = false };
}
