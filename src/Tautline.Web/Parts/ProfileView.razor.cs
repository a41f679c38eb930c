using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Tautline.Desk;
using Tautline.Desk.Map;
using Tautline.Desk.Side;

namespace Tautline.Web.Parts;

/// <summary>The line seen from its side: it hands the drawing to the script that shows it, and what is pointed at.</summary>
public partial class ProfileView
{
    private static readonly string[] choices = ["1", "2", "5", "10", "20"];

    private ElementReference sheet;
    private IJSObjectReference? module;
    private IJSObjectReference? view;
    private DotNetObjectReference<ProfileDesk>? self;
    private string drawn = "", spoken = "";

    [Inject]
    public IJSRuntime Browser { get; set; } = null!;

    private ProfileDesk Desk { get; set; } = null!;

    private string Times => Desk.Exaggeration.ToString(CultureInfo.InvariantCulture);

    protected override void OnInitialized()
    {
        base.OnInitialized();
        Desk = new ProfileDesk(Session, Look);
        Desk.Follow();
        Desk.Changed += Redraw;
        Session.SelectionChanged += Selected;
        Session.HoverChanged += Point;
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            module = await Browser.InvokeAsync<IJSObjectReference>("import", "./scripts/profile.mjs");
            self = DotNetObjectReference.Create(Desk);
            view = await module.InvokeAsync<IJSObjectReference>("create", sheet, self);
        }

        await ShowAsync();
    }

    private async Task ShowAsync()
    {
        if (view is null || !Session.HasJob || Session.Planning) return;
        double before = Desk.Shown;
        string now = Desk.Draw();
        if (now == drawn) return;
        drawn = now;
        await view.InvokeVoidAsync("show", now, Desk.TagOf(Session.Selected), Desk.TagOf(Session.Hovered));
        if (before != Desk.Shown) StateHasChanged();
    }

    private void Redraw() => _ = InvokeAsync(ShowAsync);

    private void Selected()
    {
        LineChanged();
        spoken = Session.Selected.Kind == SelectionKind.Post ? MapWords.Of(Session, Session.Selected, Say) : "";
        Point();
        Draw();
    }

    private void LineChanged()
    {
        var line = Desk.Line;
        Desk.Follow();
        if (Desk.Line != line || Desk.Reveal()) Redraw();
    }

    private void Point() => _ = view?.InvokeVoidAsync("point", Desk.TagOf(Session.Selected), Desk.TagOf(Session.Hovered)).AsTask();

    private void Choose(ChangeEventArgs change) => Desk.Choose(new(change.Value?.ToString() ?? ""));

    private void Exaggerate(ChangeEventArgs change) => Desk.Exaggerate(double.Parse(change.Value?.ToString() ?? "0", CultureInfo.InvariantCulture));

    public override void Dispose()
    {
        Desk.Changed -= Redraw;
        Session.SelectionChanged -= Selected;
        Session.HoverChanged -= Point;
        base.Dispose();
        GC.SuppressFinalize(this);
    }

    public async ValueTask DisposeAsync()
    {
        Dispose();
        if (view is not null) await view.InvokeVoidAsync("dispose");
        if (view is not null) await view.DisposeAsync();
        if (module is not null) await module.DisposeAsync();
        self?.Dispose();
        GC.SuppressFinalize(this);
    }
}
