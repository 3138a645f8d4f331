using System.Globalization;
using System.Text.Json;
using Lanewright.Core.Text;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Records;

namespace Lanewright.Storage;

/// <summary>The words of the statuses in answers and files.</summary>
public static class AppendWords
{
    /// <summary>The word of a status.</summary>
    public static string Of(AppendStatus status) => status switch
    {
        AppendStatus.Accepted => "accepted",
        AppendStatus.Have => "have",
        AppendStatus.Conflict => "conflict",
        _ => "rejected",
    };

    /// <summary>Why something lies in quarantine, for a reader of any language: found once more from what came. Where that gives another
    /// reason than was kept, as after a change of the rules, the kept one in English.</summary>
    public static Phrase ReasonOf(QuarantinedEntry aside)
    {
        ArgumentNullException.ThrowIfNull(aside);
        var again = aside.Status == Of(AppendStatus.Conflict) ? Conflict(aside.Reason) : Problem(aside.Raw);
        return again?.ToString() == aside.Reason ? again : Phrase.FromString(aside.Reason);
    }

    internal static Phrase TakenBy(long number) => $"Entry {number} has this id and says something else.";

    private static Phrase? Conflict(string reason) =>
        reason.Split(' ') is [_, var number, ..] && long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var taken) ? TakenBy(taken) : null;

    private static Phrase? Problem(string raw)
    {
        try
        {
            using var json = JsonDocument.Parse(raw, EntryReader.AsItCame);
            return EntryReader.Read(json.RootElement).Problem?.Said;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
