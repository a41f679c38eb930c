using Tautline.Engine.Catalog;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Layout;

/// <summary>Gates: the opening is face to face of the posts.</summary>
public static class GateFormulas
{
    /// <summary>
    /// Tail of a cantilever leaf, which hangs behind its first rollers: a share of the opening, and at least what the table asks where the
    /// rules have one.
    /// </summary>
    public static N CantileverTail<N>(double opening, Rules rules) where N : struct, INumber<N>
    {
        var share = N.Given("opening", opening, Unit.Length) * N.Rule(rules.CantileverTail);
        return rules.CantileverOverhang(new Length(opening)) is { } table ? N.Larger(share, N.Rule(table)) : share;
    }

    /// <summary>Width of one leaf: the opening less the hardware's gaps, shared by the leaves.</summary>
    public static N Leaf<N>(double opening, int leaves, Rules rules) where N : struct, INumber<N>
        => leaves == 1
            ? N.Given("opening", opening, Unit.Length) - N.Rule(rules.GateSingleDeduct)
            : (N.Given("opening", opening, Unit.Length) - N.Rule(rules.GateDoubleDeduct)) / N.Constant(leaves);
}
