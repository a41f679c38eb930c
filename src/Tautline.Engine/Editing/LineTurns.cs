using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Editing;

/// <summary>Walks a line the other way, or cuts it in two.</summary>
public static class LineTurns
{
    /// <summary>
    /// Walks a line from its other end; of a closed line the start stays. Everything stays where it stands: grades, curves, sides, ties and run-backs are turned
    /// round. A lean of barbed wire belongs to the spec, which other lines may share: it then leans to the other side of the fence, and that is told.
    /// </summary>
    public static EditOutcome Reverse(Job job, LineId id)
    {
        var label = new EditLabel(EditKind.ReverseLine, id.Value);
        if (EditDraft.Shape(job, id) is not { } shape) return EditDraft.Unknown(label, "line", id.Value);
        var told = new ProblemList();
        var lengths = shape.Legs.Select((p, i) => (shape.Vertices[i].Leg?.Id, p.LevelNm)).Where(p => p.Id is not null).ToDictionary(p => p.Id!.Value, p => p.LevelNm);
        HashSet<LegId> legs = [.. lengths.Keys];
        var turned = Standings.Replace(
            EditDraft.With(job, Turned(shape)), legs, new NewIds(""),
            s => [s with { FromNm = lengths[s.Leg] - s.ToNm, ToNm = lengths[s.Leg] - s.FromNm }]);
        var after = turned with
        {
            Gates = [.. turned.Gates.Select(g => legs.Contains(g.Leg) ? g with { RunsBack = Other(g.RunsBack, "start", "end") } : g)],
            Hangs = [.. turned.Hangs.Select(h => legs.Contains(h.Leg) ? h with { Direction = h.Direction == "back" ? null : "back" } : h)],
        };
        TellLean(job, shape, told);
        return EditDraft.Finish(job, after, label, told);
    }

    private static Line Turned(LineShape shape)
    {
        var line = shape.Line;
        List<Vertex> vertices = [.. shape.Vertices];
        var legs = shape.Legs.Select((_, i) => vertices[i].Leg).Reverse().Select(Turned).ToList();
        List<Vertex> order = line.Closed ? [vertices[0], .. vertices.Skip(1).Reverse()] : [.. vertices.AsEnumerable().Reverse()];
        return line with
        {
            Start = line.Finish,
            Finish = line.Start,
            FabricSide = Other(line.FabricSide, "left", "right"),
            Vertices = [.. order.Select((v, i) => v with { Order = vertices[i].Order, Leg = i < legs.Count ? legs[i] : null })],
        };
    }

    private static Leg? Turned(Leg? leg) => leg is null ? null : leg with
    {
        Grade = new Slope(0 - leg.Grade.Ratio),
        Curve = leg.Curve is { } curve ? curve with { Bends = Other(curve.Bends, "left", "right") ?? curve.Bends } : null,
    };

    private static string? Other(string? value, string a, string b) => value == a ? b : value == b ? a : value;

    private static void TellLean(Job job, LineShape shape, ProblemList told)
    {
        var used = shape.Vertices.Select(v => v.Leg?.Spec).OfType<SpecId>().Append(shape.Line.Spec).ToHashSet();
        foreach (var spec in job.Specs.Where(s => used.Contains(s.Id) && s.Barb?.Lean is "left" or "right"))
            told.Add(ProblemCode.EditLeanTurned, new("", shape.Line.Id), spec.Id.Value);
    }

    /// <summary>
    /// Cuts an open line in two at a vertex between its ends, or opens a closed line there. The first part keeps the id; the second goes on from a vertex of its own at the same place.
    /// </summary>
    public static EditOutcome Split(Job job, VertexId vertex, NewIds ids)
    {
        var label = new EditLabel(EditKind.SplitLine, vertex.Value);
        if (EditDraft.Find(job, vertex) is not var (shape, index)) return EditDraft.Unknown(label, "vertex", vertex.Value);
        if (shape.Line.Closed) return EditDraft.Finish(job, EditDraft.With(job, Opened(shape, index, ids)), label);
        if (index == 0 || index == shape.Vertices.Count - 1) return EditDraft.Refuse(label, ProblemCode.EditSplitEnd);
        var lines = LineEdits.Keyed(job.Lines);
        var line = lines.First(l => l.Id == shape.Line.Id);
        var next = lines.Select(l => l.Order).Where(o => o.CompareTo(line.Order) > 0).Cast<OrderKey?>().Min();
        var (at, rest) = (shape.Vertices[index], shape.Vertices.Skip(index).ToList());
        rest[0] = at with { Id = new(ids.Next("vertex")) };
        var ground = line.Ground is { } g ? g with { Shots = Levelled.Heights(g.Shots) } : null;
        var first = line with { Vertices = [.. shape.Vertices.Take(index), at with { Leg = null }], Finish = null };
        var second = line with { Id = new(ids.Next("line")), Order = OrderKey.Between(line.Order, next), Vertices = rest, Start = null };
        (first, second) = (first with { Ground = Its(ground, first) }, second with { Ground = Its(ground, second) });
        return EditDraft.Finish(job, job with { Lines = [.. lines.SelectMany(l => l.Id == line.Id ? new[] { first, second } : [l])] }, label);
    }

    /// <summary>A closed line that starts and ends at one of its vertices, which is there twice.</summary>
    private static Line Opened(LineShape shape, int index, NewIds ids)
    {
        List<Vertex> order = [.. shape.Vertices.Skip(index), .. shape.Vertices.Take(index)];
        var keys = shape.Vertices.Select(v => v.Order).Append(OrderKey.After(shape.Vertices[^1].Order)).ToList();
        order.Add(order[0] with { Id = new(ids.Next("vertex")), Leg = null });
        return shape.Line with { Closed = false, Vertices = [.. order.Select((v, i) => v with { Order = keys[i] })] };
    }

    private static LineGround? Its(LineGround? ground, Line line)
    {
        if (ground is null) return null;
        var legs = line.Vertices.Select(v => v.Leg?.Id).OfType<LegId>().ToHashSet();
        return Levelled.With(ground, [.. ground.Shots.Where(s => legs.Contains(s.Leg))]);
    }
}
