using Tautline.Engine.Catalog;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Layout;

/// <summary>A line with every post in order of station.</summary>
public sealed record SetLine(LaidLine Laid, IReadOnlyList<PlacedPost> Posts)
{
    public SiteLine Site => Laid.Site;

    public IReadOnlyList<Run> Runs => Laid.Runs;
}

/// <summary>Gives every post its section, its spec (the taller of its two sides) and its grade (the steeper).</summary>
public static class PostStage
{
    public static IReadOnlyList<SetLine> Set(IReadOnlyList<LaidLine> lines, Rules rules) => [.. lines.Select(l => Set(l, rules))];

    private static SetLine Set(LaidLine line, Rules rules)
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
        return new PlacedPost(0, station, PostKind.Line, run.Spec, run.Spec.LinePost, grade, null, rules);
    }

    private static PlacedPost Terminal(LaidLine line, Terminal terminal, Rules rules)
    {
        var (before, after) = Sides(line.Site, terminal.StationNm);
        var spec = before.Spec.Height.Nanometres > after.Spec.Height.Nanometres ? before.Spec : after.Spec;
        var section = terminal.Gate is { } gate ? Heavier(gate.Post, spec.TerminalPost) : Heavier(before.Spec.TerminalPost, after.Spec.TerminalPost);
        return new PlacedPost(
            0, terminal.StationNm, terminal.Kind, spec, section, Steeper(before.Grade, after.Grade), terminal.Gate?.Row, rules);
    }

    /// <summary>The legs on both sides of a station; at the end of an open line twice the same.</summary>
    private static (SiteLeg Before, SiteLeg After) Sides(SiteLine site, long station)
    {
        var legs = site.Chain.Legs;
        var after = site.Chain.LegFrom(station);
        return station == 0 ? (site.Line.Closed ? legs[^1] : legs[0], legs[0]) : (site.Chain.LegAt(station), after);
    }

    private static double Steeper(double a, double b) => Math.Abs(a) > Math.Abs(b) ? a : b;

    private static Section Heavier(Section a, Section b) => b.OutsideDiameter.Nanometres > a.OutsideDiameter.Nanometres ? b : a;
}
