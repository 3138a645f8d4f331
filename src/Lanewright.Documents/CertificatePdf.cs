using System.Globalization;
using Lanewright.Core.Text;
using PdfSharp.Drawing;

namespace Lanewright.Documents;

/// <summary>Draws a certificate on paper: black on white, vectors and embedded type, its text can be read back.</summary>
public static class CertificatePdf
{
    private const double Body = 9;
    private const double CodeSize = 74;

    /// <summary>The certificate as a PDF file, without a seal.</summary>
    /// <param name="certificate">What it says.</param>
    /// <param name="paper">Its paper.</param>
    public static byte[] Draw(Certificate certificate, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(certificate);
        var context = certificate.Context;
        var record = context.Record;
        var c = context.Culture;
        var item = c.Say(certificate.Item);
        var from = c.Say(record is null ? "From a sheet that is in no records." : (Phrase)$"Record {record.Test}, entry {record.Entry}, hash {record.Hash}");
        var head = new FlowHead(
            $"{certificate.Title} {certificate.Number}, {item}", $"{certificate.KindName}, {item}, {Day(certificate.Date)}",
            context.Yard.Name.Length > 0 ? context.Yard.Name : "Lanewright", $"{certificate.Title} {certificate.Number}. {from}", context.Issued, c,
            record is null ? certificate.Number : c.Say($"{certificate.Number}; record {record.Test}; entry {record.Entry}; SHA-256 {record.Hash}"));
        return Flow.Make(head, paper, flow => Content(flow, certificate));
    }

    private static void Content(Flow flow, Certificate certificate)
    {
        var context = certificate.Context;
        var c = context.Culture;
        Head(flow, certificate);
        flow.Heading(c.Say("Who, what, when"));
        flow.Pairs(
        [
            (c.Say("Number"), certificate.Number), (c.Say("Issued"), Moment(context.Issued)),
            (c.Say("Carried out by"), Joined(Or(context.Yard.Name, c), context.Yard.Address)),
            (c.Say("For"), context.Yard.Customer.Length > 0 ? context.Yard.Customer : c.Say("the yard itself")),
            (c.Say("Place of the work"), Or(certificate.Place, c)),
            (c.Say("Day of the work"), Day(certificate.Date) + (context.Zone.Length > 0 ? $" ({context.Zone})" : "")),
            (c.Say("Persons"), Or(certificate.People, c)), (c.Say("Named"), certificate.Name),
        ]);
        foreach (var group in certificate.Facts.Where(group => group.Rows.Any(row => row.Text.Length > 0)))
        {
            flow.Heading(group.Heading);
            flow.Pairs(group.Rows);
        }

        Results(flow, certificate);
        if (certificate.Pictures.Count > 0) flow.Pictures(certificate.Pictures);
        foreach (var table in certificate.Tables) flow.Table(table);
        flow.Heading(c.Say("Method"));
        foreach (var line in certificate.Method) flow.Text(line, Body);
        Traceability(flow, certificate);
        flow.Heading(c.Say("Deviations and remarks"));
        if (certificate.Deviations.Count == 0) flow.Text(c.Say("None."), Body);
        foreach (var line in certificate.Deviations) flow.Text(line, Body);
        Signature(flow, certificate);
    }

    private static void Head(Flow flow, Certificate certificate)
    {
        var room = flow.Room - CodeSize - 12;
        var code = certificate.Context.Address.Length > 0 ? certificate.Context.Address : certificate.Number;
        var left = Flow.Margin + flow.Room - CodeSize;
        flow.Graphic(certificate.Context.Culture.Say($"Code that holds {code}"), new XRect(left, Flow.Margin, CodeSize, CodeSize), () => QrMatrix.Draw(flow.Graphics, code, left, Flow.Margin, CodeSize));
        flow.Text(certificate.Title, 20, true, room);
        flow.Text(certificate.KindName, 12, true, room);
        flow.Text(certificate.Standing, Body, false, room);
        if (certificate.Invented) flow.Text(certificate.Context.Culture.Say(Certificate.MadeUp), Body, true, room);
        flow.Y = Math.Max(flow.Y, Flow.Margin + CodeSize) + 2;
    }

    private static void Results(Flow flow, Certificate certificate)
    {
        var c = certificate.Context.Culture;
        flow.Heading(c.Say("Results"));
        flow.Table(
            new(
                "", [c.Say("Result"), c.Say("Value ± expanded uncertainty"), c.Say("Coverage factor k"), c.Say("Coverage")],
                [.. certificate.Results.Select(result => (IReadOnlyList<string>)
                [
                    c.Say(result.Name), result.Text,
                    result.CoverageFactor is { } k ? QuantityText.WriteNumber(k, c, NumberForm.Decimals(2)) : "",
                    result.Expanded is null ? "" : PercentText.Write(result.Probability, c),
                ])],
                [false, true, true, true]),
            9.5);
        if (certificate.Conformity is { } conformity)
        {
            flow.Text(conformity.Text, 10.5, true);
            flow.Text(conformity.Rule, Body);
        }

        foreach (var line in certificate.Lines) flow.Text(line, Body);
        if (certificate.Results.Any(result => result.Expanded is not null))
            flow.Text(c.Say("The expanded uncertainty is the standard uncertainty times k; the interval it spans holds the true value with the stated coverage."), 8);
        flow.Y += 4;
    }

    private static void Traceability(Flow flow, Certificate certificate)
    {
        if (certificate.Scales.Count == 0) return;
        var c = certificate.Context.Culture;
        flow.Heading(c.Say("Scales and their traceability"));
        foreach (var scale in certificate.Scales)
        {
            var verified = scale.Verified is { } day
                ? (Phrase)$"last verified {Day(day)}, as the record states; its own certificate or seal is with the scale's owner"
                : "when it was verified is not stated: traceability is not shown";
            flow.Text(c.Say($"{scale.Name}: {scale.Text}; {verified}."), Body);
        }
    }

    private static void Signature(Flow flow, Certificate certificate)
    {
        var c = certificate.Context.Culture;
        flow.Need(80);
        flow.Y += 26;
        var half = (flow.Room - 24) / 2;
        flow.Line(Flow.Margin, Flow.Margin + half, flow.Y);
        flow.Line(Flow.Margin + half + 24, Flow.Margin + flow.Room, flow.Y);
        var top = flow.Y;
        flow.Text(
            c.Say(certificate.Authorised.Length > 0 ? (Phrase)$"Authorised by {certificate.Authorised}; signature" : "Not decided yet. Authorised by; signature"),
            8, false, half);
        var below = flow.Y;
        flow.At(c.Say("Date"), 8, false, Flow.Margin + half + 24, top);
        flow.Y = below + 6;
        flow.Text(c.Say(Certificate.Covers), Body);
        flow.Text(c.Say($"Made with Lanewright {certificate.Context.Version}. End of the document."), 8);
    }

    private static string Joined(string a, string b) => b.Length > 0 ? $"{a}, {b}" : a;

    private static string Or(string text, TextCulture c) => text.Length > 0 ? text : c.Say("not stated");

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Moment(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture);
}
