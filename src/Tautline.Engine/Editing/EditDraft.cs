using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;

namespace Tautline.Engine.Editing;

/// <summary>What the edits share: finding a thing, putting a line back, and the outcome.</summary>
internal static class EditDraft
{
    public static EditOutcome Refuse(EditLabel label, ProblemCode code, params Figure[] figures) => new(null, label, [new Problem(code, new(""), figures)]);

    public static EditOutcome Unknown(EditLabel label, string what, string id) => Refuse(label, ProblemCode.EditUnknown, what, id ?? "");

    /// <summary>The new job, unless it holds something that the one before did not and that cannot be planned.</summary>
    public static EditOutcome Finish(Job before, Job after, EditLabel label, ProblemList? told = null)
    {
        told ??= new ProblemList();
        EditCheck.Compare(before, after, told);
        return new(told.HasErrors ? null : after, label, told.Found);
    }

    public static LineShape? Shape(Job job, LineId id) => job.Lines.FirstOrDefault(l => l.Id == id) is { } line ? LineShape.Of(line) : null;

    public static (LineShape Shape, int Leg)? Find(Job job, LegId id)
    {
        foreach (var line in job.Lines)
            if (line.Vertices.Any(v => v.Leg?.Id == id) && LineShape.Of(line) is var shape && shape.IndexOf(id) is >= 0 and var leg) return (shape, leg);
        return null;
    }

    public static (LineShape Shape, int Vertex)? Find(Job job, VertexId id)
    {
        foreach (var line in job.Lines)
            if (line.Vertices.Any(v => v.Id == id) && LineShape.Of(line) is var shape) return (shape, shape.IndexOf(id));
        return null;
    }

    public static Job With(Job job, Line line) => job with { Lines = [.. job.Lines.Select(l => l.Id == line.Id ? line : l)] };

    public static Line With(Line line, Vertex vertex) => line with { Vertices = [.. line.Vertices.Select(v => v.Id == vertex.Id ? vertex : v)] };

    /// <summary>The line with one more vertex behind another in its list; at its head without one.</summary>
    public static Line Insert(Line line, Vertex vertex, VertexId? after)
    {
        List<Vertex> vertices = [.. line.Vertices];
        vertices.Insert(after is { } id ? vertices.FindIndex(v => v.Id == id) + 1 : 0, vertex);
        return line with { Vertices = vertices };
    }

    public static Line Without(Line line, VertexId vertex) => line with { Vertices = [.. line.Vertices.Where(v => v.Id != vertex)] };

    /// <summary>The job without anything that stands on the legs; what went is told in one note.</summary>
    public static Job Clear(Job job, HashSet<LegId> legs, NewIds ids, ProblemList told, LineId line)
    {
        var gone = Standings.On(job, legs).GroupBy(s => s.Kind).Select(g => Plans.PlanWords.Count(g.Count(), LegChange.Name(g.Key))).ToList();
        if (gone.Count > 0) told.Add(ProblemCode.EditWentWithLeg, new("", line), string.Join(", ", gone));
        return gone.Count == 0 ? job : Standings.Replace(job, legs, ids, static _ => []);
    }
}
