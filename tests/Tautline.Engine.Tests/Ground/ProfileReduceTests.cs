using CsCheck;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Tests.Ground;

/// <summary>Thinning keeps within its tolerance.</summary>
public sealed class ProfileReduceTests
{
    private static readonly Gen<ProfilePoint[]> genPoints = Gen.Select(Gen.OneOf(Gen.Double[0.01, 2], Gen.Double[0.01, 2], Gen.Const(0.0)), Gen.Double[-0.02, 0.02])
        .Array[1, 80].Select(steps =>
        {
            var points = new List<ProfilePoint> { new(5, 1) };
            foreach (var (run, rise) in steps) points.Add(new(points[^1].Station + run, points[^1].Height + rise));
            // A vertex given twice would be told apart from itself.
            return points.Distinct().ToArray();
        });

    [Fact]
    public void NoDroppedVertexIsFurtherThanTheTolerance() => Gen.Select(genPoints, Gen.Double[0, 0.05]).Always((points, tolerance) =>
    {
        var kept = ProfileReduce.Thin(points, tolerance);
        Assert.Equal((points[0], points[^1]), (kept[0], kept[^1]));
        var next = 0;
        foreach (var p in points)
        {
            if (next < kept.Count && kept[next] == p)
            {
                next++;
                continue;
            }
            var (a, b) = (kept[next - 1], kept[next]);
            Assert.True(a.Station < p.Station && p.Station <= b.Station);
            var line = a.Height + (b.Height - a.Height) * (p.Station - a.Station) / (b.Station - a.Station);
            Assert.InRange(Math.Abs(p.Height - line), 0, tolerance + 1e-12);
        }
        Assert.Equal(kept.Count, next);
    });

    [Fact]
    public void VerticesOnOneLineAreDropped() =>
        Assert.Equal([new(0, 0), new(3, 3), new(4, 3)], ProfileReduce.Thin([new(0, 0), new(1, 1), new(2, 2), new(3, 3), new(4, 3)], 0));

    /// <summary>A bump of 0.9 mm in the middle goes at a tolerance of 1 mm and stays at 0.8 mm.</summary>
    [Theory]
    [InlineData(0.001, 2)]
    [InlineData(0.0008, 3)]
    public void BumpStaysIfItIsHigherThanTheTolerance(double tolerance, int count) =>
        Assert.Equal(count, ProfileReduce.Thin([new(0, 0), new(5, 0.0009), new(10, 0)], tolerance).Count);

    [Fact]
    public void UprightStepStays() => Assert.Equal(
        [new(0, 0), new(2, 0), new(2, 1), new(4, 1)],
        ProfileReduce.Thin([new(0, 0), new(1, 0), new(2, 0), new(2, 1), new(3, 1), new(4, 1)], 0.0001));

    [Fact]
    public void ProfileKeepsItsStretchesAndGaps()
    {
        var profile = new GroundProfile(new(0, 9), [new([new(0, 0), new(1, 0), new(2, 0)]), new([new(5, 1), new(9, 1)])], [new(2, 5)]);
        var thin = ProfileReduce.Thin(profile, 0.0001);
        Assert.Equal([2, 2], thin.Stretches.Select(s => s.Points.Count));
        Assert.Equal((profile.Range, profile.Gaps), (thin.Range, thin.Gaps));
    }
}
