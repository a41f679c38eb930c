using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Editing;

/// <summary>Edits of single vertices. What they do to things along the legs: docs/editing.md.</summary>
public static class VertexEdits
{
    /// <summary>Moves a vertex; its two legs follow.</summary>
    public static EditOutcome Move(Job job, VertexId vertex, SitePoint to)
    {
        var label = new EditLabel(EditKind.MoveVertex, vertex.Value);
        if (EditDraft.Find(job, vertex) is not var (shape, _)) return EditDraft.Unknown(label, "vertex", vertex.Value);
        if (!Sane(to)) return EditDraft.Refuse(label, ProblemCode.NotFinite);
        var told = new ProblemList();
        return EditDraft.Finish(job, VertexMoves.Apply(job, shape, new Dictionary<VertexId, SitePoint> { [vertex] = to }, told), label, told);
    }

    /// <summary>
    /// Puts a vertex into a leg. The first part keeps the leg's id and everything up to the vertex; what lies past it goes over to the new leg and
    /// stays where it stands. A stretch across the vertex becomes two; a gate across it refuses.
    /// </summary>
    /// <param name="at">Level distance from the start of the leg.</param>
    public static EditOutcome Insert(Job job, LegId leg, Length at, NewIds ids)
    {
        var label = new EditLabel(EditKind.InsertVertex, leg.Value);
        if (EditDraft.Find(job, leg) is not var (shape, index)) return EditDraft.Unknown(label, "leg", leg.Value);
        if (!double.IsFinite(at.Metres) || at.Nanometres < 0 || at.Nanometres > shape.Legs[index].LevelNm)
            return EditDraft.Refuse(label, ProblemCode.EditOffLeg, at, Length.FromNanometres(shape.Legs[index].LevelNm));
        var told = new ProblemList();
        return EditDraft.Finish(job, Insert(job, shape, index, at.Nanometres, ids, told).Job, label, told);
    }

    /// <summary>Puts a vertex into a leg and moves it at once, as when the middle of an edge is dragged.</summary>
    public static EditOutcome InsertAt(Job job, LegId leg, Length at, SitePoint to, NewIds ids)
    {
        var put = Insert(job, leg, at, ids);
        if (put.Job is not { } between) return put;
        var vertex = between.Lines.SelectMany(l => l.Vertices).ExceptBy(job.Lines.SelectMany(l => l.Vertices).Select(v => v.Id), v => v.Id).First();
        var moved = Move(between, vertex.Id, to);
        return moved with { Label = put.Label, Problems = [.. put.Problems, .. moved.Problems] };
    }

    internal static (Job Job, Vertex Vertex) Insert(Job job, LineShape shape, int index, long cut, NewIds ids, ProblemList told)
    {
        var (from, path) = (shape.Vertices[index], shape.Legs[index]);
        var old = from.Leg!;
        var point = path.At(cut);
        var high = index + 1 < shape.Vertices.Count ? shape.Vertices[index + 1].Order : (OrderKey?)null;
        var vertex = new Vertex
        {
            Id = new(ids.Next("vertex")),
            Order = OrderKey.Between(from.Order, high),
            East = point.East,
            North = point.North,
            Leg = old with { Id = new(ids.Next("leg")) },
        };
        var line = EditDraft.Insert(shape.Line, vertex, from.Id);
        var now = LineShape.Of(line);
        var parting = new LegParting(shape.Line.Id, vertex.Leg.Id, cut, path.LevelNm, now.Legs[index].LevelNm, now.Legs[index + 1].LevelNm, told);
        return (Standings.Replace(EditDraft.With(job, line), [old.Id], ids, parting.Place), vertex);
    }

    /// <summary>
    /// Takes a vertex out; one leg runs straight from its neighbour to the next. It keeps the id, spec and grade of the first; things of the first
    /// keep their distance from its start, things of the second from its end. Two arcs of one radius become one again. At an end of an open line
    /// the last leg goes, with everything on it.
    /// </summary>
    public static EditOutcome Delete(Job job, VertexId vertex)
    {
        var label = new EditLabel(EditKind.DeleteVertex, vertex.Value);
        if (EditDraft.Find(job, vertex) is not var (shape, index)) return EditDraft.Unknown(label, "vertex", vertex.Value);
        if (shape.Vertices.Count <= (shape.Line.Closed ? 3 : 2)) return EditDraft.Refuse(label, ProblemCode.EditLastVertices, shape.Line.Closed ? "three" : "two");
        var told = new ProblemList();
        var into = shape.LegInto(index);
        var after = into < 0 || index >= shape.Legs.Count ? DropEnd(job, shape, index, told) : LegJoining.Join(job, shape, into, index, told);
        return EditDraft.Finish(job, after, label, told);
    }

    private static Job DropEnd(Job job, LineShape shape, int index, ProblemList told)
    {
        var (line, first) = (EditDraft.Without(shape.Line, shape.Vertices[index].Id), index == 0);
        var gone = (first ? shape.Vertices[0] : shape.Vertices[^2]).Leg?.Id;
        if (!first) line = EditDraft.With(line, shape.Vertices[^2] with { Leg = null });
        line = LineEdits.Untied(line, first, told);
        var after = EditDraft.With(job, line);
        return gone is { } leg ? EditDraft.Clear(after, [leg], new NewIds(""), told, line.Id) : after;
    }

    internal static bool Sane(SitePoint point) => Math.Abs(point.East.Metres) <= 1_000_000 && Math.Abs(point.North.Metres) <= 1_000_000;
}
