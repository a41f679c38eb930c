using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
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
    public static LaidLine Divide(TerminalLine line, Rules rules, ProblemList problems)
        => new(line, [.. TerminalStage.Stretches(line).Where(s => !s.IsOpening).Select(s => Divide(line, s, rules, problems))]);

    private static Run Divide(TerminalLine line, Stretch stretch, Rules rules, ProblemList problems)
    {
        var chain = line.Site.Chain;
        var (from, to) = (chain.Along(stretch.FromNm), chain.Along(stretch.ToNm));
        var spec = chain.LegFrom(stretch.FromNm).Spec;
        var zones = Forbidden(line.Site, spec, rules);
        var told = new ProblemList();
        var pins = Pins(line, stretch, chain, zones, built: false, told);
        var posts = Posts(from, to, pins, zones, rules, line.Site, told);
        var stations = Stations(posts);
        if (!Built(line.Site, stretch).All(b => stations.Any(s => Math.Abs(s - b) <= BuiltFacts.SameStation.Nanometres)))
        {
            told = new ProblemList();
            pins = Pins(line, stretch, chain, zones, built: true, told);
            posts = Posts(from, to, pins, zones, rules, line.Site, told);
            stations = Stations(posts);
        }
        problems.AddRange(told);
        var largest = posts.Zip(posts.Skip(1), (a, b) => b - a).Max();
        var even = posts.Count - 1 == RunFormulas.Bays(new Plain((to - from) * 1e-9), rules).Value && pins.Count == 0
            && chain.LegFrom(stretch.FromNm).Curve is null;
        TellCurves(line.Site, stretch, problems);
        return new Run(stretch, spec, stations, to - from, largest, even);

        List<long> Stations(List<long> along) => [.. along.Select(p => p == from ? stretch.FromNm : p == to ? stretch.ToNm : chain.Station(p))];
    }

    private static List<long> Posts(
        long from, long to, IReadOnlyList<long> pins, IReadOnlyList<Forbidden> zones, Rules rules, SiteLine site, ProblemList problems)
    {
        List<long> posts = [from];
        foreach (var pin in pins.Append(to)) AddBays(posts, pin, zones, rules, site, problems);
        return posts;
    }

    private static IEnumerable<long> Built(SiteLine site, Stretch stretch)
        => site.Pins.Where(p => p.Built && p.StationNm > stretch.FromNm && p.StationNm < stretch.ToNm).Select(p => p.StationNm);

    private static void AddBays(List<long> posts, long to, IReadOnlyList<Forbidden> zones, Rules rules, SiteLine site, ProblemList problems)
    {
        var from = posts[^1];
        if (to <= from) return;
        var limit = Limit(site.Chain, from, rules);
        var placing = BayPlacer.Place(
            to - from, limit, rules.BayMin.Length.Nanometres, [.. zones.Select(z => new Forbidden(z.From - from, z.To - from))]);
        for (var i = 1; i < placing.Posts.Count; i++)
        {
            var bay = placing.Posts[i] - placing.Posts[i - 1];
            if (bay > limit)
                problems.Add(
                    ProblemCode.BayTooLong, TerminalStage.At(site, site.Chain.Station(from + placing.Posts[i - 1])), Length.FromNanometres(bay),
                    Length.FromNanometres(limit));
            posts.Add(from + placing.Posts[i]);
        }
    }

    /// <summary>What the crew must know of every curve in a run: the side of the fabric, the posts' load, the rail.</summary>
    private static void TellCurves(SiteLine site, Stretch stretch, ProblemList problems)
    {
        foreach (var leg in site.Chain.Legs.Where(l => l.Curve is not null && l.StartNm < stretch.ToNm && l.EndNm > stretch.FromNm))
            problems.Add(
                ProblemCode.CurveCare, TerminalStage.At(site, leg.StartNm), leg.Curve!.Curve.Radius,
                leg.Curve.Side == CurveSide.Left ? "right" : "left");
    }

    /// <summary>
    /// Largest bay along the ground from a place on; posts stand where a curve begins and ends, so one limit holds to the next of
    /// them. On a curve the limit is of the chord, which must not be longer than the straight limit brought level.
    /// </summary>
    private static long Limit(Chain chain, long fromAlong, Rules rules)
    {
        var leg = chain.LegFrom(chain.Station(fromAlong));
        var tolerance = rules.BayTolerance.Length;
        if (leg.Curve is not { Curve: var curve }) return (rules.BayMax.Length + tolerance).Nanometres;
        var factor = Math.Sqrt(1 + leg.Grade * leg.Grade);
        var chord = (rules.BayMaxAt(curve.Radius).Length + tolerance) / factor;
        if (chord.Metres >= 2 * curve.Radius.Metres) return (curve.ArcLength * factor).Nanometres + 1;
        return (Curve.FromRadiusAndChord(curve.Radius, chord).Value!.ArcLength * factor).Nanometres;
    }

    /// <summary>No-dig stretches widened by their clearance and half a hole, both level like the hole, brought along the ground.</summary>
    private static List<Forbidden> Forbidden(SiteLine site, ResolvedSpec spec, Rules rules)
    {
        if (site.Zones.Count == 0) return [];
        var half = new Length(PostFormulas.HoleDiameter<Plain>(spec.LinePost, null, rules, rules.HoleLineDiameterMin).Value / 2).Nanometres;
        return [.. site.ZonesAround.Select(z => new Forbidden(
            site.Chain.Along(z.FromNm - z.ClearanceNm - half), site.Chain.Along(z.ToNm + z.ClearanceNm + half)))];
    }

    /// <summary>Bends and standing posts inside a run, along the ground, each told of where it lies in a no-dig stretch.</summary>
    private static List<long> Pins(
        TerminalLine line, Stretch stretch, Chain chain, IReadOnlyList<Forbidden> zones, bool built, ProblemList problems)
    {
        var pins = line.Bends.Concat(line.Site.Pins.Where(p => built || !p.Built).Select(p => p.StationNm))
            .Where(s => s > stretch.FromNm && s < stretch.ToNm).Distinct().Order().Select(chain.Along).ToList();
        foreach (var bend in line.Bends.Where(s => s > stretch.FromNm && s < stretch.ToNm)) TellInZone(line.Site, bend, chain.Along(bend), zones, problems);
        return pins;
    }

    private static void TellInZone(SiteLine site, long bend, long along, IReadOnlyList<Forbidden> zones, ProblemList problems)
    {
        for (var i = 0; i < zones.Count; i++)
            if (along > zones[i].From && along < zones[i].To)
                problems.Add(ProblemCode.PinInZone, TerminalStage.At(site, bend), site.ZonesAround[i].Obstacle.Id.Value);
    }
}
