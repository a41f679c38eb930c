using System.Text;
using Tautline.Formats.Coordinates;
using Tautline.Formats.GeoJson;
using Tautline.Formats.Import;
using static Tautline.Formats.Tests.GeoJsonText;

namespace Tautline.Formats.Tests;

public sealed class GeoJsonSystemTests
{
    [Fact]
    public void LongitudeAndLatitudeAreLaidOnTheUtmZoneOfTheMiddle()
    {
        var result = Read("""{"type":"LineString","coordinates":[[151.2153,-33.8568],[151.2163,-33.8568]]}""");

        Assert.Equal(32756, result.System!.EpsgCode);
        Assert.Equal("WGS 84 longitude/latitude", result.System.FileCoordinates);
        Assert.Equal((334_900, 6_252_300), (result.Origin!.EastMetres, result.Origin.NorthMetres));
        // PROJ 9.1.1: E 334900.569652, N 6252288.752888 on EPSG:32756
        var (east, north) = result.Origin.ToGrid(result.Lines[0].Points[0].East, result.Lines[0].Points[0].North);
        Assert.Equal(334_900.569652, east, 1e-3);
        Assert.Equal(6_252_288.752888, north, 1e-3);
    }

    [Theory]
    [InlineData("[5.3221,60.3913],[5.3231,60.3913]", 32632)] // Bergen: zone 31 by six degrees, 32V by the exception
    [InlineData("[20.9,78.2232],[20.91,78.2232]", 32633)] // Svalbard: zone 34 by six degrees, 33X by the exception
    public void TheWidenedZonesOfNorwayAndSvalbardAreKept(string positions, int code) =>
        Assert.Equal(code, Read($$"""{"type":"LineString","coordinates":[{{positions}}]}""").System!.EpsgCode);

    [Fact]
    public void AnOutlineAcrossAZoneBorderUsesOneZoneAndSaysSo()
    {
        var result = Read("""{"type":"LineString","coordinates":[[5.9995,45],[6.001,45]]}""");

        Assert.Equal(32632, result.System!.EpsgCode);
        Assert.Contains("zone 32N", result.Problem("AcrossZones").Message);
        // geodesic on WGS 84 by PROJ 9.1.1 (invgeod); printed digit, and one scale factor over 118 m: below 0.1 mm
        Assert.Equal(118.2703, result.Lines[0].Length(), 1.5e-4);
    }

    [Fact]
    public void AnOutlineAcrossTheDateLineIsOneOutline()
    {
        var result = Read("""{"type":"LineString","coordinates":[[179.999,-16.8],[-179.999,-16.8]]}""");

        result.Problem("AcrossDateLine");
        Assert.InRange(result.Lines[0].Length(), 213, 214); // 0.002 degrees at 106.6 km per degree
    }

    [Fact]
    public void SwappedLatitudeAndLongitudeAreTold()
    {
        var result = Read("""{"type":"LineString","coordinates":[[44.05,-123.06],[44.06,-123.07]]}""");

        Assert.Empty(result.Lines);
        Assert.Equal("The position [44.05, -123.06] has a latitude beyond 90 degrees: latitude seems to stand before longitude.", result.Problem("Swapped").Message);
        Assert.Equal((1, 37), (result.Problems[0].Where.Line, result.Problems[0].Where.Column));
    }

    [Fact]
    public void ProjectedNumbersWithoutAStatementAreRefusedNotGuessed()
    {
        var result = Read("""{"type":"LineString","coordinates":[[500340,4170060],[500350,4170060]]}""");

        Assert.Empty(result.Lines);
        Assert.Null(result.System);
        Assert.Equal("The position [500340, 4170060] is not a longitude and latitude, so the coordinates are of another system.", result.Problem("NotDegrees").Message);
        Assert.Contains("State the coordinate system", result.Problems[0].Hint);
    }

    [Theory]
    [InlineData("\"urn:ogc:def:crs:OGC:1.3:CRS84\"")]
    [InlineData("\"EPSG:4326\"")]
    [InlineData("""{"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::4326"}}""")]
    [InlineData("""{"type":"EPSG","properties":{"code":4326}}""")]
    public void AClaimOfWgs84IsNoProblem(string claim)
    {
        var result = Read($$"""{"type":"LineString","crs":{{claim}},"coordinates":[[6.1,45],[6.101,45]]}""");

        Assert.Single(result.Lines);
        Assert.Equal(["GroundLengths", "HeightAssumedZero"], result.Codes().Order());
    }

    [Theory]
    [InlineData("\"urn:ogc:def:crs:EPSG::26910\"", "urn:ogc:def:crs:EPSG::26910")]
    [InlineData("""{"type":"name","properties":{"name":"EPSG:26910"}}""", "EPSG:26910")]
    [InlineData("""{"type":"EPSG","properties":{"code":26910}}""", "26910")]
    [InlineData("\"http://www.opengis.net/def/crs/EPSG/0/26910\"", "http://www.opengis.net/def/crs/EPSG/0/26910")]
    [InlineData("\"my own grid\"", "my own grid")]
    public void AClaimOfAnotherSystemAsksForAStatement(string claim, string shown)
    {
        var result = Read($$"""{"type":"LineString","crs":{{claim}},"coordinates":[[500340,4170060],[500350,4170060]]}""");

        Assert.Empty(result.Lines);
        Assert.Contains($"in \"crs\" that its coordinates are {shown}. ", result.Problem("SystemClaimed").Message);
    }

