using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Layout;

/// <summary>
/// Puts the two posts of a gate on their line. Where a jamb would touch an end or corner post, one post serves both and the gate
/// moves so that its opening keeps its width.
/// </summary>
internal static class JambPlacer
{
    public static void Place(SiteLine line, SiteGate gate, List<Terminal> terminals, ProblemList problems)
    {
        var radius = gate.Post.OutsideDiameter.Nanometres / 2;
        var (near, far) = (gate.NearFaceNm - radius, gate.FarFaceNm + radius);
        var (atNear, atFar) = (Touching(line, near, gate, terminals), Touching(line, far, gate, terminals));
        var moved = atNear is { } a ? a - near : atFar is { } b ? b - far : 0;
        var (from, to) = (near + moved, atNear is not null && atFar is { } c ? c : far + moved);
        Tell(line, gate, moved, to - from - 2 * radius, problems);
        Replace(line, from, gate, terminals);
        Replace(line, to, gate, terminals);
        var grade = line.Chain.GradeBetween(gate.Leg, gate.NearFaceNm, gate.FarFaceNm);
        if (Math.Abs(grade) > 0.02) problems.Add(ProblemCode.GateOnSlope, TerminalStage.At(line, gate.NearFaceNm), gate.Gate.Id.Value, grade * 100);
    }

    /// <summary>The terminal whose post would overlap a jamb's.</summary>
    private static long? Touching(SiteLine line, long station, SiteGate gate, List<Terminal> terminals)
    {
        var reach = gate.Post.OutsideDiameter.Nanometres;
        foreach (var terminal in terminals)
        {
            if (Math.Abs(terminal.StationNm - station) <= reach) return terminal.StationNm;
            if (line.Line.Closed && terminal.StationNm == 0 && line.Chain.LevelNm - station <= reach) return line.Chain.LevelNm;
        }
        return null;
    }

    private static void Tell(SiteLine line, SiteGate gate, long moved, long openingNm, ProblemList problems)
    {
        var place = TerminalStage.At(line, gate.NearFaceNm);
        if (moved != 0) problems.Add(ProblemCode.GateMoved, place, gate.Gate.Id.Value, Length.FromNanometres(Math.Abs(moved)));
        if (Math.Abs(openingNm - gate.OpeningNm) > Length.NmPer64thInch)
            problems.Add(
                ProblemCode.GateOpeningChanged, place, gate.Gate.Id.Value, Length.FromNanometres(openingNm), Length.FromNanometres(gate.OpeningNm));
    }

    /// <summary>One post serves everything at its station; where two gates share it, it is the one's that asks more of it.</summary>
    private static void Replace(SiteLine line, long station, SiteGate gate, List<Terminal> terminals)
    {
        var at = line.Line.Closed && station == line.Chain.LevelNm ? 0 : station;
        var other = terminals.FirstOrDefault(t => t.StationNm == at)?.Gate;
        var heavier = other is not null && Asked(other).CompareTo(Asked(gate)) > 0 ? other : gate;
        terminals.RemoveAll(t => t.StationNm == at);
        terminals.Add(new Terminal(at, PostKind.Gate, heavier));
    }

    private static (long Post, long Wide, long Deep) Asked(SiteGate gate)
        => (gate.Post.OutsideDiameter.Nanometres, gate.Row.HoleDiameter.Nanometres, gate.Row.HoleDepth.Nanometres);
}
