using NetTopologySuite.Geometries;
using Tautline.Formats.Coordinates;
using Tautline.Formats.GeoJson;
using Tautline.Formats.Import;

namespace Tautline.Formats.Tests;

/// <summary>
/// Real files. Lengths marked geodesic are of PROJ 9.1.1 on the file's own ellipsoid; perimeters on the grid are the
/// facts kept with the files.
/// </summary>
public sealed class RealOutlineTests
{
    private const string Trek = "lines/trek.geojson";
    private const string Autzen = "lines/autzen-selection-feet.geojson";

    [Fact]
    public void TrekHas120PositionsInZone32()
    {
        var result = GeoJsonReader.Read(SharedData.Read(Trek));

        var line = Assert.Single(result.Lines);
        Assert.Equal(120, line.Points.Length);
        Assert.False(line.Closed);
        Assert.Equal((1298, 2295), (line.Points.Min(p => p.Elevation), line.Points.Max(p => p.Elevation)));
        Assert.Equal(32632, result.System!.EpsgCode);
        Assert.Equal(["GroundLengths"], result.Problems.Select(p => p.Code));
        Assert.Equal(1.00026, result.System.PointScaleFactor, 5e-6); // PROJ 9.1.1, proj -S at the middle
    }

    [Fact]
    public void TrekAtHeightZeroHasItsGeodesicLength()
    {
        var result = GeoJsonReader.Read(SharedData.Read(Trek), new() { SiteElevationMetres = 0 });

        // One scale factor serves the whole outline. It changes by at most 5.8 millionths from the middle to the corners
        // of the bounding box, so over 5031 m the length may differ by 0.029 m.
        Assert.InRange(result.System!.ScaleSpread, 4e-6, 6e-6);
        Assert.Equal(5031.471, result.Lines[0].Length(), 0.03);
    }

    [Fact]
    public void TrekOnTheGroundIsLongerByItsHeight()
    {
        var result = GeoJsonReader.Read(SharedData.Read(Trek));

        // By hand: mean height 1746.475 m over the mean radius 6 378 026 m at 44.9 degrees is 273.8 millionths, 1.378 m of 5031.471 m.
        Assert.Equal(1746.475, result.System!.SiteElevationMetres, 1e-3);
        Assert.Equal(5032.849, result.Lines[0].Length(), 0.03);
    }

    [Fact]
    public void TrekOnTheGridIsLongerByTheScaleFactor()
    {
        var result = GeoJsonReader.Read(SharedData.Read(Trek), new() { Lengths = LengthKind.Grid });

        Assert.Equal(1, result.Origin!.GridPerLocal);
        Assert.Equal(5031.471 * 1.00026, result.Lines[0].Length(), 0.05); // factor printed to 5e-6 by PROJ, and the spread
        Assert.Contains("100 m fence on the ground is 99.99", result.Problem("GridLengths").Message);
    }

    [Fact]
    public void AutzenIsRefusedUntilItsSystemIsStatedAndSaysWhy()
    {
        var result = GeoJsonReader.Read(SharedData.Read(Autzen));

        Assert.Empty(result.Lines);
        var problem = result.Problem("SystemClaimed");
        Assert.Contains("in \"srs\" that its coordinates are EPSG:2991", problem.Message);
        // PROJ 9.1.1: 49.3589 N, 117.2483 W as metres, in Canada; 44.0557 N, 123.0696 W as feet, in Eugene
        Assert.Contains("has its middle at 49.3589 N, 117.2483 W, outside the area", problem.Message);
        Assert.Contains("EPSG:2992 (NAD83 / Oregon GIC Lambert (ft), in international feet) it has its middle at 44.0557 N, 123.0696 W, inside", problem.Message);
    }

    [Fact]
    public void AutzenInStatedFeetHasItsPerimeterOnTheGrid()
    {
        var result = Autzen2992(new() { Lengths = LengthKind.Grid });

        var line = Assert.Single(result.Lines);
        Assert.True(line.Closed);
        Assert.Equal(12, line.Points.Length); // 19 positions, 6 repeats, one to close
        Assert.Equal(3212.569, line.Length() / 0.3048, 6e-4);
        Assert.Equal("6 positions at the same place as the one before are dropped.", result.Problem("RepeatsDropped").Message);
        Assert.Equal(420.5098, line.Points.Min(p => p.Elevation!.Value) / 0.3048, 6e-5);
        Assert.Equal(438.7100, line.Points.Max(p => p.Elevation!.Value) / 0.3048, 6e-5);
    }

    [Fact]
    public void AutzenAtHeightZeroHasItsGeodesicPerimeter()
    {
        var result = Autzen2992(new() { SiteElevationMetres = 0 });

        // PROJ 9.1.1, geodesic on GRS 80: 979.4175 m. The factor changes by less than 2e-7 over 300 m: 0.2 mm.
        Assert.Equal(979.4175, result.Lines[0].Length(), 5e-4);
        Assert.Equal(0.999769, result.System!.PointScaleFactor, 6e-7); // PROJ 9.1.1, proj -S
    }

    [Fact]
    public void AutzensClaimIsShownBesideTheStatement()
    {
        var problem = Autzen2992(new()).Problem("ClaimContradicts");

        Assert.Equal(ProblemSeverity.Warning, problem.Severity);
        Assert.StartsWith("The file says in \"srs\" that its coordinates are EPSG:2991; EPSG:2992 was stated and is used.", problem.Message);
        Assert.Equal((1, 9), (problem.Where.Line, problem.Where.Column));
    }

    [Theory]
    [InlineData(Trek)]
    [InlineData(Autzen)]
    public void AnotherReaderFindsTheSamePositions(string file)
    {
        var bytes = SharedData.Read(file);
        var options = new System.Text.Json.JsonSerializerOptions { Converters = { new NetTopologySuite.IO.Converters.GeoJsonConverterFactory() } };
        var other = file == Trek
            ? System.Text.Json.JsonSerializer.Deserialize<NetTopologySuite.Features.FeatureCollection>(bytes, options)![0].Geometry
            : System.Text.Json.JsonSerializer.Deserialize<Geometry>(bytes, options)!;

        var ours = GeoJsonReader.Read(bytes, new() { CoordinateSystem = CoordinateSystemChoice.Local(LinearUnit.Metre) });

        // Read as local metres the numbers are only shifted and rounded to 1e-6.
        var theirs = other.Coordinates.Where((c, i) => i == 0 || !c.Equals2D(other.Coordinates[i - 1])).ToList();
        if (theirs[0].Equals2D(theirs[^1])) theirs.RemoveAt(theirs.Count - 1);
        Assert.Equal(theirs.Count, ours.Lines[0].Points.Length);
        Assert.All(theirs.Zip(ours.Lines[0].Points), pair =>
        {
            Assert.Equal(pair.First.X - ours.Origin!.EastMetres, pair.Second.East, 1e-6);
            Assert.Equal(pair.First.Y - ours.Origin.NorthMetres, pair.Second.North, 1e-6);
        });
    }

    private static ImportResult Autzen2992(ImportOptions options) =>
        GeoJsonReader.Read(SharedData.Read(Autzen), options with { CoordinateSystem = CoordinateSystemChoice.Epsg(2992) });
}
