using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Tests.Ground;

/// <summary>Real files against the figures their makers or an independent reading gave (README of each folder of the shared data).</summary>
public sealed class RealGroundTests
{
    private const string Gully = "terrain/west-bijou-gully-3m.asc";
    private const string Lot = "terrain/lot-survey-tin-metres.xml";
    private const string Subdivision = "plans/subdivision-1.1-feet.xml";

    [Fact]
    public void GullyGridGivesTheHeightOfAnIndependentReading()
    {
        var (frame, heights, noData) = SharedGround.AsciiGrid(Gully);
        // The independent reading keeps heights as floats. With the file's digits five sixths of (1713.160753038 + 1712.034830729)/2 and a sixth
        // of (1713.804172092 + 1712.390272352)/2 make 1712.68103027.
        var ground = new GridSurface(frame, [.. heights.Select(h => (float)h)], noData);
        Assert.Equal(1712.681020, ground.HeightAt(559770, 4380400)!.Value, 5e-7);
        Assert.Equal(1712.68103027, new GridSurface(frame, heights, noData).HeightAt(559770, 4380400)!.Value, 5e-9);
        Assert.Equal(1701.277954, ground.HeightOf(44, 21)!.Value, 5e-7);
        Assert.Equal(1088, Enumerable.Range(0, 89 * 43).Count(i => ground.HeightOf(i / 43, i % 43) is not null));
    }

    [Fact]
    public void GullyHasNoGroundWhereTheFileMarksNone()
    {
        var (frame, heights, noData) = SharedGround.AsciiGrid(Gully);
        var profile = new GridSurface(frame, heights, noData).Along(GroundPath.Through(new(559706, 4380225), new(559832, 4380480)));
        Assert.NotEmpty(profile.Gaps);
        Assert.NotEmpty(profile.Stretches);
        Assert.All(profile.Stretches.SelectMany(s => s.Points), p => Assert.InRange(p.Height, 1680.7794, 1725.4327));
    }

    [Fact]
    public void LotSurveyHasTheExportersAreas()
    {
        var (points, faces) = SharedGround.LandXml(Lot, "Surface 2018-00-00");
        var ground = TriangleSurface.Of(points, faces);
        Assert.Equal((224, 361), (points.Length, ground.FaceCount));
        Assert.Empty(ground.Findings);
        Assert.Equal(1471.43928663317, ground.PlanArea, 1e-9);
        Assert.Equal(1567.216914780276, ground.SlopeArea, 1e-9);
    }

    [Theory]
    [InlineData(4970, 4970, 4.340058)]
    [InlineData(4975, 5015, 4.458582)]
    [InlineData(4990, 5018, 4.261013)]
    [InlineData(4977, 5003, null)]
    [InlineData(4990, 5004, null)]
    public void LotSurveyHasTheHeightsOfAnIndependentReadingAndNoneInItsVoids(double north, double east, double? height)
    {
        var (points, faces) = SharedGround.LandXml(Lot, "Surface 2018-00-00");
        var found = TriangleSurface.Of(points, faces).HeightAt(east, north);
        Assert.Equal(height is null, found is null);
        if (height is { } expected) Assert.Equal(expected, found!.Value, 5e-7);
    }

    [Fact]
    public void LotSurveyProfileLeavesOutTheVoidsItCrosses()
    {
        var (points, faces) = SharedGround.LandXml(Lot, "Surface 2018-00-00");
        var ground = TriangleSurface.Of(points, faces);
        // North along E 5004 from outside to outside, through the two larger voids.
        var path = GroundPath.Through(new(5004, 4950), new(5004, 5020));
        var profile = ground.Along(path);
        Assert.Equal(3, profile.Stretches.Count);
        Assert.Equal(4, profile.Gaps.Count);
        ProfileCheck.LiesOn(ground, path, profile, 1e-9);
    }

    [Theory]
    [InlineData(1500, 0, 246.667871)]
    [InlineData(1800.5, 640.25, 257.304640)]
    [InlineData(1200, -300, 255.449825)]
    public void SubdivisionHasTheHeightsOfAnIndependentReading(double north, double east, double height)
    {
        var (points, faces) = SharedGround.LandXml(Subdivision, "EG");
        Assert.Equal(height, TriangleSurface.Of(points, faces).HeightAt(east, north)!.Value, 5e-7);
    }

    [Fact]
    public void SubdivisionHasTheExportersAreas()
    {
        var (points, faces) = SharedGround.LandXml(Subdivision, "EG");
        var ground = TriangleSurface.Of(points, faces);
        Assert.Equal((713, 1284), (points.Length, ground.FaceCount));
        // The exporter summed before it rounded coordinates to a millionth of a foot and heights to four decimals.
        Assert.Equal(9742293.9521, ground.PlanArea, 2e-4);
        Assert.Equal(9752293.9702, ground.SlopeArea, 2e-4);
    }

    [Fact]
    public void DenserSurfaceOfTheSubdivisionHasTheExportersAreasAndProfilesLieOnIt()
    {
        var (points, faces) = SharedGround.LandXml(Subdivision, "FG");
        var ground = TriangleSurface.Of(points, faces);
        // Steep faces feel the rounded heights: an independent sum over the file's own figures gives 3348805.63526.
        Assert.Equal(2768515.7662, ground.PlanArea, 5e-5);
        Assert.Equal(3348805.6532, ground.SlopeArea, 0.02);
        Assert.Equal(3348805.6352637573, ground.SlopeArea, 1e-6);
        var (west, east) = (points.Min(p => p.East) - 10, points.Max(p => p.East) + 10);
        var (south, north) = (points.Min(p => p.North) - 10, points.Max(p => p.North) + 10);
        var path = GroundPath.Through(new(west, south), new(east, north), new(east, south), new(west, north));
        ProfileCheck.LiesOn(ground, path, ground.Along(path), 1e-6);
    }

    /// <summary>For n places of which h are on the hull there are 2n - 2 - h triangles (Euler).</summary>
    [Fact]
    public void SurveyedParkBecomesTriangles()
    {
        var points = SharedGround.Survey("survey/independence-park-topo0.asc");
        Assert.Equal(1311, points.Length);
        var made = Triangulation.Of(new() { Points = points });
        var places = points.Select(p => (p.East, p.North)).Distinct().Count();
        Assert.Equal(places, made.Triangles!.Points.Length);
        Assert.Equal(2 * places - 2 - Faces.RimOf(made.Triangles).Count, made.Triangles.FaceCount);
        Assert.Equal(Exactly.HullOf(points), Exactly.TwiceTheArea(made.Triangles));
    }
}
