using Tautline.Engine.Catalog;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Layout;

/// <summary>A terminal on its line. A gate's jamb names the gate; between its two jambs there is no fence.</summary>
public sealed record Terminal(long StationNm, PostKind Kind, SiteGate? Gate = null);

/// <summary>What lies between two neighbouring terminals: fence, or the opening of a gate.</summary>
public sealed record Stretch(long FromNm, long ToNm, bool IsOpening);

/// <summary>The terminals of a line in order of station, and the vertices between them where a line post must stand.</summary>
public sealed record TerminalLine(SiteLine Site, IReadOnlyList<Terminal> Terminals, IReadOnlyList<long> Bends);

/// <summary>Finds where terminals stand: ends, corners, changes of spec and grade, jambs of gates, pull posts.</summary>
public static class TerminalStage
{
    private const double StraightDegrees = 0.05;
    private const double SameGrade = 1e-6;

    public static TerminalLine Place(SiteLine line, Rules rules, ProblemList problems)
    {
        List<Terminal> terminals = [];
        List<long> bends = [];
        foreach (var (station, kind) in Vertices(line, rules, problems))
            if (kind == PostKind.Line) bends.Add(station);
            else terminals.Add(new Terminal(station, kind));
        foreach (var station in line.Breaks)
        {
            bends.Remove(station);
            if (terminals.TrueForAll(t => t.StationNm != station)) terminals.Add(new Terminal(station, PostKind.GradeBreak));
        }
        foreach (var gate in line.Gates) JambPlacer.Place(line, gate, terminals, problems);
        terminals.Sort((a, b) => a.StationNm.CompareTo(b.StationNm));
        CheckApart(line, terminals, rules, problems);
        AddPullPosts(line, terminals, rules);
        CheckZones(line, terminals, rules, problems);
        return new TerminalLine(line, terminals, bends);
    }

    /// <summary>The stretches between terminals, closed lines back to their start.</summary>
    public static IEnumerable<Stretch> Stretches(TerminalLine line)
    {
        var terminals = line.Terminals;
        for (var i = 1; i < terminals.Count; i++) yield return Between(terminals[i - 1], terminals[i], terminals[i].StationNm);
        if (line.Site.Line.Closed) yield return Between(terminals[^1], terminals[0], line.Site.Chain.LevelNm);
    }

    private static Stretch Between(Terminal from, Terminal to, long toNm)
        => new(from.StationNm, toNm, Opens(from.Gate, from.StationNm, toNm) || Opens(to.Gate, from.StationNm, toNm));

    private static bool Opens(SiteGate? gate, long fromNm, long toNm) => gate is not null && gate.MiddleNm > fromNm && gate.MiddleNm < toNm;

    /// <summary>Every vertex where a post must stand, with its kind; Line for a bend that is no terminal.</summary>
    private static IEnumerable<(long Station, PostKind Kind)> Vertices(SiteLine line, Rules rules, ProblemList problems)
    {
        var legs = line.Chain.Legs;
        if (line.Line.Closed) yield return (0, AtStart(legs[^1], legs[0], rules, line, problems));
        else yield return (0, line.TieAtStart is null ? PostKind.End : PostKind.Tie);
        for (var i = 1; i < legs.Count; i++)
            if (At(legs[i - 1], legs[i], rules, line, problems) is { } kind) yield return (legs[i].StartNm, kind);
        if (!line.Line.Closed) yield return (line.Chain.LevelNm, line.TieAtFinish is null ? PostKind.End : PostKind.Tie);
    }

    /// <summary>A closed line always has a terminal at its start; where it does not turn there it is a pull post.</summary>
    private static PostKind AtStart(SiteLeg last, SiteLeg first, Rules rules, SiteLine line, ProblemList problems)
        => At(last, first, rules, line, problems) is { } kind and not PostKind.Line ? kind : PostKind.Pull;

    private static PostKind? At(SiteLeg before, SiteLeg after, Rules rules, SiteLine line, ProblemList problems)
    {
        var turn = Math.Abs(Direction.Between(before.Ahead, after.Heading));
        var change = Math.Abs(after.Grade - before.Grade);
        if (turn > rules.TerminalTurn.Value) return PostKind.Corner;
        if (before.Spec.Index != after.Spec.Index) return PostKind.Change;
        if (change > rules.TerminalGradeChange.Value)
        {
            problems.Add(ProblemCode.GradeBreakTerminal, At(line, after.StartNm), change * 100);
            return PostKind.GradeBreak;
        }
        return turn > StraightDegrees || change > SameGrade || before.Curve is not null || after.Curve is not null ? PostKind.Line : null;
    }

