using Tautline.Engine.Fabric;
using Tautline.Engine.Fabric.Rolls;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Hang;

/// <summary>
/// The rows of trade_practice.md that come to words or counts of their own; every one of them common practice, no source. Rows 3 to 5, 8 to 11, 20
/// and 21 are tested with the mesh, the fastenings, the seat, the bias and the stack. Row 2 (galvanized after weaving or before) and row 19 (a week's
/// production) come to no figure of a hang plan.
/// </summary>
public sealed class PracticeTests
{
    [Fact]
    public void Row1FabricIsCalledOutAsMeshGaugeHeightAndSelvage()
        => Assert.Equal("2 x 9 x 84 KT", HangWords.CallOut(Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 100)]), Some.Spec(7))).Basis.Specs[0]));

    [Fact]
    public void Row6PostTiesAreOrderedByThePost()
    {
        var ties = Some.Plan(Some.StraightHundred()).Takeoff.Single(t => t.Part == "post-tie");
        Assert.Equal("2.375-sch40", ties.Section);
    }

    [Theory]
    [InlineData(7, "tie the picket nearest to the post")]
    [InlineData(12, "cut on both sides of its knuckle and of its twist")]
    [InlineData(13, "take one picket off")]
    [InlineData(14, "one and the same picket from top to bottom")]
    [InlineData(15, "Shake the fabric")]
    public void RowsThatACrewIsTold(int row, string words)
        => Assert.True(HangWords.EveryPull.Any(s => s.Contains(words, StringComparison.Ordinal)), $"row {row}");

    [Fact]
    public void Row16TheUpperPullerIsWatched()
    {
        var hang = Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 40)]), Some.Spec(7))).Lines[0].Runs[0].Hang;
        Assert.Contains("setting the lower one slackens the upper", HangWords.Method(hang, UnitSystem.UsCustomary), StringComparison.Ordinal);
    }

    /// <summary>150 ft hung of 50-ft rolls: three are woven into one length and carried at a time.</summary>
    [Fact]
    public void Row17ThreeRollsOfFiftyFeetAreOneLoad()
    {
        var plan = Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 145)])) with { Calibrations = [Some.Calibration()] });
        var load = Assert.Single(plan.Rolls!.Loads);
        Assert.Equal((3, false), (load.Pieces, load.Over));
        Assert.Equal(50, new Length(plan.Rolls.Rolls[0].LengthNm * 1e-9).Feet, 9);
    }

    /// <summary>check_jobs.md 3 stands behind the grade: 25 % on 6 ft is 18 in of mismatch, 13 pickets at 1.40.</summary>
    [Fact]
    public void OnlyTheFirstTiedEndIsCutAhead()
    {
        var run = Some.Plan(Some.Steep()).Lines[0].Runs[0];
        Assert.Equal("The first-tied end: cut it before it hangs.", HangWords.Ahead(run, true, ""));
        Assert.Equal("The far end, 13 pickets as reckoned: do not cut it ahead. Read top and bottom under tension.", HangWords.Ahead(run, false, ""));
    }

    [Fact]
    public void TheRollsSideOfACutFitsTheNextEndOfTheOtherHand()
    {
        var plan = Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 60), (0, 120)], [0.2, 0.2])) with { Calibrations = [Some.Calibration()] });
        Assert.Equal(new OffcutEnd(0, 0, 1, OffcutUse.Mirror), HangCards.OffcutTo(plan, 0, 0, 0));
        Assert.Null(HangCards.OffcutTo(plan, 0, 0, 1));
        Assert.Null(HangCards.OffcutTo(Some.Plan(Some.StraightHundred()), 0, 0, 0));
    }

    /// <summary>A rule set that wants the wire at the top, and fabric that stands half a diamond and its twist over it.</summary>
    [Fact]
    public void AWireTooFarUnderTheTopIsAProblem()
    {
        var spec = Some.Spec(7) with { Top = "wire", Selvage = "TK" };
        var job = Some.Job(Some.Line("main", false, [(0, 0), (0, 100)]), spec);
        Assert.DoesNotContain(Some.Plan(job).Problems, p => p.Code == ProblemCode.SeatWire);
        var agency = Engine.Catalog.RuleSets.Names.First(n => Engine.Catalog.RuleSets.Find(n)!.Find("wire.topBelow") is { Length.Inches: < 2.5 });
        var rules = Engine.Catalog.RuleSets.Find(agency)!;
        var told = JobPlanner.Plan(job with { RuleSet = agency }, Some.Catalog, rules, Engine.Jobs.BuiltFacts.None).Problems;
        Assert.Single(told, p => p.Code == ProblemCode.SeatWire);
    }
}
