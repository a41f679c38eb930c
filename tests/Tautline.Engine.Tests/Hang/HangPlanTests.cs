using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Hang;

/// <summary>How the pieces of hanging come together in a plan.</summary>
public sealed class HangPlanTests
{
    private static Job LongRun(params HangNote[] notes)
        => Some.Job(Some.Line("main", false, [(0, 0), (0, 400)])) with { Calibrations = [Some.Calibration()], Hangs = notes };

    private static HangNote Note(string? direction = null, string? method = null, double at = 30)
        => new() { Id = new("note"), Leg = new("main/leg1"), At = Length.FromFeet(at), Direction = direction, Method = method };

    /// <summary>400 ft in three pulls of at most 150 ft, tied at the posts nearest below a third: 40 bays at 13, 26 and 40.</summary>
    /// <summary>Two lines of 100 ft: the second's rolls are dropped at stations of its own, not of both lines walked in one.</summary>
    [Fact]
    public void RollsAreDroppedAtStationsOfTheirOwnLine()
    {
        var job = Some.Job(Some.Line("front", false, [(0, 0), (0, 100)]), Some.Spec()) with { Calibrations = [Some.Calibration()] };
        var plan = Some.Plan(job with { Lines = [.. job.Lines, Some.Line("back", false, [(50, 0), (50, 100)]) with { Order = new("z") }] });
        var first = plan.Rolls!.Rolls.First(r => r.FirstPull.StartsWith("back/", StringComparison.Ordinal));
        Assert.InRange(first.Drop.Low * 1e-9 / 0.3048, 0, 100);
        var splices = plan.Rolls.Feeds.Where(f => f.Pull.StartsWith("back/", StringComparison.Ordinal)).SelectMany(f => f.Splices).ToList();
        Assert.NotEmpty(splices);
        Assert.All(splices, s => Assert.InRange(s.Station.High * 1e-9 / 0.3048, 0, 100));
    }

    [Fact]
    public void ALongRunIsPulledInThreeStretches()
    {
        var hang = Some.Plan(LongRun()).Lines[0].Runs[0].Hang;
        Assert.Equal(HangMethod.Machine, hang.Method);
        Assert.Equal([(0, 13), (13, 26), (26, 40)], hang.Pulls.Select(p => (p.From, p.To)));
        Assert.Equal(400 * 12 - 4.875, hang.Pulls.Sum(p => p.Fabric.Inches), 1e-6);
    }

    [Fact]
    public void ARunHungBackIsTheSameTheOtherWayRound()
    {
        var (there, back) = (Some.Plan(LongRun()), Some.Plan(LongRun(Note("back"))));
        Assert.Equal([(40, 26), (26, 13), (13, 0)], back.Lines[0].Runs[0].Hang.Pulls.Select(p => (p.From, p.To)));
        Assert.Equal(40, back.Lines[0].Runs[0].Hang.FirstTie);
        var total = Length.FromFeet(400).Nanometres;
        Assert.Equal(
            there.Rolls!.Feeds[0].Splices.Select(s => total - s.Station.Low).Order(), back.Rolls!.Feeds[0].Splices.Select(s => s.Station.Low).Order());
        Assert.Equal(there.Rolls.Feeds[0].Pieces.Select(p => p.Roll).Reverse(), back.Rolls.Feeds[0].Pieces.Select(p => p.Roll));
    }

    [Fact]
    public void ByHandThePullsAreShort()
        => Assert.Equal(8, Some.Plan(LongRun(Note(method: "hand"))).Lines[0].Runs[0].Hang.Pulls.Count);

    [Fact]
    public void ANoteThatLiesInNoRunIsTold()
        => Assert.Contains(Some.Plan(LongRun(Note("back", at: 500))).Problems, p => p.Code == ProblemCode.HangPlace);

    [Fact]
    public void EveryPicketIsAccountedFor()
    {
        foreach (var job in new[] { LongRun(), Some.Yard(), Some.Steep() })
            foreach (var kind in Some.Plan(job).Rolls!.Kinds)
                foreach (var ledger in new[] { kind.LedgerAtLow, kind.LedgerAtHigh })
                    Assert.Equal(ledger.In, ledger.Hung + ledger.Woven + ledger.Scrap + ledger.Left);
    }

    [Fact]
    public void StockThatDoesNotSufficeIsTold()
    {
        var stock = new RollStock { Id = new("few"), Spec = new("fence"), Length = Length.FromFeet(50), Count = 3 };
        var plan = Some.Plan(LongRun() with { Stock = [stock] });
        Assert.Contains(plan.Problems, p => p.Code == ProblemCode.RollShortage);
        Assert.Contains(plan.Rolls!.Rolls, r => r.Missing);
    }

    /// <summary>What the crew saw settles the splice between the first two rolls; a roll nobody opens is told.</summary>
    [Fact]
    public void AReportSettlesASplice()
    {
        RollReport Seen(int number, string first, string far) => new() { Stock = "roll of fence", Number = number, First = first, Far = far };
        var open = Some.Plan(LongRun()).Rolls!.Feeds[0].Splices;
        Assert.All(open, s => Assert.Equal(Engine.Fabric.Rolls.SpliceMatch.ResolveOnSite, s.Match));
        var reports = Enumerable.Range(1, open.Count + 1).Select(n => Seen(n, "whole", "half")).ToList();
        var settled = Some.Plan(LongRun() with { Seen = [.. reports, Seen(99, "whole", "whole")] });
        Assert.Contains(settled.Rolls!.Feeds[0].Splices, s => s.Match != Engine.Fabric.Rolls.SpliceMatch.ResolveOnSite);
        Assert.Contains(settled.Problems, p => p.Code == ProblemCode.RollSeen);
    }

    /// <summary>Common practice, no source: every fabric end at a post has its bands below the cap.</summary>
    [Fact]
    public void TheStackOfACornerHoldsBothFabrics()
    {
        var plan = Some.Plan(Some.Yard());
        var card = HangCards.Stack(plan, 0, 0)!;
        var bands = card.Items.Where(i => i.Kind == Engine.Fabric.StackKind.TensionBand).Sum(i => i.Count);
        Assert.Equal(plan.Lines[0].Runs[0].Start.Bands + plan.Lines[0].Runs[^1].Finish.Bands, bands);
        Assert.Equal(Engine.Fabric.StackKind.Cap, card.Items[^1].Kind);
        Assert.Null(HangCards.Stack(plan, 0, 1));
    }
}
