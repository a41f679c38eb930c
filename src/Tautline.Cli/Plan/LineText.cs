using Tautline.Cli.Profile;
using Tautline.Cli.Terminal;
using Tautline.Engine.Fabric;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Site;

namespace Tautline.Cli.Plan;

/// <summary>One line of a plan: its posts, runs and gates.</summary>
internal static class LineText
{
    /// <summary>A line with more posts is summed up unless every one is asked for.</summary>
    public const int MostPosts = 80;

    public static void Write(LinePlan line, Engine.Plans.Plan plan, PlanWords words, bool all, Paper paper)
    {
        var name = line.Name.Length > 0 ? $"Line {line.Id}, {line.Name}" : $"Line {line.Id}";
        paper.Heading($"{name}: {words.Long(line.Level)} level, {words.Long(line.Along)} along the ground, {(line.Closed ? "closed" : "open")}");
        var whole = all || line.Posts.Count <= MostPosts;
        var index = plan.Lines.Index().First(l => ReferenceEquals(l.Item, line)).Index;
        if (whole) Posts(line, index, words, paper);
        else Summary(line, words, paper);
        if (whole) foreach (var run in line.Runs) Run(run, line, plan, words, paper);
        foreach (var (gate, number) in line.Gates.Select((g, i) => (g, i + 1))) Gate(gate, number, line, words, paper);
        Works(line, words, paper);
        LineGround.Write(line, words, paper);
    }

    /// <summary>What is done along the line besides building it.</summary>
    private static void Works(LinePlan line, PlanWords words, Paper paper)
    {
        if (line.Works.Count == 0) return;
        paper.Line();
        paper.Line("Besides the fence:");
        paper.Labelled(line.Works.Select(w => (w.Id, $"{words.Work(w)}, from {words.Station(w.From)} to {words.Station(w.To)}")));
    }

    private static void Posts(LinePlan line, int index, PlanWords words, Paper paper)
    {
        var chosen = line.Posts.Any(p => p.CutOff is not null);
        paper.Table(
            [">post", ">station", ">from start", "kind", "section", ">cut", ">order", .. chosen ? [">cut off"] : Array.Empty<string>(), ">hole", ">concrete", ">bags"],
            line.Posts.Select(IReadOnlyList<string> (p) =>
            [
                PlanWords.Mark(index, p), words.Station(p.Station), words.Long(p.Station), PlanWords.Kind(p.Kind), p.Section,
                Set(p) ? words.Long(p.CutLength) : "", Set(p) ? words.Long(p.OrderLength) : "",
                .. chosen ? [p.CutOff is { } off ? words.Short(off) : ""] : Array.Empty<string>(), words.Held(p),
                p.Bags > 0 ? words.Volume(p.Concrete) : "", p.Bags > 0 ? $"{p.Bags}" : "",
            ]));
    }

    /// <summary>False for a post that stands already: it is neither cut nor ordered.</summary>
    private static bool Set(PostPlan post) => post.Support != Support.Standing;

    private static void Summary(LinePlan line, PlanWords words, Paper paper)
    {
        var groups = line.Posts.GroupBy(p => (p.Kind, p.Section, Hole: words.Held(p), Order: words.Long(p.OrderLength)));
        paper.Table(
            [">posts", "kind", "section", ">order", ">hole"],
            groups.Select(IReadOnlyList<string> (g) => [$"{g.Count()}", PlanWords.Kind(g.Key.Kind), g.Key.Section, g.Key.Order, g.Key.Hole]));
        paper.Line($"  {PlanWords.Count(line.Posts.Count, "post")} and {PlanWords.Count(line.Runs.Count, "run")} summed up; --all lists every one.");
    }

    private static void Run(RunPlan run, LinePlan line, Engine.Plans.Plan plan, PlanWords words, Paper paper)
    {
        var spec = plan.Specs.First(s => s.Id == run.Spec);
        var (from, to) = (line.Posts[run.FromPost], line.Posts[run.ToPost]);
        paper.Line();
        paper.Line($"Run {run.Number}: post {from.Number} ({PlanWords.Kind(from.Kind)}) to post {to.Number} ({PlanWords.Kind(to.Kind)}), "
                   + $"{words.Long(run.Along)} along the ground" + (plan.Specs.Count > 1 ? $", spec {run.Spec}" : ""));
        var keeps = plan.Basis.Job.Lines.First(l => l.Id == line.Id).Keeps;
        paper.Labelled(Lines(run, spec, from, to, keeps, words));
    }

