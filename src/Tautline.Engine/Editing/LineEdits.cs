using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Editing;

/// <summary>Edits of whole lines.</summary>
public static class LineEdits
{
    /// <summary>Draws a new line behind the job's others. Points that were given twice running are taken once.</summary>
    /// <param name="spec">One of the job's.</param>
    public static EditOutcome Draw(Job job, IReadOnlyList<SitePoint> points, bool closed, SpecId spec, string name, NewIds ids)
    {
        var id = new LineId(ids.Next("line"));
        var label = new EditLabel(EditKind.DrawLine, id.Value);
        if (job.Specs.All(s => s.Id != spec)) return EditDraft.Unknown(label, "spec", spec.Value);
        if (points.Any(p => !VertexEdits.Sane(p))) return EditDraft.Refuse(label, ProblemCode.NotFinite);
        List<SitePoint> taken = [.. points.Where((p, i) => i == 0 || p.DistanceTo(points[i - 1]).Metres > 1e-3)];
        if (closed && taken.Count > 1 && Near(taken[0], taken[^1])) taken.RemoveAt(taken.Count - 1);
        if (taken.Count < (closed ? 3 : 2)) return EditDraft.Refuse(label, ProblemCode.LineShort, taken.Count);
        var keys = OrderKey.Spread(taken.Count);
        var lines = Keyed(job.Lines);
        var line = new Line
        {
            Id = id,
            Order = lines.Count == 0 ? OrderKey.First : OrderKey.After(lines.Max(l => l.Order)),
            Name = name,
            Closed = closed,
            Spec = spec,
            Vertices = [.. taken.Select((p, i) => new Vertex
            {
                Id = new(ids.Next("vertex")), Order = keys[i], East = p.East, North = p.North,
                Leg = closed || i < taken.Count - 1 ? new Leg { Id = new(ids.Next("leg")) } : null,
            })],
        };
        return EditDraft.Finish(job, job with { Lines = [.. lines, line] }, label);
    }

    /// <summary>Goes on from an end of an open line to one point more.</summary>
    public static EditOutcome Continue(Job job, LineId id, bool fromStart, SitePoint to, NewIds ids)
    {
        var label = new EditLabel(EditKind.ContinueLine, id.Value);
        if (EditDraft.Shape(job, id) is not { } shape) return EditDraft.Unknown(label, "line", id.Value);
        if (shape.Line.Closed) return EditDraft.Refuse(label, ProblemCode.EditClosedAlready);
        if (!VertexEdits.Sane(to)) return EditDraft.Refuse(label, ProblemCode.NotFinite);
        var end = shape.Vertices[fromStart ? 0 : ^1];
        var near = shape.Legs.Count == 0 ? null : (fromStart ? shape.Vertices[0] : shape.Vertices[^2]).Leg;
        var leg = new Leg { Id = new(ids.Next("leg")), Spec = near?.Spec };
        var vertex = new Vertex
        {
            Id = new(ids.Next("vertex")),
            Order = fromStart ? OrderKey.Before(end.Order) : OrderKey.After(end.Order),
            East = to.East,
            North = to.North,
            Leg = fromStart ? leg : null,
        };
        var told = new ProblemList();
        var line = fromStart ? shape.Line : EditDraft.With(shape.Line, end with { Leg = leg });
        line = Untied(EditDraft.Insert(line, vertex, fromStart ? null : end.Id), fromStart, told);
        return EditDraft.Finish(job, EditDraft.With(job, line), label, told);
    }

    /// <summary>Takes a line out with everything along it.</summary>
    public static EditOutcome Delete(Job job, LineId id)
    {
        var label = new EditLabel(EditKind.DeleteLine, id.Value);
        if (EditDraft.Shape(job, id) is not { } shape) return EditDraft.Unknown(label, "line", id.Value);
        var told = new ProblemList();
        HashSet<LegId> legs = [.. shape.Vertices.Select(v => v.Leg?.Id).OfType<LegId>()];
        var bare = EditDraft.Clear(job, legs, new NewIds(""), told, id);
        return EditDraft.Finish(job, bare with { Lines = [.. bare.Lines.Where(l => l.Id != id)] }, label, told);
    }

