using Lanewright.Core.Text;
using Lanewright.Storage;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Transfer;

namespace Lanewright.Proof;

/// <summary>Where a file is held against: records of this machine, or an export.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Test">The entries about a test, in order of number.</param>
/// <param name="After">Entries after a number, at most so many.</param>
internal sealed record RecordSource(
    Phrase Name, Func<string, Task<IReadOnlyList<Entry>>> Test, Func<long, int, Task<IReadOnlyList<Entry>>> After)
{
    /// <summary>The records.</summary>
    internal static RecordSource Of(EntryStore store, CancellationToken stop) => new(
        "the records", test => store.ReadAsync(subject: test, stop: stop), (after, most) => store.ReadAsync(after, most: most, stop: stop));

    /// <summary>An export, after its chain was checked.</summary>
    internal static (RecordSource? Source, Phrase? Problem) OfExport(string path)
    {
        List<Entry> entries = [];
        var report = Export.Check(path, entries.Add);
        if (!report.IsWhole) return (null, (Phrase)$"The chain of {path} is not whole: {report.Problems[0].What}");
        return (new(
            $"the export {Path.GetFileName(path)}",
            test => Task.FromResult<IReadOnlyList<Entry>>([.. entries.Where(entry => entry.Subject == test)]),
            (after, most) => Task.FromResult<IReadOnlyList<Entry>>([.. entries.Where(entry => entry.Number > after).Take(most)])), null);
    }
}
