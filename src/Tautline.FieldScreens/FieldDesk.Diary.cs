using Microsoft.AspNetCore.Components;
using Tautline.Engine.Quantities;
using Tautline.Field.Building;
using Tautline.Field.Log;

namespace Tautline.FieldScreens;

/// <summary>Photos, and what else a day leaves behind.</summary>
public sealed partial class FieldDesk
{
    /// <summary>Digests of the photos that lie on this device.</summary>
    public IReadOnlySet<string> PhotosHere { get; private set; } = new HashSet<string>();

    /// <summary>What of the last choice could not be kept, and why.</summary>
    public IReadOnlyList<TakenPhoto> PhotoFaults { get; private set; } = [];

    /// <summary>Photos on this device that no entry names: taken, and then the battery died.</summary>
    public IReadOnlyList<string> PhotosLeft => [.. PhotosHere.Except(PhotosNamed).Except(held.Select(p => p.Sha256)).Order(StringComparer.Ordinal)];

    /// <summary>The last number of this device that a file was made with.</summary>
    public long HandedOver { get; private set; }

    /// <summary>Entries of this device that no file was made with yet.</summary>
    public IReadOnlyList<LogEntry> Waiting => [.. entries.Where(e => e.Device == Device && e.Sequence > HandedOver)];

    public int PhotosWaiting => Waiting.SelectMany(e => e.Photos ?? []).DistinctBy(p => p.Sha256).Count();

    private string Device { get; set; } = "";

    private readonly List<PhotoRef> held = [];

    private IEnumerable<string> PhotosNamed => entries.SelectMany(e => e.Photos ?? []).Select(p => p.Sha256).Distinct();

    /// <summary>Keeps the photos chosen in an element; what is not kept is told in <see cref="PhotoFaults"/>.</summary>
    /// <returns>Those that lie on this device now, for an entry to name.</returns>
    public async Task<IReadOnlyList<PhotoRef>> TakePhotosAsync(ElementReference input)
    {
        IReadOnlyList<TakenPhoto> taken = [];
        await DoAsync(async () =>
        {
            taken = await photos.TakeAsync(job, input);
            held.AddRange(taken.Where(t => t.Kept).Select(t => t.Ref));
            PhotosHere = await photos.KeptAsync(job);
        });
        PhotoFaults = [.. taken.Where(t => !t.Kept)];
        return [.. taken.Where(t => t.Kept).Select(t => t.Ref)];
    }

    /// <param name="place">Line and station where it was taken; nothing for the whole job.</param>
    public Task<bool> PhotoAsync(IReadOnlyList<PhotoRef> taken, string caption, (int Line, Length Station)? place) => AddAsync(e => e with
    {
        Kind = LogEntry.Photo,
        Text = caption.Trim(),
        Photos = taken,
        Place = place is { } at ? Marking.PlaceAt(session.Plan, at.Line, at.Station) : null,
    });

    /// <summary>Photos that were taken and not written down get an entry.</summary>
    public async Task<bool> KeepLeftAsync()
    {
        List<PhotoRef> left = [];
        foreach (string sha256 in PhotosLeft)
            if (await photos.AboutAsync(job, sha256) is { } about) left.Add(about);
        return left.Count == 0 || await PhotoAsync(left, "", null);
    }

    /// <summary>Other words under the photos of an entry.</summary>
    public Task<bool> CaptionAsync(LogEntry entry, string caption) => AddAsync(e => e with
    {
        Kind = entry.Kind,
        Text = caption.Trim(),
        Photos = entry.Photos,
        Place = entry.Place,
        Supersedes = entry.Key,
    });

    public Task<bool> ShowPhotoAsync(string sha256, ElementReference image, bool small) => photos.ShowAsync(job, sha256, image, small);

    public Task<bool> MaterialAsync(MaterialUsed used) => AddAsync(e => e with { Kind = LogEntry.Material, Used = used });

    public Task<bool> WeatherAsync(WeatherSeen seen) => AddAsync(e => e with { Kind = LogEntry.Weather, Seen = seen });

    public Task<bool> TalkAsync(string topic, IReadOnlyList<string> people) => AddAsync(e => e with { Kind = LogEntry.Talk, Text = topic.Trim(), Held = new() { People = people } });

    /// <summary>Bytes of the photos that lie here, as their entries say.</summary>
    public long PhotoBytes => entries.SelectMany(e => e.Photos ?? []).DistinctBy(p => p.Sha256).Where(p => PhotosHere.Contains(p.Sha256)).Sum(p => p.Bytes);

    public Task<StoreSign> SignAsync(bool ask) => photos.SignAsync(ask);

    private async Task<long> HandedOverAsync()
    {
        Device = await shelf.DeviceAsync();
        return long.TryParse(await browser.ChoiceAsync("handed." + job), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out long last) ? last : 0;
    }

    private long LastOwn => entries.Where(e => e.Device == Device).Select(e => e.Sequence).DefaultIfEmpty(HandedOver).Max();

    private Task HandedOverAsync(long last)
    {
        HandedOver = last;
        return browser.ChooseAsync("handed." + job, HandedOver.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }
}
