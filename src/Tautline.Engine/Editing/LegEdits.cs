using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Editing;

/// <summary>Exact measures of a leg, typed. What else of the line moves: docs/editing.md.</summary>
public static class LegEdits
{
    private const double ParallelDegrees = 0.01;

    /// <summary>
    /// Makes a leg so long. Its start stays and its way; of an open line all that follows goes along, so that no other leg and no turn changes. Of a
    /// closed line what follows goes along up to the next leg that runs the same way or the opposite one and takes the change up; without one the
    /// next leg takes it up and its turns change, which is told.
    /// </summary>
    /// <param name="level">Level length, of an arc along the arc; its radius stays.</param>
    public static EditOutcome SetLength(Job job, LegId leg, Length level)
    {
        var label = new EditLabel(EditKind.LegLength, leg.Value);
        if (EditDraft.Find(job, leg) is not var (shape, index)) return EditDraft.Unknown(label, "leg", leg.Value);
        if (!(level.Metres is > 0 and <= 1_000_000) || level.Nanometres < SiteStage.ShortestLeg.Nanometres)
            return EditDraft.Refuse(label, ProblemCode.LegShort, level, SiteStage.ShortestLeg);
        if (EndAt(shape.Legs[index], level) is not { } end) return EditDraft.Refuse(label, ProblemCode.EditArcLength, level, shape.Legs[index].Curve!.Curve.Radius);
        return Shift(job, shape, index, end, label);
    }

    /// <summary>Where a leg ends that leaves as it does and is so long; nothing where its arc would be over half a circle.</summary>
    private static SitePoint? EndAt(LegPath path, Length level)
    {
        if (path.Curve is not { } curve) return path.From.Step(path.Heading, level);
        var half = curve.Curve.DeflectionDegrees(level);
        return half > 90 ? null : path.From.Step(curve.Side == CurveSide.Right ? curve.Tangent.TurnRight(half) : curve.Tangent.TurnLeft(half), curve.Curve.ChordOf(level));
    }

    private static EditOutcome Shift(Job job, LineShape shape, int index, SitePoint end, EditLabel label)
    {
        var told = new ProblemList();
        var path = shape.Legs[index];
        var (east, north) = (end.East - path.To.East, end.North - path.To.North);
        var last = shape.Line.Closed ? TakenUp(shape, index, east, north) : shape.Vertices.Count - 1;
        if (last < 0) told.Add(ProblemCode.EditTurnsChanged, new("", shape.Line.Id));
        Dictionary<VertexId, SitePoint> to = [];
        for (var v = shape.Next(index); ; v = shape.Next(v))
        {
            var vertex = shape.Vertices[v];
            to[vertex.Id] = v == shape.Next(index) ? end : new(vertex.East + east, vertex.North + north);
            if (v == last || last < 0) break;
        }
        return EditDraft.Finish(job, VertexMoves.Apply(job, shape, to, told), label, told);
    }

    /// <summary>Index of the last vertex of a closed line that goes along: the start of the leg that takes the change up; -1 without one.</summary>
    private static int TakenUp(LineShape shape, int index, Length east, Length north)
    {
        if (Survey.Way(east.Metres, north.Metres) is not { } way) return shape.Next(index);
        for (var v = shape.Next(index); v != index; v = shape.Next(v))
        {
            var path = shape.Legs[v];
            var off = Math.Abs(Direction.Between(way, path.Heading));
            if (path.Curve is not null || (off > ParallelDegrees && off < 180 - ParallelDegrees)) continue;
            if (off > 90 || path.Chord.Metres - Survey.Hypotenuse(east, north).Metres >= SiteStage.ShortestLeg.Metres) return v;
        }
        return -1;
    }

    /// <summary>
    /// Makes the line turn so much at a vertex. Of an open line all that follows turns about the vertex; of a closed line only the next leg, and
    /// the turns at its far end and after it change, which is told.
    /// </summary>
    /// <param name="degrees">Right positive, within a half turn.</param>
    public static EditOutcome SetTurn(Job job, VertexId vertex, double degrees)
    {
        var label = new EditLabel(EditKind.LegTurn, vertex.Value);
        if (EditDraft.Find(job, vertex) is not var (shape, index)) return EditDraft.Unknown(label, "vertex", vertex.Value);
        if (shape.TurnAt(index) is not { } now) return EditDraft.Refuse(label, ProblemCode.EditNoTurn);
        if (!(Math.Abs(degrees) < 180)) return EditDraft.Refuse(label, ProblemCode.EditTurnRange, degrees);
        return Turn(job, shape, index, degrees - now, label);
    }