    private static IEnumerable<(string, string)> Lines(RunPlan run, SpecPlan spec, PostPlan from, PostPlan to, IReadOnlyList<string> keeps, PlanWords words)
    {
        yield return ("bays", $"{run.Bays}, the largest {words.Long(run.LargestBay)}");
        if (spec.TopRail)
            yield return ("rail", $"{words.Long(run.Rail)}: {PlanWords.Count(run.RailPieces, "piece")}, {PlanWords.Count(run.Sleeves, "sleeve")}{(keeps.Contains("rail") ? ", which stays" : "")}; "
                                  + $"{PlanWords.Count(run.RailTies, "tie")}, {Every(spec.TieEvery, words.Short(spec.TieSpace))}");
        if (spec.BottomWire || !spec.TopRail)
            yield return (Wires(spec), $"{words.Long(run.Wire)}{(keeps.Contains("wire") ? ", which stays" : "")}; {PlanWords.Count(run.Rings, "ring")}, "
                                       + Every(spec.RingEvery, words.Short(spec.RingSpace)));
        var take = run.RollTake == run.Fabric ? "" : $"{words.Long(run.RollTake)} off a square-cut roll, ";
        yield return ("fabric", $"{words.Long(run.Fabric)} between the bars, {take}{PlanWords.Range(run.PicketsLow, run.PicketsHigh)} pickets");
        if (run.Seam > 0) yield return ("seam", $"{spec.Widths} widths laced with {PlanWords.Count(run.Seam, "ring")} a seam; fabric, pickets, bands and ties are of one width");
        if (run.BayPieces.Count > 0) yield return ("bay rail", $"cut bay by bay: {string.Join(", ", Pieces(run, words))}");
        if (run.Strand.Metres > 0) yield return ("barb", $"{words.Long(run.Strand)} of strand before its tails");
        if (spec.Braced && run.Start.BraceRail.Metres > 0)
            yield return ("braces", $"a braced panel at each end, brace rails {words.Long(run.Start.BraceRail)} and {words.Long(run.Finish.BraceRail)}");
        else if (spec.Braced) yield return ("braces", "a braced panel at each end, the middle rail is its brace");
        if (run.Bays > 1) yield return ("post ties", $"{spec.Ties.Count} on each line post: {DiamondText.Positions(spec.Ties)}");
        var (start, finish) = (End(run.Start, words), End(run.Finish, words));
        if (start == finish) yield return ("each end", start);
        else
        {
            yield return ($"post {from.Number}", start);
            yield return ($"post {to.Number}", finish);
        }
    }

    /// <summary>'4 of 9' 9 1/8"', equal neighbours together.</summary>
    private static IEnumerable<string> Pieces(RunPlan run, PlanWords words)
        => run.BayPieces.Select(words.Long).GroupBy(p => p).Select(g => $"{g.Count()} of {g.Key}");

    private static string Wires(SpecPlan spec) => (spec.TopRail, spec.BottomWire) switch
    {
        (true, _) => "wire",
        (false, true) => "2 wires, each",
        _ => "top wire",
    };

    private static string Every(int diamonds, string space) => $"every {diamonds} diamonds ({space})";

    private static string End(EndPlan end, PlanWords words)
        => end.Bar.Metres == 0 ? $"no bar: the fabric is woven on{Bias(end, words)}" : $"bar {words.Short(end.Bar)}, {PlanWords.Count(end.Bands, "band")}: {DiamondText.Positions(end.BandsAt)}{Bias(end, words)}";

    private static string Bias(EndPlan end, PlanWords words)
    {
        if (end.Mismatch.Metres == 0) return "";
        var columns = end.ColumnsLow == end.ColumnsHigh ? PlanWords.Count(end.ColumnsLow, "column") : $"{end.ColumnsLow} to {end.ColumnsHigh} columns";
        if (end.Columns < 2) return $"; bias: top and bottom differ by {words.Short(end.Mismatch)} ({columns}), dress it out with a short puller";
        var rows = string.Join(", ", end.Crossings.Select(DiamondText.Number));
        return $"; bias: {end.Columns} columns{(end.ColumnsLow == end.ColumnsHigh ? "" : $" ({end.ColumnsLow} to {end.ColumnsHigh} until a roll is calibrated)")}, step over {rows} diamonds down, the {end.LongEdge.ToString().ToLowerInvariant()}"
               + $" edge of a square end would pass the terminal by {words.Short(end.Mismatch)} and is cut back";
    }

    private static void Gate(GatePlan gate, int number, LinePlan line, PlanWords words, Paper paper)
    {
        paper.Line();
        paper.Line($"Gate {number} ({gate.Id}): {gate.Kind.ToString().ToLowerInvariant()} gate, post {line.Posts[gate.FromPost].Number} to post "
                   + $"{line.Posts[gate.ToPost].Number}");
        paper.Labelled(
        [
            ("opening", $"{words.Long(gate.Opening)} face to face, near face at {words.Station(gate.NearFace)} ({words.Long(gate.NearFace)})"),
            ("centres", $"{words.Long(gate.Centres)} apart, posts {gate.Post}"),
            .. gate.Track is { } track ? [("track", words.Long(track))] : Array.Empty<(string, string)>(),
            .. gate is { Tail: { } tail, SecondRoller: { } second }
                ? [("tail", $"{words.Long(tail)}, second roller post beside {words.Station(second)} ({words.Long(second)})")] : Array.Empty<(string, string)>(),
            ("leaf", gate.Leaves == 1 ? words.Long(gate.Leaf) : $"{gate.Leaves} leaves of {words.Long(gate.Leaf)}"),
        ]);
    }
}
