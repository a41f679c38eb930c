using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.AsBuilt;
using Tautline.Field.Building;
using Tautline.Field.Log;

namespace Tautline.Field.Tests.AsBuilt;

/// <summary>What stands beside what was drawn, on a hundred feet of fence counted by hand. Expected figures are literals.</summary>
public sealed class BuiltRecordTests
{
    private static BuiltRecord Record(params LogEntry[] log) => Record(Yard.Job, log);

    private static BuiltRecord Record(Job job, params LogEntry[] log) => BuiltRecord.Of(Yard.Plan(job, log), LogState.Of(log));

    private static LogEntry Set(long n, params PostDone[] posts) => Yard.Work(n, new() { Operation = Operations.Set, Count = posts.Length, Posts = posts });

    private static PostDone At(double feet, bool line = true, double east = 0)
        => Marking.At(Yard.Plan().AsDrawn, 0, line ? 1 : 0, Length.FromFeet(feet)) with { East = Length.FromInches(east) };

    private static LogEntry Whole(long n, string operation, Job? job = null)
    {
        var plan = Yard.Plan(job ?? Yard.Job).AsDrawn;
        var (done, place) = Marking.Whole(plan, Today.Of(plan, LogState.Of([])).Rows.First(r => r.Operation == operation));
        return Yard.Work(n, done, place);
    }

    private static double[] Feet(IEnumerable<DoneStretch> stretches) => [.. stretches.SelectMany(s => new[] { Math.Round(s.From.Feet, 6), Math.Round(s.To.Feet, 6) })];

    private static IReadOnlyList<DoneStretch> Stretches(BuiltRecord record, string operation) => record.Progress.Stations.Single(s => s.Line == 0 && s.Operation == operation).Stretches;

    private static (int Done, int Of, int Percent) Run(BuiltRecord record, string operation)
        => record.Progress.Runs[0].Operations.Where(o => o.Operation == operation).Select(o => (o.Done, o.Of, o.Percent)).Single();

    private static (double Done, double Of, int Percent) Figure(BuiltRecord record, ProgressKind kind)
        => record.Progress.Figures.Where(f => f.Kind == kind).Select(f => f.IsLength ? (Math.Round(new Length(f.Done).Feet, 6), Math.Round(new Length(f.Of).Feet, 6), f.Percent) : (f.Done, f.Of, f.Percent)).Single();

    /// <summary>
    /// By hand: posts at 0, 10, 20 and 30 ft as drawn; rock at 40, so the fifth stands at 41 ft 6 in, a foot and a half ahead. Eleven posts were drawn, five are paired,
    /// six are to build. From 30 on the fence is divided anew: 30, 35.75, 41.5, then six bays of 9.75 ft to 100: twelve posts, of which five stand, 41 of 100 whole.
    /// </summary>
    [Fact]
    public void APostThatHitRockStandsAFootAndAHalfAhead()
    {
        var record = Record(Set(1, At(0, line: false), At(10), At(20), At(30)), Set(2, At(41.5)));
        Assert.Equal([0, 1, 2, 3, 4], record.Posts.Select(p => p.Drawn!.Value));
        var moved = Assert.Single(record.Differences);
        Assert.Equal((4, 41.5, 1.5, 0.0), (moved.Drawn, Math.Round(moved.Station.Feet, 6), Math.Round(moved.Along.Feet, 6), moved.Off.Metres));
        Assert.True(moved is { Moved: true, OutOfLine: false, OtherKind: false });
        Assert.Equal([5, 6, 7, 8, 9, 10], record.ToBuild.Select(p => p.Post));
        Assert.Empty(record.Extra);
        Assert.Empty(record.LeftOut);
        Assert.Equal((5, 12, 41), Run(record, Operations.Set));
        Assert.Equal((5.0, 12.0, 41), Figure(record, ProgressKind.Posts));
        Assert.Equal([0, 30, 41.5, 41.5], Feet(Stretches(record, Operations.Set)));
        Assert.Equal([0, 30, 41.5, 41.5], Feet(Stretches(record, Operations.Drill)));
        // One line post more: the take-off has nine of them as drawn and ten now.
        var posts = Assert.Single(record.Takeoff, d => d.Item.Part == "post" && d.A?.Net == 9);
        Assert.Equal(10, posts.B!.Net);
        Assert.False(record.AsDrawn);
    }

