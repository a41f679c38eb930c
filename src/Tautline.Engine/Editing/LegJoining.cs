using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Editing;

/// <summary>Makes one leg of two when the vertex between them goes.</summary>
internal static class LegJoining
{
    private const long TouchNm = 1_000;

    /// <param name="into">Index of the leg that comes into the vertex; it keeps its id.</param>
    /// <param name="index">Index of the vertex and of the leg that leaves it.</param>
    public static Job Join(Job job, LineShape shape, int into, int index, ProblemList told)
    {
        var (first, second) = (shape.Vertices[into].Leg!, shape.Vertices[index].Leg!);
        var line = EditDraft.Without(shape.Line, shape.Vertices[index].Id);
        line = EditDraft.With(line, shape.Vertices[into] with { Leg = Leg(shape, into, index, told) });
        var path = LegPath.Of(line.Vertices.First(v => v.Id == shape.Vertices[into].Id), shape.Vertices[shape.Next(index)]);
        var shift = path.LevelNm - shape.Legs[index].LevelNm;
        var joined = Touching(job, first.Id, second.Id, shape.Legs[into].LevelNm, shift);
        IEnumerable<Standing> Place(Standing thing)
        {
            var now = thing.Leg == second.Id ? thing with { Leg = first.Id, FromNm = thing.FromNm + shift, ToNm = thing.ToNm + shift } : thing;
            return thing.Kind == StandingKind.Gate ? [LegChange.Slid(now, path.LevelNm, line.Id, told)]
                : thing.IsPlace ? [now with { FromNm = Math.Clamp(now.FromNm, 0, path.LevelNm), ToNm = Math.Clamp(now.ToNm, 0, path.LevelNm) }]
                : LegChange.Within(now, path.LevelNm, line.Id, told);
        }
        return Standings.Replace(EditDraft.With(joined, line), [first.Id, second.Id], new NewIds(""), Place);
    }

    /// <summary>The first leg; what the second had otherwise is told. Grades are evened out, so that the far end keeps its height.</summary>
    private static Leg Leg(LineShape shape, int into, int index, ProblemList told)
    {
        var (first, second) = (shape.Vertices[into].Leg!, shape.Vertices[index].Leg!);
        if ((first.Spec ?? shape.Line.Spec) != (second.Spec ?? shape.Line.Spec))
            told.Add(ProblemCode.EditSpecsDiffer, new("", shape.Line.Id), (first.Spec ?? shape.Line.Spec).Value, (second.Spec ?? shape.Line.Spec).Value);
        var (a, b) = ((double)shape.Legs[into].LevelNm, (double)shape.Legs[index].LevelNm);
        var grade = first.Grade == second.Grade ? first.Grade : new Slope((first.Grade.Ratio * a + second.Grade.Ratio * b) / (a + b));
        if (first.Grade != second.Grade) told.Add(ProblemCode.EditGradeEvened, new("", shape.Line.Id), grade.Ratio * 100);
        return first with { Grade = grade, Curve = Curve(shape, into, index, told) };
    }

    private static LegCurve? Curve(LineShape shape, int into, int index, ProblemList told)
    {
        var (a, b) = (shape.Vertices[into].Leg!.Curve, shape.Vertices[index].Leg!.Curve);
        if (a is null && b is null) return null;
        var chord = shape.Legs[into].From.DistanceTo(shape.Legs[index].To);
        if (a is not null && b is not null && a.Radius == b.Radius && a.Bends == b.Bends && a.Radius * 2 >= chord) return a;
        told.Add(ProblemCode.EditStraightened, new("", shape.Line.Id));
        return null;
    }

    /// <summary>Two stretches that were one before the vertex came: alike in all, the first ending and the second beginning at it.</summary>
    private static Job Touching(Job job, LegId first, LegId second, long cutNm, long shift)
    {
        List<Obstacle> obstacles = [.. job.Obstacles];
        List<SiteWork> works = [.. job.Works];
        Join(
            obstacles, Standing.Of, first, second, cutNm, (a, b) => a with { Id = b.Id, Leg = b.Leg, From = b.From, To = b.To } == b,
            (a, b) => a with { To = Length.FromNanometres(b.To.Nanometres + shift) });
        Join(
            works, Standing.Of, first, second, cutNm,
            (a, b) => a.Posts is null == b.Posts is null && a with { Id = b.Id, Leg = b.Leg, From = b.From, To = b.To, Posts = b.Posts } == b,
            (a, b) => a with { To = Length.FromNanometres(b.To.Nanometres + shift), Posts = a.Posts + b.Posts });
        return obstacles.Count == job.Obstacles.Count && works.Count == job.Works.Count ? job : job with { Obstacles = obstacles, Works = works };
    }

    private static void Join<T>(
        List<T> all, Func<T, Standing> read, LegId first, LegId second, long cutNm, Func<T, T, bool> alike, Func<T, T, T> join)
    {
        for (var i = 0; i < all.Count; i++)
        {
            var a = all[i];
            if (read(a).Leg != first || read(a).ToNm < cutNm - TouchNm) continue;
            var at = all.FindIndex(b => read(b).Leg == second && read(b).FromNm <= TouchNm && alike(a, b));
            if (at < 0) continue;
            all[i] = join(a, all[at]);
            all.RemoveAt(at);
            if (at < i) i--;
        }
    }
}
