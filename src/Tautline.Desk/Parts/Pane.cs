using Microsoft.AspNetCore.Components;
using Tautline.Desk;
using Tautline.Documents.Words;

namespace Tautline.Desk.Parts;

/// <summary>A part of the page that shows the session: it is drawn again when the job, the selection or the language changes.</summary>
public abstract class Pane : ComponentBase, IDisposable
{
    [Inject]
    public Session Session { get; set; } = null!;

    [Inject]
    public Look Look { get; set; } = null!;

    [Inject]
    public Front Front { get; set; } = null!;

    protected Phrases Say => Look.Say;

    /// <summary>Whether it shows what is selected.</summary>
    protected virtual bool ShowsSelection => false;

    protected override void OnInitialized()
    {
        Session.Changed += Draw;
        Look.Changed += Draw;
        Front.Changed += Draw;
        if (ShowsSelection) Session.SelectionChanged += Draw;
    }

    /// <summary>Called before it is drawn again because something changed.</summary>
    protected virtual void Refresh() { }

    public virtual void Dispose()
    {
        Session.Changed -= Draw;
        Look.Changed -= Draw;
        Front.Changed -= Draw;
        Session.SelectionChanged -= Draw;
        GC.SuppressFinalize(this);
    }

    protected void Draw()
    {
        Refresh();
        _ = InvokeAsync(StateHasChanged);
    }
}
