using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Field.Building;
using Tautline.Field.Cards;
using Tautline.Field.Log;

namespace Tautline.Field.Tests.Cards;

/// <summary>
/// A hundred feet of fence in ten-foot bays; the rule set's holes for 2.375-in line posts are 10 in across (4 times the post is 9.5, the next auger 10), so a hole reaches
/// 5 in from the middle of its post. Distances by hand.
/// </summary>
public sealed class DrillCardTests
{
    private static readonly LogEntry ticket = Yard.Entry("a", 1, 1, LogEntry.Ticket) with { Locate = new() { Number = "T-7", From = 10, To = 50 } };

    private static DrillCard Card(Job job, double? zoneInches, long at = 20, params LogEntry[] log)
        => DrillCard.Of(Yard.Plan(job with { Specs = Yard.Counted.Specs }).Now, LogState.Of(log.Length > 0 ? log : [ticket]), at, zoneInches is { } inches ? Length.FromInches(inches) : null);

    private static IEnumerable<int> Numbers(DrillCard card, DrillWord word) => card.Rows.Where(r => r.Word == word).Select(r => r.Post + 1);

    [Fact]
    public void WithoutATicketInForceNoPostIsOnTheList()
    {
        Assert.Empty(Card(Yard.Job, 24, at: 5).Rows);
        Assert.Equal(DigWord.NotYet, Card(Yard.Job, 24, at: 5).Ticket.Word);
        Assert.Empty(Card(Yard.Job, 24, at: 50).Rows);
        Assert.Equal(11, Card(Yard.Job, null).Rows.Count);
    }

    [Fact]
    public void AStretchOfTheJobAsksHowWideTheZoneIs()
    {
        Assert.True(Card(Yard.NoDig(44, 46, 0), null).AsksZone);
        Assert.Empty(Card(Yard.NoDig(44, 46, 0), null).Rows);
    }

    /// <summary>Line marked from 44 to 46 ft. Posts 5 and 6 at 40 and 50 ft are 48 in from it, their holes 43 in: within a zone of 43 in, clear of one of 42.</summary>
    [Fact]
    public void AHoleThatReachesTheZoneIsDugByHand()
    {
        Assert.Equal([5, 6], Numbers(Card(Yard.NoDig(44, 46, 0), 43), DrillWord.ByHand));
        Assert.Empty(Numbers(Card(Yard.NoDig(44, 46, 0), 42), DrillWord.ByHand));
        Assert.Equal(11, Numbers(Card(Yard.NoDig(44, 46, 0), 42), DrillWord.MayDrill).Count());
    }

    /// <summary>The line is marked after a post was set at 45 ft: that post stands in it, and the card says so.</summary>
    [Fact]
    public void APostInsideTheStretchIsNoPost()
    {
        var job = Yard.NoDig(44, 46, 0) with { Pins = [new() { Id = new("p"), Leg = new("leg"), At = Length.FromFeet(45) }] };
        var card = Card(job, 12);
        var row = Assert.Single(card.Rows, r => r.Word == DrillWord.NoPost);
        Assert.Equal(45, Yard.Plan(job).Now.Lines[0].Posts[row.Post].Station.Feet, 0.001);
        Assert.Equal("water", row.Stretch!.Id.Value);
    }

    /// <summary>
    /// A square of 40 ft, a line marked on the first side from 37 to 38 ft. The post 10 ft round the corner is 12 ft away along the fence, but straight over the ground
    /// only the root of 10² + 2², 10.198 ft or 122.4 in, its hole 117.4: a zone of 118 in reaches it.
    /// </summary>
    [Fact]
    public void DistanceGoesStraightOverTheGroundRoundACorner()
    {
        var job = Yard.Closed(40) with
        {
            Obstacles = [new() { Id = new("water"), Leg = new("one"), Kind = Obstacle.NoDig, From = Length.FromFeet(37), To = Length.FromFeet(38) }],
        };
        Assert.Contains(6, Numbers(Card(job, 118), DrillWord.ByHand));
        Assert.Contains(6, Numbers(Card(job, 117), DrillWord.MayDrill));
    }

    /// <summary>A tree is no buried line: its root space keeps posts out, and asks for no tolerance zone.</summary>
    [Fact]
    public void ATreeHasNoToleranceZone()
    {
        var job = Yard.NoDig(44, 46, 1) with { Obstacles = [Yard.NoDig(44, 46, 1).Obstacles[0] with { Kind = Obstacle.Tree }] };
        Assert.False(Card(job, null).AsksZone);
        Assert.Equal(11, Numbers(Card(job, null), DrillWord.MayDrill).Count());
    }

    /// <summary>
    /// A cantilever gate 20 ft wide from 30 ft, running back to the end: first roller at 50 ft and half a 4-in post, the second its 10-ft tail behind it at 60.17 ft. A line
    /// marked from 60 to 61 ft takes that hole, which is on no line of the fence.
    /// </summary>
    [Fact]
    public void TheSecondRollerPostIsDugToo()
    {
        var job = Yard.NoDig(60, 61, 0) with
        {
            Gates = [new() { Id = new("gate"), Leg = new("leg"), Kind = Gate.Cantilever, NearFace = Length.FromFeet(30), Opening = Length.FromFeet(20), RunsBack = "end" }],
        };
        var roller = Assert.Single(Card(job, 12).Rows, r => r.SecondRoller);
        Assert.Equal(DrillWord.NoPost, roller.Word);
    }

    [Fact]
    public void APostInNoRunIsNotTakenForDrilled()
    {
        var card = Card(Yard.GateFirst, null);
        Assert.Equal(Yard.Plan(Yard.GateFirst).Now.Lines[0].Posts.Count, card.Rows.Count(r => !r.Drilled && r.Word == DrillWord.MayDrill));
    }

    [Fact]
    public void PostsThatAreDrilledAreKnown()
    {
        var plan = Yard.Plan().Now;
        var row = Today.Of(plan, LogState.Of([])).Rows.Single(r => r.Operation == Operations.Drill);
        var card = Card(Yard.Job, null, 20, ticket, Yard.Work(2, Marking.Next(plan, row, 3)));
        Assert.Equal([0, 1, 2], card.Rows.Where(r => r.Drilled).Select(r => r.Post));
    }
}
