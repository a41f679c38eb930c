using Tautline.Engine.Catalog;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Layout;

/// <summary>The fence between two neighbouring terminals, and where its posts stand by level station, terminals included.</summary>
public sealed record Run(Stretch Stretch, ResolvedSpec Spec, IReadOnlyList<long> Stations, long AlongNm, long LargestBayNm, bool Even)
{
    public int Bays => Stations.Count - 1;
}

/// <summary>A line with its runs; openings of gates are no runs.</summary>
public sealed record LaidLine(TerminalLine Terminals, IReadOnlyList<Run> Runs)
{
    public SiteLine Site => Terminals.Site;
}

/// <summary>Divides every run into bays.</summary>
public static class BayStage
{
    public static IReadOnlyList<LaidLine> Divide(IReadOnlyList<TerminalLine> lines, Rules rules, ProblemList problems)
        => [.. lines.Select(l => new LaidLine(l, [.. TerminalStage.Stretches(l).Where(s => !s.IsOpening).Select(s => Divide(l, s, rules, problems))]))];

    private static Run Divide(TerminalLine line, Stretch stretch, Rules rules, ProblemList problems)
    {
        var chain = line.Site.Chain;
        var (from, to) = (chain.Along(stretch.FromNm), chain.Along(stretch.ToNm));
        var spec = chain.LegFrom(stretch.FromNm).Spec;
        var zones = Forbidden(line.Site, spec, rules);
        var pins = Pins(line, stretch, chain, zones, problems);
        List<long> posts = [from];
        foreach (var pin in pins.Append(to)) AddBays(posts, pin, zones, rules, line.Site, problems);
        var stations = posts.Select(p => p == from ? stretch.FromNm : p == to ? stretch.ToNm : chain.Station(p)).ToList();
        var largest = posts.Zip(posts.Skip(1), (a, b) => b - a).Max();
        var even = posts.Count - 1 == RunFormulas.Bays(new Plain((to - from) * 1e-9), rules).Value && pins.Count == 0;
        return new Run(stretch, spec, stations, to - from, largest, even);
    }

    private static void AddBays(List<long> posts, long to, IReadOnlyList<Forbidden> zones, Rules rules, SiteLine site, ProblemList problems)
    {
        var from = posts[^1];
        if (to <= from) return;
        var limit = (rules.BayMax.Length + rules.BayTolerance.Length).Nanometres;
        var placing = BayPlacer.Place(
            to - from, limit, rules.BayMin.Length.Nanometres, [.. zones.Select(z => new Forbidden(z.From - from, z.To - from))]);
        for (var i = 1; i < placing.Posts.Count; i++)
        {
            var bay = placing.Posts[i] - placing.Posts[i - 1];
            if (bay > limit)
                problems.Add(
                    ProblemCode.BayTooLong, TerminalStage.At(site, site.Chain.Station(from + placing.Posts[i - 1])), Length.FromNanometres(bay),
                    rules.BayMax.Length);
            posts.Add(from + placing.Posts[i]);
        }
    }

    /// <summary>No-dig stretches along the ground, widened by their clearance and half a hole.</summary>
    private static List<Forbidden> Forbidden(SiteLine site, ResolvedSpec spec, Rules rules)
    {
        if (site.Zones.Count == 0) return [];
        var half = new Length(PostFormulas.HoleDiameter<Plain>(spec.LinePost, null, rules, rules.HoleLineDiameterMin).Value / 2).Nanometres;
        return [.. site.Zones.Select(z => new Forbidden(
            site.Chain.Along(Math.Max(0, z.FromNm)) - z.ClearanceNm - half, site.Chain.Along(z.ToNm) + z.ClearanceNm + half))];
    }

    /// <summary>Bends and standing posts inside a run, along the ground, each told of where it lies in a no-dig stretch.</summary>
    private static List<long> Pins(TerminalLine line, Stretch stretch, Chain chain, IReadOnlyList<Forbidden> zones, ProblemList problems)
    {
        var pins = line.Bends.Concat(line.Site.Pins.Select(p => p.StationNm))
            .Where(s => s > stretch.FromNm && s < stretch.ToNm).Distinct().Order().Select(chain.Along).ToList();
        foreach (var bend in line.Bends.Where(s => s > stretch.FromNm && s < stretch.ToNm))
            if (zones.Any(z => chain.Along(bend) > z.From && chain.Along(bend) < z.To))
                problems.Add(ProblemCode.PinInZone, TerminalStage.At(line.Site, bend), "at the bend");
        return pins;
    }
}
