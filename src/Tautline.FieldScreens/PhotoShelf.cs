using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Tautline.Desk;
using Tautline.Field.Log;

namespace Tautline.FieldScreens;

/// <summary>A photo that was chosen: kept under its digest, or not and why.</summary>
/// <param name="Name">Of the file, for people.</param>
/// <param name="Fault">'unread' for no picture or too large a one, 'full', 'shelf'; nothing where it is kept.</param>
public sealed record TakenPhoto(string Name, string? Sha256, int? Width, int? Height, long? Bytes, string? Fault)
{
    public bool Kept => Fault is null;

    public PhotoRef Ref => new() { Sha256 = Sha256!, Width = Width!.Value, Height = Height!.Value, Bytes = Bytes!.Value };
}

/// <summary>What a device says of what it keeps.</summary>
/// <param name="Program">True where the program opens without a connection.</param>
/// <param name="Promised">True where the browser promised not to clear the page's data by itself.</param>
/// <param name="Used">Bytes of this page, all jobs and the program; nothing where the browser does not say.</param>
/// <param name="Quota">Bytes the page may use.</param>
public sealed record StoreSign(bool Program, bool Promised, long? Used, long? Quota);

/// <summary>Photos in this browser's own database, beside the job's log. Their pixels stay with the browser: the page handles names only.</summary>
public sealed class PhotoShelf(IJSRuntime browser)
{
    private readonly Lazy<Task<IJSObjectReference>> script = new(() => browser.InvokeAsync<IJSObjectReference>("import", "./scripts/photos.mjs").AsTask());

    /// <summary>Scales and keeps what was chosen in a file field.</summary>
    public async Task<IReadOnlyList<TakenPhoto>> TakeAsync(string job, ElementReference input)
        => JsonSerializer.Deserialize(await AskAsync<string>("take", job, input), PhotoJson.Default.TakenPhotoArray) ?? [];

    public async Task<IReadOnlySet<string>> KeptAsync(string job) => (await AskAsync<string>("kept", job)).Split('\n', StringSplitOptions.RemoveEmptyEntries).ToHashSet(StringComparer.Ordinal);

    public async Task<PhotoRef?> AboutAsync(string job, string sha256)
        => await AskAsync<string>("about", job, sha256) is { Length: > 0 } about ? JsonSerializer.Deserialize(about, PhotoJson.Default.TakenPhoto)?.Ref : null;

    /// <summary>False where the photo is not on this device.</summary>
    public Task<bool> ShowAsync(string job, string sha256, ElementReference image, bool small) => AskAsync<bool>("show", job, sha256, image, small);

    /// <param name="ask">True asks the browser for its promise.</param>
    public async Task<StoreSign> SignAsync(bool ask) => JsonSerializer.Deserialize(await AskAsync<string>("sign", ask), PhotoJson.Default.StoreSign)!;

    /// <summary>Saves a job's file and its photos as one.</summary>
    public Task<int> HandOverAsync(string fileName, string job, byte[] file, string[] with) => AskAsync<int>("handOver", fileName, job, file, with);

    /// <summary>The job's part of a file that was chosen; nothing where it is larger than any such file.</summary>
    public async Task<byte[]?> JobPartAsync(ElementReference input)
    {
        try
        {
            return await AskAsync<byte[]>("jobPart", input);
        }
        catch (ShelfException fault) when (fault.Message.StartsWith("large", StringComparison.Ordinal))
        {
            return null;
        }
    }

    /// <summary>Keeps the wanted photos of the file that was chosen last; how many came.</summary>
    public Task<int> TakeInAsync(string job, string[] wanted) => AskAsync<int>("photosOf", job, wanted);

    private async Task<T> AskAsync<[System.Diagnostics.CodeAnalysis.DynamicallyAccessedMembers(Shelf.Answered)] T>(string what, params object?[] with)
    {
        try
        {
            return await (await script.Value).InvokeAsync<T>(what, with);
        }
        catch (JSException fault)
        {
            throw Shelf.Told(fault);
        }
    }
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(TakenPhoto[]))]
[JsonSerializable(typeof(StoreSign))]
internal sealed partial class PhotoJson : JsonSerializerContext;
