using Tautline.Engine.Catalog;
using Tautline.Engine.Comparison;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Spec = Tautline.Engine.Jobs.Spec;

namespace Tautline.Engine.Tests.Limits;

/// <summary>
/// What each limit that layout and take-off are made by does to a job, worked by hand from the source text. The job is the
/// straight 100-ft line, 6 ft high, of docs/checks/first-light.md, part A: 9 line posts of 2.375, 2 ends of 2.875, bar 70 in,
/// 20 1/2 diamonds of 72 / 20.5 = 3.5122 in, fabric 1195.125 in, diamonds 2.80 in wide.
/// </summary>
public sealed class ComparisonTests
{
    private static readonly Job straight = Some.StraightHundred();

    private static RuleComparison Base(string set, Job job) => RuleComparison.Compare(job, Some.Catalog, Some.Rules, RuleSets.Find(set)!);

    private static Job With(Spec spec) => straight with { Specs = [spec] };

    private static (double A, double B) Figure(RuleComparison compared, JobFigure figure)
    {
        var found = compared.Figures.Single(f => f.Figure == figure);
        return (found.A, found.B);
    }

    private static (double? A, double? B) Net(RuleComparison compared, string part)
    {
        var line = compared.Takeoff.Single(t => t.Item.Part == part);
        return (line.A?.Net, line.B?.Net);
    }

    /// <summary>12 / 3.5122 = 3.4: 3 diamonds; (20.5 - 2) / 3 = 6.2: 7 + 1 = 8 on a bar, by inches (70 - 8) / 12 = 5.2: 7. At 15 in 6. Two bars.</summary>
    [Fact]
    public void CaltransBandMax()
    {
        var compared = Base("caltrans", straight);
        Assert.Equal((12, 16), Figure(compared, JobFigure.Bands));
        Assert.Equal((12, 16), Net(compared, "tension-band"));
    }

    /// <summary>14 / 3.5122 = 3.99: 3 diamonds, so 8 ties for 6 on each of 9 posts.</summary>
    [Fact]
    public void CaltransTiePostMax() => Assert.Equal((54, 72), Figure(Base("caltrans", straight), JobFigure.PostTies));

    /// <summary>18 / 2.80 = 6.4: 6 x 2.80 = 16.8; 1195.125 / 16.8 = 71.1: 72 - 1 = 71; at 22.4 in 54 - 1 = 53.</summary>
    [Fact]
    public void CaltransRingMax() => Assert.Equal((53, 71), Figure(Base("caltrans", straight), JobFigure.Rings));

    /// <summary>80-3.03 braces every end; by the base set a 4-ft fence with a rail has no brace, and at 6 ft the job must say.</summary>
    [Fact]
    public void CaltransBraceHeight()
    {
        var low = Base("caltrans", With(Some.Spec(4) with { Brace = null }));
        Assert.Equal((0, 2), Figure(low, JobFigure.BracedEnds));
        var six = Base("caltrans", With(Some.Spec() with { Brace = null }));
        Assert.Equal((0, 2), Figure(six, JobFigure.BracedEnds));
        Assert.Contains(six.A.Problems, p => p.Code == ProblemCode.BraceQuestion);
        Assert.DoesNotContain(six.B.Problems, p => p.Code == ProblemCode.BraceQuestion);
    }

    /// <summary>12 in: 3 diamonds, 8 ties; 9 posts.</summary>
    [Fact]
    public void FaaTiePostMax() => Assert.Equal((54, 72), Figure(Base("faa", straight), JobFigure.PostTies));

    /// <summary>4 x 1.315 = 5.26, auger 6; 10 in asked.</summary>
    [Fact]
    public void NavyHoleLineDiameterMin()
    {
        var compared = Base("navy", With(Some.Spec() with { LinePost = "1.315-sch40" }));
        Assert.Equal((6, 10), LineHoles(compared, p => p.HoleDiameter.Inches));
    }

