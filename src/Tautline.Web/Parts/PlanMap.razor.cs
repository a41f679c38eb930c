using System.Text.Json;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Tautline.Desk;
using Tautline.Desk.Map;
using Tautline.Engine.Picture;
using Tautline.Engine.Quantities;

namespace Tautline.Web.Parts;

/// <summary>The plan view: it hands the picture to the scripts that draw it, and what is pointed at; it works out nothing.</summary>
public partial class PlanMap
{
    private ElementReference sheet;
    private IJSObjectReference? module;
    private IJSObjectReference? map;
    private DotNetObjectReference<MapDesk>? self;
    private (int Revision, bool Hang, bool ReadOnly) drawn = (-1, false, false);
    private string drawnJob = "";
    private string length = "", angle = "", wrong = "";
    private bool fitting;

    [Inject]
    public IJSRuntime Browser { get; set; } = null!;

    private MapTools Tools { get; set; } = null!;

    private MapDesk Desk { get; set; } = null!;

    protected override bool ShowsSelection => true;

    private bool CanDelete => !Session.ReadOnly
        && Session.Selected.Kind is SelectionKind.Vertex or SelectionKind.Gate or SelectionKind.Obstacle or SelectionKind.Pin or SelectionKind.Work or SelectionKind.Line;

    private string LengthExample => Session.Job.Units == UnitSystem.Metric ? "40.25" : "132-6";

    protected override void OnInitialized()
    {
        base.OnInitialized();
        Tools = new MapTools(Session);
        Desk = new MapDesk(Session, Tools, Look);
        Desk.ToolChanged += ToolLaidDown;
        Desk.SpokenChanged += Draw;
        Desk.FitPoints += AskDistance;
        Session.HoverChanged += Point;
        Session.SelectionChanged += Point;
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            module = await Browser.InvokeAsync<IJSObjectReference>("import", "./scripts/map.mjs");
            self = DotNetObjectReference.Create(Desk);
            map = await module.InvokeAsync<IJSObjectReference>("create", sheet, self);
            StateHasChanged();
        }

        if (map is not null) await ShowAsync();
    }

    private async Task ShowAsync()
    {
        var now = (Session.Revision, Front.Step == DeskStep.Fabric, Session.ReadOnly);
        if (!Session.HasJob || Session.Planning || now == drawn) return;
        drawn = now;
        if (drawnJob != Session.Job.Id.Value)
        {
            drawnJob = Session.Job.Id.Value;
            await map!.InvokeVoidAsync("forget");
        }

        PlanPicture picture = PictureStage.Of(Session.Plan);
        byte[] words = JsonSerializer.SerializeToUtf8Bytes(MapContent.Of(picture, Session.Job.Units), MapJson.Default.MapContent);
        await map!.InvokeVoidAsync(
            "show", words, MapContent.Packed(picture.LegPaths.Points), MapContent.Packed(picture.LegPaths.Starts), MapContent.Packed(picture.PostsAt),
            MapContent.Packed(picture.PostKinds), MapContent.Packed(picture.Runs), MapContent.Packed(picture.Bays), now.Item2, now.ReadOnly);
    }

    private void Point() => _ = PointAsync();

    private async Task PointAsync()
    {
        if (map is null || !Session.HasJob) return;
        MapTarget selected = Desk.TargetOf(Session.Selected), hovered = Desk.TargetOf(Session.Hovered);
        await map.InvokeVoidAsync(
            "point", selected.Kind, selected.Line, selected.Index, selected.Id, hovered.Kind, hovered.Line, hovered.Index, hovered.Id);
    }

    private async Task UseAsync(string tool)
    {
        (Tools.Tool, wrong) = (tool, "");
        await DoAsync("use", tool);
        await DoAsync("focus");
    }

    private void ToolLaidDown() => _ = InvokeAsync(async () =>
    {
        await DoAsync("use", Tools.Tool);
        Draw();
    });

    private async Task TypeAsync()
    {
        if (map is null) return;
        wrong = await map.InvokeAsync<string>("type", length, angle);
        if (wrong.Length > 0) return;
        (length, angle) = ("", "");
        await DoAsync("focus");
    }

    private void AskDistance()
    {
        (fitting, length, wrong) = (true, "", "");
        Draw();
    }

    private async Task ScaleAsync()
    {
        Parsed<Length> read = LengthText.Parse(length, Session.Job.Units == UnitSystem.Metric ? LengthUnit.Metre : LengthUnit.Foot);
        wrong = read.Ok ? "" : $"{read.Problem.Message} {read.Problem.Hint}";
        if (!read.Ok) return;
        await DoAsync("scaleUnderlay", read.Value.Metres);
        (fitting, length) = (false, "");
    }

    private Task FinishAsync(bool closed) => DoAsync("finish", closed);

    private Task DeleteAsync() => Desk.DeleteSelectedAsync();

    private async Task DoAsync(string what, params object?[] with)
    {
        if (map is not null) await map.InvokeVoidAsync(what, with);
    }

    public override void Dispose()
    {
        Session.HoverChanged -= Point;
        Session.SelectionChanged -= Point;
        base.Dispose();
        GC.SuppressFinalize(this);
    }

    public async ValueTask DisposeAsync()
    {
        Dispose();
        GC.SuppressFinalize(this);
        self?.Dispose();
        if (map is not null)
        {
            await map.InvokeVoidAsync("dispose");
            await map.DisposeAsync();
        }

        if (module is not null) await module.DisposeAsync();
    }
}
