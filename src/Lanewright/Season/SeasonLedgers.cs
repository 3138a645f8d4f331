using Lanewright.Core.Season;
using Lanewright.Core.Season.Roads;
using Lanewright.Core.Text;
using Lanewright.Logs;
using Lanewright.Logs.Applied;
using Lanewright.Logs.Roads;
using Lanewright.Logs.Store;

namespace Lanewright.Season;

/// <summary>
/// What the logs of a data folder say was spread. A question is summed up once and its answer kept until the logs, their roads, the
/// season's files or the constants change.
/// </summary>
internal sealed class SeasonLedgers(string data, SeasonSource season) : IDisposable
{
    // A segment's line is some hundred bytes, and a page asks one or two questions.
    private const int MostKept = 12;

    private readonly SemaphoreSlim working = new(1, 1);
    private readonly List<(string Question, AppliedAnswer Answer)> kept = [];
    private string asOf = "";
    private IReadOnlyList<SeasonConstant>? constants;
    private IReadOnlyList<Storm>? listed;
    private IReadOnlyList<Storm>? storms;
    private (string Stamp, RoadNetwork? Roads)? network;

    /// <inheritdoc/>
    public void Dispose() => working.Dispose();

    /// <summary>How often the rows were summed up.</summary>
    internal int Sums { get; private set; }

    internal LogFolder Folder { get; } = new(data);

    /// <summary>Whether any row was taken in.</summary>
    internal bool HasRows => Directory.Exists(Folder.Rows);

    /// <summary>A ledger; one at a time, since a large season takes memory.</summary>
    /// <param name="make">The question, from what it is always asked with: the season's constants and storms.</param>
    /// <param name="stop">Gives up waiting.</param>
    /// <exception cref="LogException">There are no logs, or something cannot be read.</exception>
    internal async Task<AppliedAnswer> OfAsync(Func<AppliedQuestion, AppliedQuestion> make, CancellationToken stop)
    {
        await working.WaitAsync(stop);
        try
        {
            var now = $"{await season.StampAsync(stop)}|{RoadsStamp()}|{SegmentsStamp()}";
            if (now != asOf)
            {
                kept.Clear();
                (constants, listed, storms, asOf) = (null, null, null, now);
            }

            if (constants is null)
            {
                listed = season.Open(TextCulture.Invariant).Storms();
                constants = await season.ConstantsAsync(stop);
            }

            var question = make(new() { Constants = constants, Storms = listed });
            var name = $"{question.By} {string.Join(' ', question.With)} {question.Band:R}";
            if (kept.FindIndex(one => one.Question == name) is >= 0 and var place)
            {
                var known = kept[place];
                kept.RemoveAt(place);
                kept.Add(known);
                return known.Answer;
            }

            var answer = AppliedLedger.Compute(Folder, question);
            Sums++;
            kept.Add((name, answer));
            if (kept.Count > MostKept) kept.RemoveAt(0);
            return answer;
        }
        finally
        {
            working.Release();
        }
    }

    /// <summary>Tickets and logs storm by storm.</summary>
    /// <exception cref="LogException">There are no logs, or something cannot be read.</exception>
    internal async Task<StormBook> BookAsync(IReadOnlyList<TimedTicket> tickets, CancellationToken stop)
    {
        AppliedQuestion? asked = null;
        var answer = await OfAsync(question => asked = StormBook.Question(question), stop);
        await working.WaitAsync(stop);
        try
        {
            return StormBook.Of(answer, asked!.Storms ?? (storms ??= AppliedLedger.FindStorms(Folder, asked)), tickets);
        }
        finally
        {
            working.Release();
        }
    }

    /// <summary>The kept roads; null when there are none.</summary>
    /// <exception cref="LogException">They cannot be read.</exception>
    internal async Task<RoadNetwork?> RoadsAsync(CancellationToken stop)
    {
        await working.WaitAsync(stop);
        try
        {
            var stamp = RoadsStamp();
            if (network is not { } known || known.Stamp != stamp) network = (stamp, RoadStore.Read(Folder));
            return network.Value.Roads;
        }
        finally
        {
            working.Release();
        }
    }

    private string RoadsStamp() => new FileInfo(RoadStore.Place(Folder)) is { Exists: true } file ? $"{file.Length} {file.LastWriteTimeUtc.Ticks}" : "";

    private string SegmentsStamp()
    {
        var (count, latest) = (0, DateTime.MinValue);
        foreach (var file in MatchedSegments.Files(Folder))
        {
            count++;
            var written = File.GetLastWriteTimeUtc(file);
            if (written > latest) latest = written;
        }

        return $"{count} {latest.Ticks}";
    }
}
