using Tautline.Engine.Fabric;
using Tautline.Engine.Fabric.Rolls;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Plans;

/// <summary>Plans which roll feeds which run, from the runs' fabric and the job's stock.</summary>
internal static class RollStage
{
    public static RollPlan? Of(Job job, IReadOnlyList<LinePlan> lines, IReadOnlyList<HungLine> hung, IReadOnlyList<SpecPlan> specs, ProblemList problems)
    {
        if (problems.HasErrors || hung.Count == 0) return null;
        var used = hung.SelectMany(l => l.Runs).Select(r => r.Run.Spec).DistinctBy(s => s.Index).OrderBy(s => s.Index).ToList();
        if (used.Count == 0) return null;
        var request = new RollRequest
        {
            Kinds = [.. used.DistinctBy(KeyOf).Select(s => KindOf(s, specs[s.Index]))],
            Pulls = [.. PullsOf(lines, hung)],
            New = [.. NewOf(job, used)],
            Remnants = [.. job.Stock.Where(s => s.Remnant).Select(s => RemnantOf(s, used)).OfType<Remnant>()],
            Seen = [.. job.Seen.Select(s => new SeenRoll(new(s.Stock, s.Number), StateOf(s.First), StateOf(s.Far)))],
            Order = job.HangOrder == "free" ? HangingOrder.Free : HangingOrder.AsListed,
            LeastUsefulNm = used[0].Rules.HangLeastPiece.Length.Nanometres,
        };
        var plan = RollPlanner.Plan(request);
        for (var i = 0; i < job.Seen.Count; i++)
        {
            SpecStage.Choice(job.Seen[i].First, $"seen[{i}].first", problems, "whole", "half");
            SpecStage.Choice(job.Seen[i].Far, $"seen[{i}].far", problems, "whole", "half");
        }
        foreach (var finding in plan.Findings) Tell(finding, job, problems);
        return OnTheirLines(Turned(plan, lines, request), lines);
    }

    /// <summary>Rolls are planned on one axis for all lines; a foreman counts from the start of the line he stands on.</summary>
    private static RollPlan OnTheirLines(RollPlan plan, IReadOnlyList<LinePlan> lines)
    {
        if (lines.Count < 2) return plan;
        Dictionary<string, long> before = [];
        var at = 0L;
        foreach (var line in lines)
        {
            foreach (var run in line.Runs) before[RollFeeds.PullId(line, run, 0)[..^1]] = at;
            at += line.Level.Nanometres;
        }
        long Before(string pull) => before.GetValueOrDefault(pull[..(pull.LastIndexOf('/') + 1)]);
        return plan with
        {
            Feeds = [.. plan.Feeds.Select(f => f with { Splices = [.. f.Splices.Select(s => s with { Station = Back(s.Station, Before(f.Pull)) })] })],
            Rolls = [.. plan.Rolls.Select(r => r with { Drop = Back(r.Drop, Before(r.FirstPull)) })],
        };
    }

    private static NanometreRange Back(NanometreRange station, long by) => NanometreRange.Of(station.Low - by, station.High - by);

    /// <summary>A run hung back takes its rolls from its far terminal on: pieces and stations are those of the walk back.</summary>
    private static RollPlan Turned(RollPlan plan, IReadOnlyList<LinePlan> lines, RollRequest request)
    {
        var back = lines.SelectMany(l => l.Runs.Where(r => !r.Hang.Forward).Select(r => RollFeeds.PullId(l, r, 0)[..^1])).ToList();
        if (back.Count == 0) return plan;
        var pulls = request.Pulls.Where(p => back.Exists(b => p.Id.StartsWith(b, StringComparison.Ordinal))).ToDictionary(p => p.Id);
        return plan with
        {
            Feeds = [.. plan.Feeds.Select(f => pulls.TryGetValue(f.Pull, out var pull) ? Turned(f, pull) : f)],
            Rolls = [.. plan.Rolls.Select(r => pulls.TryGetValue(r.FirstPull, out var pull) ? r with { Drop = Turned(r.Drop, pull) } : r)],
        };
    }

    private static PullFeed Turned(PullFeed feed, FabricPull pull) => feed with
    {
        Pieces = [.. feed.Pieces.Reverse()],
        Splices = [.. feed.Splices.Reverse().Select(s => s with { Left = feed.Pieces.Count - 2 - s.Left, Station = Turned(s.Station, pull) })],
    };

    private static NanometreRange Turned(NanometreRange station, FabricPull pull)
        => NanometreRange.Of(pull.FromNm + pull.ToNm - station.Low, pull.FromNm + pull.ToNm - station.High);

