namespace Lanewright.Host;

/// <summary>
/// Gives memory back when nobody asked for anything for a while: a yard's machine has other work, and the runtime by itself
/// keeps what a busy minute took.
/// </summary>
internal sealed class IdleMemory : IDisposable
{
    private static readonly TimeSpan Rest = TimeSpan.FromSeconds(8);
    private readonly Timer timer = new(_ => GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true));

    public void Dispose() => timer.Dispose();

    /// <summary>Begins the wait anew with every request; one collection follows the last of them.</summary>
    internal static void Use(WebApplication app)
    {
        var idle = new IdleMemory();
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
}
