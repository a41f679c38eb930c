using System.Globalization;
using System.Text;
using Tautline.Formats.Ground;
using Tautline.Formats.Import;
using static Tautline.Formats.Tests.Ground.GroundText;

namespace Tautline.Formats.Tests.Ground;

public sealed class AsciiGridTests
{
    private const string Head = "ncols 3\nnrows 2\nxllcorner 10\nyllcorner 20\ncellsize 2\n";

    [Fact]
    public void RowsRunFromTheNorth()
    {
        var grid = Read(Head + "nodata_value -1\n1 2 3\n4 -1 6\n").Grid();

        Assert.Equal((2, 3, 5), (grid.Rows, grid.Columns, grid.Valid));
        Assert.Equal((1, 3, null), (grid.HeightOf(0, 0), grid.HeightOf(0, 2), grid.HeightOf(1, 1)));
        Assert.Equal(new GroundExtent(10, 20, 16, 24), grid.Extent);
        Assert.Equal((1, 6, 3.2), (grid.Lowest, grid.Highest, grid.Mean));
    }

    [Theory]
    [InlineData("xllcorner 10\nyllcorner 20\ncellsize 2", 10, 20, 2, 2)]
    [InlineData("XLLCENTER 11\nYLLCENTER 21\nCELLSIZE 2", 10, 20, 2, 2)]
    [InlineData("xllcenter 11\nyllcorner 20\ncellsize 2", 10, 20, 2, 2)]
    [InlineData("xllcorner 10\nyllcorner 20\ndx 2\ndy 0.5", 10, 20, 2, 0.5)]
    [InlineData("xllcenter 11\nyllcenter 20.25\ndx 2\ndy 0.5", 10, 20, 2, 0.5)]
    [InlineData("xllcorner 1.0E1\nyllcorner 20,0\ncellsize +2.", 10, 20, 2, 2)]
    public void TheCornerIsThatOfTheLowerLeftCell(string place, double west, double south, double cellEast, double cellNorth)
    {
        var grid = Read($"NROWS 2\nNCOLS 3\n{place}\n1 2 3 4 5 6").Grid();

        Assert.Equal((west, south), (grid.Extent.West, grid.Extent.South));
        Assert.Equal((cellEast, cellNorth), (grid.CellEast, grid.CellNorth));
    }

    [Theory]
    [InlineData("1 2 3 4 5 6")]
    [InlineData("1\n2\n3\n4\n5\n6\n")]
    [InlineData("1 2\r\n3 4 5\r\n 6\r\n")]
    [InlineData("1e0 +2 3.0 4.D0 .5E1 6.")]
    [InlineData("1,0 2,0 3,0 4,0 5,0 6,0")]
    public void HeightsAreFreeInTheirLinesAndWriting(string heights)
    {
        var grid = Read(Head + heights).Grid();

        Assert.Equal([1, 2, 3, 4, 5, 6], Enumerable.Range(0, 6).Select(i => grid.HeightOf(i / 3, i % 3)));
    }

    [Theory]
    [InlineData("nan")]
    [InlineData("NaN")]
    [InlineData("1.#QNAN")]
    [InlineData("inf")]
    [InlineData("-9999")]
    public void WhatIsNoHeightIsNoGround(string text) => Assert.Equal(5, Read(Head + $"{text} 2 3 4 5 6").Grid().Valid);

    [Fact]
    public void TheCustomaryMarkIsToldWhereNoneIsStated()
    {
        Assert.Equal(
            "The header states no mark of cells without ground; 2 heights of -9999 were taken for it, as is custom.", Read(Head + "-9999 2 3 4 5 -9999.0").Problem("NoDataTaken").Message);
        Assert.Equal(6, Read(Head + "nodata_value 0\n-9999 2 3 4 5 6").Grid().Valid);
    }

    [Fact]
    public void AMarkOfManyDigitsIsComparedAsItIsStored() =>
        Assert.Equal(5, Read(Head + "nodata_value -3.4028234663852886e+38\n-3.402823466385289e+38 2 3 4 5 6").Grid().Valid);

    [Fact]
    public void TooFewHeightsAreToldWithTheLastLine()
    {
        var file = Read(Head + "1 2 3\n4 5\n");

        Assert.Null(file.Content);
        Assert.Equal("ground, line 7", file.Problem("ValueCount").Where.ToString());
        Assert.Equal("The file ends here after 5 of 6 heights: 1 are missing.", file.Problem("ValueCount").Message);
    }

    [Fact]
    public void TooManyHeightsAreToldWithTheFirstLineOver()
    {
        var file = Read(Head + "1 2 3\n4 5 6\n7 8\n");

        Assert.Null(file.Content);
        Assert.Equal(8, file.Problem("ValueCount").Where.Line);
        Assert.Equal("From here on there are more heights than the 6 of the header: 8 in all.", file.Problem("ValueCount").Message);
    }

    [Fact]
    public void AllBadHeightsAreToldWithTheirLines()
    {
        var file = Read(Head + "1 2x 3\n4 -- 6\n");

        Assert.Equal(["NotANumber 6 '2x' is no number.", "NotANumber 7 '--' is no number."], file.Problems.Select(p => $"{p.Code} {p.Where.Line} {p.Message}"));
        Assert.Null(file.Content);
    }

