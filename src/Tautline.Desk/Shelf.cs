using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.JSInterop;

namespace Tautline.Desk;

/// <summary>A job on the shelf.</summary>
/// <param name="Changed">Milliseconds since 1970, as the browser counts.</param>
/// <param name="Binned">When it was put into the bin; nothing where it was not.</param>
public sealed record KeptJob(string Id, string Name, long Changed, long Bytes, long? Binned)
{
    public DateTimeOffset At => DateTimeOffset.FromUnixTimeMilliseconds(Changed);
}

/// <summary>A job as it once was.</summary>
public sealed record KeptVersion(int Key, long At, string Label, bool Automatic, long Bytes)
{
    public DateTimeOffset Time => DateTimeOffset.FromUnixTimeMilliseconds(At);
}

/// <summary>An entry another device wrote.</summary>
/// <param name="Variant">The digest of an entry whose number another one has already; else empty.</param>
public sealed record KeptEntry(string Device, long Sequence, string Variant, string Json);

/// <summary>The browser does not keep what it was given.</summary>
/// <param name="full">True where there is no room left.</param>
public sealed class ShelfException(bool full, string message) : Exception(message)
{
    public bool Full { get; } = full;
}

/// <summary>Jobs in this browser's own database. A write is over when the browser has it on disk.</summary>
public sealed class Shelf(IJSRuntime browser)
{
    /// <summary>What is kept of a type that the browser answers with.</summary>
    public const DynamicallyAccessedMemberTypes Answered
        = DynamicallyAccessedMemberTypes.PublicConstructors | DynamicallyAccessedMemberTypes.PublicFields | DynamicallyAccessedMemberTypes.PublicProperties;

    private readonly Lazy<Task<IJSObjectReference>> script = new(() => browser.InvokeAsync<IJSObjectReference>("import", "./scripts/shelf.mjs").AsTask());

    /// <summary>The last changed first; those in the bin among them.</summary>
    public async Task<IReadOnlyList<KeptJob>> ListAsync() =>
        JsonSerializer.Deserialize(await AskAsync<string>("list"), ShelfJson.Default.KeptJobArray) ?? [];

    /// <summary>The text of a job; empty where there is none.</summary>
    public Task<byte[]> ReadAsync(string id) => AskAsync<byte[]>("read", id);

    /// <exception cref="ShelfException">It is not kept.</exception>
    public Task WriteAsync(string id, string name, byte[] json) => DoAsync("write", id, name, json);

    public Task BinAsync(string id, bool binned) => DoAsync("bin", id, binned);

    public async Task<IReadOnlyList<KeptVersion>> VersionsAsync(string job) =>
        JsonSerializer.Deserialize(await AskAsync<string>("versions", job), ShelfJson.Default.KeptVersionArray) ?? [];

    public Task<byte[]> ReadVersionAsync(int key) => AskAsync<byte[]>("readVersion", key);

    public Task AddVersionAsync(string job, string label, bool automatic, byte[] json) => DoAsync("addVersion", job, label, automatic, json);

    /// <summary>A number for the next entry of this device's log, and the name the device gave itself.</summary>
    public async Task<(string Device, long Sequence)> NextNumberAsync()
    {
        string[] given = (await AskAsync<string>("nextNumber")).Split(' ');
        return (given[0], long.Parse(given[1], System.Globalization.CultureInfo.InvariantCulture));
    }

    /// <summary>The name the device gave itself; empty before its first entry.</summary>
    public Task<string> DeviceAsync() => AskAsync<string>("deviceName");

    /// <summary>Keeps an entry of a job's log. Done when it is on disk.</summary>
    /// <exception cref="ShelfException">It is not kept.</exception>
    public Task AddEntryAsync(string job, string device, long sequence, byte[] json) => DoAsync("addEntry", job, device, sequence, json);

    /// <summary>The entries of a job's log, one to a line.</summary>
    public Task<byte[]> EntriesAsync(string job) => AskAsync<byte[]>("entries", job);

    /// <summary>How the job first came to this device, or what was shared of it since; empty where it is not on the shelf.</summary>
    public Task<byte[]> SharedAsync(string job) => AskAsync<byte[]>("readShared", job);

    /// <summary>Keeps a job, what is shared of it, and entries that others wrote, all or nothing; an entry that is there already stays.</summary>
    public Task WriteSharedAsync(string id, string name, byte[] job, byte[] shared, IReadOnlyList<KeptEntry> entries) => DoAsync(
        "writeShared", id, name, job, shared, entries.Select(e => e.Device).ToArray(), entries.Select(e => e.Sequence).ToArray(), entries.Select(e => e.Variant).ToArray(), entries.Select(e => e.Json).ToArray());

    /// <summary>The device takes a new name, and its numbers begin anew.</summary>
    public Task<string> RenameDeviceAsync() => AskAsync<string>("renameDevice");

    public Task<int> CountEntriesAsync(string job) => AskAsync<int>("countEntries", job);

    /// <summary>Takes a job for this tab; false where another tab has it. <paramref name="keeper"/> hears when it is taken over later.</summary>
    public Task<bool> TakeAsync<T>(string job, bool force, DotNetObjectReference<T> keeper) where T : class => AskAsync<bool>("take", job, force, keeper);

    public Task LetGoAsync() => DoAsync("letGo");

    private async Task DoAsync(string what, params object?[] with)
    {
        try
        {
            await (await script.Value).InvokeVoidAsync(what, with);
        }
        catch (JSException fault)
        {
            throw Told(fault);
        }
    }

    private async Task<T> AskAsync<[DynamicallyAccessedMembers(Answered)] T>(string what, params object?[] with)
    {
        try
        {
            return await (await script.Value).InvokeAsync<T>(what, with);
        }
        catch (JSException fault)
        {
            throw Told(fault);
        }
    }

    /// <summary>What the browser said, as the page tells it.</summary>
    public static ShelfException Told(JSException fault)
    {
        string said = fault.Message.Split('\n')[0];
        int colon = said.IndexOf(':', StringComparison.Ordinal);
        return new ShelfException(said.StartsWith("full:", StringComparison.Ordinal), colon is > 0 and < 8 ? said[(colon + 1)..].Trim() : said);
    }
}

[JsonSerializable(typeof(KeptJob[]))]
[JsonSerializable(typeof(KeptVersion[]))]
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
internal sealed partial class ShelfJson : JsonSerializerContext;
