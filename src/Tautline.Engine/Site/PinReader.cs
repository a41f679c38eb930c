using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>Reads the line posts whose places are settled: those a person pinned, and those that were built.</summary>
internal static class PinReader
{
    public static IReadOnlyList<SitePin> Read(Job job, BuiltFacts built, Dictionary<LegId, SiteLeg> legs, ProblemList problems)
    {
        List<SitePin> pins = [];
        for (var i = 0; i < job.Pins.Count; i++)
        {
            var pin = job.Pins[i];
            if (!legs.TryGetValue(pin.Leg, out var leg)) continue;
            if (Station(leg, pin.At) is { } station) pins.Add(new SitePin(pin.Id.Value, $"pins[{i}]", station, pin.Stands, pin.Top));
            else problems.Add(ProblemCode.PinOutside, new($"pins[{i}].at"), pin.Id.Value, pin.At, Length.FromNanometres(leg.LevelNm));
        }
        foreach (var post in built.Posts)
        {
            if (!legs.TryGetValue(post.Leg, out var leg)) continue;
            if (Station(leg, post.FromLegStart) is { } station) pins.Add(new SitePin(post.Id.Value, "built", station, false, post.Top) { Built = true });
            else problems.Add(ProblemCode.BuiltOutside, new("built"), post.Id.Value, post.FromLegStart, Length.FromNanometres(leg.LevelNm));
        }
        return pins;
    }

    /// <summary>Nothing where the place is not on the leg.</summary>
    private static long? Station(SiteLeg leg, Length at)
        => at.Metres >= 0 && at.Metres <= leg.LevelNm * 1e-9 + 1e-6 ? leg.StartNm + Math.Min(leg.LevelNm, at.Nanometres) : null;
}