    /// <summary>Moves a line as a whole; everything along it goes with it.</summary>
    public static EditOutcome Move(Job job, LineId id, Length east, Length north)
    {
        var label = new EditLabel(EditKind.MoveLine, id.Value);
        if (EditDraft.Shape(job, id) is not { } shape) return EditDraft.Unknown(label, "line", id.Value);
        var told = new ProblemList();
        var to = shape.Vertices.ToDictionary(v => v.Id, v => new SitePoint(v.East + east, v.North + north));
        return EditDraft.Finish(job, VertexMoves.Apply(job, shape, to, told), label, told);
    }

    /// <summary>
    /// Closes an open line by a leg back to its start. Where its end already lies within the shortest leg of its start the two become one vertex.
    /// What it was tied to at its ends is left off, and told.
    /// </summary>
    public static EditOutcome Close(Job job, LineId id, NewIds ids)
    {
        var label = new EditLabel(EditKind.CloseLine, id.Value);
        if (EditDraft.Shape(job, id) is not { } shape) return EditDraft.Unknown(label, "line", id.Value);
        if (shape.Line.Closed) return EditDraft.Refuse(label, ProblemCode.EditClosedAlready);
        var (first, last) = (shape.Vertices[0], shape.Vertices[^1]);
        var meets = Near(LegPath.PointOf(first), LegPath.PointOf(last));
        if (shape.Vertices.Count - (meets ? 1 : 0) < 3) return EditDraft.Refuse(label, ProblemCode.EditLastVertices, "three");
        var told = new ProblemList();
        var line = Untied(Untied(shape.Line, true, told), false, told) with { Closed = true };
        if (!meets) return EditDraft.Finish(job, EditDraft.With(job, EditDraft.With(line, last with { Leg = new Leg { Id = new(ids.Next("leg")) } })), label, told);
        line = EditDraft.Without(line, last.Id);
        var after = VertexMoves.Follow(EditDraft.With(job, line), shape, LineShape.Of(line), v => v == last.Id, told);
        return EditDraft.Finish(job, after, label, told);
    }

    /// <summary>Opens a closed line by taking a leg out, with everything on it: the line then starts at that leg's end.</summary>
    public static EditOutcome Open(Job job, LegId leg)
    {
        var label = new EditLabel(EditKind.OpenLine, leg.Value);
        if (EditDraft.Find(job, leg) is not var (shape, index)) return EditDraft.Unknown(label, "leg", leg.Value);
        if (!shape.Line.Closed) return EditDraft.Refuse(label, ProblemCode.EditOpenAlready);
        var told = new ProblemList();
        var line = From(EditDraft.With(shape.Line, shape.Vertices[index] with { Leg = null }), shape.Next(index)) with { Closed = false };
        return EditDraft.Finish(job, EditDraft.Clear(EditDraft.With(job, line), [leg], new NewIds(""), told, line.Id), label, told);
    }

    /// <summary>A closed line that starts at another of its vertices: those before it get keys behind the last.</summary>
    private static Line From(Line line, int start)
    {
        List<Vertex> vertices = [.. line.Vertices.OrderBy(v => v.Order)];
        var key = vertices[^1].Order;
        foreach (var vertex in vertices.Take(start).ToList())
        {
            key = OrderKey.After(key);
            vertices.Add(vertex with { Order = key });
        }
        return line with { Vertices = vertices[start..] };
    }

    /// <summary>Names a line; an empty name is allowed.</summary>
    public static EditOutcome Rename(Job job, LineId id, string name) => Change(job, id, EditKind.RenameLine, l => l with { Name = name });

    /// <summary>The spec of a line. Legs that have one of their own keep it.</summary>
    public static EditOutcome SetSpec(Job job, LineId id, SpecId spec)
        => job.Specs.All(s => s.Id != spec)
            ? EditDraft.Unknown(new(EditKind.LineSpec, id.Value), "spec", spec.Value)
            : Change(job, id, EditKind.LineSpec, l => l with { Spec = spec });

