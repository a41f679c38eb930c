using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Layout;

/// <summary>Cuts a line with its posts into the pieces over which one top line runs, and states each as a fit.</summary>
internal static class FitPieces
{
    /// <summary>A level bay on a slope touches the ground at its upper end and is filled at its lower one: common practice, no source.</summary>
    private const double DiggingDearer = 2;

    internal sealed record Piece(ResolvedSpec Spec, IReadOnlyList<long> Stations, FitInput Input);

    public static IEnumerable<Piece> Of(SetLine line)
    {
        var posts = line.Posts.ToDictionary(p => p.StationNm);
        List<Run> runs = [];
        foreach (var run in line.Runs)
        {
            if (runs.Count > 0 && !GoesOn(runs[^1], run))
            {
                yield return PieceOf(line, runs, posts);
                runs = [];
            }
            runs.Add(run);
        }
        if (runs.Count > 0) yield return PieceOf(line, runs, posts);
    }

    /// <summary>The gap posts are set for: as the job asks, within the limits; else halfway between them.</summary>
    public static double Gap(Line line, ResolvedSpec spec)
    {
        var (least, most) = (spec.Rules.GapMin.Value, spec.Rules.GapMax.Value);
        return line.Fit?.Gap is { } asked ? Math.Clamp(asked.Metres, least, Math.Max(least, most)) : (least + Math.Max(least, most)) / 2;
    }

    private static bool GoesOn(Run before, Run after)
        => before.Stretch.ToNm == after.Stretch.FromNm && before.Spec.Height.Nanometres == after.Spec.Height.Nanometres;

    private static Piece PieceOf(SetLine line, List<Run> runs, Dictionary<long, PlacedPost> posts)
    {
        long[] stations = [.. runs[0].Stations, .. runs.Skip(1).SelectMany(r => r.Stations.Skip(1))];
        var ends = runs.SelectMany(r => new[] { r.Stations[0], r.Stations[^1] }).ToHashSet();
        var (site, spec) = (line.Site, runs[0].Spec);
        var limits = LimitsOf(site.Line, spec);
        var fitPosts = stations.Select(s => PostOf(site, s, ends.Contains(s), Above(posts, site, s, limits.WantedGap, spec))).ToList();
        var input = new FitInput(
            fitPosts, site.Chain.Ground!.Within(stations[0], stations[^1]), limits, FitReader.Allowed(site.Line.Fit), FitReader.Mode(site.Line.Fit),
            spec.Rules.GradingWidth.Value);
        return new Piece(spec, stations, input);
    }

    private static FitLimits LimitsOf(Line line, ResolvedSpec spec)
    {
        var rules = spec.Rules;
        return new FitLimits(
            spec.Height.Metres, rules.GapMin.Value, Math.Max(rules.GapMin.Value, rules.GapMax.Value), Gap(line, spec), rules.RakeMax.Value, rules.TerminalGradeChange.Value,
            line.Fit?.Mode == "stepped" ? DiggingDearer : 1);
    }

    private static FitPost PostOf(SiteLine site, long station, bool terminal, double above)
        => new(station * 1e-9, terminal, Pinned(site, station), above);

    /// <summary>A top that is settled: of a post a person set it for, or of the fence the line ties to.</summary>
    private static double? Pinned(SiteLine site, long station)
    {
        if (site.Pins.FirstOrDefault(p => p.StationNm == station && p.Top is not null) is { } pin) return pin.Top!.Value.Metres;
        if (site.Line.Closed) return null;
        if (station == 0) return site.Line.Start?.Top?.Metres;
        return station == site.Chain.LevelNm ? site.Line.Finish?.Top?.Metres : null;
    }

    /// <summary>How high the fabric's top may lie over the ground with the post that level ground would take.</summary>
    private static double Above(Dictionary<long, PlacedPost> posts, SiteLine site, long station, double gap, ResolvedSpec spec)
    {
        var post = posts[site.Line.Closed && station == site.Chain.LevelNm ? 0 : station];
        if (post.Support == Support.Standing) return double.PositiveInfinity;
        var rules = post.Rules;
        var depth = PostFormulas.HoleDepth<Plain>(post).Value;
        var level = spec.Height.Metres + gap;
        var over = post.Kind == PostKind.Line ? -rules.PostLineBelow.Value : rules.PostTerminalAbove.Value;
        var cut = PostFormulas.CutLength(new Plain(level + over), new Plain(depth), post.ConcreteBelow);
        return level + PostFormulas.OrderLength(cut, rules).Value - cut.Value;
    }
}
