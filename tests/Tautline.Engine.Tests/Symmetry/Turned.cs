using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Spec = Tautline.Engine.Jobs.Spec;

namespace Tautline.Engine.Tests.Symmetry;

/// <summary>The same fence said in another way: walked from its other end, or seen in a mirror.</summary>
internal static class Turned
{
    /// <summary>Every line walked from its other end; a closed one keeps its first vertex.</summary>
    /// <param name="levelNm">Level length of every leg in nanometres.</param>
    public static Job Reversed(Job job, IReadOnlyDictionary<LegId, long> levelNm) => job with
    {
        Specs = [.. job.Specs.Select(OtherSide)],
        Lines = [.. job.Lines.Select(Reversed)],
        Gates = [.. job.Gates.Select(g => levelNm.TryGetValue(g.Leg, out var level) ? Reversed(g, level) : g)],
        Obstacles = [.. job.Obstacles.Select(o => levelNm.TryGetValue(o.Leg, out var level) ? Reversed(o, level) : o)],
    };

    public static BuiltFacts Reversed(BuiltFacts built, IReadOnlyDictionary<LegId, long> levelNm)
        => new([.. built.Posts.Select(p => p with { FromLegStart = FromOtherEnd(p.FromLegStart, levelNm[p.Leg]) })]);

    /// <summary>South for north.</summary>
    public static Job Mirrored(Job job) => job with
    {
        Specs = [.. job.Specs.Select(OtherSide)],
        Lines = [.. job.Lines.Select(l => l with
        {
            Vertices = [.. l.Vertices.Select(v => v with { North = -v.North, Leg = v.Leg is { } leg ? leg with { Curve = OtherHand(leg.Curve) } : null })],
        })],
    };

    /// <summary>Level length of every leg with an id.</summary>
    public static IReadOnlyDictionary<LegId, long> Levels(Plan plan)
        => plan.Basis.Lines.SelectMany(l => l.Site.Chain.Legs).Where(l => l.Leg is not null).ToDictionary(l => l.Leg!.Id, l => l.LevelNm);

    private static Line Reversed(Line line)
    {
        var walked = line.Vertices.OrderBy(v => v.Order).ToList();
        var count = walked.Count;
        var keys = OrderKey.Spread(count);
        // The leg that came to a vertex is now the one that leaves it.
        Vertex At(int i, int key) => walked[i] with
        {
            Order = keys[key],
            Leg = i > 0 ? Reversed(walked[i - 1].Leg) : line.Closed ? Reversed(walked[^1].Leg) : null,
        };
        var first = line.Closed ? 0 : count - 1;
        return line with
        {
            Start = line.Finish,
            Finish = line.Start,
            Vertices = [.. Enumerable.Range(0, count).Select(key => At((first - key + count) % count, key))],
        };
    }

    private static Leg? Reversed(Leg? leg)
        => leg is null ? null : leg with { Grade = new Slope(-leg.Grade.Ratio), Curve = OtherHand(leg.Curve) };

    private static LegCurve? OtherHand(LegCurve? curve)
        => curve is null ? null : curve with { Bends = curve.Bends == "left" ? "right" : "left" };

    private static Gate Reversed(Gate gate, long levelNm) => gate with
    {
        NearFace = FromOtherEnd(gate.NearFace, levelNm - gate.Opening.Nanometres),
        RunsBack = gate.RunsBack switch { "start" => "end", "end" => "start", var other => other },
    };

    private static Obstacle Reversed(Obstacle obstacle, long levelNm)
        => obstacle with { From = FromOtherEnd(obstacle.To, levelNm), To = FromOtherEnd(obstacle.From, levelNm) };

    private static Spec OtherSide(Spec spec) => spec with
    {
        Barb = spec.Barb is null ? null : spec.Barb with { Lean = spec.Barb.Lean switch { "left" => "right", "right" => "left", var same => same } },
    };

    private static Length FromOtherEnd(Length from, long levelNm) => Length.FromNanometres(levelNm - from.Nanometres);
}
