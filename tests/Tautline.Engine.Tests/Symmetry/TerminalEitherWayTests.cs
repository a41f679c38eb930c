using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Quantities;
using Spec = Tautline.Engine.Jobs.Spec;

namespace Tautline.Engine.Tests.Symmetry;

/// <summary>Where two legs ask for different posts, what is set does not depend on the end the line is walked from.</summary>
public sealed class TerminalEitherWayTests
{
    /// <summary>60 ft of one spec, 40 ft of another.</summary>
    private static Job Changing(Spec first, Spec second)
    {
        var line = Some.Line("main", false, [(0, 0), (0, 60), (0, 100)]);
        var (a, b, c) = (line.Vertices[0], line.Vertices[1], line.Vertices[2]);
        return Some.Job(line with { Vertices = [a, b with { Leg = b.Leg! with { Spec = second.Id } }, c] }, first, second);
    }

    [Fact]
    public void BetweenEqualHeightsThePostCarriesTheBarbedWire()
    {
        var barbed = Some.Spec(id: "barbed") with { Barb = new Barb { Strands = 3, Lean = "left", HeightIs = "fabric" } };
        // One on the barbed end, one on the post between.
        Assert.All(EitherWay.Plans(Changing(Some.Spec(), barbed)), p => Assert.Equal(2, EitherWay.Net(p, "barb-arm-terminal")));
    }

    [Fact]
    public void BetweenEquallyThickPipesThePostHasMoreSteel()
    {
        var light = Some.Spec(id: "light") with { TerminalPost = "2.875-ic" };
        Assert.All(EitherWay.Plans(Changing(Some.Spec(), light)), p =>
        {
            Assert.Equal(2, EitherWay.Net(p, "post", "2.875-sch40"));
            Assert.Equal(1, EitherWay.Net(p, "post", "2.875-ic"));
        });
    }

    /// <summary>
    /// Over 6 ft a leaf of 4 ft asks for a hole of 18 in, one of 8 ft for 24 in (MIL-HDBK-1013/10 Table 1); both gates here have
    /// posts of 4 in, as the spec's terminals.
    /// </summary>
    [Fact]
    public void TwoGatesThatShareACornerShareTheLargerHole()
    {
        var job = Some.Job(Some.Line("main", false, [(0, 0), (0, 50), (50, 50)]), Some.Spec(7) with { TerminalPost = "4.000-sch40" }) with
        {
            Gates =
            [
                Some.Gate("wide", "main/leg1", "walk", 50 - 8 - 4.5 / 12, 8),
                Some.Gate("narrow", "main/leg2", "walk", 4.5 / 12, 4),
            ],
        };
        Assert.All(EitherWay.Plans(job), p =>
        {
            var corner = Assert.Single(p.Lines[0].Posts, post => Math.Abs(post.Station.Feet - 50) < 1e-6);
            Assert.Equal(PostKind.Gate, corner.Kind);
            Assert.Equal(24, corner.HoleDiameter.Inches, 9);
        });
    }
}
