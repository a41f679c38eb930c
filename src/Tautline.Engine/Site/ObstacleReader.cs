using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>Reads the stretches of one line where posts may not stand, or stand in another way.</summary>
internal static class ObstacleReader
{
    public static (IReadOnlyList<SiteZone> Zones, IReadOnlyList<SiteGround> Grounds) Read(
        Job job, Dictionary<LegId, SiteLeg> legs, LineId line, ProblemList problems)
    {
        List<SiteZone> zones = [];
        List<SiteGround> grounds = [];
        for (var i = 0; i < job.Obstacles.Count; i++)
            if (legs.TryGetValue(job.Obstacles[i].Leg, out var leg)) Read(job.Obstacles[i], i, leg, line, zones, grounds, problems);
        return (zones, grounds);
    }

    private static void Read(
        Obstacle obstacle, int index, SiteLeg leg, LineId line, List<SiteZone> zones, List<SiteGround> grounds, ProblemList problems)
    {
        var place = new Place($"obstacles[{index}]", line, new Length(leg.StartNm * 1e-9) + obstacle.From);
        if (obstacle.Kind is not (Obstacle.NoDig or Obstacle.Slab or Obstacle.Rock))
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
        if (obstacle.Kind == Obstacle.NoDig) zones.Add(new SiteZone(obstacle, from, to, obstacle.Clearance.Nanometres));
        else grounds.Add(new SiteGround(obstacle, from, to, SupportOf(obstacle, $"obstacles[{index}].support", problems)));
    }

    private static Support SupportOf(Obstacle obstacle, string path, ProblemList problems)
    {
        if (obstacle.Support is not (null or "cored" or "plated"))
            problems.Add(ProblemCode.SpecChoice, new(path), obstacle.Support, "\"cored\" or \"plated\"");
        return obstacle.Support == "plated" ? Support.Plated : Support.Cored;
    }

    private static bool InRange(Obstacle obstacle, SiteLeg leg)
        => obstacle.From.Metres >= 0 && obstacle.To.Metres > obstacle.From.Metres && obstacle.To.Metres <= leg.LevelNm * 1e-9 + 1e-6
           && obstacle.Clearance.Metres is >= 0 and < 1000;
}
