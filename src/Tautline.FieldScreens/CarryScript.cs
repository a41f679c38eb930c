using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.JSInterop;

namespace Tautline.FieldScreens;

/// <summary>How the job stands with the company's server.</summary>
public enum Carrying
{
    /// <summary>Not asked yet, or the page comes from no server of the company's.</summary>
    Unknown,

    /// <summary>The job is on this device only.</summary>
    Alone,

    /// <summary>All that is here is there, and the other way round.</summary>
    Together,

    /// <summary>The server cannot be reached; what waits goes by itself later.</summary>
    NoSignal,

    /// <summary>Somebody has to sign in first; what waits stays.</summary>
    SignedOut,

    /// <summary>The server did not take something, and says why.</summary>
    Refused,
}

/// <param name="Kind">'root', 'change' or 'entry'.</param>
public sealed record RefusedPiece(string Kind, string Message);

/// <param name="Sent">Pieces the server has now and had not before.</param>
public sealed record PushAnswer(int Sent, RefusedPiece[] Refused);

/// <summary>The server cannot be had, or said no.</summary>
public sealed class CarryException(Carrying state, string words) : Exception(words)
{
    public Carrying State { get; } = state;
}

/// <summary>The way to the company's server, in the browser.</summary>
public sealed class CarryScript(IJSRuntime browser)
{
    private readonly Lazy<Task<IJSObjectReference>> script = new(() => browser.InvokeAsync<IJSObjectReference>("import", "./scripts/carry.mjs").AsTask());

    public Task<bool> IsSharedAsync(string job) => AskAsync<bool>("isShared", job);

    public async Task ShareAsync(string job) => await (await script.Value).InvokeVoidAsync("share", job);

    /// <summary>The server's pages with what came after what this device took last; empty where nothing did.</summary>
    public async Task<string[]> PullAsync(string job) => Encoding.UTF8.GetString(await AskAsync<byte[]>("pull", job)).Split('\u001e', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>What was pulled is kept.</summary>
    public async Task TakenAsync() => await (await script.Value).InvokeVoidAsync("taken");

    public async Task<PushAnswer> PushAsync(string job, string lines) => JsonSerializer.Deserialize(await AskAsync<string>("push", job, lines), CarryJson.Default.PushAnswer)!;

    public Task<int> PhotosAsync(string job) => AskAsync<int>("carryPhotos", job);

    public Task<int> WaitingAsync(string job) => AskAsync<int>("waiting", job);

    public async Task PushOthersAsync(string open) => await (await script.Value).InvokeVoidAsync("pushOthers", open);

    public async Task WatchAsync<T>(DotNetObjectReference<T> desk) where T : class => await (await script.Value).InvokeVoidAsync("watch", desk);

    private async Task<T> AskAsync<[System.Diagnostics.CodeAnalysis.DynamicallyAccessedMembers(Desk.Shelf.Answered)] T>(string what, params object?[] with)
    {
        try
        {
            return await (await script.Value).InvokeAsync<T>(what, with);
        }
        catch (JSException fault) when (fault.Message.StartsWith("no-signal", StringComparison.Ordinal))
        {
            throw new CarryException(Carrying.NoSignal, "");
        }
        catch (JSException fault) when (fault.Message.StartsWith("signed-out", StringComparison.Ordinal))
        {
            throw new CarryException(Carrying.SignedOut, "");
        }
        catch (JSException fault) when (fault.Message.StartsWith("refused: ", StringComparison.Ordinal))
        {
            throw new CarryException(Carrying.Refused, fault.Message["refused: ".Length..].Split('\n')[0]);
        }
        catch (JSException fault)
        {
            throw Desk.Shelf.Told(fault);
        }
    }
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PushAnswer))]
[JsonSerializable(typeof(string))]
internal sealed partial class CarryJson : JsonSerializerContext;