    /// <summary>Fabric of two specs that may be woven into each other has one key.</summary>
    private static string KeyOf(ResolvedSpec spec)
        => $"{spec.Woven.Height.Nanometres}/{spec.Fabric.Mesh.Nanometres}/{spec.Fabric.Wire.Nanometres}/{spec.Selvage}/{spec.Finish}/{spec.Calibration?.TenPickets.Nanometres}";

    private static FabricKind KindOf(ResolvedSpec spec, SpecPlan plan) => new(
        KeyOf(spec), plan.AdvanceLow.Nanometres, plan.AdvanceHigh.Nanometres,
        spec.Selvage == "KK" && spec.CutFrom is null && Decide.Billionths(spec.Diamonds.Diamonds % 1) == Decide.Billionths(0.5), MeshFormulas.Weight<Plain>(spec).Value);

    private static IEnumerable<FabricPull> PullsOf(IReadOnlyList<LinePlan> lines, IReadOnlyList<HungLine> hung)
    {
        var before = 0L;
        for (var l = 0; l < lines.Count; l++)
        {
            for (var r = 0; r < lines[l].Runs.Count; r++)
                for (var width = 0; HasFabric(lines[l].Runs[r]) && width < hung[l].Runs[r].Run.Spec.Widths; width++) yield return PullOf(lines[l], lines[l].Runs[r], hung[l].Runs[r], width, before);
            before += hung[l].Site.Chain.LevelNm;
        }
    }

    /// <summary>Two posts may stand so close that nothing hangs between them.</summary>
    private static bool HasFabric(RunPlan run) => run.RollTake.Nanometres > 0 && run.PicketsHigh > 0;

    private static FabricPull PullOf(LinePlan line, RunPlan run, HungRun hung, int width, long before) => new(
        RollFeeds.PullId(line, run, width), KeyOf(hung.Run.Spec), run.RollTake.Nanometres, new PicketRange(run.PicketsLow, run.PicketsHigh),
        before + hung.Run.Stretch.FromNm, before + hung.Run.Stretch.ToNm, run.Start.Columns + run.Finish.Columns);

    /// <summary>What the job stocks of a kind; where it says nothing, rolls as the spec buys them.</summary>
    private static IEnumerable<NewRolls> NewOf(Job job, List<ResolvedSpec> used)
    {
        foreach (var kind in used.DistinctBy(KeyOf))
        {
            var own = job.Stock.Where(s => used.Any(u => u.Spec.Id == s.Spec && KeyOf(u) == KeyOf(kind))).ToList();
            foreach (var stock in own.Where(s => !s.Remnant))
                yield return new NewRolls(stock.Id.Value, stock.Lot, KeyOf(kind), ClassOf(stock, kind), stock.Length.Nanometres, stock.Count);
            if (own.All(s => s.Remnant)) yield return new NewRolls($"roll of {kind.Spec.Id.Value}", "", KeyOf(kind), ClassOf(null, kind), kind.Roll.Nanometres);
        }
    }

    private static Remnant? RemnantOf(RollStock stock, List<ResolvedSpec> used)
        => used.FirstOrDefault(u => u.Spec.Id == stock.Spec) is { } spec
            ? new Remnant(stock.Id.Value, stock.Lot, KeyOf(spec), ClassOf(stock, spec), stock.Length.Nanometres, null, StateOf(stock.First), StateOf(stock.Far))
            : null;

    /// <summary>Lots of another count of diamonds or coil hand are never woven together.</summary>
    private static string ClassOf(RollStock? stock, ResolvedSpec spec)
        => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{stock?.Diamonds ?? spec.Woven.Diamonds}/{stock?.Coil}");

    private static EndState? StateOf(string? state) => state switch { "whole" => EndState.Whole, "half" => EndState.Half, _ => null };

    private static void Tell(RollFinding finding, Job job, ProblemList problems)
    {
        var at = job.Stock.Select((s, i) => (s, i)).Where(s => s.s.Id.Value == finding.Subject).Select(s => $"stock[{s.i}]").FirstOrDefault("stock");
        if (finding.Kind is RollFindingKind.Shortage) problems.Add(ProblemCode.RollShortage, new(at), (int)finding.Found, Length.FromNanometres(finding.Right));
        else if (finding.Kind is RollFindingKind.NoStock) problems.Add(ProblemCode.RollNone, new(at), (int)finding.Found);
        else if (finding.Kind is RollFindingKind.SeenRollUnknown) problems.Add(ProblemCode.RollSeen, new("seen"), finding.Subject, (int)finding.Found);
        else if (finding.Kind is RollFindingKind.EndsDisagree) problems.Add(ProblemCode.RollEnds, new(at), finding.Subject, (int)finding.Found);
        else problems.Add(ProblemCode.RollUnusable, new(at), finding.Subject, Length.FromNanometres(finding.Found));
    }
}
