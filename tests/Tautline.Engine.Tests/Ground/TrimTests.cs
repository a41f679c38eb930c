using CsCheck;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Tests.Ground;

/// <summary>Boundary and voids cut the ground exactly and need no heights.</summary>
public sealed class TrimTests
{
    /// <summary>h = e over a square of 10 m.</summary>
    private static readonly GroundPoint[] ramp = [new(0, 0, 0), new(10, 0, 10), new(10, 10, 10), new(0, 10, 0)];

    private static readonly PlanPoint[] pit = [new(4, 4), new(6, 4), new(6, 6), new(4, 6)];

    private static readonly PlanPoint[] outline = [new(1, 1), new(9, 1), new(9, 9), new(1, 9)];

    private static readonly IGroundSurface ground = Triangulation.Of(new() { Points = ramp, Boundary = outline, Voids = [pit] }).Surface!;

    [Theory]
    [InlineData(2, 2, 2.0)]
    [InlineData(5, 5, null)]
    [InlineData(4, 5, 4.0)]
    [InlineData(6, 6, 6.0)]
    [InlineData(9, 5, 9.0)]
    [InlineData(9.001, 5, null)]
    public void HeightsEndAtTheOutlines(double east, double north, double? height) => Assert.Equal(height, ground.HeightAt(east, north));

    [Fact]
    public void PathAcrossTheVoidIsCutExactly()
    {
        var profile = ground.Along(GroundPath.Through(new(0, 5), new(10, 5)));
        Assert.Equal([new(0, 1), new(4, 6), new(9, 10)], profile.Gaps);
        Assert.Equal([new(1, 4), new(6, 9)], profile.Stretches.Select(s => s.Range));
        Assert.Equal(4, profile.Stretches[0].Points[^1].Height, 1e-12);
        Assert.Equal(6, profile.Stretches[1].Points[0].Height, 1e-12);
    }

    [Fact]
    public void PathAlongTheVoidsEdgeHasGround()
    {
        var profile = ground.Along(GroundPath.Through(new(1, 4), new(9, 4)));
        Assert.Empty(profile.Gaps);
        Assert.Single(profile.Stretches);
    }

    [Fact]
    public void PathAlongTheBoundaryHasGround() => Assert.Empty(ground.Along(GroundPath.Through(new(1, 1), new(9, 1))).Gaps);

    [Fact]
    public void OutlineOfTwoPlacesIsReportedAndLeftOut()
    {
        var made = Triangulation.Of(new() { Points = ramp, Voids = [[new(1, 1), new(2, 2), new(1, 1)]] });
        var finding = Assert.Single(made.Findings);
        Assert.Equal((GroundFindingKind.ShortRing, 2.0), (finding.Kind, finding.Figures[0]));
        Assert.Equal(1.5, made.Surface!.HeightAt(1.5, 1.5)!.Value, 1e-12);
    }

    [Fact]
    public void ProfileLiesOnTheTrimmedGround() => Gen.Select(Gen.Int[0, 10], Gen.Int[0, 10]).Array[2, 6].Always(places =>
    {
        var path = GroundPath.Through([.. places.Select(p => new PlanPoint(p.Item1, p.Item2))]);
        if (path.Range.To > 0) ProfileCheck.LiesOn(ground, path, ground.Along(path), 1e-9);
    });
}
