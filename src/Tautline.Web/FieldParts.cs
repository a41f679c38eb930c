using Microsoft.Extensions.DependencyInjection;
using Microsoft.JSInterop;
using Tautline.Desk;
using Tautline.FieldScreens;

namespace Tautline.Web;

/// <summary>Where the page reaches for the screens of the field, which are fetched late.</summary>
internal static class FieldParts
{
    public static FieldGate Gate(IServiceProvider all)
        => new(all.GetRequiredService<Session>(), all.GetRequiredService<Shelf>(), all.GetRequiredService<Late>(), changed => OpenAsync(all, changed));

    // In a method of its own: it must not even begin before the parts are there.
    private static Task<object> OpenAsync(IServiceProvider all, Action changed) => FieldDesk.OpenAsync(
        all.GetRequiredService<Session>(), all.GetRequiredService<Shelf>(), all.GetRequiredService<BrowserPage>(), all.GetRequiredService<BrowserFiles>(),
        new PhotoShelf(all.GetRequiredService<IJSRuntime>()), new CarryScript(all.GetRequiredService<IJSRuntime>()), all.GetRequiredService<TimeProvider>(), changed);
}
