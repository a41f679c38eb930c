using System.Text;
using Tautline.Formats.GeoJson;
using Tautline.Formats.Import;
using static Tautline.Formats.Tests.GeoJsonText;

namespace Tautline.Formats.Tests;

public sealed class GeoJsonProblemTests
{
    [Fact]
    public void ACutOffFileGivesNoLineAndNamesThePlace()
    {
        var result = ReadLocal("{\"type\":\"LineString\",\n\"coordinates\":[[0,0],[30,0],[30,4");

        Assert.Empty(result.Lines);
        var problem = Assert.Single(result.Problems);
        Assert.Equal("CutOff", problem.Code);
        Assert.Equal("a.geojson, line 2, column 34", problem.Where.ToString());
        Assert.Equal("The file ends in the middle: 3 brackets are still open.", problem.Message);
    }

    [Theory]
    [InlineData("{\"type\":\"LineString\",\n \"coordinates\":[[0,0],[NaN,0]]}", "NotJson", 2, 24, "'NaN'")]
    [InlineData("{\"type\":\"LineString\",\n \"coördinates\" [[0,0]]}", "NotJson", 2, 16, "'[[0'")]
    [InlineData("{\"type\":\"LineString\"}\n{\"type\":\"LineString\"}", "SeveralTexts", 2, 1, "second JSON text")]
    [InlineData("{\"type\":\"LineString\"} x", "MoreAfterEnd", 1, 23, "follows after the end")]
    [InlineData("[1,2]", "NotGeoJson", 1, 1, "does not begin with a JSON object")]
    public void TextThatIsNotOneJsonObjectIsToldWithItsPlace(string text, string code, int line, int column, string message)
    {
        var result = ReadLocal(text);

        var problem = result.Problem(code);
        Assert.Empty(result.Lines);
        Assert.Equal((line, column), (problem.Where.Line, problem.Where.Column));
        Assert.Contains(message, problem.Message);
    }

    [Theory]
    [InlineData("")]
    [InlineData(" \r\n\t")]
    public void AnEmptyFileIsTold(string text) => Assert.Equal("The file is empty.", ReadLocal(text).Problem("Empty").Message);

    [Fact]
    public void AllProblemsAreToldTogetherAndSoundLinesKept()
    {
        var result = ReadLocal(
            """
            {"type":"FeatureCollection","features":[
            {"type":"Feature","properties":{"name":"A"},"geometry":{"type":"LineString","coordinates":[[0,0],["5",0]]}},
            {"type":"Feature","properties":{"name":"B"},"geometry":{"type":"LineString","coordinates":[[0,0],[5]]}},
            {"type":"Feature","properties":{"name":"C"},"geometry":{"type":"LineString","coordinates":[[0,0],[1e999,0]]}},
            {"type":"Feature","properties":{"name":"D"},"geometry":{"type":"Polygon","coordinates":[[0,0],[5,0],[5,5],[0,0]]}},
            {"type":"Feature","properties":{"name":"E"},"geometry":{"type":"CircularString","coordinates":[[0,0],[5,0]]}},
            {"type":"Feature","properties":{"name":"F"},"geometry":{"type":"LineString"}},
            {"type":"Feature","properties":{"name":"G"},"geometry":{"coordinates":[[0,0],[5,0]]}},
            {"type":"Feature","properties":{"name":"H"},"geometry":{"type":"LineString","coordinates":[[0,0],[8,0]]}},
            17]}
            """);

        Assert.Equal("H", Assert.Single(result.Lines).Name);
        Assert.Equal(
            ["1 BadPosition 2", "2 BadPosition 3", "3 BadPosition 4", "4 WrongNesting 5", "5 UnknownType 6", "6 MissingMember 7", "7 NoType 8", "9 NoType 10"],
            result.Problems.Select(p => $"{p.Where.Feature} {p.Code} {p.Where.Line}"));
        Assert.Equal("A position of 'A' has something other than numbers. The line is left out.", result.Problems[0].Message);
        Assert.Equal("A position of 'B' has fewer than two numbers. The line is left out.", result.Problems[1].Message);
        Assert.Equal("A position of 'C' has a number too large to be one. The line is left out.", result.Problems[2].Message);
    }

    [Fact]
    public void AFileWithoutLinesIsTold() =>
        Assert.Equal(["PointsIgnored", "NoLines"], ReadLocal("""{"type":"Point","coordinates":[1,2]}""").Codes());

    [Fact]
    public void TopoJsonIsNamed() => Assert.Contains("TopoJSON", ReadLocal("""{"type":"Topology","arcs":[]}""").Problem("UnknownType").Hint);

    [Fact]
    public void DeepNestingIsRefused()
    {
        var text = "{\"type\":\"LineString\",\"coordinates\":" + new string('[', 5000) + new string(']', 5000) + "}";

        Assert.Equal(["TooDeep"], ReadLocal(text).Codes());
    }

    [Fact]
    public void AFileAboveTheLimitIsRefused()
    {
        var result = GeoJsonReader.Read(new byte[1001], new() { MaximumBytes = 1000 });

        Assert.Equal("The file has 1,001 bytes; at most 1,000 are read.", result.Problem("TooLarge").Message);
        Assert.Equal(64 * 1024 * 1024, new ImportOptions().MaximumBytes);
    }

    [Fact]
    public void TextThatIsNotUtf8IsToldWithItsPlace()
    {
        byte[] text = [.. "{\"type\":\n\"Lin"u8, 0xE9, .. "\"}"u8]; // a Latin-1 letter

        var problem = Assert.Single(GeoJsonReader.Read(text).Problems);
        Assert.Equal(("NotUtf8", 2, 5), (problem.Code, problem.Where.Line, problem.Where.Column));
    }

    [Fact]
    public void Utf16IsNamedAndAUtf8MarkIsPassedOver()
    {
        const string Text = """{"type":"LineString","coordinates":[[0,0],[30,0]]}""";

        Assert.Contains("UTF-16", GeoJsonReader.Read(Encoding.Unicode.GetBytes(Text)).Problem("NotUtf8").Message);
        byte[] marked = [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Text)];
        Assert.Single(GeoJsonReader.Read(marked, new() { CoordinateSystem = LocalMetres }).Lines);
    }

    [Fact]
    public void HalfASurrogatePairDoesNotStopTheReading()
    {
        var result = ReadLocal("""{"type":"Feature","properties":{"name":"\ud800","\udfff":"x"},"geometry":{"type":"LineString","coordinates":[[0,0],[30,0]]}}""");

        Assert.Equal(30, Assert.Single(result.Lines).Length(), 1e-9);
    }

    [Fact]
    public void BeyondTwoHundredProblemsTheyAreCounted()
    {
        var bad = string.Join(',', Enumerable.Repeat("""{"type":"LineString","coordinates":[[0,0],[5]]}""", 250));

        var result = ReadLocal($$"""{"type":"GeometryCollection","geometries":[{{bad}}]}""");

        Assert.Equal(201, result.Problems.Length);
        Assert.Equal("50 more problems are not listed.", result.Problems[^1].Message);
    }

    [Fact]
    public void LocalNumbersNoSiteHasAreTold() =>
        Assert.Equal(["NoGridPosition"], ReadLocal("""{"type":"LineString","coordinates":[[0,0],[1e300,0]]}""").Codes());
}
