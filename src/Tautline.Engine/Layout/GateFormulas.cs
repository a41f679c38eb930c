using Tautline.Engine.Catalog;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Layout;

/// <summary>Gates: the opening is face to face of the posts.</summary>
public static class GateFormulas
{
    /// <summary>Width of one leaf: the opening less the hardware's gaps, shared by the leaves.</summary>
    public static N Leaf<N>(double opening, int leaves, Rules rules) where N : struct, INumber<N>
        => leaves == 1
            ? N.Given("opening", opening, Unit.Length) - N.Rule(rules.GateSingleDeduct)
            : (N.Given("opening", opening, Unit.Length) - N.Rule(rules.GateDoubleDeduct)) / N.Constant(leaves);
}
