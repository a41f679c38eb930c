using Tautline.Engine.Fabric;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Field.Cards;

namespace Tautline.Field.Tests.Cards;

public sealed class StackAndGateTests
{
    /// <summary>Check job 1: 12 tension bands over two ends, so six on each; 72 in has 20 whole rows. What lies lowest slides on first, the cap last.</summary>
    [Fact]
    public void SixBandsSlideOnFromTheBottomAndTheCapLast()
    {
        var plan = Yard.Plan(Yard.Counted).Now;
        Assert.Equal([(0, 0), (0, 10)], PostStack.Terminals(plan));
        var items = PostStack.Of(plan, 0, 0)!.Items;
        Assert.Equal(6, items.Where(i => i.Kind == StackKind.TensionBand).Sum(i => i.Count));
        Assert.Equal(StackKind.Cap, items[^1].Kind);
        var places = items.SelectMany(i => i.Diamonds).ToList();
        Assert.Equal(places.OrderDescending(), places);
        Assert.Null(PostStack.Of(plan, 0, 5));
    }

    private static Job Gated(Job job, string kind, double near, double opening, string? back = null) => job with
    {
        Gates = [new() { Id = new("gate"), Leg = new("leg"), Kind = kind, NearFace = Length.FromFeet(near), Opening = Length.FromFeet(opening), RunsBack = back }],
    };

    private static GateCard Card(Job job) => GateCard.Of(Yard.Plan(job).Now, 0, 0);

    /// <summary>
    /// A double gate 12 ft face to face: 6½ in for the hardware (published 6 to 7 in, reference/installation.md) leaves 137½ in for two leaves of 68¾ in. Posts of
    /// 2.875 in for leaves to 6 ft: 12 ft 2⅞ in centre to centre.
    /// </summary>
    [Fact]
    public void ADoubleGateLosesSixAndAHalfInches()
    {
        var card = Card(Gated(Yard.Job, Gate.Double, 40, 12));
        Assert.Equal(6.5, card.Gaps!.Value.Inches, 0.001);
        Assert.Equal(68.75, card.Gate.Leaf.Inches, 0.001);
        Assert.Equal(68.75, card.Reach!.Value.Inches, 0.001);
        Assert.Equal(146.875, card.Gate.Centres.Inches, 0.001);
        Assert.Equal(40, card.NearFace.Feet, 0.001);
        Assert.Null(card.Ground);
        Assert.False(card.Slides);
    }

    /// <summary>Opening 20 ft, tail 10 ft (half the opening, and the overhang of 15 to 22 ft): 30 ft are wanted behind it. From 60 ft on 100 ft there are 20 ft left; from 40 ft 40.</summary>
    [Fact]
    public void ACantileverGateWantsOpeningAndTailBehindIt()
    {
        var far = Card(Gated(Yard.Job, Gate.Cantilever, 40, 20, "end"));
        Assert.Equal(30, far.RunBackNeeds!.Value.Feet, 0.001);
        Assert.Equal(40, far.RunBackHas!.Value.Feet, 0.001);
        Assert.False(far.RunBackShort);
        Assert.True(Card(Gated(Yard.Job, Gate.Cantilever, 60, 20, "end")).RunBackShort);
    }

    /// <summary>
    /// Ground rising a foot in a hundred: the far jamb of a walk gate at 50 to 54 ft stands on 100.54 ft and the leaf hangs an inch over that. There is no ground beside
    /// the line, so nothing is said of the arc.
    /// </summary>
    [Fact]
    public void ALeafHangsOverTheHighestGroundOfItsOpening()
    {
        var card = Card(Gated(Yard.Shot(100, 101), Gate.Walk, 50, 4));
        Assert.Equal(100.54, card.Ground!.Closed.Feet, 0.01);
        Assert.Equal(1, card.Over(card.Ground.Closed)!.Value.Inches, 0.05);
        Assert.Null(card.Over(card.Ground.Left));
    }

    /// <summary>
    /// A surface that rises 3 % to the east only, across a line that runs north: on the line it is level, and under the arc of a 45-in leaf (4 ft less 3¾ in) it is
    /// 1.33 in higher to the right (0.03 x 44.25 in), not higher to the left. The leaf clears the opening by an inch and strikes to the right by a third of one.
    /// </summary>
    [Fact]
    public void UnderTheArcTheGroundBesideTheLineCounts()
    {
        var card = Card(Gated(Yard.Tilted(0.03), Gate.Walk, 50, 4));
        Assert.Equal(1, card.Over(card.Ground!.Closed)!.Value.Inches, 0.01);
        Assert.Equal(1, card.Over(card.Ground.Left)!.Value.Inches, 0.01);
        Assert.Equal(-0.33, card.Over(card.Ground.Right)!.Value.Inches, 0.02);
    }
}
