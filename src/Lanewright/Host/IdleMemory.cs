using System.Runtime.InteropServices;
using Lanewright.Storage;

namespace Lanewright.Host;

/// <summary>
/// Gives memory back when nobody asked for anything for a while: a yard's machine has other work, and the runtime by itself
/// keeps what a busy minute took.
/// </summary>
internal sealed class IdleMemory : IDisposable
{
    private static readonly TimeSpan Rest = TimeSpan.FromSeconds(8);

    // Pools of buffers let go of some of what nobody took for a minute, each time they see a collection.
    private static readonly TimeSpan Again = TimeSpan.FromSeconds(65);

    private const long Little = 1_000_000;

    private static readonly Trim? NativeTrim =
        OperatingSystem.IsLinux() && NativeLibrary.TryGetExport(NativeLibrary.GetMainProgramHandle(), "malloc_trim", out var found)
            ? Marshal.GetDelegateForFunctionPointer<Trim>(found)
            : null;

    private readonly EntryStore store;
    private readonly Timer timer;

    private IdleMemory(EntryStore store)
    {
        this.store = store;
        timer = new(_ => Collect());
    }

    private delegate int Trim(nuint pad);

    public void Dispose() => timer.Dispose();

    /// <summary>Begins the wait anew with every request; after the last of them memory is collected until little comes back.</summary>
    internal static void Use(WebApplication app, EntryStore store)
    {
        var idle = new IdleMemory(store);
        app.Lifetime.ApplicationStopped.Register(idle.Dispose);
        app.Use(async (context, next) =>
        {
            idle.timer.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
            try
            {
                await next(context);
            }
            finally
            {
                idle.timer.Change(Rest, Timeout.InfiniteTimeSpan);
            }
        });
    }

    private void Collect()
    {
        // Each connection that waits for the next question keeps pages of the file.
        store.Release();
        var before = GC.GetGCMemoryInfo().TotalCommittedBytes;
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        // What SQLite gave back to the C library goes back to the system.
        NativeTrim?.Invoke(0);
        if (before - GC.GetGCMemoryInfo().TotalCommittedBytes > Little) timer.Change(Again, Timeout.InfiniteTimeSpan);
    }
}