    private static void CheckApart(SiteLine line, List<Terminal> terminals, Rules rules, ProblemList problems)
    {
        var least = rules.BayMin.Length;
        foreach (var (a, b) in terminals.Zip(terminals.Skip(1)))
            CheckApart(line, a, b, b.StationNm - a.StationNm, least, problems);
        if (line.Line.Closed && terminals.Count > 1)
            CheckApart(line, terminals[^1], terminals[0], line.Chain.LevelNm + terminals[0].StationNm - terminals[^1].StationNm, least, problems);
    }

    private static void CheckApart(SiteLine line, Terminal a, Terminal b, long apartNm, Length least, ProblemList problems)
    {
        if (apartNm < least.Nanometres && !(a.Gate is not null && ReferenceEquals(a.Gate, b.Gate)))
            problems.Add(ProblemCode.PostsClose, At(line, b.StationNm), Length.FromNanometres(apartNm), least);
    }

    private static void AddPullPosts(SiteLine line, List<Terminal> terminals, Rules rules)
    {
        var stretches = Stretches(new TerminalLine(line, [.. terminals], [])).Where(s => !s.IsOpening).ToList();
        foreach (var stretch in stretches)
        {
            var (from, to) = (line.Chain.Along(stretch.FromNm), line.Chain.Along(stretch.ToNm));
            var longest = rules.RunMaxOf(line.Chain.LegFrom(stretch.FromNm).Spec.TopRail);
            var limit = (longest.Length + rules.BayTolerance.Length).Nanometres;
            var parts = (to - from - 1) / limit + 1;
            List<long> taken = [stretch.FromNm, stretch.ToNm];
            for (var i = 1; i < parts; i++)
            {
                var even = line.Chain.Station(from + (to - from) / parts * i);
                if (PullPost(line, even, stretch, taken, rules) is not { } station) continue;
                taken.Add(station);
                terminals.Add(new Terminal(station, PostKind.Pull));
            }
        }
        terminals.Sort((a, b) => a.StationNm.CompareTo(b.StationNm));
    }

    /// <summary>
    /// A pull post may stand anywhere near: out of a no-dig stretch to its nearer edge. Where another terminal is too near to
    /// that edge it stays where it is, to be told of; it is left out where it would hit a terminal there too.
    /// </summary>
    private static long? PullPost(SiteLine line, long even, Stretch stretch, List<long> taken, Rules rules)
    {
        bool IsClear(long station) => station > stretch.FromNm && station < stretch.ToNm && taken.TrueForAll(t => Math.Abs(t - station) >= rules.BayMin.Length.Nanometres);
        var half = HalfHole(new Terminal(even, PostKind.Pull), line, rules);
        foreach (var station in OutsideZones(line, even, half).OrderBy(s => Math.Abs(s - even)).Append(even))
            if (IsClear(station)) return station;
        return null;
    }

    /// <summary>The station itself, or the two edges of all the no-dig stretches around it that run into each other.</summary>
    private static IEnumerable<long> OutsideZones(SiteLine line, long station, long half)
    {
        var (from, to) = (station, station);
        foreach (var zone in line.ZonesAround.OrderBy(z => z.FromNm - z.ClearanceNm))
            if (zone.Reaches(to, half)) to = zone.ToNm + zone.ClearanceNm + half;
        foreach (var zone in line.ZonesAround.OrderByDescending(z => z.ToNm + z.ClearanceNm))
            if (zone.Reaches(from, half)) from = zone.FromNm - zone.ClearanceNm - half;
        return new[] { from, to }.Distinct();
    }

    /// <summary>A terminal whose hole would reach into a no-dig stretch or its clearance.</summary>
    private static void CheckZones(SiteLine line, List<Terminal> terminals, Rules rules, ProblemList problems)
    {
        if (line.Zones.Count == 0) return;
        foreach (var terminal in terminals)
        {
            var half = HalfHole(terminal, line, rules);
            foreach (var zone in line.ZonesAround.Where(z => z.Reaches(terminal.StationNm, half)).DistinctBy(z => z.Obstacle.Id))
                problems.Add(ProblemCode.TerminalInZone, At(line, terminal.StationNm), Name(terminal.Kind), zone.Obstacle.Id.Value);
        }
    }

    private static long HalfHole(Terminal terminal, SiteLine line, Rules rules)
    {
        var post = PostStage.SectionOf(line, terminal);
        return new Length(PostFormulas.HoleDiameter<Plain>(post, terminal.Gate?.Row, rules, rules.HoleTerminalDiameterMin).Value / 2).Nanometres;
    }

    internal static Place At(SiteLine line, long stationNm) => new("", line.Line.Id, Length.FromNanometres(stationNm));

    internal static string Name(PostKind kind) => kind switch
    {
        PostKind.End => "end",
        PostKind.Corner => "corner",
        PostKind.Gate => "gate",
        PostKind.Pull => "pull",
        PostKind.GradeBreak => "grade-break",
        PostKind.Line => "line",
        PostKind.Tie => "standing",
        _ => "change",
    };
}
