using System.Security.Cryptography;
using Lanewright.Core.Text;
using Lanewright.Office;

namespace Lanewright.Lists;

/// <summary>A list that was sent and waits to be confirmed.</summary>
/// <param name="Token">What leads to it; nobody can guess it.</param>
/// <param name="Kind">What it lists.</param>
/// <param name="Name">The file's name.</param>
/// <param name="Bytes">The file.</param>
/// <param name="Culture">How its numbers are written.</param>
/// <param name="Until">When it is forgotten.</param>
internal sealed record WaitingList(
    string Token, RegisterKind Kind, string Name, byte[] Bytes, TextCulture Culture, DateTimeOffset Until)
{
    /// <summary>What was done with it; null before it was confirmed.</summary>
    internal ListPlan? Done { get; init; }
}

/// <summary>Keeps lists that were sent for half an hour, the last few of them, in memory.</summary>
internal sealed class ImportShelf(TimeProvider clock)
{
    private const int Most = 8;
    private static readonly TimeSpan Kept = TimeSpan.FromMinutes(30);
    private readonly Lock gate = new();
    private readonly List<WaitingList> lists = [];

    internal WaitingList Put(RegisterKind kind, string name, byte[] bytes, TextCulture culture)
    {
        var list = new WaitingList(RandomNumberGenerator.GetHexString(32, lowercase: true), kind, name, bytes, culture, clock.GetUtcNow() + Kept);
        lock (gate)
        {
            Tidy();
            if (lists.Count == Most) lists.RemoveAt(0);
            lists.Add(list);
        }

        return list;
    }

    internal WaitingList? Find(string token)
    {
        lock (gate)
        {
            Tidy();
            return lists.Find(list => list.Token == token);
        }
    }

    /// <summary>Keeps what was done instead of the file, so that it is done once; the report stays at hand.</summary>
    internal void Finish(WaitingList list, ListPlan done)
    {
        lock (gate)
        {
            var at = lists.FindIndex(one => one.Token == list.Token);
            if (at >= 0) lists[at] = list with { Bytes = [], Done = done };
        }
    }

    private void Tidy() => lists.RemoveAll(list => list.Until < clock.GetUtcNow());
}
