using Microsoft.EntityFrameworkCore;
using Tautline.Store.Rows;

namespace Tautline.Store.Carrying;

/// <summary>Something a device sends, already found to be what it says.</summary>
/// <param name="Hash">SHA-256 of the body, small hexadecimal digits.</param>
public sealed record Sent(ItemKind Kind, string Hash, byte[] Body);

/// <param name="Number">The item's number, also where it was there already.</param>
public sealed record Taken(string Hash, long Number);

/// <param name="Made">True where the job was not there before.</param>
public sealed record CarryResult(IReadOnlyList<Taken> Taken, long Cursor, bool Made);

/// <summary>Keeps what devices share of a job, in the order of arrival. What is answered is on disk.</summary>
public static class JobCarrier
{
    /// <summary>Two that make one job at the same moment: the second finds it made.</summary>
    private const int Tries = 3;

    /// <summary>Takes items. One that is there already keeps its number.</summary>
    /// <returns>Nothing where the job is not there and no root came that would make it.</returns>
    public static async Task<CarryResult?> PutAsync(StorePlace place, Caller caller, string jobId, IReadOnlyList<Sent> items, long now, CancellationToken cancel = default)
    {
        for (var attempt = 1; ; attempt++)
        {
            await using var store = place.Open(caller.CompanyId);
            try
            {
                return await PutAsync(store, caller, jobId, items, now, cancel);
            }
            catch (DbUpdateException) when (attempt < Tries)
            {
                // The unique keys decided between two; the next look sees what the other wrote.
            }
        }
    }

    private static async Task<CarryResult?> PutAsync(StoreContext store, Caller caller, string jobId, IReadOnlyList<Sent> items, long now, CancellationToken cancel)
    {
        await using var transaction = await store.BeginWriteAsync(cancel);
        // Writing the row first locks it: numbers are given out, and become visible, one batch after the other.
        var found = await store.Jobs.Where(j => j.JobId == jobId).ExecuteUpdateAsync(set => set.SetProperty(j => j.Changed, now), cancel);
        if (found == 0)
        {
            if (items.All(i => i.Kind != ItemKind.Root)) return null;
            store.Jobs.Add(new StoredJob { CompanyId = caller.CompanyId, JobId = jobId, Created = now, Changed = now });
            await store.SaveChangesAsync(cancel);
        }

        var last = await store.Jobs.Where(j => j.JobId == jobId).Select(j => j.LastNumber).SingleAsync(cancel);
        string[] hashes = [.. items.Select(i => i.Hash).Distinct()];
        var known = await store.Items.Where(i => i.JobId == jobId && hashes.Contains(i.Hash)).Select(i => new { i.Kind, i.Hash, i.Number }).ToDictionaryAsync(i => (i.Kind, i.Hash), i => i.Number, cancel);
        foreach (var item in items.Where(i => !known.ContainsKey((i.Kind, i.Hash))).DistinctBy(i => (i.Kind, i.Hash)))
        {
            known[(item.Kind, item.Hash)] = ++last;
            store.Items.Add(new JobItem
            {
                CompanyId = caller.CompanyId,
                JobId = jobId,
                Number = last,
                Kind = item.Kind,
                Hash = item.Hash,
                Body = item.Body,
                PersonId = caller.PersonId,
                DeviceId = caller.DeviceId,
                Received = now,
            });
        }

        await store.SaveChangesAsync(cancel);
        var end = last;
        await store.Jobs.Where(j => j.JobId == jobId).ExecuteUpdateAsync(set => set.SetProperty(j => j.LastNumber, end), cancel);
        await transaction.CommitAsync(cancel);
        return new([.. items.Select(i => new Taken(i.Hash, known[(i.Kind, i.Hash)]))], last, found == 0);
    }

    /// <summary>Keeps a photo; the same one again is the one that is there.</summary>
    /// <returns>False where the job is not there.</returns>
    public static async Task<bool> PutAttachmentAsync(StorePlace place, Caller caller, string jobId, string hash, string mediaType, byte[] bytes, long now, CancellationToken cancel = default)
    {
        await using var store = place.Open(caller.CompanyId);
        if (!await store.Jobs.AnyAsync(j => j.JobId == jobId, cancel)) return false;
        if (await store.Attachments.AnyAsync(a => a.JobId == jobId && a.Hash == hash, cancel)) return true;
        store.Attachments.Add(new Attachment { CompanyId = caller.CompanyId, JobId = jobId, Hash = hash, MediaType = mediaType, Length = bytes.Length, Bytes = bytes, PersonId = caller.PersonId, Received = now });
        try
        {
            await store.SaveChangesAsync(cancel);
        }
        catch (DbUpdateException)
        {
            // Sent twice at once: the other one kept it.
            if (!await store.Attachments.AnyAsync(a => a.JobId == jobId && a.Hash == hash, cancel)) throw;
        }
        return true;
    }
}