    /// <summary>Makes a leg leave its start in a direction; what follows as in <see cref="SetTurn"/>.</summary>
    public static EditOutcome SetBearing(Job job, LegId leg, Direction way)
    {
        var label = new EditLabel(EditKind.LegBearing, leg.Value);
        if (EditDraft.Find(job, leg) is not var (shape, index)) return EditDraft.Unknown(label, "leg", leg.Value);
        if (!Survey.IsDirection(way)) return EditDraft.Refuse(label, ProblemCode.HeadingMissing);
        return Turn(job, shape, index, Direction.Between(shape.Legs[index].Heading, way), label);
    }

    private static EditOutcome Turn(Job job, LineShape shape, int index, double degrees, EditLabel label)
    {
        var told = new ProblemList();
        var about = LegPath.PointOf(shape.Vertices[index]);
        Dictionary<VertexId, SitePoint> to = [];
        var last = shape.Line.Closed ? shape.Next(index) : shape.Vertices.Count - 1;
        for (var v = shape.Next(index); ; v = shape.Next(v))
        {
            to[shape.Vertices[v].Id] = Turned(LegPath.PointOf(shape.Vertices[v]), about, degrees);
            if (v == last) break;
        }
        if (shape.Line.Closed) told.Add(ProblemCode.EditTurnsChanged, new("", shape.Line.Id));
        return EditDraft.Finish(job, VertexMoves.Apply(job, shape, to, told), label, told);
    }

    private static SitePoint Turned(SitePoint point, SitePoint about, double degrees)
    {
        var (sin, cos) = Trig.SinCosDegrees(degrees);
        var (e, n) = (point.East - about.East, point.North - about.North);
        return new(about.East + e * cos + n * sin, about.North + n * cos - e * sin);
    }

    /// <summary>Rise over run of a leg.</summary>
    public static EditOutcome SetGrade(Job job, LegId leg, Slope grade)
        => Change(job, leg, EditKind.LegGrade, l => l with { Grade = grade });

    /// <summary>The spec of one leg; without one it has the line's.</summary>
    public static EditOutcome SetSpec(Job job, LegId leg, SpecId? spec)
        => spec is { } id && job.Specs.All(s => s.Id != id)
            ? EditDraft.Unknown(new(EditKind.LegSpec, leg.Value), "spec", id.Value)
            : Change(job, leg, EditKind.LegSpec, l => l with { Spec = spec });

    /// <summary>Bends a leg to an arc, or makes it straight. Its ends stay; things on it keep their distance from its start and are cut at its end.</summary>
    public static EditOutcome SetCurve(Job job, LegId leg, LegCurve? curve)
    {
        var label = new EditLabel(EditKind.LegCurve, leg.Value);
        if (EditDraft.Find(job, leg) is not var (shape, index)) return EditDraft.Unknown(label, "leg", leg.Value);
        var told = new ProblemList();
        var vertex = shape.Vertices[index];
        var line = EditDraft.With(shape.Line, vertex with { Leg = vertex.Leg! with { Curve = curve } });
        return EditDraft.Finish(job, VertexMoves.Follow(EditDraft.With(job, line), shape, LineShape.Of(line), _ => true, told), label, told);
    }

    private static EditOutcome Change(Job job, LegId leg, EditKind kind, Func<Leg, Leg> change)
    {
        var label = new EditLabel(kind, leg.Value);
        if (EditDraft.Find(job, leg) is not var (shape, index)) return EditDraft.Unknown(label, "leg", leg.Value);
        var vertex = shape.Vertices[index];
        return EditDraft.Finish(job, EditDraft.With(job, EditDraft.With(shape.Line, vertex with { Leg = change(vertex.Leg!) })), label);
    }
}