    /// <summary>24 + 3 x 2 = 30 in; 36 asked: the post is 6 in longer, 72 - 2 + 36 = 106. At 12 ft 24 + 3 x 8 = 48 is deeper already.</summary>
    [Fact]
    public void NavyHoleLineDepthMin()
    {
        var compared = Base("navy", straight);
        Assert.Equal((30, 36), LineHoles(compared, p => p.HoleDepth.Inches));
        Assert.Equal((100, 106), LineHoles(compared, p => p.CutLength.Inches));
        Assert.Equal((48, 48), LineHoles(Base("navy", With(Some.Spec(12))), p => p.HoleDepth.Inches));
    }

    /// <summary>4 x 1.900 = 7.6, auger 8; 12 in asked.</summary>
    [Fact]
    public void NavyHoleTerminalDiameterMin()
    {
        var compared = Base("navy", With(Some.Spec() with { TerminalPost = "1.900-sch40" }));
        Assert.Equal((8, 12), EndHoles(compared, p => p.HoleDiameter.Inches));
    }

    /// <summary>
    /// 36 in for 30. Concrete: 74.10968 x 36 = 2,667.948 / 1728 = 1.54395 cu ft a line hole, 106.60553 x 36 = 3,837.799 / 1728 =
    /// 2.22095 an end's; 9 x 1.54395 + 2 x 2.22095 = 18.3375; bags 1.54395 / 0.60 = 2.57: 3, 2.22095 / 0.60 = 3.70: 4, as before.
    /// </summary>
    [Fact]
    public void NavyHoleTerminalDepthMin()
    {
        var compared = Base("navy", straight);
        Assert.Equal((30, 36), EndHoles(compared, p => p.HoleDepth.Inches));
        var (before, after) = Figure(compared, JobFigure.Concrete);
        Assert.Equal(15.2812, new Volume(before).CubicFeet, 4);
        Assert.Equal(18.3375, new Volume(after).CubicFeet, 4);
        Assert.Equal((35, 35), Figure(compared, JobFigure.Bags));
    }

    /// <summary>1,300 ft under a tension wire: 1300 / 500 = 2.6, two pull posts; 1300 / 660 = 1.97, one. With a rail two by either set.</summary>
    [Theory]
    [InlineData("wire", 4, 3)]
    [InlineData("rail", 4, 4)]
    public void OhioRunMaxWithoutRail(string top, int byBase, int byOhio)
    {
        var job = Some.Job(Some.Line("main", false, [(0, 0), (0, 1300)]), Some.Spec() with { Top = top });
        Assert.Equal((byBase, byOhio), Figure(Base("ohio-dot", job), JobFigure.Terminals));
    }

    /// <summary>Table 710.03-1M to 6 ft: 2.375 for the usual 1.900; over 6 ft the catalogue's 2.375.</summary>
    [Theory]
    [InlineData(5, "1.900-sch40", "2.375-sch40")]
    [InlineData(6, "1.900-sch40", "2.375-sch40")]
    [InlineData(7, "2.375-sch40", "2.375-sch40")]
    public void OhioPostLineSize(double feet, string byBase, string byOhio)
    {
        var compared = Base("ohio-dot", With(Some.Spec(feet) with { LinePost = null }));
        Assert.Equal((byBase, byOhio), (compared.A.Specs[0].LinePost, compared.B.Specs[0].LinePost));
    }

    /// <summary>2.875 for the usual 2.375; a post the spec names is not changed.</summary>
    [Fact]
    public void OhioPostTerminalSize()
    {
        var compared = Base("ohio-dot", With(Some.Spec() with { TerminalPost = null }));
        Assert.Equal(("2.375-sch40", "2.875-sch40"), (compared.A.Specs[0].TerminalPost, compared.B.Specs[0].TerminalPost));
        Assert.Equal("2.875-sch40", Base("ohio-dot", straight).A.Specs[0].TerminalPost);
    }

    /// <summary>42 mm is the catalogue's 1.660 too: nothing to buy differs.</summary>
    [Fact]
    public void OhioRailSize()
    {
        var compared = Base("ohio-dot", With(Some.Spec() with { RailSection = null }));
        Assert.Equal("1.660-sch40", compared.B.Specs[0].Rail);
        Assert.DoesNotContain(compared.Takeoff, t => t.Item.Part == "rail");
    }

