using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>Reads the work along one line: old fence taken out, ground cleared.</summary>
internal static class WorkReader
{
    public static IEnumerable<SiteTask> Read(Job job, Dictionary<LegId, SiteLeg> legs, LineId line, ProblemList problems)
    {
        for (var i = 0; i < job.Works.Count; i++)
            if (legs.TryGetValue(job.Works[i].Leg, out var leg)
                && Read(job.Works[i], leg, new($"works[{i}]", line, Length.FromNanometres(leg.StartNm) + job.Works[i].From), problems) is { } task)
                yield return task;
    }

    private static SiteTask? Read(SiteWork work, SiteLeg leg, Place place, ProblemList problems)
    {
        if (work.Kind is not (SiteWork.Removal or SiteWork.Clearing))
        {
            problems.Add(ProblemCode.WorkKind, place, work.Kind);
            return null;
        }
        SpecStage.Choice(work.PostsOut, $"{place.Path}.postsOut", problems, "pulled", "cut");
        var level = Length.FromNanometres(leg.LevelNm);
        var clears = work.Kind == SiteWork.Clearing;
        if (!(work.From.Metres >= 0 && work.To.Metres > work.From.Metres && work.To.Metres <= level.Metres + 1e-6)
            || work.Posts < 0 || (clears && work.Width is not { Metres: > 0 and < 1000 }))
        {
            problems.Add(ProblemCode.WorkRange, place, work.From, work.To, level);
            return null;
        }
        return new SiteTask(
            clears ? WorkKind.Clearing : WorkKind.Removal, work.Id.Value, leg, leg.StartNm + work.From.Nanometres, leg.StartNm + work.To.Nanometres,
            work.Width ?? Length.Zero, Length.Zero, work.Posts, work.PostsOut != "cut");
    }
}
