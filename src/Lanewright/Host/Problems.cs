using Lanewright.Core.Text;
using Lanewright.Storage.Database;
using Lanewright.Storage.Entries;
using static Lanewright.Office.OfficeText;

namespace Lanewright.Host;

/// <summary>What a page is told when something is wrong (RFC 9457), with the field, what was read and what was expected.</summary>
/// <param name="Title">What is wrong, for people.</param>
/// <param name="Status">HTTP status.</param>
/// <param name="Detail">More about it, and what to do; null for nothing more.</param>
/// <param name="Field">The field; null when it is not about one.</param>
/// <param name="Read">What was read; null when nothing was.</param>
/// <param name="Expected">What was expected; null when it is not about a field.</param>
internal sealed record Problem(string Title, int Status, string? Detail, string? Field, string? Read, string? Expected);

/// <summary>Answers that say what is wrong.</summary>
internal static class Problems
{
    internal static IResult Answer(int status, Phrase title, Phrase? detail = null) =>
        Answer(new(Say(title), status, detail is null ? null : Say(detail), null, null, null));

    internal static IResult Answer(int status, EntryProblem problem) =>
        Answer(new(Say(problem.Said), status, null, problem.Field, problem.Read, Say(problem.Expected)));

    /// <summary>A field of a request that cannot be used.</summary>
    internal static IResult Wrong(int status, string field, string? read, Phrase expected)
    {
        var wanted = Say(expected);
        var title = read is null
            ? Say($"{field}: nothing was read; {wanted} was expected.")
            : Say($"{field}: '{read}' was read; {wanted} was expected.");
        return Answer(new(title, status, null, field, read, wanted));
    }

    private static IResult Answer(Problem problem) =>
        Results.Json(problem, HostJson.Default.Problem, "application/problem+json", problem.Status);

    /// <summary>Turns faults of the disk and of the request into answers; a mistake in the program gives 500 and a log line.</summary>
    internal static async Task Catch(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
        catch (RecordsException wrong) when (!context.Response.HasStarted)
        {
            Console.Error.WriteLine(wrong.Message);
            if (wrong.Fault is RecordsFault.Busy or RecordsFault.Unreachable) context.Response.Headers.RetryAfter = "5";
            await Answer(StatusOf(wrong.Fault), wrong.Said).ExecuteAsync(context);
        }
        catch (BadHttpRequestException wrong) when (!context.Response.HasStarted)
        {
            Phrase what = wrong.StatusCode == 413
                ? "The request is larger than the server takes; send it in parts."
                : "The request could not be read.";
            await Answer(wrong.StatusCode, what).ExecuteAsync(context);
        }
        catch (Exception wrong) when (!context.Response.HasStarted && wrong is not OperationCanceledException)
        {
            Console.Error.WriteLine(wrong);
            await Answer(500, "The program made a mistake; nothing of this request was stored.").ExecuteAsync(context);
        }
    }

    private static int StatusOf(RecordsFault fault) => fault switch
    {
        RecordsFault.Full => 507,
        RecordsFault.Busy or RecordsFault.Unreachable => 503,
        _ => 500,
    };
}
