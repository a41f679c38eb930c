using Microsoft.EntityFrameworkCore;
using Tautline.Store;

namespace Tautline.Server.Jobs;

/// <summary>Brings the index of jobs up to their items, one at a time. Any process may do any job; one that dies on it is followed by another.</summary>
internal sealed partial class JobIndexer(StorePlace place, TimeProvider clock, ILogger<JobIndexer> log) : BackgroundService
{
    private static readonly TimeSpan look = TimeSpan.FromMilliseconds(500);
    private static readonly TimeSpan mine = TimeSpan.FromSeconds(20);

    protected override async Task ExecuteAsync(CancellationToken stopping)
    {
        while (!stopping.IsCancellationRequested)
        {
            try
            {
                if (await NextAsync(stopping)) continue;
            }
            catch (Exception fault) when (fault is not OperationCanceledException)
            {
                LogFault(log, fault);
            }
            await Task.Delay(look, clock, stopping).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    /// <returns>False where every job's index is up to date.</returns>
    internal async Task<bool> NextAsync(CancellationToken cancel)
    {
        await using var store = place.Open();
        var now = clock.GetUtcNow().UtcTicks;
        if (await Doors.TakeStaleJobAsync(store, now, now + mine.Ticks, cancel) is not { } stale) return false;
        store.CompanyId = stale.CompanyId;
        var last = await store.Jobs.Where(j => j.JobId == stale.JobId).Select(j => j.LastNumber).SingleAsync(cancel);
        var items = await store.Items.AsNoTracking().Where(i => i.JobId == stale.JobId && i.Number <= last).OrderBy(i => i.Number).Select(i => new { i.Kind, i.Body }).ToListAsync(cancel);
        var index = Index([.. items.Select(i => (i.Kind, i.Body))]);
        // One that took too long does not put an older index over a newer.
        await store.Jobs.Where(j => j.JobId == stale.JobId && j.IndexedNumber < last).ExecuteUpdateAsync(
            set => set.SetProperty(j => j.IndexedNumber, last).SetProperty(j => j.IndexedBy, 0)
                .SetProperty(j => j.Name, index.Name).SetProperty(j => j.Words, index.Words).SetProperty(j => j.Revision, index.Revision).SetProperty(j => j.Head, index.Head).SetProperty(j => j.Fault, index.Fault)
                .SetProperty(j => j.Conflicts, index.Conflicts).SetProperty(j => j.Problems, index.Problems).SetProperty(j => j.PostsSet, index.PostsSet).SetProperty(j => j.Posts, index.Posts)
                .SetProperty(j => j.FabricHung, (long)(index.FabricHung * 1000)).SetProperty(j => j.Fabric, (long)(index.Fabric * 1000)).SetProperty(j => j.Punch, index.Punch)
                .SetProperty(j => j.Ticket, index.Ticket).SetProperty(j => j.TicketEnds, index.TicketEnds),
            cancel);
        return true;
    }

    // A job that our own code stumbles over is told as such, and does not keep the others from theirs.
    private JobIndex Index(IReadOnlyList<(Tautline.Store.Rows.ItemKind Kind, byte[] Body)> items)
    {
        try
        {
            return JobIndex.Of(items);
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            LogFault(log, fault);
            return new("", "", "", [], "The server could not put this job together.", 0, 0, 0, 0, 0, 0, 0, "", null);
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "A job's index was not brought up to date")]
    private static partial void LogFault(ILogger log, Exception fault);
}