    /// <summary>The spec from one station to another: a vertex is put at each end of the stretch that has none.</summary>
    public static EditOutcome SetSpec(Job job, LineId id, Length from, Length to, SpecId spec, NewIds ids)
    {
        var label = new EditLabel(EditKind.LegSpec, id.Value);
        if (job.Specs.All(s => s.Id != spec)) return EditDraft.Unknown(label, "spec", spec.Value);
        if (EditDraft.Shape(job, id) is not { } shape) return EditDraft.Unknown(label, "line", id.Value);
        var (start, end) = (Length.Min(from, to), Length.Max(from, to));
        if (!(start.Metres >= 0 && end.Metres <= shape.LevelNm * 1e-9 + 1e-6)) return EditDraft.Refuse(label, ProblemCode.EditOffLine, end, Length.FromNanometres(shape.LevelNm));
        var told = new ProblemList();
        var (cut, first) = Cut(job, id, start, ids, told);
        (cut, var last) = Cut(cut, id, end, ids, told);
        var now = EditDraft.Shape(cut, id)!;
        var (a, b) = (first is { } f ? now.IndexOf(f) : now.Legs.Count, last is { } v ? now.IndexOf(v) : now.Legs.Count);
        if (a >= b) return EditDraft.Refuse(label, ProblemCode.LegShort, end - start, SiteStage.ShortestLeg);
        var specced = now.Line with { Vertices = [.. now.Vertices.Select((x, i) => i >= a && i < b && x.Leg is { } leg ? x with { Leg = leg with { Spec = spec } } : x)] };
        return EditDraft.Finish(job, EditDraft.With(cut, specced), label, told);
    }

    /// <summary>The vertex at a station, put there unless one stands within the shortest leg; nothing for the end of a closed line.</summary>
    private static (Job Job, VertexId? Vertex) Cut(Job job, LineId id, Length station, NewIds ids, ProblemList told)
    {
        var shape = EditDraft.Shape(job, id)!;
        var (nm, shortest) = (station.Nanometres, SiteStage.ShortestLeg.Nanometres);
        for (var i = 0; i < shape.StartsNm.Count; i++)
            if (Math.Abs(shape.StartsNm[i] - nm) < shortest) return (job, i < shape.Vertices.Count ? shape.Vertices[i].Id : null);
        var leg = shape.LegAt(nm);
        var (cut, vertex) = VertexEdits.Insert(job, shape, leg, nm - shape.StartsNm[leg], ids, told);
        return (cut, vertex.Id);
    }

    /// <summary>Any other field of a line; ids, vertices and order stay.</summary>
    public static EditOutcome Change(Job job, LineId id, EditKind kind, Func<Line, Line> change)
    {
        var label = new EditLabel(kind, id.Value);
        return job.Lines.FirstOrDefault(l => l.Id == id) is { } line
            ? EditDraft.Finish(job, EditDraft.With(job, change(line) with { Id = line.Id, Order = line.Order, Vertices = line.Vertices }), label)
            : EditDraft.Unknown(label, "line", id.Value);
    }

    /// <summary>A tie-in belongs to the place it was entered for: where the line ends elsewhere it is left off.</summary>
    internal static Line Untied(Line line, bool start, ProblemList told)
    {
        if ((start ? line.Start : line.Finish) is not { } tie) return line;
        told.Add(ProblemCode.EditTieOff, new("", line.Id), tie.Kind, start ? "start" : "end");
        return start ? line with { Start = null } : line with { Finish = null };
    }

    /// <summary>An only line needs no order key; with a second one it gets one.</summary>
    internal static IReadOnlyList<Line> Keyed(IReadOnlyList<Line> lines)
        => lines.Count == 1 && !lines[0].Order.IsWellFormed ? [lines[0] with { Order = OrderKey.First }] : lines;

    internal static bool Near(SitePoint a, SitePoint b) => a.DistanceTo(b) < SiteStage.ShortestLeg;
}
