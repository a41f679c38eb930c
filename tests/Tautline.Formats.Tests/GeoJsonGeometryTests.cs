using static Tautline.Formats.Tests.GeoJsonText;

namespace Tautline.Formats.Tests;

public sealed class GeoJsonGeometryTests
{
    [Fact]
    public void ABareLineStringIsOneOpenLine()
    {
        var result = ReadLocal("""{"type":"LineString","coordinates":[[0,0],[30,0,2.5],[30,40]]}""");

        var line = Assert.Single(result.Lines);
        Assert.Equal("Line 1", line.Name);
        Assert.False(line.Closed);
        Assert.Equal([(0, 0), (30, 0), (30, 40)], line.Places());
        Assert.Equal([null, 2.5, null], line.Points.Select(p => p.Elevation));
        Assert.Equal(70, line.Length(), 1e-9);
        Assert.Empty(result.Problems);
    }

    [Fact]
    public void CoordinatesMayStandBeforeTheType()
    {
        var result = ReadLocal("""{"coordinates":[[0,0],[30,0]],"type":"LineString"}""");

        Assert.Equal(30, Assert.Single(result.Lines).Length(), 1e-9);
    }

    [Fact]
    public void ALineThatEndsWhereItBeginsIsClosedAndDoesNotRepeatThePoint()
    {
        var line = Assert.Single(ReadLocal("""{"type":"LineString","coordinates":[[0,0],[30,0],[30,40],[0,0]]}""").Lines);

        Assert.True(line.Closed);
        Assert.Equal([(0, 0), (30, 0), (30, 40)], line.Places());
        Assert.Equal(120, line.Length(), 1e-9); // 30 + 40 + 50
    }

    [Fact]
    public void EveryRingOfAPolygonIsAClosedLine()
    {
        var result = ReadLocal(
            """
            {"type":"Feature","properties":{"name":"Yard","gate":true,"posts":12,"note":null,"tags":["a"]},
             "geometry":{"type":"Polygon","coordinates":[[[0,0],[90,0],[90,90],[0,0]],[[60,20],[70,20],[70,30],[60,20]]]}}
            """);

        Assert.Equal(["Yard", "Yard, hole 1"], result.Lines.Select(l => l.Name));
        Assert.All(result.Lines, l => Assert.True(l.Closed && l.Points.Length == 3));
        Assert.Equal("""gate=true name=Yard note= posts=12 tags=["a"]""", string.Join(' ', result.Lines[0].Properties.Select(p => $"{p.Key}={p.Value}")));
    }

    [Fact]
    public void PartsOfMultiGeometriesAndCollectionsStayApart()
    {
        var result = ReadLocal(
            """
            {"type":"FeatureCollection","features":[
             {"type":"Feature","id":7,"properties":null,"geometry":{"type":"MultiLineString","coordinates":[[[0,0],[1,0]],[[5,0],[9,0]]]}},
             {"type":"Feature","properties":{"name":"Lots"},"geometry":{"type":"MultiPolygon","coordinates":[
               [[[0,0],[9,0],[9,9],[0,0]]],[[[20,0],[29,0],[29,9],[20,0]],[[25,1],[26,1],[26,2],[25,1]]]]}},
             {"type":"Feature","properties":{},"geometry":{"type":"GeometryCollection","geometries":[
               {"type":"LineString","coordinates":[[0,5],[3,5]]},{"type":"Point","coordinates":[1,1]},
               {"type":"LineString","coordinates":[[0,6],[4,6]]}]}},
             {"type":"Feature","properties":{},"geometry":null}]}
            """);

        Assert.Equal(
            ["7, part 1", "7, part 2", "Lots, part 1", "Lots, part 2", "Lots, part 2, hole 1", "Line 6, part 1", "Line 7, part 2"],
            result.Lines.Select(l => l.Name));
        Assert.Equal([1, 4], result.Lines.Take(2).Select(l => l.Length()));
        Assert.Equal("1 point geometry is passed over: only lines are read.", result.Problem("PointsIgnored").Message);
        Assert.Equal("1 feature has no geometry and is passed over.", result.Problem("NotLocated").Message);
        Assert.False(result.HasErrors);
    }

    [Fact]
    public void RepeatedPositionsAreDroppedAndCountedOnce()
    {
        var result = ReadLocal("""{"type":"LineString","coordinates":[[0,0,1],[0,0,1],[0,0,1],[5,0],[5,0,3],[9,0]]}""");

        Assert.Equal([(0, 0), (5, 0), (9, 0)], Assert.Single(result.Lines).Places());
        Assert.Equal("3 positions at the same place as the one before are dropped.", result.Problem("RepeatsDropped").Message);
        Assert.StartsWith("1 dropped position had another height", result.Problem("HeightsDropped").Message);
    }

    [Fact]
    public void AnUnclosedRingIsClosedAndTold()
    {
        var result = ReadLocal("""{"type":"Polygon","coordinates":[[[0,0],[30,0],[30,40]]]}""");

        Assert.Equal(120, Assert.Single(result.Lines).Length(), 1e-9);
        Assert.Contains("does not end where it begins", result.Problem("RingNotClosed").Message);
    }

    [Fact]
    public void ALineToOnePlaceAndBackStaysOpen()
    {
        var result = ReadLocal("""{"type":"LineString","coordinates":[[0,0],[30,0],[0,0]]}""");

        var line = Assert.Single(result.Lines);
        Assert.False(line.Closed);
        Assert.Equal(60, line.Length(), 1e-9);
        result.Problem("OutAndBack");
    }

    [Fact]
    public void AnOpenLineWhoseEndsAreCloseIsTold() =>
        Assert.Contains(
            "ends 0.030 m from where it begins",
            ReadLocal("""{"type":"LineString","coordinates":[[0,0],[30,0],[30,40],[0,0.03]]}""").Problem("NearlyClosed").Message);

    [Theory]
    [InlineData("""{"type":"LineString","coordinates":[[1,2]]}""", "'Line 1' has only 1 place that differ")]
    [InlineData("""{"type":"LineString","coordinates":[[1,2],[1,2],[1,2]]}""", "'Line 1' has only 1 place")]
    [InlineData("""{"type":"Polygon","coordinates":[[[1,2],[3,4],[1,2]]]}""", "'Line 1' has only 2 places")]
    public void ADegenerateLineIsLeftOutAndTold(string text, string message)
    {
        var result = ReadLocal(text);

        Assert.Empty(result.Lines);
        Assert.Contains(message, result.Problem("TooFewPoints").Message);
    }

    [Fact]
    public void TheOriginIsTheFirstPointRoundedToHundredMetres()
    {
        var result = ReadLocal("""{"type":"LineString","coordinates":[[500340,4170060],[500350,4170060]]}""");

        Assert.Equal((500_300, 4_170_100, 1), (result.Origin!.EastMetres, result.Origin.NorthMetres, result.Origin.GridPerLocal));
        Assert.Equal([(40, -40), (50, -40)], result.Lines[0].Places());
    }
}
