namespace Tautline.Engine.Fabric.Rolls;

/// <summary>
/// Plans which roll feeds which pull. Wishes, each before the next: no roll missing, least length bought, fewest rolls bought, fewest splices,
/// least scrap, least left over, least carrying. A roll's end inside a pull is a splice, not waste. Nothing is thrown for what a person entered:
/// what cannot be used is a finding, the rest is planned.
/// </summary>
public static class RollPlanner
{
    public static RollPlan Plan(RollRequest request)
    {
        var (sound, findings) = RollCheck.Of(request);
        var papers = new List<KindPapers>();
        var uses = new List<RollUse>();
        foreach (var kind in sound.Kinds)
            if (Hang(kind, sound, findings) is { } hanging)
            {
                papers.Add(new KindPapers(hanging, sound, uses.Count));
                uses.AddRange(papers[^1].Uses());
            }
        var feeds = Feeds(request, sound, papers);
        findings.AddRange(Shortages(uses));
        findings.AddRange(Unseen(request, uses));
        return new RollPlan(feeds, uses, Loads(sound, feeds), Returned(sound, papers), [.. papers.Select(p => p.Totals())], findings);
    }

    private static KindHanging? Hang(FabricKind kind, RollRequest request, List<RollFinding> findings)
    {
        List<int> pulls = [.. Enumerable.Range(0, request.Pulls.Count).Where(i => request.Pulls[i].Kind == kind.Key)];
        if (pulls.Count == 0) return null;
        List<StockItem> stock = [
            .. request.New.Where(n => n.Kind == kind.Key).Select(n => new StockItem(n.Id, n.Lot, n.SpliceClass, n.LengthNm, n.Count, n.Counted, null)),
            .. request.Remnants.Where(r => r.Kind == kind.Key).Select(r => new StockItem(r.Id, r.Lot, r.SpliceClass, r.LengthNm, 1, r.Counted, r))];
        if (stock.Any(s => s.Count != 0)) return KindStage.Plan(kind, stock, pulls, request);
        findings.Add(new RollFinding(RollFindingKind.NoStock, kind.Key, pulls.Count));
        return null;
    }

    private static PullFeed[] Feeds(RollRequest asked, RollRequest sound, List<KindPapers> papers)
    {
        var fed = papers.SelectMany(p => p.Feeds()).ToDictionary(f => (object)sound.Pulls[f.Pull], f => f.Feed, ReferenceEqualityComparer.Instance);
        return [.. asked.Pulls.Select(p => fed.GetValueOrDefault(p) ?? new PullFeed(p.Id, -1, [], []))];
    }

    private static IEnumerable<RollFinding> Shortages(List<RollUse> uses)
        => uses.Where(u => u.Missing).GroupBy(u => u.Kind).Select(g => new RollFinding(RollFindingKind.Shortage, g.Key, g.Count(), g.Sum(u => u.LengthNm)));

    private static IEnumerable<RollFinding> Unseen(RollRequest request, List<RollUse> uses)
    {
        var opened = uses.Select(u => u.Id).ToHashSet();
        return request.Seen.Where(s => !opened.Contains(s.Roll)).Select(s => new RollFinding(RollFindingKind.SeenRollUnknown, s.Roll.Stock, s.Roll.Number));
    }

    private static MachineLoad[] Loads(RollRequest sound, PullFeed[] feeds)
    {
        var weights = sound.Pulls.ToDictionary(p => p.Id, p => sound.Kinds.First(k => k.Key == p.Kind).KilogramsPerMetre);
        return [.. feeds.Where(f => f.Pieces.Count > 0).SelectMany(f => LoadStage.Of(f, weights[f.Pull], sound.Carry))];
    }

    private static Unopened[] Returned(RollRequest sound, List<KindPapers> papers)
    {
        int Opened(string id) => papers.Sum(p => p.Opened(id));
        return [
            .. sound.New.Where(n => n.Count is { } count && Opened(n.Id) < count).Select(n => new Unopened(n.Id, n.Lot, false, n.Count!.Value - Opened(n.Id))),
            .. sound.Remnants.Where(r => Opened(r.Id) == 0).Select(r => new Unopened(r.Id, r.Lot, true, 1))];
    }
}
