using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Plans;

/// <summary>The figures of temporary fence: panels end to end, a stand at each joint and end, two clamps at each joint.</summary>
public readonly record struct TemporaryFigures(TemporaryFence Fence, Rules Rules, int Index)
{
    public N Panels<N>() where N : struct, INumber<N>
        => N.Cover(
            N.Given("length", Fence.Length.Metres, Unit.Length),
            Fence.Panel is { } panel ? N.Given("panel", panel.Metres, Unit.Length) : N.Rule(Rules.TemporaryPanel));

    public N Stands<N>(double panels) where N : struct, INumber<N>
        => Fence.Closed ? Known<N>(FactKind.Panels, panels) : Known<N>(FactKind.Panels, panels) + N.Constant(1);

    public N Clamps<N>(double stands) where N : struct, INumber<N>
    {
        var joints = Fence.Closed ? Known<N>(FactKind.PanelStands, stands) : Known<N>(FactKind.PanelStands, stands) - N.Constant(2);
        return N.Constant(2) * joints;
    }

    public N Ballast<N>(double stands) where N : struct, INumber<N>
        => N.Cover(Known<N>(FactKind.PanelStands, stands) * N.Rule(Rules.TemporaryBallast), N.Constant(1));

    private N Known<N>(FactKind kind, double value) where N : struct, INumber<N> => N.Known(new(kind, Index), value, Unit.Count);
}
