using Tautline.Engine.Catalog;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Layout;

/// <summary>What can only be told once every post has its place.</summary>
public static class PostCheck
{
    public static void Check(IReadOnlyList<SetLine> lines, Rules rules, ProblemList problems)
    {
        foreach (var line in lines)
        {
            Brackets(line, problems);
            foreach (var gate in line.Site.Gates.Where(g => g.Kind == GateKind.Cantilever)) SecondRoller(line, gate, rules, problems);
        }
    }

    /// <summary>Fabric ends or turns on a terminal, and its pull goes into the anchors of the brackets.</summary>
    private static void Brackets(SetLine line, ProblemList problems)
    {
        foreach (var post in line.Posts.Where(p => p.Support == Support.Bracketed && p.Kind != PostKind.Line))
            problems.Add(ProblemCode.BracketTerminal, TerminalStage.At(line.Site, post.StationNm), TerminalStage.Name(post.Kind));
    }

    /// <summary>
    /// The second roller post stands a tail behind the first, beside the fence that runs on there: its hole must miss the holes of the
    /// fence and every no-dig stretch. Past the end of its leg the run-back is told of already.
    /// </summary>
    private static void SecondRoller(SetLine line, SiteGate gate, Rules rules, ProblemList problems)
    {
        var (first, station) = Rollers(line, gate, rules);
        if (station < gate.Leg.StartNm || station > gate.Leg.EndNm) return;
        var near = line.Posts.Where(p => !ReferenceEquals(p, first)).MinBy(p => ApartNm(line.Site, p.StationNm, station))!;
        var apart = Length.FromNanometres(ApartNm(line.Site, near.StationNm, station));
        if (apart.Nanometres < rules.BayMin.Length.Nanometres)
            problems.Add(
                ProblemCode.RollerNearPost, TerminalStage.At(line.Site, near.StationNm), gate.Gate.Id.Value, apart, TerminalStage.Name(near.Kind),
                rules.BayMin.Length);
        var half = new Length(PostFormulas.HoleDiameter<Plain>(first).Value / 2).Nanometres;
        foreach (var zone in line.Site.ZonesAround.Where(z => z.Reaches(station, half)).DistinctBy(z => z.Obstacle.Id))
            problems.Add(ProblemCode.RollerInZone, TerminalStage.At(line.Site, station), gate.Gate.Id.Value, zone.Obstacle.Id.Value);
    }

    /// <summary>Round a closed line the shorter way.</summary>
    private static long ApartNm(SiteLine site, long a, long b)
    {
        var apart = Math.Abs(a - b);
        return site.Line.Closed ? Math.Min(apart, site.Chain.LevelNm - apart) : apart;
    }

    /// <summary>The first roller post and the station of the second, by the opening as the posts stand.</summary>
    private static (PlacedPost First, long SecondNm) Rollers(SetLine line, SiteGate gate, Rules rules)
    {
        var from = line.Posts.Last(p => p.StationNm <= gate.MiddleNm);
        var past = line.Posts.FirstOrDefault(p => p.StationNm > gate.MiddleNm);
        var (to, toNm) = past is null ? (line.Posts[0], line.Site.Chain.LevelNm) : (past, past.StationNm);
        var opening = Length.FromNanometres(toNm - from.StationNm) - (from.Section.OutsideDiameter + to.Section.OutsideDiameter) / 2;
        var tail = new Length(GateFormulas.CantileverTail<Plain>(opening.Metres, rules).Value).Nanometres;
        return gate.RunsBackToEnd ? (to, toNm + tail) : (from, from.StationNm - tail);
    }
}
