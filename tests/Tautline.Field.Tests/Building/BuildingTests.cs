using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.Building;
using Tautline.Field.Log;

namespace Tautline.Field.Tests.Building;

/// <summary>A day on a hundred feet of fence.</summary>
public sealed class BuildingTests
{
    private static TodayRow Row(FieldPlan plan, string operation, params LogEntry[] log)
        => Today.Of(plan.Now, LogState.Of(log)).Rows.Single(r => r.Operation == operation);

    [Fact]
    public void FivePostsSetAreDrilledAndStakedTooAndSixAreLeft()
    {
        var plan = Yard.Plan();
        var set = Yard.Work(1, Marking.Next(plan.Now, Row(plan, Operations.Set), 5));
        Assert.Equal((11, 5), (Row(plan, Operations.Set, set).Of, Row(plan, Operations.Set, set).Done));
        Assert.Equal([5, 6, 7, 8, 9, 10], Row(plan, Operations.Set, set).Left);
        Assert.Equal(5, Row(plan, Operations.Drill, set).Done);
        Assert.Equal(5, Row(plan, Operations.Stake, set).Done);
        Assert.Equal(0, Row(plan, Operations.Hang, set).Done);
        Assert.Equal(Operations.Stake, Today.Of(plan.Now, LogState.Of([set])).Next(0, 0)!.Operation);
    }

    [Fact]
    public void SetAsPlannedThePlanIsTheSame()
    {
        var plan = Yard.Plan();
        var now = Yard.Plan(Yard.Work(1, Marking.Next(plan.Now, Row(plan, Operations.Set), 11)));
        Assert.Equal(9, now.Standing.Facts.Posts.Count);
        Assert.Equal(PlanFile.Hash(plan.Now), PlanFile.Hash(now.Now));
    }

    /// <summary>Posts 2 to 4 as planned, post 5 hits rock and stands at 41 ft 6 in: the rest is divided anew, one post more.</summary>
    [Fact]
    public void AMovedPostReplansWhatIsNotBuilt()
    {
        var plan = Yard.Plan().Now;
        var set = Yard.Work(1, Marking.Next(plan, Row(Yard.Plan(), Operations.Set), 4));
        var moved = Yard.Work(2, new() { Operation = Operations.Set, Count = 1, Posts = [Marking.At(plan, 0, 4, Length.FromFeet(41.5))] });
        var now = Yard.Plan(set, moved);
        Assert.Equal([0, 10, 20, 30, 35.75, 41.5, 51.25, 61, 70.75, 80.5, 90.25, 100], Yard.Feet(now.Now));
        Assert.Equal([0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100], Yard.Feet(now.AsDrawn));
        Assert.Equal(7, Today.Of(now.Now, LogState.Of([set, moved])).Rows.Single(r => r.Operation == Operations.Set).Left.Count);
    }

    /// <summary>The post is measured once more: the later place holds, there is one post and not two.</summary>
    [Fact]
    public void AMeasurementOfTheSamePostHoldsInsteadOfTheFirst()
    {
        var plan = Yard.Plan().Now;
        LogEntry Set(long n, double feet) => Yard.Work(n, new() { Operation = Operations.Set, Count = 1, Posts = [Marking.At(plan, 0, 4, Length.FromFeet(feet))] });
        Assert.Equal(41.25, Assert.Single(Yard.Plan(Set(1, 41.5), Set(2, 41.25)).Standing.Facts.Posts).FromLegStart.Feet, 9);
    }

    /// <summary>The office moves the line three inches east: the post stays where it stands, and that it is off the line is told.</summary>
    [Fact]
    public void AMovedLineDoesNotTakeThePostAlong()
    {
        var set = Yard.Work(1, Marking.Next(Yard.Plan().Now, Row(Yard.Plan(), Operations.Set), 3));
        var findings = Yard.Plan(Yard.Shifted(0.25), set).Standing.Findings;
        Assert.Equal(2, findings.Count);
        Assert.All(findings, f => Assert.Equal((StandingFindingKind.OffLine, 3.0), (f.Kind, Math.Round(f.Off.Inches, 6))));
        Assert.Empty(Yard.Plan(Yard.Shifted(0.04), set).Standing.Findings);
    }

