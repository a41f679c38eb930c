using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Engine.Tests.Rolls;

/// <summary>Before a roll is calibrated what hangs on pickets is a range: 396 to 428 pickets in a 50-ft roll at 1.512 and at 1.40 in.</summary>
public sealed class RangeTests
{
    private static RollPlan Plan(params FabricPull[] pulls) => RollPlanner.Plan(Fence.Request(pulls) with { Kinds = [Fence.Kind(calibrated: false)] });

    [Fact]
    public void PiecesAndSplicesAreRanges()
    {
        var plan = Plan(Fence.Pull("a", 0, 120, 953, 1029));
        Assert.Equal([new(396, 428), new(396, 428), new(161, 173)], plan.Feeds[0].Pieces.Select(p => p.Pickets));
        Assert.Equal([new(235, 255)], plan.Rolls.Skip(2).Select(r => r.Left));
        // 396 / 953 of 120 ft is 49.864 ft, 428 / 1029 is 49.913 ft.
        Assert.Equal((49.864, 49.913), (Feet(plan.Feeds[0].Splices[0].Station.Low), Feet(plan.Feeds[0].Splices[0].Station.High)));
        Assert.All(plan.Feeds[0].Splices, s => Assert.Equal((SpliceMatch.ResolveOnSite, true), (s.Match, s.Certain)));
    }

    /// <summary>Three rolls just suffice at the widest advance and are a picket short at the narrowest.</summary>
    [Fact]
    public void ARollThatIsPerhapsNeededIsMarked()
    {
        var plan = Plan(Fence.Pull("a", 0, 150, 3 * 396, 3 * 428 + 1));
        Assert.Equal((3, 4), (plan.Kinds[0].AtLow.Rolls, plan.Kinds[0].AtHigh.Rolls));
        Assert.Equal([true, true, true, false], plan.Rolls.Select(r => r.Certain));
        Assert.Equal(new PicketRange(0, 1), plan.Feeds[0].Pieces[3].Pickets);
        Assert.Equal((false, SpliceMatch.ResolveOnSite), (plan.Feeds[0].Splices[2].Certain, plan.Feeds[0].Splices[2].Match));
    }

    [Fact]
    public void ACountedRollIsExactThoughItsLengthIsNot()
    {
        var request = Fence.Request([Fence.Pull("a", 0, 40, 318, 343)], Fence.Rolls(counted: 410)) with { Kinds = [Fence.Kind(calibrated: false)] };
        var roll = RollPlanner.Plan(request).Rolls[0];
        Assert.Equal((new PicketRange(410, 410), new PicketRange(92, 67)), (roll.In, roll.Left));
    }

    private static double Feet(long nm) => Math.Round(nm / (double)Fence.Foot, 3);
}
