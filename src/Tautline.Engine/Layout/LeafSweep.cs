using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Layout;

/// <summary>The ground that a gate's leaf goes over. Heights over the job's datum.</summary>
/// <param name="LeafBottom">Level, as the plan hangs the leaf.</param>
/// <param name="Closed">Highest ground in the opening.</param>
/// <param name="Left">Highest ground under the arc of a leaf that swings to the left of the line walked forward, from either jamb; nothing where the ground beside the line was not measured.</param>
/// <param name="Right">The same to the right.</param>
/// <param name="RunBack">Highest ground behind the opening as far as the open leaf reaches, along the line; nothing for a leaf that swings.</param>
public sealed record LeafGround(Length LeafBottom, Length Closed, Length? Left, Length? Right, Length? RunBack);

/// <summary>Holds a gate's leaf against measured ground.</summary>
public static class LeafSweep
{
    /// <summary>Between two places that are looked at under an arc, along the leaf: what juts up between them is not seen.</summary>
    private const double Step = 0.25;

    private const int Turns = 24;

    /// <returns>Nothing where the ground under the line was not measured.</returns>
    public static LeafGround? Of(Plan plan, int line, int gate)
    {
        var (planned, hung) = (plan.Lines[line].Gates[gate], plan.Basis.Lines[line]);
        if (hung.Site.Chain.Ground is not { } ground || hung.Site.Gates.FirstOrDefault(g => g.Gate.Id == planned.Id) is not { } site) return null;
        // A post that two gates share carries the higher leaf: the lower of both posts is this gate's.
        if (Lower(hung.Posts[planned.FromPost].Rise?.Leaf, hung.Posts[planned.ToPost].Rise?.Leaf) is not { } top) return null;
        var (near, far) = (planned.NearFace.Nanometres, planned.NearFace.Nanometres + planned.Opening.Nanometres);
        var bottom = new Length(top - site.Leg.Spec.Height.Metres);
        var closed = new Length(ground.HighestWithin(near, far));
        if (site.Kind is not (GateKind.Walk or GateKind.Double)) return new(bottom, closed, null, null, RunBack(hung.Site.Chain, site, planned, near, far));
        var surface = SurfaceReader.Read(plan.Basis.Job.Ground, new ProblemList());
        return new(bottom, closed, Arc(surface, hung.Site.Chain, planned, near, far, left: true), Arc(surface, hung.Site.Chain, planned, near, far, left: false), null);
    }

    private static double? Lower(double? one, double? other) => one is { } a && other is { } b ? Math.Min(a, b) : one ?? other;

    private static Length RunBack(Chain chain, SiteGate site, GatePlan gate, long near, long far)
    {
        var leaf = gate.Leaf.Nanometres;
        var (from, to) = site.RunsBackToEnd ? (far, Math.Min(chain.LevelNm, far + leaf)) : (Math.Max(0, near - leaf), near);
        return new(chain.Ground!.HighestWithin(from, to));
    }

    /// <summary>Which jamb a single leaf hangs on is not planned: it is looked at from both.</summary>
    private static Length? Arc(IGroundSurface? surface, Chain chain, GatePlan gate, long near, long far, bool left)
    {
        if (surface is null) return null;
        var (a, b) = (chain.Point(near), chain.Point(far));
        var way = Direction.FromVector(b.East - a.East, b.North - a.North);
        var highest = double.NegativeInfinity;
        foreach (var (hinge, closed, turn) in new[] { (a, way, left ? -90.0 : 90.0), (b, -way, left ? 90.0 : -90.0) })
            for (var i = 0; i <= Turns; i++)
            {
                var at = closed.TurnRight(turn * i / Turns);
                for (var r = 0.0; r <= gate.Leaf.Metres + Step; r += Step)
                {
                    var reach = Math.Min(r, gate.Leaf.Metres);
                    if (surface.HeightAt(hinge.East + at.East * reach, hinge.North + at.North * reach) is not { } height) return null;
                    highest = Math.Max(highest, height);
                }
            }
        return new(highest);
    }
}
