using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;
using Tautline.Field.Building;
using Tautline.Field.Log;

namespace Tautline.Field.Cards;

public enum DrillWord
{
    /// <summary>Clear of every stretch the job knows and of the tolerance zone about it.</summary>
    MayDrill,

    /// <summary>The hole reaches into the tolerance zone of a mark: by hand or vacuum only, as the ticket and the law have it.</summary>
    ByHand,

    /// <summary>The hole reaches into a stretch where no post may stand.</summary>
    NoPost,

    /// <summary>It goes into no ground: on a plate or on brackets, or it stands already.</summary>
    NoHole,
}

/// <param name="Post">Index in its line.</param>
/// <param name="Stretch">What it reaches into; nothing where it is clear.</param>
/// <param name="Drilled">By the log.</param>
public sealed record DrillRow(int Line, int Post, DrillWord Word, Obstacle? Stretch, bool Drilled)
{
    /// <summary>The second roller post of a cantilever gate, beside the line; <see cref="Post"/> is its first. The log does not know it.</summary>
    public bool SecondRoller { get; init; }
}

/// <summary>
/// Which holes may be drilled at a moment: only with a locate ticket in force, never in a stretch where no post may stand, and by hand or vacuum within the tolerance
/// zone of a stretch that is kept free for a buried line. It knows the stretches of the job and nothing of other marks on the ground or of private lines.
/// </summary>
/// <param name="Rows">None without a ticket in force, or while the zone is not stated though the job has stretches that want it.</param>
/// <param name="AsksZone">The job keeps stretches free for buried lines, and how wide their tolerance zone is was not said: state law decides.</param>
public sealed record DrillCard(DigWatch Ticket, bool AsksZone, IReadOnlyList<DrillRow> Rows)
{
    /// <summary>Two measures of one place that differ by less are one.</summary>
    private const double Same = 1e-6;

    /// <param name="at">Milliseconds since 1970.</param>
    /// <param name="zone">Width of the tolerance zone on each side of a mark.</param>
    public static DrillCard Of(Plan plan, LogState log, long at, Length? zone)
    {
        var ticket = DigWatch.Of(log, at);
        var stretches = plan.Basis.Lines.SelectMany(l => l.Site.Zones.Select(z => new Stretch(l.Site, z))).ToList();
        var asks = zone is null && stretches.Exists(s => s.IsBuriedLine);
        if (!ticket.MayDig || asks) return new(ticket, asks, []);
        var drilled = Drilled(plan, log);
        var rows = from l in Enumerable.Range(0, plan.Lines.Count)
                   from p in Enumerable.Range(0, plan.Lines[l].Posts.Count)
                   select Row(plan, l, p, stretches, zone ?? Length.Zero, drilled.Contains((l, p)));
        var rollers = from l in Enumerable.Range(0, plan.Lines.Count)
                      from g in plan.Lines[l].Gates
                      where g is { Roller: not null, SecondRoller: not null }
                      select Row(plan, l, g.Roller!.Value, stretches, zone ?? Length.Zero, false, g.SecondRoller);
        return new(ticket, false, [.. rows, .. rollers]);
    }

    /// <summary>The first post of a gate that opens a line belongs to no run: the log says nothing of it, so it is not held to be drilled.</summary>
    private static HashSet<(int Line, int Post)> Drilled(Plan plan, LogState log)
    {
        var rows = Today.Of(plan, log).Rows.Where(r => r.Operation == Operations.Drill).ToList();
        return [.. rows.SelectMany(r => RunPosts.Of(plan.Lines[r.Line])[r.Run].Except(r.Left).Select(p => (r.Line, p)))];
    }

    private static DrillRow Row(Plan plan, int line, int index, List<Stretch> stretches, Length zone, bool drilled, Length? roller = null)
    {
        var post = plan.Lines[line].Posts[index];
        if (roller is { } station && plan.Basis.Lines[line].Site.Chain.Point(station.Nanometres) is var (east, north)) post = post with { Station = station, East = new(east), North = new(north) };
        return Judged(plan, line, index, post, stretches, zone, drilled) with { SecondRoller = roller is not null };
    }

    private static DrillRow Judged(Plan plan, int line, int index, PostPlan post, List<Stretch> stretches, Length zone, bool drilled)
    {
        if (post.Support is Support.Plated or Support.Bracketed or Support.Standing) return new(line, index, DrillWord.NoHole, null, drilled);
        // A driven post has no hole: it reaches as far as its pipe.
        var half = (post.HoleDiameter > Length.Zero ? post.HoleDiameter : plan.Basis.Lines[line].Posts[index].Section.OutsideDiameter) / 2;
        var near = stretches.Select(s => (Stretch: s, Free: s.Distance(plan.Basis.Lines[line].Site, post) - half)).OrderBy(s => s.Free.Metres).ToList();
        if (near.Find(s => s.Free.Metres < s.Stretch.Zone.ClearanceNm * 1e-9 - Same).Stretch is { } closed) return new(line, index, DrillWord.NoPost, closed.Zone.Obstacle, drilled);
        if (near.Find(s => s.Stretch.IsBuriedLine && s.Free.Metres <= zone.Metres + Same).Stretch is { } marked) return new(line, index, DrillWord.ByHand, marked.Zone.Obstacle, drilled);
        return new(line, index, DrillWord.MayDrill, null, drilled);
    }

    /// <summary>A stretch as it lies on the ground: a buried line does not follow the fence round its corner, so posts of other legs and lines are held against it too.</summary>
    private sealed class Stretch(SiteLine line, SiteZone zone)
    {
        private const int Pieces = 16;

        private readonly (double East, double North)[] path =
            [.. Enumerable.Range(0, Pieces + 1).Select(i => line.Chain.Point(zone.FromNm + (zone.ToNm - zone.FromNm) * i / Pieces))];

        public SiteZone Zone => zone;

        public bool IsBuriedLine => zone.Obstacle.Kind == Obstacle.NoDig;

        /// <summary>From the middle of a post to the nearest place of the stretch; zero inside it.</summary>
        public Length Distance(SiteLine of, PostPlan post)
        {
            var straight = Enumerable.Range(0, Pieces).Min(i => Square(path[i], path[i + 1], post.East.Metres, post.North.Metres));
            var along = ReferenceEquals(of, line) ? Along(post.Station.Nanometres) * 1e-9 : double.MaxValue;
            return new(Math.Min(Math.Sqrt(straight), along));
        }

        private long Along(long station) => Math.Max(0, Math.Max(zone.FromNm - station, station - zone.ToNm));

        private static double Square((double East, double North) a, (double East, double North) b, double east, double north)
        {
            var (dx, dy) = (b.East - a.East, b.North - a.North);
            var length = dx * dx + dy * dy;
            var part = length > 0 ? Math.Clamp(((east - a.East) * dx + (north - a.North) * dy) / length, 0, 1) : 0;
            var (x, y) = (east - a.East - part * dx, north - a.North - part * dy);
            return x * x + y * y;
        }
    }
}
