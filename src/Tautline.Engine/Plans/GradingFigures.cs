using Tautline.Engine.Catalog;
using Tautline.Engine.Fabric;
using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Plans;

/// <summary>The figures of one stretch of ground that does not suit the fabric, measured on the ground as it lies.</summary>
public readonly record struct GradingFigures((Misfit Misfit, Limit Width) Found, int Line, int Index)
{
    public Misfit Misfit => Found.Misfit;

    /// <summary>All of a line in order of station.</summary>
    public static IReadOnlyList<(Misfit Misfit, Limit Width)> Of(HungLine line)
        => [.. line.Set.Pieces.SelectMany(p => p.Fitted.Misfits.Select(m => (m, p.Spec.Rules.GradingWidth))).OrderBy(m => m.m.From)];

    public N Length<N>() where N : struct, INumber<N>
        => N.Given("station where it ends", Misfit.To, Unit.Length) - N.Given("station where it begins", Misfit.From, Unit.Length);

    public N Depth<N>() where N : struct, INumber<N> => N.Given("depth at its deepest place", Misfit.Deepest, Unit.Length);

    public N Area<N>() where N : struct, INumber<N> => N.Given("area between fabric and ground beyond the gap allowed", Misfit.Area, Unit.Area);

    public N Volume<N>(double area) where N : struct, INumber<N>
        => N.Known(new FactKey(FactKind.GradingArea, Line, Index), area, Unit.Area) * N.Rule(Found.Width);
}
