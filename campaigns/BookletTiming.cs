using System.Diagnostics;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Files;

namespace Lanewright.Campaigns;

/// <summary>Time and memory of one booklet with many cards.</summary>
internal static class BookletTiming
{
    private const double MostSeconds = 20;
    private const double MostMegabytes = 300;

    internal static int Run(int count)
    {
        var reading = Calibration.Read(SheetFile.Read("examples/calibrations/hr-104-rate-card.yaml"), RateCard.Kind);
        var report = reading.Value!.Analyse();
        var cards = Enumerable.Range(1, count)
            .Select(i => new BookletCard(report.Card! with { Spreader = $"HR-{i:000}", Record = $"lanewright:{i:00000000-0000-7000-8000}" }, report.Head.Preferences)).ToList();
        var clock = Stopwatch.StartNew();
        var bytes = CabCardPdf.Booklet(cards, CardPaper.A5, TextCulture.UnitedStates);
        clock.Stop();
        using var self = Process.GetCurrentProcess();
        var megabytes = self.PeakWorkingSet64 / 1048576.0;
        var good = clock.Elapsed.TotalSeconds <= MostSeconds && megabytes <= MostMegabytes;
        Console.WriteLine(
            $"{count} cards: {clock.Elapsed.TotalSeconds:0.0} s (limit {MostSeconds}), {megabytes:0} MB at most (limit {MostMegabytes}), file {bytes.Length / 1024} kB: {(good ? "within" : "BEYOND")}");
        return good ? 0 : 1;
    }
}