    /// <summary>All of it set: the post at 35.75 ft finds its own taken by the one at 41.5 and is one the drawing does not have.</summary>
    [Fact]
    public void TheTwelfthPostIsOneTheDrawingDoesNotHave()
    {
        var record = Record(Set(1, At(0, line: false), At(10), At(20), At(30), At(35.75), At(41.5), At(51.25), At(61), At(70.75), At(80.5), At(90.25), At(100, line: false)));
        Assert.Equal(35.75, Assert.Single(record.Extra).Station.Feet, 6);
        Assert.Equal([0, 0, 0, 0, 1.5, 1.25, 1, 0.75, 0.5, 0.25, 0], record.Posts.Where(p => p.Drawn is not null).Select(p => Math.Round(p.Along.Feet, 6)));
        Assert.Empty(record.ToBuild);
        Assert.Equal((12, 12, 100), Run(record, Operations.Set));
        Assert.Equal([0, 100], Feet(Stretches(record, Operations.Set)));
    }

    /// <summary>The line runs north: east of it is its right. Three quarters of an inch is over the half inch of UFGS 32 31 13, three eighths are not.</summary>
    [Fact]
    public void RightOfTheLineIsAboveZeroAndOverHalfAnInchIsTold()
    {
        var record = Record(Set(1, At(10, east: 0.75), At(20, east: -0.375), At(30, east: 0.5)));
        Assert.Equal([0.75, -0.375, 0.5], record.Posts.Select(p => Math.Round(p.Off.Inches, 6)));
        Assert.Equal([true, false, false], record.Posts.Select(p => p.OutOfLine));
        Assert.Equal(3, record.Differences.Count());
    }

    /// <summary>An office that moves the line three inches east leaves the post three inches to the left of it; one that moves it two hundred feet leaves it without a line.</summary>
    [Fact]
    public void AMovedLineLeavesThePostBesideIt()
    {
        var set = Set(1, At(0, line: false), At(10));
        Assert.Equal([-3, -3], Record(Yard.Shifted(0.25), set).Posts.Select(p => Math.Round(p.Off.Inches, 6)));
        var away = Record(Yard.Shifted(200), set);
        Assert.Equal(2, away.Lost.Count);
        Assert.Empty(away.Posts);
        Assert.Equal(11, away.ToBuild.Count);
    }

    /// <summary>A terminal set two feet past the end of the line stands two feet ahead and on the line.</summary>
    [Fact]
    public void PastAnEndIsAlongTheLine()
    {
        var end = Assert.Single(Record(Set(1, At(100, line: false) with { North = Length.FromFeet(102) })).Posts);
        Assert.Equal((10, 2.0, 0.0), (end.Drawn, Math.Round(end.Along.Feet, 6), Math.Round(end.Off.Metres, 9)));
    }

    /// <summary>A square of 60 ft a side: its first post is where it comes back to, and is told once.</summary>
    [Fact]
    public void TheFirstPostOfAClosedLineIsOneStretch()
    {
        var plan = Yard.Plan(Yard.Closed(60)).AsDrawn;
        Assert.Equal([0, 10], Feet(Stretches(Record(Yard.Closed(60), Set(1, Marking.AsPlanned(plan, 0, 0), Marking.AsPlanned(plan, 0, 1))), Operations.Set)));
        var last = plan.Lines[0].Posts.Count - 1;
        Assert.Equal([0, 0, 230, 240], Feet(Stretches(Record(Yard.Closed(60), Set(1, Marking.AsPlanned(plan, 0, 0), Marking.AsPlanned(plan, 0, last))), Operations.Set)));
    }

    [Fact]
    public void ALinePostWhereATerminalIsDrawnIsTold()
    {
        var record = Record(Set(1, At(0)));
        Assert.True(Assert.Single(record.Differences) is { Drawn: 0, OtherKind: true, Moved: false });
    }

    /// <summary>Four feet short of the end a line post is not taken for the end post.</summary>
    [Fact]
    public void ALinePostIsNotTakenForATerminalThatIsElsewhere()
        => Assert.Null(Assert.Single(Record(Set(1, At(96))).Posts).Drawn);

    /// <summary>Set twice, the later place holds; taken back, neither counts but the first.</summary>
    [Fact]
    public void TheLaterMeasureHoldsAndWhatIsTakenBackDoesNotCount()
    {
        var (first, later) = (Set(1, At(41.5)), Set(2, At(41.25)));
        Assert.Equal(1.25, Assert.Single(Record(first, later).Posts).Along.Feet, 6);
        var back = Yard.Entry("a", 3, 3, LogEntry.Work) with { Supersedes = later.Key, TakesBack = true };
        Assert.Equal(1.5, Assert.Single(Record(first, later, back).Posts).Along.Feet, 6);
        var both = Yard.Entry("a", 4, 4, LogEntry.Work) with { Supersedes = first.Key, TakesBack = true };
        Assert.Empty(Record(first, later, back, both).Posts);
    }