    [Theory]
    [InlineData("nrows 2\nxllcorner 0\ncellsize 1\n1 2", "The header has no ncols, yllcorner.")]
    [InlineData("ncols 2\nnrows 2\nxllcorner 0\nyllcorner 0\ndx 1\n1 2 3 4", "The header has no cellsize.")]
    public void AllMissingKeysAreToldTogether(string text, string message) => Assert.Equal(message, Read(text).Problem("HeaderMissing").Message);

    [Theory]
    [InlineData("ncols 3.5\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 1\n", "The header's ncols is '3.5', not a whole number above zero.")]
    [InlineData("ncols 3\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize wide\n", "The header's cellsize is 'wide', not a number.")]
    [InlineData("ncols 3\nncols 4\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 1\n", "The header gives ncols a second time, or both a corner and a centre.")]
    public void ABadHeaderIsTold(string text, string message) => Assert.Contains(message, Read(text + "1 2 3 4 5 6").Problems.Select(p => p.Message));

    [Theory]
    [InlineData("ncols 1\nnrows 1\nxllcorner 0\nyllcorner 0\ncellsize 1\n5", "TooFewCells")]
    [InlineData("ncols 1\nnrows 3\nxllcorner 0\nyllcorner 0\ncellsize 1\n5 5 5", "TooFewCells")]
    [InlineData("ncols 2\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 0\n1 2 3 4", "NoPlace")]
    [InlineData("ncols 2\nnrows 2\nxllcorner 1e300\nyllcorner 0\ncellsize 1\n1 2 3 4", "NoPlace")]
    [InlineData("ncols 2000\nnrows 2000\nxllcorner 0\nyllcorner 0\ncellsize 1\n1", "ValueCount")]
    [InlineData("ncols 2000000\nnrows 2000000\nxllcorner 0\nyllcorner 0\ncellsize 1\n1", "TooManyCells")]
    [InlineData("ncols 2\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 1\nnodata_value 0\n0 0 0 0", "NoHeights")]
    public void WhatMakesNoGroundIsRefusedByName(string text, string code) => Assert.Equal(ProblemSeverity.Error, Read(text).Problem(code).Severity);

    [Fact]
    public void AnUnknownKeyIsToldAndPassedOver() => Assert.Equal("The header's 'units feet' is not known and passed over.", Read(Head + "units feet\n1 2 3 4 5 6").Problem("KeyNotKnown").Message);

    [Fact]
    public void DegreesAreRefusedUnlessOverruled()
    {
        const string Text = "ncols 2\nnrows 2\nxllcorner -86.5\nyllcorner 39.1\ncellsize 0.00027\n200 201 202 203";

        var file = Read(Text, new GroundOptions());
        Assert.Equal("The plan coordinates are longitude and latitude. Degrees are not lengths, and ground in degrees is not read.", file.Problem("Degrees").Message);
        Assert.Equal("Degrees", Read(Text, new GroundOptions { System = Coordinates.CoordinateSystemChoice.Epsg(4326) }).Problem("Degrees").Code);
        Assert.Contains("DegreesOverruled", Read(Text).Codes());
    }

    [Fact]
    public void AWindowKeepsItsPart()
    {
        var grid = Read("ncols 9\nnrows 9\nxllcorner 0\nyllcorner 0\ncellsize 1\n" + string.Join(' ', Enumerable.Range(0, 81)), Metres with { Window = new(4.5, 4.5, 4.5, 4.5) }).Grid();

        Assert.Equal((3, 3, 9, 9), (grid.Rows, grid.Columns, grid.Whole.Rows, grid.Whole.Columns));
        Assert.Equal(new GroundExtent(3, 3, 6, 6), grid.Extent);
        Assert.Equal(40, grid.HeightOf(1, 1)); // the middle of all: row 4, column 4
    }

    [Fact]
    public void AStreamIsReadWithLittleMoreMemoryThanItsHeights()
    {
        // 600 x 600 heights are 1.44 MB as floats, and 4 MB of text.
        var text = new StringBuilder("ncols 600\nnrows 600\nxllcorner 0\nyllcorner 0\ncellsize 1\n");
        for (var i = 0; i < 360_000; i++) text.Append(CultureInfo.InvariantCulture, $"{200 + i % 997 * 0.001:0.0000000} ").Append(i % 600 == 599 ? "\n" : "");
        using var stream = new MemoryStream(Encoding.ASCII.GetBytes(text.ToString()));
        GroundReader.Read(Encoding.ASCII.GetBytes(Head + "1 2 3 4 5 6"), Metres);

        var before = GC.GetAllocatedBytesForCurrentThread();
        var file = GroundReader.Read(stream, Metres);
        var taken = GC.GetAllocatedBytesForCurrentThread() - before;

        Assert.Equal(360_000, file.Grid().Valid);
        Assert.InRange(stream.Length, 3_900_000, 4_400_000);
        Assert.InRange(taken, 1_440_000, 1_440_000 + 300_000);
    }
}