    [Fact]
    public void ANullClaimIsToldAndReadAsDegrees()
    {
        var result = Read("""{"type":"LineString","crs":null,"coordinates":[[6.1,45],[6.101,45]]}""");

        Assert.Single(result.Lines);
        Assert.Equal(ProblemSeverity.Warning, result.Problem("ClaimIsNull").Severity);
    }

    [Fact]
    public void AStatedGridIsUsedWithItsOwnFoot()
    {
        // Georgia East, US survey feet, about PR-10 of the State Plane check list
        var result = Read(
            """{"type":"LineString","coordinates":[[875449.222,958850.568],[876449.222,958850.568]]}""", CoordinateSystemChoice.Epsg(2239));

        Assert.Equal("EPSG:2239 (NAD83 / Georgia East (ftUS), in US survey feet)", result.System!.FileCoordinates);
        Assert.Equal(Angle.Of("32-38-03.003"), result.System.Middle!.Value.Latitude, 1e-4);
        // 1000 survey feet on the grid = 304.800610 m, over the factor
        Assert.Equal(304.800610 / result.System.CombinedFactor, result.Lines[0].Length(), 2e-6);
    }

    [Fact]
    public void LocalFeetAreGroundFeet()
    {
        const string Text = """{"type":"LineString","coordinates":[[0,0],[1000,0,10]]}""";

        Assert.Equal(304.8, Read(Text, CoordinateSystemChoice.Local(LinearUnit.Foot)).Lines[0].Length(), 1e-6);
        var survey = Read(Text, CoordinateSystemChoice.Local(LinearUnit.SurveyFoot));
        Assert.Equal(304.800610, survey.Lines[0].Length(), 1e-6);
        Assert.Equal(3.048006, survey.Lines[0].Points[1].Elevation!.Value, 1e-6);
        Assert.Contains("US survey feet", survey.Problem("ElevationsConverted").Message);
    }

    [Fact]
    public void WebMapMetresAreRefusedWithTheReason()
    {
        var result = Read("""{"type":"LineString","coordinates":[[600000,5600000],[600100,5600000]]}""", CoordinateSystemChoice.Epsg(3857));

        Assert.Empty(result.Lines);
        Assert.Contains("lengths are stretched", result.Problem("RefusedSystem").Message);
    }

    [Fact]
    public void AnUnknownNumberIsTold() =>
        Assert.Equal(
            "EPSG:12345 is not among the systems this program knows.",
            Read("""{"type":"LineString","coordinates":[[1,2],[3,4]]}""", CoordinateSystemChoice.Epsg(12345)).Problem("UnknownSystem").Message);

    [Theory]
    [InlineData("[10,85],[10.1,85]", "OutsideUtm")]
    [InlineData("[10,-81],[10.1,-81]", "OutsideUtm")]
    [InlineData("[-120,45],[20,45]", "TooWide")]
    public void PlacesUtmCannotServeAreTold(string positions, string code)
    {
        var result = Read($$"""{"type":"LineString","coordinates":[{{positions}}]}""");

        Assert.Empty(result.Lines);
        Assert.Equal(ProblemSeverity.Error, result.Problem(code).Severity);
    }

    [Fact]
    public void Nad83DegreesGoToNad83UtmAndOnlyInNorthAmerica()
    {
        var nad83 = CoordinateSystemChoice.Epsg(4269);

        Assert.Equal(26910, Read("""{"type":"LineString","coordinates":[[-123.06,44.05],[-123.07,44.05]]}""", nad83).System!.EpsgCode);
        Read("""{"type":"LineString","coordinates":[[6.1,45],[6.101,45]]}""", nad83).Problem("OutsideNad83");
    }

    [Fact]
    public void DegreesReadAsMetresAreTold() =>
        Assert.Contains("degrees read as metres", ReadLocal("""{"type":"LineString","coordinates":[[6.1,45],[6.101,45]]}""").Problem("VerySmall").Hint);

    [Fact]
    public void FeetThatAreNotInTheStatedUnitAreRefusedWithTheTwinThatFits()
    {
        var result = Read(
            """{"type":"LineString","coordinates":[[636889,851528],[637132,851445]]}""", CoordinateSystemChoice.Epsg(2991));

        Assert.Empty(result.Lines);
        var message = result.Problem("OutsideArea").Message;
        Assert.Contains("outside the area of that grid", message);
        Assert.Contains("Read as EPSG:2992 (NAD83 / Oregon GIC Lambert (ft), in international feet) it has its middle at 44.0", message);
    }

    [Fact]
    public void TheStatedHeightOfTheSiteLengthensGroundLengths()
    {
        byte[] text = Encoding.UTF8.GetBytes("""{"type":"LineString","coordinates":[[-105,40],[-104.99,40]]}""");

        var low = GeoJsonReader.Read(text, new() { SiteElevationMetres = 0 });
        var high = GeoJsonReader.Read(text, new() { SiteElevationMetres = 1600 });

        // 1600 m over a mean radius of 6 373 km at 40 degrees: 251 millionths
        Assert.Equal(1.000251, high.Lines[0].Length() / low.Lines[0].Length(), 1e-6);
        Assert.DoesNotContain("HeightAssumedZero", high.Codes());
    }
}
