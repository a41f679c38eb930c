using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>What the obstacles of a line ask for.</summary>
/// <param name="Zones">Where no post may stand.</param>
/// <param name="Grounds">Where posts are held in another way.</param>
/// <param name="Closures">Openings under the fence to close.</param>
internal sealed record Stretches(List<SiteZone> Zones, List<SiteGround> Grounds, List<SiteTask> Closures);

/// <summary>Reads the stretches of one line where posts may not stand, or stand in another way.</summary>
internal static class ObstacleReader
{
    private static readonly string[] known =
        [Obstacle.NoDig, Obstacle.Slab, Obstacle.Rock, Obstacle.Wall, Obstacle.Tree, Obstacle.Wet, Obstacle.Swale, Obstacle.Culvert];

    public static Stretches Read(Job job, Dictionary<LegId, SiteLeg> legs, LineId line, ProblemList problems)
    {
        var found = new Stretches([], [], []);
        for (var i = 0; i < job.Obstacles.Count; i++)
            if (legs.TryGetValue(job.Obstacles[i].Leg, out var leg))
                Read(job.Obstacles[i], leg, new($"obstacles[{i}]", line, Length.FromNanometres(leg.StartNm) + job.Obstacles[i].From), found, problems);
        return found;
    }

    private static void Read(Obstacle obstacle, SiteLeg leg, Place place, Stretches found, ProblemList problems)
    {
        if (!known.Contains(obstacle.Kind))
        {
            problems.Add(ProblemCode.ObstacleKind, place, obstacle.Kind);
            return;
        }
        if (!InRange(obstacle, leg))
        {
            problems.Add(ProblemCode.ObstacleRange, place, obstacle.From, obstacle.To, Length.FromNanometres(leg.LevelNm));
            return;
        }
        var (from, to) = (leg.StartNm + obstacle.From.Nanometres, leg.StartNm + obstacle.To.Nanometres);
        if (obstacle.Kind is Obstacle.NoDig or Obstacle.Tree or Obstacle.Swale or Obstacle.Culvert)
            found.Zones.Add(new SiteZone(obstacle, from, to, obstacle.Clearance.Nanometres));
        if (obstacle.Kind is Obstacle.Slab or Obstacle.Rock or Obstacle.Wall or Obstacle.Wet)
            found.Grounds.Add(new SiteGround(obstacle, from, to, SupportOf(obstacle, place, problems)));
        if (obstacle.Kind == Obstacle.Tree) problems.Add(ProblemCode.TreeInLine, place, obstacle.Id.Value);
        if (obstacle.Kind == Obstacle.Wet) problems.Add(ProblemCode.WetGround, place, obstacle.Id.Value);
        if (obstacle.Kind == Obstacle.Wall && obstacle.Support == "bracketed") WallFace.Check(obstacle, leg, LargestPost(obstacle, leg), place, problems);
        else if (obstacle.Kind == Obstacle.Wall) CheckWall(obstacle, leg, place, problems);
        if (obstacle.Kind is Obstacle.Swale or Obstacle.Culvert) Close(obstacle, leg, from, to, place, found, problems);
    }

    /// <summary>Nothing where the ground leaves the holding to the spec.</summary>
    private static Support? SupportOf(Obstacle obstacle, Place place, ProblemList problems)
    {
        SpecStage.Choice(obstacle.Support, $"{place.Path}.support", problems, obstacle.Kind == Obstacle.Wall ? ["cored", "plated", "bracketed"] : ["cored", "plated"]);
        var usual = obstacle.Kind switch { Obstacle.Wet => (Support?)null, Obstacle.Wall => Support.Plated, _ => Support.Cored };
        return obstacle.Support switch { "bracketed" => Support.Bracketed, "plated" => Support.Plated, "cored" => Support.Cored, _ => usual };
    }

    /// <summary>Anchors of a plate stand an inch outside the post, a core takes the post and what the rule adds; each keeps its distance from both edges.</summary>
    private static void CheckWall(Obstacle wall, SiteLeg leg, Place place, ProblemList problems)
    {
        if (wall.Width is not { } width)
        {
            problems.Add(ProblemCode.WallWidthQuestion, place, wall.Id.Value);
            return;
        }
        var rules = leg.Spec.Rules;
        var hole = LargestPost(wall, leg) + (wall.Support == "cored" ? rules.CoreWider.Length : Length.FromInches(2));
        var needs = hole + rules.AnchorEdge.Length * 2;
        if (width.Nanometres < needs.Nanometres) problems.Add(ProblemCode.WallEdge, place, width, needs);
    }

    private static Length LargestPost(Obstacle wall, SiteLeg leg)
    {
        var ends = wall.From.Metres <= 0 || (leg.StartNm + wall.To.Nanometres) >= leg.EndNm; // a vertex on the wall takes a terminal
        return ends ? Length.Max(leg.Spec.LinePost.OutsideDiameter, leg.Spec.TerminalPost.OutsideDiameter) : leg.Spec.LinePost.OutsideDiameter;
    }

    private static void Close(Obstacle dip, SiteLeg leg, long from, long to, Place place, Stretches found, ProblemList problems)
    {
        if (dip.Depth is not { Metres: > 0 and < 100 } depth)
        {
            problems.Add(ProblemCode.ClosureDepth, place, dip.Id.Value, dip.Kind);
            return;
        }
        var kind = dip.Kind == Obstacle.Swale ? WorkKind.Swale : WorkKind.Culvert;
        found.Closures.Add(new SiteTask(kind, dip.Id.Value, leg, from, to, Length.Zero, depth, null, false));
    }

    private static bool InRange(Obstacle obstacle, SiteLeg leg)
        => obstacle.From.Metres >= 0 && obstacle.To.Metres > obstacle.From.Metres && obstacle.To.Metres <= leg.LevelNm * 1e-9 + 1e-6
           && obstacle.Clearance.Metres is >= 0 and < 1000;
}
