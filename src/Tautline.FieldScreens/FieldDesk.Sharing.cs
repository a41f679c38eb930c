using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Components;
using Tautline.Desk;
using Tautline.Engine.Jobs;
using Tautline.Field.Log;
using Tautline.Field.Merging;

namespace Tautline.FieldScreens;

/// <summary>Handing the job and its log from one device to another, as a file.</summary>
public sealed partial class FieldDesk
{
    /// <summary>What several people gave different values, until one settles it.</summary>
    public IReadOnlyList<Conflict> Conflicts { get; private set; } = [];

    /// <summary>What is not taken of the last file, and why.</summary>
    public IReadOnlyList<ExchangeFault> Faults { get; private set; } = [];

    /// <summary>True where the last file was of another job.</summary>
    public bool OfAnother { get; private set; }

    /// <summary>Entries that came with the last file and were new here; nothing before the first.</summary>
    public int? Came { get; private set; }

    /// <summary>Numbers of a device that two different edits carry: both are in the job.</summary>
    public IReadOnlyList<LogKey> EditsTwice { get; private set; } = [];

    public bool TooLarge { get; private set; }

    /// <summary>Photos that came with the last file and were new here.</summary>
    public int PhotosCame { get; private set; }

    /// <summary>All this device knows of the job, as a file; with its photos where it has any.</summary>
    public Task HandOverAsync() => DoAsync(async () =>
    {
        SharedJob shared = await SharedAsync();
        await KeepAsync(session.Job, shared, []);
        byte[] file = ExchangeFile.Write(new(session.Job.Id, shared, entries));
        string[] with = [.. PhotosNamed.Where(PhotosHere.Contains)];
        if (with.Length == 0) await files.SaveAsync($"{session.PlainName}-field.json", "application/json", file);
        else await photos.HandOverAsync($"{session.PlainName}-field.zip", job, file, with);
        await HandedOverAsync(LastOwn);
    });

    /// <summary>Takes in what another device knows, as it was chosen. The same file again changes nothing.</summary>
    public Task TakeInAsync(ElementReference input) => DoAsync(async () =>
    {
        (TooLarge, PhotosCame) = (false, 0);
        if (await photos.JobPartAsync(input) is { } part) await TakeInAsync(part);
        else (TooLarge, Faults, OfAnother, Came) = (true, [], false, null);
        Later();
    });

    /// <returns>True where what the file holds is on disk now.</returns>
    private async Task<bool> TakeInAsync(byte[] file)
    {
        ExchangeReading reading = ExchangeFile.Read(file);
        (Faults, OfAnother, Came) = (reading.Faults, reading.Exchange is { } read && read.Job.Value != job, null);
        if (reading.Exchange is not { } theirs || OfAnother) return false;
        SharedJob shared = await SharedAsync();
        HashSet<string> known = [.. entries.Select(Text)];
        List<LogEntry> come = [.. theirs.Log.Where(e => known.Add(Text(e)))];
        bool mine = Device.Length > 0 && (come.Any(e => e.Device == Device) || theirs.Shared.Changes.Select(c => c.Key).Except(shared.Changes.Select(c => c.Key)).Any(k => k.Device == Device));
        if (!await BecomeAsync(shared.Merge(theirs.Shared), come)) return false;
        // Others know more of this device than it does itself: its numbers were set back, as by a restored backup. What it writes from here on is told apart by a name of its own.
        if (mine) (Device, HandedOver) = (await shelf.RenameDeviceAsync(), 0);
        PhotosCame = await photos.TakeInAsync(job, [.. PhotosNamed.Where(name => !PhotosHere.Contains(name))]);
        PhotosHere = await photos.KeptAsync(job);
        Came = come.Count;
        return true;
    }

    /// <summary>A person says which value shall stand.</summary>
    public Task SettleAsync(Conflict conflict, string? value) => DoAsync(async () =>
    {
        SharedJob shared = await SharedAsync();
        (string device, long number) = await shelf.NextNumberAsync();
        await BecomeAsync(shared.Record(session.Job, new(device, number), Now, Person, conflict.Settle(value)), []);
        Later();
    });

    private long Now => clock.GetUtcNow().ToUnixTimeMilliseconds();

    private static SharedJob? Known(byte[] kept) => kept.Length == 0 ? null
        : ExchangeFile.Read(kept).Exchange?.Shared ?? (JobFile.Read(kept).Job is { } root ? SharedJob.Begin(root) : null);

    /// <summary>What is shared, with this device's own edits since.</summary>
    private async Task<SharedJob> SharedAsync()
    {
        SharedJob shared = Known(await shelf.SharedAsync(job)) ?? SharedJob.Begin(session.Job);
        if (JobDiff.Of(shared.Fields, JobFlat.Of(session.Job)).Count == 0) return shared;
        (string device, long number) = await shelf.NextNumberAsync();
        return shared.Record(session.Job, new(device, number), Now, Person);
    }

    /// <summary>The desk takes up what is shared; where it does not add up to a job it is told, and nothing is changed.</summary>
    private async Task<bool> BecomeAsync(SharedJob shared, List<LogEntry> come)
    {
        JobReading head = shared.Head;
        if (head.Job is not { } merged || head.HasErrors)
        {
            Faults = [.. Faults, .. head.Problems.Select(p => new ExchangeFault(p.Place.Path, Engine.Problems.ProblemText.Message(p, session.Job.Units)))];
            return false;
        }

        await KeepAsync(merged, shared, come);
        (Conflicts, EditsTwice) = (shared.Conflicts, shared.NumbersTwice);
        entries.AddRange(come);
        Log = LogState.Of(entries);
        if (JobDiff.Of(JobFlat.Of(session.Job), JobFlat.Of(merged)).Count > 0) await session.Apply("merge", _ => merged);
        await session.BuildAsync(Built);
        return true;
    }

    private Task KeepAsync(Job now, SharedJob shared, List<LogEntry> come)
    {
        HashSet<LogKey> taken = [.. entries.Select(e => e.Key)];
        return shelf.WriteSharedAsync(
            job, now.Name, JobFile.Write(now), ExchangeFile.Write(new(now.Id, shared, [])), [.. come.Select(e => new KeptEntry(e.Device, e.Sequence, taken.Add(e.Key) ? "" : Digest(e), Text(e)))]);
    }

    private static string Text(LogEntry entry) => Encoding.UTF8.GetString(LogJson.Write(entry));

    private static string Digest(LogEntry entry) => Convert.ToHexStringLower(SHA256.HashData(LogJson.Write(entry)));

    private async Task DoAsync(Func<Task> work)
    {
        if (Busy || session.ReadOnly) return;
        (Busy, Trouble) = (true, "");
        changed();
        try
        {
            await work();
        }
        catch (ShelfException fault)
        {
            (Trouble, TroubleIsRoom) = (fault.Message, fault.Full);
        }
        finally
        {
            Busy = false;
            changed();
        }
    }
}
