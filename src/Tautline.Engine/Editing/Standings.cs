using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Editing;

/// <summary>Puts what stands along some legs elsewhere.</summary>
internal static class Standings
{
    /// <summary>The same job with everything that stands on the legs where the rule puts it: unmoved, moved, in two pieces, or not at all.</summary>
    public static Job Replace(Job job, HashSet<LegId> legs, NewIds ids, Func<Standing, IEnumerable<Standing>> place) => job with
    {
        Gates = Each(job.Gates, Standing.Of, legs, place, (g, at, _, _) => g with { Leg = at.Leg, NearFace = Moved(g.NearFace, at.FromNm) }),
        Obstacles = Each(job.Obstacles, Standing.Of, legs, place, (o, at, piece, _) => o with
        {
            Id = piece == 0 ? o.Id : new(ids.Next("obstacle")),
            Leg = at.Leg,
            From = Moved(o.From, at.FromNm),
            To = Moved(o.To, at.ToNm),
        }),
        Works = Each(job.Works, Standing.Of, legs, place, (w, at, piece, of) => w with
        {
            Id = piece == 0 ? w.Id : new(ids.Next("work")),
            Leg = at.Leg,
            From = Moved(w.From, at.FromNm),
            To = Moved(w.To, at.ToNm),
            Posts = of == 1 ? w.Posts : Share(w, at, piece),
        }),
        Pins = Each(job.Pins, Standing.Of, legs, place, (p, at, _, _) => p with { Leg = at.Leg, At = Moved(p.At, at.FromNm) }),
        Hangs = Each(job.Hangs, Standing.Of, legs, place, (h, at, _, _) => h with { Leg = at.Leg, At = Moved(h.At, at.FromNm) }),
        Lines = job.Lines.Any(l => l.Ground is { Shots.Count: > 0 }) ? [.. job.Lines.Select(l => Replace(l, legs, place))] : job.Lines,
    };

    /// <summary>Everything that stands on the legs.</summary>
    public static IEnumerable<Standing> On(Job job, HashSet<LegId> legs)
        => job.Gates.Select(Standing.Of).Concat(job.Obstacles.Select(Standing.Of)).Concat(job.Works.Select(Standing.Of))
            .Concat(job.Pins.Select(Standing.Of)).Concat(job.Hangs.Select(Standing.Of))
            .Concat(job.Lines.SelectMany(l => l.Ground?.Shots ?? []).Select(Standing.Of)).Where(s => legs.Contains(s.Leg));

    /// <summary>A shot that is taken away leaves the heights behind that were levelled over it.</summary>
    private static Line Replace(Line line, HashSet<LegId> legs, Func<Standing, IEnumerable<Standing>> place)
    {
        if (line.Ground is not { } ground || !ground.Shots.Any(s => legs.Contains(s.Leg))) return line;
        IReadOnlyList<GroundShot> Moved(IReadOnlyList<GroundShot> shots)
            => Each(shots, Standing.Of, legs, place, (s, at, _, _) => s with { Leg = at.Leg, At = Standings.Moved(s.At, at.FromNm) });
        var shots = Moved(ground.Shots);
        return line with { Ground = Levelled.With(ground, shots.Count < ground.Shots.Count ? Moved(Levelled.Heights(ground.Shots)) : shots) };
    }

    private static IReadOnlyList<T> Each<T>(
        IReadOnlyList<T> all, Func<T, Standing> read, HashSet<LegId> legs, Func<Standing, IEnumerable<Standing>> place, Func<T, Standing, int, int, T> write)
    {
        if (!all.Any(one => legs.Contains(read(one).Leg))) return all;
        List<T> kept = new(all.Count);
        foreach (var one in all)
        {
            var standing = read(one);
            if (!legs.Contains(standing.Leg))
            {
                kept.Add(one);
                continue;
            }
            List<Standing> pieces = [.. place(standing)];
            kept.AddRange(pieces.Select((now, piece) => now == standing ? one : write(one, now, piece, pieces.Count)));
        }
        return kept;
    }

    /// <summary>Old posts as counted, shared out by length between the two pieces of a stretch that is cut.</summary>
    private static int? Share(SiteWork work, Standing at, int piece)
    {
        if (work.Posts is not { } posts) return null;
        var part = (at.ToNm - at.FromNm) / (double)(work.To.Nanometres - work.From.Nanometres);
        return piece == 0 ? (int)Math.Round(posts * part) : posts - (int)Math.Round(posts * (1 - part));
    }

    /// <summary>What did not move keeps its very number.</summary>
    private static Length Moved(Length was, long nm) => was.Nanometres == nm ? was : Length.FromNanometres(nm);
}
