using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Site.Snapshot;

/// <summary>The ways of a job's lines in plan, before anything else of the job is read.</summary>
internal static class LineWay
{
    /// <summary>One path for each line of two vertices or more; a curve that cannot be is taken straight.</summary>
    public static IEnumerable<GroundPath> Of(Job job) => job.Lines.Where(l => l.Vertices.Count > 1).Select(Of);

    private static GroundPath Of(Line line)
    {
        var vertices = line.Vertices.OrderBy(v => v.Order).ToList();
        var path = new GroundPath(At(vertices[0]));
        for (var i = 0; i < (line.Closed ? vertices.Count : vertices.Count - 1); i++)
        {
            var (from, to) = (vertices[i], vertices[(i + 1) % vertices.Count]);
            if (CurveOf(from, to) is { } curve) path.CurveTo(curve);
            else path.LineTo(At(to));
        }
        return path;
    }

    private static PlacedCurve? CurveOf(Vertex from, Vertex to)
    {
        if (from.Leg?.Curve is not { } curve) return null;
        var (east, north) = ((to.East - from.East).Metres, (to.North - from.North).Metres);
        return CurveReader.Read(curve, from, to, new Length(Math.Sqrt(east * east + north * north)), default, new ProblemList());
    }

    private static PlanPoint At(Vertex vertex) => new(vertex.East.Metres, vertex.North.Metres);
}
