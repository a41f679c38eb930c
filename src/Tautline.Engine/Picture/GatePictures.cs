using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Picture;

/// <summary>Gates with their leaves: those that swing, and those that slide beside the fence.</summary>
internal static class GatePictures
{
    /// <summary>A leaf that slides runs this far beside the line.</summary>
    private const double Beside = 0.25;

    private const int ArcSteps = 12;

    private readonly record struct Opening(SitePoint Near, SitePoint Far, Direction Way, double Wide, double Leaf);

    public static IEnumerable<GatePicture> Of(PictureTrace trace)
    {
        var planned = trace.Plan.Lines.SelectMany((l, i) => l.Gates.Select((g, at) => (g, i, at))).ToDictionary(g => g.g.Id, g => (Gate: g.g, Line: g.i, At: g.at));
        foreach (var gate in trace.Job.Gates)
        {
            if (trace.Leg(gate.Leg) is not var (line, leg)) continue;
            var shape = trace.Shapes[line];
            var plan = planned.TryGetValue(gate.Id, out var found) ? found.Gate : null;
            var near = plan is null ? shape.StartsNm[leg] + Whole.Nm(gate.NearFace) : plan.NearFace.Nanometres;
            var wide = plan?.Opening ?? Whole.Tame(gate.Opening);
            var leaf = plan?.Leaf ?? (gate.Kind == Gate.Double ? wide / 2 : wide);
            var path = shape.Legs[leg];
            var (from, to) = (path.At(near - shape.StartsNm[leg]), path.At(near + Whole.Nm(wide) - shape.StartsNm[leg]));
            var opening = new Opening(from, to, path.HeadingAt(near - shape.StartsNm[leg]), wide.Metres, leaf.Metres);
            yield return Drawn(gate, line, plan is null ? -1 : found.At, opening, Roller(plan, shape.Legs[leg], shape.StartsNm[leg]), trace.Words);
        }
    }

    private static GatePicture Drawn(Gate gate, int line, int index, Opening o, double[] roller, PlanWords words)
    {
        var text = $"{gate.Kind} {words.Long(Whole.Tame(gate.Opening))}";
        double[] faces = [o.Near.East.Metres, o.Near.North.Metres, o.Far.East.Metres, o.Far.North.Metres];
        if (gate.Kind is Gate.Cantilever or Gate.Rolling or Gate.Overhead)
        {
            var (closed, open) = Slides(o, gate.RunsBack == "end");
            return new(line, index, gate.Id, gate.Kind, text, faces, [closed], [open], [], roller);
        }
        var left = Swings(o.Near, o.Way, o.Way.Left, o.Leaf);
        if (gate.Kind != Gate.Double) return new(line, index, gate.Id, gate.Kind, text, faces, [left.Closed], [left.Open], [left.Arc], []);
        var right = Swings(o.Far, -o.Way, o.Way.Left, o.Leaf);
        return new(line, index, gate.Id, gate.Kind, text, faces, [left.Closed, right.Closed], [left.Open, right.Open], [left.Arc, right.Arc], []);
    }

    private static (double[] Closed, double[] Open, double[] Arc) Swings(SitePoint hinge, Direction closed, Direction open, double leaf)
    {
        List<double> arc = [];
        var quarter = Direction.Between(closed, open);
        for (var i = 0; i <= ArcSteps; i++) LineTrace.Add(hinge.Step(closed.TurnRight(quarter * i / ArcSteps), new(leaf)), arc);
        return (Both(hinge, hinge.Step(closed, new(leaf))), Both(hinge, hinge.Step(open, new(leaf))), [.. arc]);
    }

    /// <summary>Closed the leaf covers the opening and its tail; open it lies behind the opening.</summary>
    private static (double[] Closed, double[] Open) Slides(Opening o, bool toEnd)
    {
        var way = toEnd ? o.Way : -o.Way;
        var tip = (toEnd ? o.Near : o.Far).Step(o.Way.Left, new(Beside));
        var opened = tip.Step(way, new(o.Wide));
        return (Both(tip, tip.Step(way, new(o.Leaf))), Both(opened, opened.Step(way, new(o.Leaf))));
    }

    private static double[] Roller(GatePlan? plan, LegPath path, long startNm)
    {
        if (plan?.SecondRoller is not { } station) return [];
        var along = Length.FromNanometres(station.Nanometres - startNm);
        var point = path.From.Step(path.Heading, along).Step(path.Heading.Left, new(Beside));
        return [point.East.Metres, point.North.Metres];
    }

    private static double[] Both(SitePoint a, SitePoint b) => [a.East.Metres, a.North.Metres, b.East.Metres, b.North.Metres];
}
