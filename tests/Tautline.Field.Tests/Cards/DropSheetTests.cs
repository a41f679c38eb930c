using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Field.Cards;

namespace Tautline.Field.Tests.Cards;

public sealed class DropSheetTests
{
    private static DropSheet Sheet(Job job, double? limitPounds = null, double? bagPounds = null)
        => DropSheet.Of(Yard.Plan(job).Now, limitPounds is { } l ? Mass.FromPounds(l) : null, bagPounds is { } b ? Mass.FromPounds(b) : null);

    /// <summary>
    /// Check job 1: nine line posts of 2.375 sch 40 (3.65 lb/ft by ASTM F1083) and two ends of 2.875 (5.79 lb/ft), 35 bags. Line posts are cut 8 ft 4 in: 9 x 8.333 x 3.65 = 273.8
    /// lb; ends 8 ft 8 in: 2 x 8.667 x 5.79 = 100.4 lb. 35 bags of 80 lb are 2800 lb.
    /// </summary>
    [Fact]
    public void ARunIsABundleOfItsPostsPartsAndBags()
    {
        var run = Sheet(Yard.Counted).Bundles.Single(b => b.Run == 0);
        Assert.Equal((9, 2), (run.Posts.Single(p => p.Section == "2.375-sch40").Count, run.Posts.Single(p => p.Section == "2.875-sch40").Count));
        Assert.Equal(273.8, run.Posts.Single(p => p.Section == "2.375-sch40").Mass.Pounds, 0.5);
        Assert.Equal(100.4, run.Posts.Single(p => p.Section == "2.875-sch40").Mass.Pounds, 0.5);
        Assert.Equal(35, run.Bags);
        Assert.Equal(2800, Sheet(Yard.Counted, bagPounds: 80).Bundles.Single(b => b.Run == 0).Weight.Pounds - run.Weight.Pounds, 0.01);
        Assert.Contains(Sheet(Yard.Counted).Unweighed, t => t.Part == "concrete-bag");
        Assert.DoesNotContain(Sheet(Yard.Counted, bagPounds: 80).Unweighed, t => t.Part == "concrete-bag");
    }

    /// <summary>Nothing is lost: all bundles together hold every part that is carried as often as the take-off does.</summary>
    [Fact]
    public void BundlesSumToTheTakeOff()
    {
        var plan = Yard.Plan(Yard.Closed(40)).Now;
        var sheet = DropSheet.Of(plan, null, null);
        Assert.Equal(plan.Lines[0].Posts.Count, sheet.Bundles.Sum(b => b.Posts.Sum(p => p.Count)));
        Assert.Equal(plan.Lines[0].Posts.Sum(p => p.Bags), sheet.Bundles.Sum(b => b.Bags));
        foreach (var part in plan.Takeoff.Where(t => t.Part is "rail" or "tension-bar" or "tension-band" or "ring" or "loop-cap" or "dome-cap"))
            Assert.Equal(part.Net, sheet.Bundles.SelectMany(b => b.Parts).Where(p => p.Part == part).Sum(p => p.Net), 1e-6);
    }

    [Fact]
    public void APostInNoRunIsCarriedToo()
    {
        var plan = Yard.Plan(Yard.GateFirst).Now;
        Assert.Equal(1, DropSheet.Of(plan, null, null).Bundles.Single(b => b.Run is null).Posts.Sum(p => p.Count));
        Assert.Equal(plan.Lines[0].Posts.Count, DropSheet.Of(plan, null, null).Bundles.Sum(b => b.Posts.Sum(p => p.Count)));
    }

    /// <summary>A square of four runs and its fittings: in one trip everything, loaded from the last bundle to the first; with room for less it goes in more trips, none of them over.</summary>
    [Fact]
    public void WhatIsLaidDownLastIsLoadedFirst()
    {
        var all = Sheet(Yard.Closed(40));
        var trip = Assert.Single(all.Trips);
        Assert.Equal([4, 3, 2, 1, 0], trip.LoadOrder);
        Assert.Equal(all.Bundles.Sum(b => b.Weight.Pounds), trip.Weight.Pounds, 0.001);
        var heaviest = all.Bundles.Max(b => b.Weight.Pounds);
        var split = Sheet(Yard.Closed(40), heaviest * 1.5).Trips;
        Assert.True(split.Count > 1);
        Assert.All(split, t => Assert.True(t.Weight.Pounds <= heaviest * 1.5 && !t.Over));
        Assert.Equal([0, 1, 2, 3, 4], split.SelectMany(t => t.Drops));
        Assert.Contains(Sheet(Yard.Closed(40), heaviest * 0.9).Trips, t => t.Over);
    }
}