    /// <summary>
    /// Leaves of 4, 8, 14 and 20 ft (1.22, 2.44, 4.27, 6.10 m) by Table 710.03-1M against common practice for 6 ft, which ends at 18
    /// ft; 6 ft (1.8288 m) is over the printed 1.8 m. No post is smaller than the terminals: 2.375 here.
    /// </summary>
    [Theory]
    [InlineData(4, "2.375-sch40", "2.875-sch40")]
    [InlineData(6, "2.875-sch40", "4.000-sch40")]
    [InlineData(8, "2.875-sch40", "4.000-sch40")]
    [InlineData(14, "4.000-sch40", "6.625-sch40")]
    public void OhioGatePostSize(double leafFeet, string byBase, string byOhio)
    {
        var compared = Base("ohio-dot", Gated(leafFeet, 6));
        Assert.Equal((byBase, byOhio), (compared.A.Lines[0].Gates[0].Post, compared.B.Lines[0].Gates[0].Post));
    }

    [Fact]
    public void OhioGatePostSizeWithoutEnd()
    {
        var plan = JobPlanner.Plan(Gated(20, 6) with { RuleSet = "ohio-dot" }, Some.Catalog, RuleSets.Find("ohio-dot")!, BuiltFacts.None);
        Assert.Equal("8.625-sch40", plan.Lines[0].Gates[0].Post);
        Assert.Contains(Some.Plan(Gated(20, 6)).Problems, p => p.Code == ProblemCode.GatePostUnlisted);
    }

    /// <summary>The table is for fences up to 6 ft: at 8 ft both take MIL-HDBK-1013/10, 4.000 for a leaf of 8 ft.</summary>
    [Fact]
    public void OhioGatePostSizeFence()
    {
        var compared = Base("ohio-dot", Gated(8, 8));
        Assert.Equal(("4.000-sch40", "4.000-sch40"), (compared.A.Lines[0].Gates[0].Post, compared.B.Lines[0].Gates[0].Post));
    }

    /// <summary>4 x 1.315 = 5.26, auger 6; 8 in asked.</summary>
    [Fact]
    public void TremontonHoleLineDiameterMin()
        => Assert.Equal((6, 8), LineHoles(Base("tremonton", With(Some.Spec() with { LinePost = "1.315-sch40" })), p => p.HoleDiameter.Inches));

    /// <summary>4 x 1.900 = 7.6, auger 8; 10 in asked.</summary>
    [Fact]
    public void TremontonHoleTerminalDiameterMin()
        => Assert.Equal((8, 10), EndHoles(Base("tremonton", With(Some.Spec() with { TerminalPost = "1.900-sch40" })), p => p.HoleDiameter.Inches));

    /// <summary>
    /// Holes 30 + 6 = 36 in, posts as long as before. Line: pi/4 x (100 x 36 - 5.640625 x 30) = pi/4 x 3,430.78125 = 2,694.529 /
    /// 1728 = 1.559334 cu ft; end: pi/4 x (144 x 36 - 8.265625 x 30) = pi/4 x 4,936.03125 = 3,876.750 / 1728 = 2.243490.
    /// 9 x 1.559334 + 2 x 2.243490 = 18.5210. Bags 2.60: 3 and 3.74: 4, as before.
    /// </summary>
    [Fact]
    public void TremontonHoleConcreteBelow()
    {
        var compared = Base("tremonton", straight);
        Assert.Equal((30, 36), LineHoles(compared, p => p.HoleDepth.Inches));
        Assert.Equal((100, 100), LineHoles(compared, p => p.CutLength.Inches));
        Assert.Equal((104, 104), EndHoles(compared, p => p.CutLength.Inches));
        Assert.Equal(18.5210, new Volume(Figure(compared, JobFigure.Concrete).B).CubicFeet, 4);
        Assert.Equal((35, 35), Figure(compared, JobFigure.Bags));
    }

    /// <summary>1.900 and 2.375 up to 6 ft: what the catalogue takes too, so nothing differs but where it comes from.</summary>
    [Fact]
    public void TremontonPostLineSizeAndPostTerminalSize()
    {
        var compared = Base("tremonton", With(Some.Spec() with { LinePost = null, TerminalPost = null }));
        Assert.Equal(("1.900-sch40", "2.375-sch40"), (compared.B.Specs[0].LinePost, compared.B.Specs[0].TerminalPost));
        Assert.DoesNotContain(compared.Takeoff, t => t.Item.Part == "post");
    }