    /// <summary>Rail 100 ft less half of each terminal's diameter, twice, as the plan has it: framed, hung and not tied.</summary>
    [Fact]
    public void ARunFramedAndHungCountsItsRailAndFabric()
    {
        var record = Record(Yard.Counted, Whole(1, Operations.Frame), Whole(2, Operations.Hang));
        var run = record.Now.Lines[0].Runs[0];
        Assert.Equal((Math.Round(run.Rail.Feet, 6), Math.Round(run.Rail.Feet, 6), 100), Figure(record, ProgressKind.Rail));
        Assert.Equal(99.760417, Figure(record, ProgressKind.Rail).Of, 6); // 100 ft - 2.875 in, check job 1
        Assert.Equal((Math.Round(run.Fabric.Feet, 6), 100), (Figure(record, ProgressKind.Hung).Done, Figure(record, ProgressKind.Hung).Percent));
        Assert.Equal((0, 0), (Figure(record, ProgressKind.Tied).Done, Figure(record, ProgressKind.Tied).Percent));
        Assert.Equal([0, 100], Feet(Stretches(record, Operations.Hang)));
        Assert.Empty(Stretches(record, Operations.Tie));
        Assert.True(record.AsDrawn);
    }

    [Fact]
    public void AHungGateIsCountedAndAPostOfNoRunIsToldApart()
    {
        Assert.Equal((0, 1, 1), (Figure(Record(Yard.GateFirst), ProgressKind.Gates).Done, Figure(Record(Yard.GateFirst), ProgressKind.Gates).Of, Record(Yard.GateFirst).Progress.Apart));
        var record = Record(Yard.GateFirst, Whole(1, Operations.Gate, Yard.GateFirst));
        Assert.Equal((1.0, 1.0, 100), Figure(record, ProgressKind.Gates));
        Assert.True(Assert.Single(record.Progress.Gates).Hung);
    }

    /// <summary>The drawing has ten bays of ten feet; by a rule of 11' 6" there are nine of 11.11 ft. Built so, the post at 50 ft was left out.</summary>
    [Fact]
    public void APostThatARunWasBuiltWithoutIsLeftOut()
    {
        var wide = Yard.Plan(Yard.Job with { AsSpecified = [new() { Rule = "bay.max", Value = Length.FromFeet(11.5).Metres }] }).AsDrawn;
        Assert.Equal(10, wide.Lines[0].Posts.Count);
        var log = LogState.Of([Set(1, [.. Enumerable.Range(0, 10).Select(p => Marking.AsPlanned(wide, 0, p))])]);
        var record = BuiltRecord.Of(Yard.Plan().AsDrawn, wide, log);
        Assert.Equal(5, Assert.Single(record.LeftOut).Post);
        Assert.Empty(record.ToBuild);
        Assert.Equal((10, 10, 100), Run(record, Operations.Set));
    }

    [Fact]
    public void ChangesAreThereInOrderAndSummed()
    {
        LogEntry Change(long n, long cents) => Yard.Entry("a", n, n, LogEntry.Change) with { Text = "rock", Place = new() { Leg = new(n == 1 ? "leg" : "gone"), At = Length.FromFeet(40) }, Changed = new() { Quantity = 1, Unit = "hole", UnitCents = cents, TotalCents = cents, Signer = "Ines" } };
        var record = Record(Change(2, 4_550), Change(1, 12_500));
        Assert.Equal([(1, 40.0), (2, null)], record.Changes.Select(c => (c.Entry.Sequence, c.Station?.Feet)));
        Assert.Equal(17_050, record.ChangedCents);
        Assert.True(record.AsDrawn);
    }

    [Fact]
    public void WhileThereAreErrorsOnlyTheChangesAreThere()
    {
        var broken = Yard.Plan(Yard.Job with { Specs = [] }).AsDrawn;
        Assert.True(broken.HasErrors);
        var record = BuiltRecord.Of(broken, broken, LogState.Of([Set(1, At(10))]));
        Assert.Empty(record.Posts);
        Assert.Empty(record.Progress.Runs);
    }
}