    /// <summary>
    /// Seen from the centre, (100, 0), the post is 0.8 of the way west and 0.6 north: on the arc that is 36.8699 degrees, 0.643501 of the radius, from its start, so
    /// 64.3501 ft. It stands 3 in nearer to the centre, at 99.75 ft: (20.2, 59.85). It was entered on a leg that is gone, or on this one before the arc was drawn.
    /// </summary>
    [Theory]
    [InlineData("gone", 30)]
    [InlineData("leg", 30)]
    [InlineData("leg", 150)]
    public void OnAnArcThePlaceIsTheFootThroughTheCentre(string leg, double at)
    {
        PostDone post = new() { Leg = new(leg), At = Length.FromFeet(at), East = Length.FromFeet(20.2), North = Length.FromFeet(59.85), Line = true, Number = 7 };
        var plan = Yard.Plan(Yard.Quarter, Yard.Work(1, new() { Operation = Operations.Set, Count = 1, Posts = [post] }));
        Assert.False(plan.Now.HasErrors);
        var stands = Assert.Single(plan.Standing.Facts.Posts);
        Assert.Equal(("leg", 64.3501), (stands.Leg.Value, Math.Round(stands.FromLegStart.Feet, 4)));
        var told = Assert.Single(plan.Standing.Findings);
        Assert.Equal((StandingFindingKind.OffLine, 3.0), (told.Kind, Math.Round(told.Off.Inches, 6)));
        Assert.Contains(64.3501, Yard.Feet(plan.Now));
    }

    /// <summary>Past the end of the arc, a foot further east: its foot is the end, 157.0796 ft along, and it is a foot off.</summary>
    [Fact]
    public void PastTheEndOfAnArcTheFootIsTheEnd()
    {
        PostDone post = new() { Leg = new("gone"), At = Length.Zero, East = Length.FromFeet(101), North = Length.FromFeet(100), Line = true };
        var standing = Yard.Plan(Yard.Quarter, Yard.Work(1, new() { Operation = Operations.Set, Count = 1, Posts = [post] })).Standing;
        Assert.Equal(157.0796, Math.Round(Assert.Single(standing.Facts.Posts).FromLegStart.Feet, 4));
        Assert.Equal(12.0, Math.Round(Assert.Single(standing.Findings).Off.Inches, 6));
    }

    [Fact]
    public void APostWhoseLineWentIsKeptAndToldAndThePlanGoesOn()
    {
        var set = Yard.Work(1, Marking.Next(Yard.Plan().Now, Row(Yard.Plan(), Operations.Set), 2));
        var away = Yard.Plan(Yard.Shifted(200), set);
        Assert.Equal(StandingFindingKind.NoLine, Assert.Single(away.Standing.Findings).Kind);
        Assert.False(away.Now.HasErrors);
        Assert.Equal(11, away.Now.Lines[0].Posts.Count);
    }

    [Fact]
    public void AHungRunIsDoneAndOneWhoseLegWentIsAstray()
    {
        var plan = Yard.Plan().Now;
        var (done, place) = Marking.Whole(plan, Row(Yard.Plan(), Operations.Hang));
        Assert.Equal(1, Row(Yard.Plan(), Operations.Hang, Yard.Work(1, done, place)).Done);
        var today = Today.Of(plan, LogState.Of([Yard.Work(1, done, place with { Leg = new("gone") })]));
        Assert.Single(today.Astray);
        Assert.Equal(0, today.Rows.Single(r => r.Operation == Operations.Hang).Done);
    }

    [Fact]
    public void WithoutATicketInForceNobodyDigs()
    {
        LogEntry Ticket(long n, long from, long to) => Yard.Entry("a", n, n, LogEntry.Ticket) with { Locate = new() { Number = "T", From = from, To = to } };
        Assert.Equal(DigWord.NoTicket, DigWatch.Of(LogState.Of([]), 50).Word);
        Assert.Equal(DigWord.NotYet, DigWatch.Of(LogState.Of([Ticket(1, 60, 90)]), 50).Word);
        Assert.Equal(DigWord.Expired, DigWatch.Of(LogState.Of([Ticket(1, 10, 50)]), 50).Word);
        Assert.True(DigWatch.Of(LogState.Of([Ticket(1, 10, 50), Ticket(2, 50, 90)]), 50).MayDig);
        Assert.False(DigWatch.Of(LogState.Of([Ticket(1, 10, 50), Ticket(2, 60, 90)]), 55).MayDig);
    }
}
