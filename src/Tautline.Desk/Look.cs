using Microsoft.JSInterop;
using Tautline.Documents.Words;

namespace Tautline.Desk;

/// <summary>How the page looks and in which language it speaks; both choices are kept in the browser.</summary>
public sealed class Look(IJSRuntime browser, Late late)
{
    /// <summary>'system' follows the device; 'sunlight' is black on white with thick lines, for a screen in the sun.</summary>
    public static IReadOnlyList<string> Themes { get; } = ["system", "light", "dark", "sunlight"];

    private IJSObjectReference? page;

    public event Action? Changed;

    public Phrases Say { get; private set; } = Phrases.Of(Phrases.English);

    public string Theme { get; private set; } = Themes[0];

    /// <summary>Takes up what was chosen on an earlier visit; the first time the browser's own language.</summary>
    public async Task StartAsync()
    {
        page = await browser.InvokeAsync<IJSObjectReference>("import", "./scripts/page.mjs");
        string language = await page.InvokeAsync<string>("choice", "language");
        if (language.Length == 0) language = FirstOf(await page.InvokeAsync<string>("languages"));
        string theme = await page.InvokeAsync<string>("choice", "theme");
        Theme = Themes.Contains(theme) ? theme : Themes[0];
        await late.SpeakAsync(language);
        Say = Phrases.Of(language);
        await page.InvokeVoidAsync("choose", "language", Say.Language);
        await page.InvokeVoidAsync("look", Theme);
        Changed?.Invoke();
    }

    public async Task SpeakAsync(string language)
    {
        await late.SpeakAsync(language);
        Say = Phrases.Of(language);
        await page!.InvokeVoidAsync("choose", "language", Say.Language);
        Changed?.Invoke();
    }

    public async Task WearAsync(string theme)
    {
        Theme = theme;
        await page!.InvokeVoidAsync("choose", "theme", theme);
        Changed?.Invoke();
    }

    private static string FirstOf(string languages) =>
        languages.Split(',').FirstOrDefault(l => Phrases.Languages.Any(k => l.StartsWith(k, StringComparison.OrdinalIgnoreCase))) ?? Phrases.English;
}
