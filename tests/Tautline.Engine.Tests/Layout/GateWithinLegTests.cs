using Tautline.Engine.Layout;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Tests.Symmetry;

namespace Tautline.Engine.Tests.Layout;

public sealed class GateWithinLegTests
{
    /// <summary>A gate 1.8 in past the end of its leg was planned with a post beyond the line; from the other end it was refused.</summary>
    [Fact]
    public void AGateThatOpensPastTheEndOfItsLegIsRefused()
    {
        var past = Some.StraightHundred() with { Gates = [Some.Gate("gate", "main/leg1", "walk", 96.15, 4)] };
        Assert.Equal("gates[0]", Assert.Single(Some.Plan(past).Problems, p => p.Code == ProblemCode.GateOutside).Place.Path);
        var before = past with { Gates = [past.Gates[0] with { NearFace = Length.FromFeet(-0.15) }] };
        Assert.Contains(Some.Plan(before).Problems, p => p.Code == ProblemCode.GateOutside);
        var within = past with { Gates = [past.Gates[0] with { NearFace = Length.FromFeet(96) }] };
        Assert.All(EitherWay.Plans(within), p => Assert.Equal(2, p.Lines[0].Posts.Count(post => post.Kind == PostKind.Gate)));
    }
}
