using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Checks;

// Posts on brackets on the face of a wall.
public sealed partial class ExtrasTests
{
    private static Obstacle Face(double from, double to, double? width = 12) => Stretch("wall", from, to, width) with { Support = "bracketed" };

    private static string Said(Plan plan, ProblemCode code) => ProblemText.Message(plan.Problems.First(p => p.Code == code), UnitSystem.UsCustomary);

    [Fact]
    public void PostsOnAWallsFaceTakeBracketsAndNoHole()
    {
        var plan = Some.Plan(With(Face(10, 90)));
        Assert.Equal((18, 36, 0), (Buy(plan, "wall-bracket"), Buy(plan, "anchor"), Buy(plan, "base-plate")));
        Assert.Equal(8, Buy(plan, "concrete-bag"));
        Assert.Equal(3.927, new Volume(Net(plan, "spoil")).CubicFeet, 3);
        var post = plan.Lines[0].Posts[1];
        Assert.Equal((70, 88, 90), (Inches(post.AboveGround), Inches(post.CutLength), Inches(post.OrderLength)));
        Assert.Equal((2, 4), (post.Brackets, post.Anchors));
        Assert.Null(plan.Lines[0].Posts[0].Brackets);
        Assert.Equal(
            "Posts hang on brackets on the face of the wall 'wall': the fence stands 7 3/16\" off the wall's centre.", Said(plan, ProblemCode.WallFaceNote));
        Assert.Equal(
            "Posts hang on brackets on the face of the wall 'wall', the lowest 1' 6\" down; nothing here proves wall, brackets or anchors.",
            Said(plan, ProblemCode.BracketProof));
        Assert.DoesNotContain(plan.Problems, p => p.Code is ProblemCode.BracketTerminal or ProblemCode.WallEdge or ProblemCode.WallFaceQuestion);
    }

    [Fact]
    public void TheJobSaysHowFarDownTheFaceTheLowestBracketSits()
    {
        var post = Some.Plan(With(Face(10, 90) with { Depth = Feet(2) })).Lines[0].Posts[1];
        Assert.Equal((94, 96), (Inches(post.CutLength), Inches(post.OrderLength)));
        foreach (var depth in (double[])[0, -1, 100, double.NaN])
            Assert.True(Some.Plan(With(Face(10, 90) with { Depth = new Length(depth) })).HasErrors);
    }

    [Fact]
    public void TerminalsOnBracketsAreTold()
    {
        var plan = Some.Plan(With(Face(0, 100)));
        Assert.Equal((22, 44), (Buy(plan, "wall-bracket"), Buy(plan, "anchor")));
        Assert.Equal((92, 96), (Inches(plan.Lines[0].Posts[0].CutLength), Inches(plan.Lines[0].Posts[0].OrderLength)));
        Assert.Equal(2, plan.Problems.Count(p => p.Code == ProblemCode.BracketTerminal));
        Assert.Contains("stands 7 7/16\" off", Said(plan, ProblemCode.WallFaceNote));
    }

    [Fact]
    public void BracketsAndAnchorsGoByTheRules()
    {
        RuleOverride Own(string rule, double value) => new() { Rule = rule, Value = value };
        var plan = Some.Plan(With(Face(10, 90)) with { AsSpecified = [Own("bracket.perPost", 3), Own("bracket.anchors", 4)] });
        Assert.Equal((27, 108), (Buy(plan, "wall-bracket"), Buy(plan, "anchor")));
        Assert.Contains(
            Some.Plan(With(Face(10, 90)) with { AsSpecified = [Own("bracket.perPost", 1.5)] }).Problems, p => p.Code == ProblemCode.RuleValue);
    }

    [Fact]
    public void ConcreteUnderThePostIsForPostsInConcrete()
    {
        var below = new RuleOverride { Rule = "hole.concreteBelow", Value = Length.FromInches(6).Metres };
        double Cut(params Obstacle[] obstacles) => Inches(Some.Plan(With(obstacles) with { AsSpecified = [below] }).Lines[0].Posts[1].CutLength);
        Assert.Equal((88, 70, 82), (Cut(Face(10, 90)), Cut(Stretch("wall", 10, 90, 12)), Cut(Stretch("slab", 10, 90))));
    }

    [Fact]
    public void AWallFaceAsksForItsThicknessAndIsAWalls()
    {
        Assert.Contains(Some.Plan(With(Face(10, 90, null))).Problems, p => p.Code == ProblemCode.WallFaceQuestion);
        var slab = Some.Plan(With(Face(10, 90) with { Kind = "slab" }));
        Assert.Equal("'bracketed' is not a choice here.", Said(slab, ProblemCode.SpecChoice));
    }
}
