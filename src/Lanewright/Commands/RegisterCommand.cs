using System.CommandLine;
using System.Text;
using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Host;
using Lanewright.Lists;
using Lanewright.Office;
using Lanewright.Storage;

namespace Lanewright.Commands;

/// <summary><c>lanewright register</c>: takes a list in CSV into the register.</summary>
internal static class RegisterCommand
{
    internal static Command Make()
    {
        var file = new Argument<string>("file") { Description = "The list in CSV; its first row holds the names of the fields." };
        var kind = new Option<string>("--kind") { Description = "What it lists: " + Kinds() + ".", Required = true };
        var check = new Option<bool>("--check") { Description = "Say what would be written, and write nothing." };
        var person = new Option<string?>("--person") { Description = "Your name or initials, as in the register; kept with every change." };
        var why = new Option<string?>("--why") { Description = "Why records are changed; the file's name when left out." };
        var refused = new Option<string?>("--refused") { Description = "A file to write refused rows to, with the reasons." };
        var culture = CommonOptions.Culture();
        var data = RecordsOptions.Data();
        var database = RecordsOptions.Database();
        var command = new Command("register", "Take a list in CSV into the register.") { file, kind, check, person, why, refused, culture, data, database };
        command.SetAction((parsed, stop) =>
        {
            var error = parsed.InvocationConfiguration.Error;
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return Task.FromResult(CommonOptions.CouldNotRead);
            if (RegisterKind.InFiles.FirstOrDefault(one => one.List == parsed.GetValue(kind)) is not { } list)
            {
                error.WriteLine(c.Say($"--kind: '{Excerpt.Of(parsed.GetValue(kind))}' was read; expected one of {Kinds()}."));
                return Task.FromResult(CommonOptions.CouldNotRead);
            }

            var actor = parsed.GetValue(person);
            if (!parsed.GetValue(check) && OfficeActor.NameProblem(actor) is { } problem)
            {
                error.WriteLine(c.Say($"--person: {problem}"));
                return Task.FromResult(CommonOptions.CouldNotRead);
            }

            if (Bytes(parsed.GetValue(file)!, error) is not { } bytes) return Task.FromResult(CommonOptions.CouldNotRead);
            var name = Path.GetFileName(parsed.GetValue(file)!);
            return RecordsOptions.WithStoreAsync(
                parsed, data, database, store => TakeAsync(
                    store, new(list, bytes, c, parsed.GetValue(check) ? null : actor, parsed.GetValue(why) ?? $"Imported from {name}", parsed.GetValue(refused)),
                    parsed.InvocationConfiguration.Output, error, stop),
                stop, parsed.GetValue(check) ? Opening.Existing : Opening.Make);
        });
        return command;
    }

    private static async Task<int> TakeAsync(EntryStore store, Order order, TextWriter output, TextWriter error, CancellationToken stop)
    {
        using var register = new OfficeData(store, TimeProvider.System);
        var plan = ListPlan.Of(order.Bytes, order.Kind, await register.RowsAsync(order.Kind, stop), order.Culture);
        if (plan.Problem is { } problem)
        {
            error.WriteLine($"{Core.Findings.FindingText.Where(problem, order.Culture.Language)} {OfficeText.Say(problem)}".Trim());
            return CommonOptions.CouldNotRead;
        }

        foreach (var row in plan.Rows.Where(row => row.Fate is RowFate.Refused))
            error.WriteLine(OfficeText.Say($"line {row.Row.Line}, {Excerpt.Of(row.Name)}: {string.Join(" ", row.Findings.Select(ListPlan.Say))}"));
        if (order.Refused is { } report && plan.Count(RowFate.Refused) > 0 && !Write(report, plan, error)) return CommonOptions.CouldNotRead;
        if (order.Person is { } person)
            await new OfficeWriter(store, TimeProvider.System).WriteAsync(new Actor(person.Trim(), PersonRole.Supervisor), plan.ChangesOf(order.Why), stop);
        var (made, changed, unchanged, refused) = (plan.Count(RowFate.New), plan.Count(RowFate.Changed), plan.Count(RowFate.Unchanged), plan.Count(RowFate.Refused));
        output.WriteLine(OfficeText.Say(order.Person is null
            ? (Phrase)$"{order.Kind.List}: {made} new, {changed} changed, {unchanged} unchanged, {refused} refused. Nothing was written."
            : $"{order.Kind.List}: {made} new, {changed} changed, {unchanged} unchanged, {refused} refused. Written."));
        return refused > 0 ? CommonOptions.DoNotUse : CommonOptions.Answered;
    }

    private static bool Write(string report, ListPlan plan, TextWriter error)
    {
        try
        {
            using var stream = new FileStream(report, FileMode.CreateNew);
            using var writer = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
            foreach (var row in plan.Refused()) writer.Write(OfficeCsv.Line(row));
            return true;
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            error.WriteLine(OfficeText.Say($"--refused: {report} could not be written ({wrong.Message}). Nothing was taken in. Name a new file."));
            return false;
        }
    }

    private static byte[]? Bytes(string file, TextWriter error)
    {
        try
        {
            using var stream = File.OpenRead(file);
            // One byte more than allowed tells that it is too long; a device or pipe without end is not read on.
            var bytes = new byte[ListFile.MostBytes + 1];
            var length = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            return bytes[..length];
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            error.WriteLine(OfficeText.Say($"{Excerpt.Of(file, 200)} could not be read: {wrong.Message}"));
            return null;
        }
    }

    private static string Kinds() => string.Join(", ", RegisterKind.InFiles.Select(one => one.List));

    private sealed record Order(RegisterKind Kind, byte[] Bytes, TextCulture Culture, string? Person, string Why, string? Refused);
}
