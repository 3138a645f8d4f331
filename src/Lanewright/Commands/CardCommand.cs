using System.CommandLine;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Files;
using Lanewright.Print;

namespace Lanewright.Commands;

/// <summary><c>lanewright card</c>: the card for the cab, from the sheet of a rate card.</summary>
internal static class CardCommand
{
    internal static Command Make()
    {
        var file = new Argument<string>("sheet") { Description = "The sheet of a rate card (kind rate-card)." };
        var target = new Option<string>("--out") { Description = "The PDF file to write.", Required = true };
        var paper = new Option<string>("--paper") { Description = "a5 or letter.", DefaultValueFactory = _ => "a5" };
        paper.AcceptOnlyFromAmong("a5", "letter");
        var culture = CommonOptions.Culture();
        var units = CommonOptions.Units();
        var command = new Command("card", "Draw the rate card for the cab as a PDF file.") { file, target, paper, culture, units };
        command.SetAction(parsed =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var error = parsed.InvocationConfiguration.Error;
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            if (CommonOptions.UnitsOf(parsed.GetValue(units), UnitPreferences.UnitedStates, c, error) is not { } u)
                return CommonOptions.CouldNotRead;
            var name = parsed.GetValue(file)!;
            var tree = SheetFile.Read(name);
            if (Calibration.KindOf(tree) is not { } kind || kind != RateCard.Kind)
            {
                error.WriteLine(c.Say($"{Excerpt.Of(name, 200)}: the sheet of a rate card was expected (kind: rate-card)."));
                return CommonOptions.CouldNotRead;
            }

            var reading = Calibration.Read(tree, kind);
            var asked = parsed.GetValue(units) is null ? null : u;
            var show = new Show(c, asked ?? reading.Value?.Head.Preferences ?? u);
            if (!reading.IsUsable) return CommonOptions.Refuse(name, reading.Findings, false, show, output, error);
            var report = reading.Value!.In(asked).Analyse();
            List<Finding> findings = [.. reading.Findings, .. report.Findings];
            CommonOptions.Print(FindingLines.Of(findings, show), error);
            if (!report.Usable || report.Card is not { } card)
            {
                error.WriteLine(show.Say("No card was written: what says STOP must be cleared first."));
                return CommonOptions.DoNotUse;
            }

            return Write(card, parsed.GetValue(paper) == "letter" ? CardPaper.Letter : CardPaper.A5, parsed.GetValue(target)!, show, output, error);
        });
        return command;
    }

    private static int Write(CabCard card, CardPaper paper, string target, Show show, TextWriter output, TextWriter error)
    {
        try
        {
            var bytes = CabCardPdf.Draw(card, paper, show.Culture, show.Units);
            if (!WholeFile.Write(target, bytes, error)) return CommonOptions.CouldNotRead;
            output.WriteLine(show.Say($"{target}: the card of spreader {card.Spreader}, {bytes.Length / 1024} kB"));
            return CommonOptions.Answered;
        }
        catch (ArgumentException wrong)
        {
            error.WriteLine(wrong.Message.Split(" (Parameter", 2)[0]);
            return CommonOptions.DoNotUse;
        }
    }
}
