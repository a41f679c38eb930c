using Microsoft.JSInterop;

namespace Tautline.Desk;

/// <summary>What the browser tells the page and is asked by it: keys, dialogs, the job of this tab, the program kept for offline.</summary>
public sealed class BrowserPage(IJSRuntime browser) : IDisposable
{
    private readonly Lazy<Task<IJSObjectReference>> script = new(() => browser.InvokeAsync<IJSObjectReference>("import", "./scripts/page.mjs").AsTask());
    private DotNetObjectReference<BrowserPage>? self;

    /// <summary>'undo', 'redo', 'save', 'escape' or 'step 1' to 'step 9'.</summary>
    public event Action<string>? KeyPressed;

    /// <summary>Another build of the program waits to be let in.</summary>
    public event Action? NewProgramWaits;

    /// <summary>True when the page can be opened without a connection.</summary>
    public bool WorksOffline { get; private set; }

    public async Task StartAsync()
    {
        self = DotNetObjectReference.Create(this);
        IJSObjectReference page = await script.Value;
        await page.InvokeVoidAsync("listen", self);
        await page.InvokeVoidAsync("keepOffline", self);
    }

    public async Task<string> OpenedJobAsync() => await (await script.Value).InvokeAsync<string>("openedJob");

    public Task SetOpenedJobAsync(string id) => DoAsync("setOpenedJob", id);

    /// <summary>A choice that was kept in this browser; empty where none was.</summary>
    public async Task<string> ChoiceAsync(string name) => await (await script.Value).InvokeAsync<string>("choice", name);

    public Task ChooseAsync(string name, string value) => DoAsync("choose", name, value);

    public Task SetUnkeptAsync(bool unkept) => DoAsync("setUnkept", unkept);

    public Task ShowDialogAsync(Microsoft.AspNetCore.Components.ElementReference dialog) => DoAsync("showDialog", dialog);

    public Task CloseDialogAsync(Microsoft.AspNetCore.Components.ElementReference dialog) => DoAsync("closeDialog", dialog);

    public Task FocusOnAsync(string id) => DoAsync("focusOn", id);

    public Task CaretToAsync(string id, int line, int column) => DoAsync("caretTo", id, line, column);

    public Task LetNewProgramInAsync() => DoAsync("letNewProgramIn");

    [JSInvokable]
    public void Pressed(string key) => KeyPressed?.Invoke(key);

    [JSInvokable]
    public void NewProgram() => NewProgramWaits?.Invoke();

    [JSInvokable]
    public void ReadyOffline() => WorksOffline = true;

    public void Dispose() => self?.Dispose();

    private async Task DoAsync(string what, params object?[] with) => await (await script.Value).InvokeVoidAsync(what, with);
}
