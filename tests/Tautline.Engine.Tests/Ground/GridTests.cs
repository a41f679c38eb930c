using CsCheck;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Tests.Ground;

/// <summary>Ground as a grid of heights.</summary>
public sealed class GridTests
{
    private const double None = -9999;

    private static readonly GridFrame square = new(2, 2, 0, 4, 4, 4, GridHeights.AtCorners);

    private static readonly Gen<GridSurface> genGrid =
        Gen.Select(Gen.Int[2, 7], Gen.Int[2, 7]).SelectMany((rows, columns) =>
            Gen.Frequency((8, Gen.Double[0, 5]), (1, Gen.Const(None))).Array[rows * columns].Select(h =>
                new GridSurface(new(rows, columns, 100, 200, 2, 0.7, GridHeights.AtCorners), h, None)));

    /// <summary>Also along the lines of heights and through their crossings.</summary>
    private static readonly Gen<GroundPath> genPath = Gen.OneOf(
        Gen.Select(Gen.Double[98, 114], Gen.Double[195, 201]).Select((e, n) => (Math.Round(e, 6), Math.Round(n, 6))),
        Gen.Select(Gen.Int[-1, 7], Gen.Int[-1, 7]).Select((c, r) => (100 + 2.0 * c, 200 - 0.7 * r)))
        .Array[2, 5].Select(p => GroundPath.Through([.. p.Select(q => new PlanPoint(q.Item1, q.Item2))])).Where(p => p.Range.To > 0);

    [Fact]
    public void RowZeroIsTheNorthernOne()
    {
        var grid = new GridSurface(square, (double[])[1, 2, 3, 4]);
        Assert.Equal([1.0, 2.0, 3.0, 4.0], new[] { grid.HeightAt(0, 4), grid.HeightAt(4, 4), grid.HeightAt(0, 0), grid.HeightAt(4, 0) }.Select(h => h!.Value));
        Assert.Equal(2.5, grid.HeightAt(2, 2));
        Assert.Equal(1.75, grid.HeightAt(1, 3));
    }

    [Fact]
    public void HeightsAtCentresStandHalfACellInside()
    {
        var grid = new GridSurface(square with { Heights = GridHeights.AtCentres }, (float[])[1, 2, 3, 4]);
        Assert.Equal(new PlanPoint(2, 2), grid.Frame.At(0, 0));
        Assert.Equal(1, grid.HeightAt(2, 2));
        Assert.Equal(2.5, grid.HeightAt(4, 0));
        Assert.Null(grid.HeightAt(1.9, 0));
        Assert.Null(grid.HeightAt(4, 2.1));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(None)]
    [InlineData(-3.4028234663852886e38)]
    [InlineData(double.PositiveInfinity)]
    public void NoGroundNextToAMissingHeight(double missing)
    {
        var grid = new GridSurface(new(2, 3, 0, 1, 1, 1, GridHeights.AtCorners), (double[])[1, 1, missing, 1, 1, 1], None);
        Assert.Equal(1, grid.HeightAt(1, 0.5));
        Assert.Null(grid.HeightAt(1.000001, 0.5));
        Assert.Null(grid.HeightOf(0, 2));
        var profile = grid.Along(GroundPath.Through(new(-1, 0.5), new(3, 0.5)));
        Assert.Equal(new StationRange(1, 2), Assert.Single(profile.Stretches).Range);
        Assert.Equal([new(0, 1), new(2, 4)], profile.Gaps);
        // The line between ground and none has ground.
        Assert.Single(grid.Along(GroundPath.Through(new(1, 0), new(1, 1))).Stretches);
    }

    [Fact]
    public void MissingMarkOfAFloatGridIsComparedAsAFloat()
    {
        var grid = new GridSurface(square, (float[])[1, 1, 1, -9999.9f], -9999.9);
        Assert.Null(grid.HeightAt(1, 3));
    }

    /// <summary>h = u + v - 2uv over the patch; along its diagonal 2t - 2t^2, highest in the middle with 0.5.</summary>
    [Fact]
    public void HighestPlaceInsideAPatchIsAVertex()
    {
        var saddle = new GridSurface(square, (double[])[0, 1, 1, 0]);
        var path = GroundPath.Through(new(0, 4), new(4, 0));
        var points = Assert.Single(saddle.Along(path).Stretches).Points;
        var top = points.MaxBy(p => p.Height);
        Assert.Equal(0.5, top.Height, 1e-12);
        Assert.Equal(Math.Sqrt(8), top.Station, 1e-12);
        // Half of the way the ground leaves its chord by 0.125 m at most; in 11 parts by 0.125/121 = 1.03 mm, in 12 by 0.125/144 = 0.87 mm.
        Assert.Equal(2 * 12 + 1, points.Count);
    }

    [Fact]
    public void ProfileOfAPlaneHasVerticesOnTheLinesOfHeightsOnly()
    {
        var frame = new GridFrame(4, 4, 0, 30, 10, 10, GridHeights.AtCorners);
        var plane = new GridSurface(frame, [.. Enumerable.Range(0, 16).Select(i => frame.At(i / 4, i % 4)).Select(p => 2 + 0.3 * p.East - 0.1 * p.North)]);
        // From (0, 5) to (30, 25): lines at e = 10, 20 and n = 10, 20.
        var stretch = Assert.Single(plane.Along(GroundPath.Through(new(0, 5), new(30, 25))).Stretches);
        Assert.Equal([0, 7.5, 10, 20, 22.5, 30], stretch.Points.Select(p => Math.Round(p.Station / Math.Sqrt(1300) * 30, 9)));
        // Heights from 1.5 to 8.5, 5 on average.
        Assert.Equal(5 * Math.Sqrt(1300), TriangleProfileTests.AreaUnder(stretch), 1e-9);
    }

    [Fact]
    public void ProfileStaysWithinAMillimetreOfTheGround() => Gen.Select(genGrid, genPath).Always((grid, path) =>
        ProfileCheck.LiesOn(grid, path, grid.Along(path), 0.001 + 1e-9));

    [Fact]
    public void ReversedPathHasTheMirroredProfile() => Gen.Select(genGrid, genPath).Always((grid, path) =>
    {
        var (there, back) = (grid.Along(path), grid.Along(path.Reversed()));
        var points = there.Stretches.SelectMany(s => s.Points).ToArray();
        var mirrored = back.Stretches.SelectMany(s => s.Points).Reverse().ToArray();
        Assert.Equal(there.Stretches.Count, back.Stretches.Count);
        // Where a turning place is within rounding of a line of heights one way may have a vertex more.
        Assert.InRange(points.Length - mirrored.Length, -path.Points.Count, path.Points.Count);
        foreach (var p in points)
            if (back.HeightAt(path.Range.To - p.Station) is { } height) Assert.Equal(height, p.Height, 0.001 + 1e-6);
    });

    [Fact]
    public void FrameThatDoesNotFitIsRefused()
    {
        Assert.Throws<ArgumentException>(() => new GridSurface(square, (double[])[1, 2, 3]));
        Assert.Throws<ArgumentException>(() => new GridSurface(square with { CellEast = 0 }, (double[])[1, 2, 3, 4]));
        Assert.Throws<ArgumentException>(() => new GridSurface(square with { North = double.NaN }, (double[])[1, 2, 3, 4]));
    }
}
