using Tautline.Engine.Catalog;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Layout;

/// <summary>A line with every post in order of station.</summary>
public sealed record SetLine(LaidLine Laid, IReadOnlyList<PlacedPost> Posts)
{
    public SiteLine Site => Laid.Site;

    public IReadOnlyList<Run> Runs => Laid.Runs;

    /// <summary>The top line over measured ground; nothing where the line runs on its legs' grades.</summary>
    public IReadOnlyList<FitPiece> Pieces { get; init; } = [];
}

/// <summary>
/// Gives every post its section, its spec (the taller of its two sides) and its grade (the steeper). Nothing depends on the
/// end the line is walked from.
/// </summary>
public static class PostStage
{
    public static SetLine Set(LaidLine line, Rules rules)
    {
        var terminals = line.Terminals.Terminals.Select(t => Terminal(line, t, rules));
        var between = line.Runs.SelectMany(r => r.Stations.Skip(1).SkipLast(1).Select(s => LinePost(line, r, s, rules)));
        var posts = terminals.Concat(between).OrderBy(p => p.StationNm).Select((p, i) => p with { Index = i }).ToList();
        return new SetLine(line, posts);
    }

    private static PlacedPost LinePost(LaidLine line, Run run, long station, Rules rules)
    {
        var chain = line.Site.Chain;
        var grade = Steeper(chain.LegAt(station).Grade, chain.LegFrom(station).Grade);
        var stands = line.Site.Keeps("line-posts") || line.Site.Pins.Any(p => p.StationNm == station && p.Stands);
        var ground = GroundAt(line.Site, station);
        var support = stands ? Support.Standing : ground?.Support ?? Named(run.Spec.Spec.LineSupport);
        return new PlacedPost(0, station, PostKind.Line, run.Spec, run.Spec.LinePost, grade, null, rules, support) { DownFace = DownFace(ground) };
    }

    private static PlacedPost Terminal(LaidLine line, Terminal terminal, Rules rules)
    {
        var (before, after) = Sides(line.Site, terminal.StationNm);
        var spec = Taller(before.Spec, after.Spec);
        var section = SectionOf(line.Site, terminal);
        var ground = GroundAt(line.Site, terminal.StationNm);
        var support = terminal.Kind != PostKind.Tie ? ground?.Support ?? Named(spec.Spec.TerminalSupport) : Support.Standing;
        return new PlacedPost(
            0, terminal.StationNm, terminal.Kind, spec, section, Steeper(before.Grade, after.Grade), terminal.Gate?.Row, rules, support)
        {
            DownFace = DownFace(ground),
            Beam = terminal.Gate is { Kind: GateKind.Overhead } overhead ? overhead.Gate.Clearance : null,
            Woven = terminal.Kind == PostKind.Tie && (terminal.StationNm == 0 ? line.Site.Line.Start : line.Site.Line.Finish)?.Fabric == "woven",
        };
    }

    /// <summary>The pipe of a terminal: of the standing post it ties to, else the heaviest that its gate and its two sides ask.</summary>
    internal static Section SectionOf(SiteLine site, Terminal terminal)
    {
        if (terminal.Kind == PostKind.Tie) return (terminal.StationNm == 0 ? site.TieAtStart : site.TieAtFinish)!;
        var (before, after) = Sides(site, terminal.StationNm);
        var section = Heavier(before.Spec.TerminalPost, after.Spec.TerminalPost);
        return terminal.Gate is { } gate ? Heavier(gate.Post, section) : section;
    }

    /// <summary>The legs on both sides of a station; at the end of an open line twice the same.</summary>
    internal static (SiteLeg Before, SiteLeg After) Sides(SiteLine site, long station)
    {
        var legs = site.Chain.Legs;
        if (site.Line.Closed && station == site.Chain.LevelNm) station = 0;
        var after = site.Chain.LegFrom(station);
        return station == 0 ? (site.Line.Closed ? legs[^1] : legs[0], legs[0]) : (site.Chain.LegAt(station), after);
    }

    /// <summary>What a slab or rock asks for at a station; the last stretch entered wins where two overlap.</summary>
    private static SiteGround? GroundAt(SiteLine site, long station)
        => site.Grounds.LastOrDefault(g => Holds(g, station) || (site.Line.Closed && station == 0 && Holds(g, site.Chain.LevelNm)));

    private static Length? DownFace(SiteGround? ground) => ground is { Support: Support.Bracketed } wall ? wall.Obstacle.Depth : null;

    /// <summary>Wet ground leaves the holding to the spec.</summary>
    private static bool Holds(SiteGround ground, long station) => ground.Support is not null && station >= ground.FromNm && station <= ground.ToNm;

    internal static Support Named(string? name) => name switch
    {
        "driven" => Support.Driven,
        "cored" => Support.Cored,
        "plated" => Support.Plated,
        _ => Support.Concrete,
    };

    private static double Steeper(double a, double b) => Math.Abs(a) > Math.Abs(b) ? a : b;

    /// <summary>At one height the spec with barbed wire, which the post must carry, else the job's first.</summary>
    private static ResolvedSpec Taller(ResolvedSpec a, ResolvedSpec b)
    {
        static (long, bool, int) Rank(ResolvedSpec spec) => (spec.Height.Nanometres, spec.Barb is not null, -spec.Index);
        return Rank(a).CompareTo(Rank(b)) >= 0 ? a : b;
    }

    /// <summary>The thicker pipe, of two equally thick ones the one with more steel.</summary>
    private static Section Heavier(Section a, Section b)
    {
        static (long, double) Rank(Section section) => (section.OutsideDiameter.Nanometres, section.Weight.KilogramsPerMetre);
        return Rank(a).CompareTo(Rank(b)) >= 0 ? a : b;
    }
}
