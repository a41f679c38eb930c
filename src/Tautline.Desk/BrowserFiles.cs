using Microsoft.JSInterop;

namespace Tautline.Desk;

/// <summary>Brings files from the server the page came from, and hands files to the person at the browser.</summary>
public sealed class BrowserFiles(IJSRuntime browser) : IAsyncDisposable
{
    private readonly Lazy<Task<IJSObjectReference>> script =
        new(() => browser.InvokeAsync<IJSObjectReference>("import", "./scripts/files.mjs").AsTask());

    /// <summary>The bytes of a file beside the page.</summary>
    /// <exception cref="JSException">The file cannot be had; the message says so in words.</exception>
    public async Task<byte[]> FetchAsync(string address) => await (await script.Value).InvokeAsync<byte[]>("fetchBytes", address);

    /// <summary>Lets the browser save a file as it saves any download.</summary>
    public async Task SaveAsync(string fileName, string kind, byte[] bytes) =>
        await (await script.Value).InvokeVoidAsync("saveFile", fileName, kind, bytes);

    public async ValueTask DisposeAsync()
    {
        if (script.IsValueCreated) await (await script.Value).DisposeAsync();
    }
}
