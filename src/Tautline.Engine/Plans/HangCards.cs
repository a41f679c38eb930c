using Tautline.Engine.Fabric;
using Tautline.Engine.Layout;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Plans;

/// <summary>The cards of one terminal or run, made from a plan when somebody asks for them.</summary>
public static class HangCards
{
    /// <summary>The cut at an end of a run, at the middle of the advance's range.</summary>
    /// <param name="end">0 for its start, 1 for its far end.</param>
    public static CutCard Cut(Plan plan, int line, int run, int end)
    {
        var (hung, spec) = (plan.Basis.Lines[line].Runs[run], plan.Specs.First(s => s.Id == plan.Lines[line].Runs[run].Spec));
        var rise = end == 0 ? plan.Lines[line].Runs[run].Start.Rise : plan.Lines[line].Runs[run].Finish.Rise;
        var advance = (spec.AdvanceLow + spec.AdvanceHigh) / 2;
        return CutCard.Of(Bias.Cut(hung.Run.Spec, rise, advance), advance);
    }

    /// <summary>The card of a cut that was read under tension, at the middle of the advance's range.</summary>
    public static CutCard Measured(Plan plan, int line, int run, MeasuredCut cut)
    {
        var spec = plan.Specs.First(s => s.Id == plan.Lines[line].Runs[run].Spec);
        return CutCard.Of(cut.Cut, (spec.AdvanceLow + spec.AdvanceHigh) / 2);
    }

    /// <summary>
    /// The next end, in the order of the lines, that the roll's side of a cut fits without cutting it again; nothing where none does. Fabric of one
    /// spec, and cuts of as many columns.
    /// </summary>
    public static OffcutEnd? OffcutTo(Plan plan, int line, int run, int end)
    {
        var (spec, cut) = (plan.Basis.Lines[line].Runs[run].Run.Spec, Cut(plan, line, run, end).Cut);
        foreach (var at in EndsAfter(plan, line, run, end))
        {
            if (plan.Basis.Lines[at.Line].Runs[at.Run].Run.Spec.Index != spec.Index) continue;
            var use = cut.OffcutFor(Cut(plan, at.Line, at.Run, at.End).Cut, spec.CutFrom is null ? spec.Selvage : "cut");
            if (use != OffcutUse.None) return at with { Use = use };
        }
        return null;
    }

    private static IEnumerable<OffcutEnd> EndsAfter(Plan plan, int line, int run, int end)
        => from l in Enumerable.Range(line, plan.Lines.Count - line)
           from r in Enumerable.Range(0, plan.Lines[l].Runs.Count)
           from e in Enumerable.Range(0, 2)
           where (l, r, e).CompareTo((line, run, end)) > 0
           select new OffcutEnd(l, r, e, OffcutUse.None);

    /// <summary>What was measured on the fabric of a spec.</summary>
    public static Site.Surveyed<MeshReading> Mesh(Plan plan, int spec, MeshMeasured measured) => MeshReader.Read(plan.Basis.Specs[spec], measured);

    /// <summary>The cut of an end from two tape readings under tension.</summary>
    public static Site.Surveyed<MeasuredCut> Measured(Plan plan, int line, int run, int end, Length top, Length bottom)
    {
        var (hung, spec) = (plan.Basis.Lines[line].Runs[run], plan.Specs.First(s => s.Id == plan.Lines[line].Runs[run].Spec));
        var expected = end == 0 ? plan.Lines[line].Runs[run].Start.LongEdge : plan.Lines[line].Runs[run].Finish.LongEdge;
        return BiasReader.Read(hung.Run.Spec, new BiasReadings(top, bottom, spec.AdvanceLow, spec.AdvanceHigh) { Expected = expected });
    }

    /// <summary>What slides on a terminal and in which order; nothing for a post that carries no end of fabric.</summary>
    public static StackCard? Stack(Plan plan, int line, int post)
    {
        var ends = Ends(plan, line, post).ToList();
        if (ends.Count == 0) return null;
        var parts = ends.SelectMany((e, i) => TerminalParts.Usual(e.Spec, e.End.Name, i)).ToList();
        var top = ends.Exists(e => e.Spec.Barb is not null) ? StackKind.BarbArm : StackKind.Cap;
        return Stacking.Card(new TerminalParts([.. ends.Select(e => e.End)], parts, top, plan.Basis.Rules["band.width"].Length));
    }

    /// <summary>The ends of fabric at a post, the highest fabric first.</summary>
    private static IEnumerable<(StackEnd End, Site.ResolvedSpec Spec)> Ends(Plan plan, int line, int post)
    {
        var (planned, hung) = (plan.Lines[line], plan.Basis.Lines[line]);
        List<(StackEnd End, Site.ResolvedSpec Spec)> ends = [];
        for (var r = 0; r < planned.Runs.Count; r++)
        {
            var (run, spec) = (planned.Runs[r], hung.Runs[r].Run.Spec);
            if (run.FromPost == post) ends.Add((StackEnd.Of(Toward(line, planned, run.ToPost), spec, run.Start.BandsAt), spec));
            if (run.ToPost == post) ends.Add((StackEnd.Of(Toward(line, planned, run.FromPost), spec, run.Finish.BandsAt), spec));
        }
        var highest = ends.Count == 0 ? Length.Zero : ends.Max(e => e.Spec.Height);
        return ends.OrderByDescending(e => e.Spec.Height.Nanometres).Select(e => (e.End with { Drop = highest - e.Spec.Height }, e.Spec));
    }

    private static string Toward(int line, LinePlan planned, int post) => $"toward {PlanWords.Mark(line, planned.Posts[post])}";

    /// <summary>Where the fabric of a run sits on its rail, by its first line post or, without one, by its first terminal.</summary>
    public static Seat Seat(Plan plan, int line, int run) => Seat(plan.Lines[line], plan.Basis.Lines[line], run);

    internal static Seat Seat(LinePlan planned, HungLine hung, int run)
    {
        var at = planned.Runs[run].Bays > 1 ? (planned.Runs[run].FromPost + 1) % planned.Posts.Count : planned.Runs[run].FromPost;
        var placed = hung.Posts[at];
        var spec = hung.Runs[run].Run.Spec;
        var slope = new Slope(placed.Grade);
        var top = placed.Rise is { } rise ? new Length(rise.Fabric - rise.Ground) : new Length(PostFormulas.Plumb<Reasons.Plain>(spec.Height.Metres, placed.Grade).Value);
        return Seating.FromFabric(spec, slope, top, planned.Posts[at].AboveGround);
    }
}

/// <summary>An end that a cut's other side fits.</summary>
/// <param name="End">0 for the run's start, 1 for its far end.</param>
public sealed record OffcutEnd(int Line, int Run, int End, OffcutUse Use);
