using Microsoft.AspNetCore.Components;
using Tautline.Desk;
using Tautline.Desk.Parts;

namespace Tautline.FieldScreens;

/// <summary>A part of the field's screen. It names types that are fetched late: it is drawn only once <see cref="FieldGate"/> is ready.</summary>
public abstract class FieldPane : Pane
{
    [Inject]
    public FieldGate Gate { get; set; } = null!;

    protected FieldDesk Desk => Gate.Desk<FieldDesk>();

    protected override void OnInitialized()
    {
        base.OnInitialized();
        Gate.Changed += Draw;
    }

    public override void Dispose()
    {
        Gate.Changed -= Draw;
        base.Dispose();
        GC.SuppressFinalize(this);
    }
}
