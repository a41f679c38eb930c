using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Site;

/// <summary>Tells what a person should look at again about the no-dig stretches of a line; the plan keeps off all of them in any case.</summary>
internal static class ZoneCheck
{
    public static void Check(SiteLine line, Job job, ProblemList problems)
    {
        if (line.Zones.Count == 0) return;
        CheckOverlaps(line, job, problems);
        foreach (var pin in line.Pins) CheckPin(line, pin, problems);
    }

    /// <summary>In order of station each stretch is held against the one before it that goes furthest.</summary>
    private static void CheckOverlaps(SiteLine line, Job job, ProblemList problems)
    {
        SiteZone? furthest = null;
        foreach (var zone in line.Zones.OrderBy(z => z.FromNm).ThenBy(z => z.ToNm))
        {
            if (furthest is not null && zone.FromNm < furthest.ToNm) Tell(line, furthest, zone, job, problems);
            if (furthest is null || zone.ToNm > furthest.ToNm) furthest = zone;
        }
    }

    private static void Tell(SiteLine line, SiteZone first, SiteZone second, Job job, ProblemList problems)
    {
        var at = job.Obstacles.TakeWhile(o => !ReferenceEquals(o, second.Obstacle)).Count();
        var common = Math.Min(first.ToNm, second.ToNm) - second.FromNm;
        problems.Add(
            ProblemCode.ZonesOverlap, new($"obstacles[{at}]", line.Line.Id, Length.FromNanometres(second.FromNm)), first.Obstacle.Id.Value,
            second.Obstacle.Id.Value, Length.FromNanometres(common));
    }

    /// <summary>A built or pinned post that stands where no line post would have been planned.</summary>
    private static void CheckPin(SiteLine line, SitePin pin, ProblemList problems)
    {
        var spec = line.Chain.LegAt(pin.StationNm).Spec;
        var hole = PostFormulas.HoleDiameter<Plain>(spec.LinePost, null, spec.Rules, spec.Rules.HoleLineDiameterMin).Value;
        var half = new Length(hole / 2).Nanometres;
        foreach (var zone in line.ZonesAround.Where(z => z.Reaches(pin.StationNm, half)).DistinctBy(z => z.Obstacle.Id))
            problems.Add(
                ProblemCode.BuiltInZone, new(pin.Path, line.Line.Id, Length.FromNanometres(pin.StationNm)), pin.Id,
                zone.Obstacle.Id.Value);
    }
}
