using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Editing;

/// <summary>Puts vertices of a line elsewhere and lets what stands along its legs follow (<see cref="LegChange"/>).</summary>
internal static class VertexMoves
{
    /// <summary>Marks of the ground carried farther than this are told: our own practice, about what a painted mark is good for.</summary>
    private static readonly Length carried = Length.FromInches(12);

    public static Job Apply(Job job, LineShape shape, IReadOnlyDictionary<VertexId, SitePoint> to, ProblemList told)
    {
        var line = shape.Line with
        {
            Vertices = [.. shape.Line.Vertices.Select(v => to.TryGetValue(v.Id, out var p) ? v with { East = p.East, North = p.North } : v)],
        };
        return Follow(EditDraft.With(job, line), shape, LineShape.Of(line), to.ContainsKey, told);
    }

    /// <summary>Lets things follow from one shape of a line to another with the same legs.</summary>
    public static Job Follow(Job job, LineShape was, LineShape now, Func<VertexId, bool> moved, ProblemList told)
    {
        Dictionary<LegId, LegChange> changes = [];
        Dictionary<LegId, (LegPath Was, LegPath Now)> paths = [];
        for (var i = 0; i < was.Legs.Count; i++)
        {
            if (was.Vertices[i].Leg is not { } leg) continue;
            var (start, end) = (moved(was.Vertices[i].Id), moved(was.Vertices[was.Next(i)].Id));
            var (old, level) = (was.Legs[i].LevelNm, now.Legs[i].LevelNm);
            if (was.Legs[i] == now.Legs[i] && old == level) continue;
            paths[leg.Id] = (was.Legs[i], now.Legs[i]);
            if (Math.Abs(old - level) > 1 || start != end) changes[leg.Id] = new(leg.Id, was.Line.Id, old, level, start && !end ? LegEnd.Start : LegEnd.End, told);
        }
        if (paths.Count == 0) return job;
        var after = changes.Count == 0 ? job : Standings.Replace(job, [.. changes.Keys], new NewIds(""), s => changes[s.Leg].Place(s));
        Tell(job, after, was.Line.Id, paths, told);
        return after;
    }

    /// <summary>Marks of the ground that are now drawn somewhere else than where they were measured.</summary>
    private static void Tell(Job job, Job after, LineId line, Dictionary<LegId, (LegPath Was, LegPath Now)> paths, ProblemList told)
    {
        HashSet<LegId> legs = [.. paths.Keys];
        var before = Standings.On(job, legs).Where(s => s.OfGround && s.Kind != StandingKind.Shot).ToDictionary(s => (s.Kind, s.Id));
        var (count, farthest) = (0, Length.Zero);
        foreach (var thing in Standings.On(after, legs))
        {
            if (!before.TryGetValue((thing.Kind, thing.Id), out var old)) continue;
            var by = Length.Max(Between(old.FromNm, thing.FromNm, paths[thing.Leg]), Between(old.ToNm, thing.ToNm, paths[thing.Leg]));
            if (by <= carried) continue;
            (count, farthest) = (count + 1, Length.Max(farthest, by));
        }
        if (count > 0) told.Add(ProblemCode.EditMarksCarried, new("", line), count, farthest);
        if (Standings.On(job, legs).Any(s => s.Kind == StandingKind.Shot)) told.Add(ProblemCode.EditShotsCarried, new("", line));
    }

    private static Length Between(long was, long now, (LegPath Was, LegPath Now) paths) => paths.Was.At(was).DistanceTo(paths.Now.At(now));
}