    /// <summary>1 3/8 is 1.315 of an inch; 5 sticks either way, of other pipe.</summary>
    [Fact]
    public void TremontonRailSize()
    {
        var rails = Base("tremonton", With(Some.Spec() with { RailSection = null })).Takeoff.Where(t => t.Item.Part == "rail").ToList();
        Assert.Equal(["1.660-sch40", "1.315-sch40"], rails.Select(r => r.Item.Section));
        Assert.Equal(((int?)5, null, null, (int?)5), (rails[0].A?.Purchase, rails[0].B?.Purchase, rails[1].A?.Purchase, rails[1].B?.Purchase));
    }

    /// <summary>UFGS: 6 ft or less with a top rail has no brace; the base set asks at 6 ft.</summary>
    [Fact]
    public void UsaceBraceAtHeight()
    {
        var compared = Base("usace", With(Some.Spec() with { Brace = null }));
        Assert.Contains(compared.A.Problems, p => p.Code == ProblemCode.BraceQuestion);
        Assert.DoesNotContain(compared.B.Problems, p => p.Code == ProblemCode.BraceQuestion);
        Assert.Equal((0, 0), Figure(compared, JobFigure.BracedEnds));
        Assert.Equal((2, 2), Figure(Base("usace", With(Some.Spec(7) with { Brace = null })), JobFigure.BracedEnds));
    }

    /// <summary>Its one row is only recorded: the plans are the same.</summary>
    [Fact]
    public void ALimitThatIsOnlyRecordedChangesNothing()
    {
        var compared = Base("missouri-dot", straight);
        Assert.Equal("gap.max", Assert.Single(compared.Limits).Rule.Key);
        Assert.DoesNotContain(compared.Figures, f => f.Differs);
        Assert.Empty(compared.Takeoff);
    }

    [Fact]
    public void ASetComparedWithItselfDiffersInNothing()
    {
        foreach (var name in RuleSets.Names)
        {
            var compared = RuleComparison.Compare(Some.Yard(), Some.Catalog, RuleSets.Find(name)!, RuleSets.Find(name)!);
            Assert.Empty(compared.Limits);
            Assert.Empty(compared.Takeoff);
            Assert.All(compared.Figures, f => Assert.False(f.Differs));
        }
    }

    [Fact]
    public void WhatTheJobItselfStatesDoesNotDiffer()
    {
        var job = straight with { AsSpecified = [new RuleOverride { Rule = "band.max", Value = 0.381 }] };
        var compared = Base("caltrans", job);
        Assert.DoesNotContain(compared.Limits, l => l.Rule.Key == "band.max");
        Assert.Equal((12, 12), Figure(compared, JobFigure.Bands));
    }

    [Fact]
    public void AJobWithAnErrorIsNotCountedByEither()
    {
        var compared = Base("navy", straight with { Lines = [] });
        Assert.NotEmpty(compared.Limits);
        Assert.Empty(compared.Figures);
        Assert.True(compared.A.HasErrors && compared.B.HasErrors);
    }

    private static Job Gated(double leafFeet, double heightFeet)
        => Some.Job(Some.Line("main", false, [(0, 0), (0, 200)]), Some.Spec(heightFeet) with { TerminalPost = "2.375-sch40" }) with
        {
            Gates = [Some.Gate("drive", "main/leg1", "double", 60, 2 * leafFeet)],
        };

    private static (double A, double B) LineHoles(RuleComparison compared, Func<PostPlan, double> inches)
        => (One(compared.A, true, inches), One(compared.B, true, inches));

    private static (double A, double B) EndHoles(RuleComparison compared, Func<PostPlan, double> inches)
        => (One(compared.A, false, inches), One(compared.B, false, inches));

    private static double One(Plan plan, bool line, Func<PostPlan, double> inches)
        => Math.Round(Assert.Single(plan.Lines[0].Posts.Where(p => p.Kind == PostKind.Line == line).Select(inches).Distinct()), 6);
}
