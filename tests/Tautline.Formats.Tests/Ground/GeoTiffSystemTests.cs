using System.Buffers.Binary;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Ground;
using Tautline.Formats.Import;

namespace Tautline.Formats.Tests.Ground;

/// <summary>Place, system and units of GeoTIFFs. The files are GDAL's; where one has to be wrong, a number in it is written over.</summary>
public sealed class GeoTiffSystemTests
{
    [Fact]
    public void AnUnknownHeightUnitIsAskedNotGuessed()
    {
        var file = Read("f32-strips");

        Assert.False(file.IsReady);
        var question = Assert.Single(file.Questions);
        Assert.Equal(GroundQuestionKind.HeightUnit, question.Kind);
        Assert.Equal("The file does not say in what unit its heights are. They run from 200.5 to 227.25.", question.Text);
        Assert.Equal(["metre", "foot", "survey-foot"], question.Choices.Select(c => c.Value));
        Assert.DoesNotContain(question.Choices, c => c.Proposed);
        Assert.Null(file.HeightUnit);
        Assert.Equal((32616, LinearUnit.Metre), (file.System!.EpsgCode, file.PlanUnit));
        Assert.Contains("inside the area of that grid", file.Problem("SystemClaimed").Message);
    }

    [Fact]
    public void AnAnswerSettlesItWithoutReadingAgain()
    {
        var file = Read("f32-strips").Answered(null, LinearUnit.SurveyFoot);

        Assert.True(file.IsReady);
        Assert.Equal(LinearUnit.SurveyFoot, file.HeightUnit);
    }

    [Theory]
    [InlineData("navd88-ftus", LinearUnit.SurveyFoot)]
    [InlineData("unit-metre", LinearUnit.Metre)]
    public void AHeightUnitTheFileStatesIsTaken(string name, LinearUnit unit)
    {
        var file = Read(name);

        Assert.True(file.IsReady);
        Assert.Equal(unit, file.HeightUnit);
        Assert.Contains(unit.Name(), file.Problem("HeightUnitClaimed").Message);
    }

    [Fact]
    public void AHeightSystemIsToldAndAContradictingStatementToo()
    {
        var file = Read("navd88-ftus", new() { HeightUnit = LinearUnit.Metre });

        Assert.Equal((6360, 2965), (file.Claims.HeightSystemCode, file.Claims.SystemCode));
        Assert.Equal("The file says its heights are NAVD88 height (ftUS).", file.Problem("HeightSystem").Message);
        Assert.Equal("The file says its heights are in US survey feet; metres were stated and are used.", file.Problem("HeightUnitContradicts").Message);
        Assert.Equal(LinearUnit.Metre, file.HeightUnit);
    }

    [Fact]
    public void HeightsThatContradictThemselvesAreAsked()
    {
        // The unit key of the plan becomes one of the heights: NAVD88 in survey feet, beside metres.
        var bytes = GdalFile.Read("navd88-ftus");
        WriteKey(bytes, 1026, [4099, 0, 1, 9001]);

        var file = GroundReader.Read(bytes);

        Assert.Equal("The file contradicts itself: its unit of heights is metres, its heights are NAVD88 height (ftUS), in US survey feet.", file.Problem("HeightUnitsContradict").Message);
        Assert.Equal(GroundQuestionKind.HeightUnit, Assert.Single(file.Questions).Kind);
    }

    [Fact]
    public void AUnitAgainstTheCodeIsShownAndAsked()
    {
        var bytes = GdalFile.Read("f32-strips");
        WriteKey(bytes, 3076, [3076, 0, 1, 9003]);

        var file = GroundReader.Read(bytes);

        Assert.Equal("The file names EPSG:32616 (WGS 84 / UTM zone 16N), which is in metres, and says beside it that its unit is US survey feet.", file.Problem("UnitAgainstCode").Message);
        Assert.Equal("EPSG:32616", file.Question(GroundQuestionKind.System).Choices[0].Value);
        Assert.Null(file.System);
        Assert.Equal(32616, file.Answered(CoordinateSystemChoice.Epsg(32616), null).System!.EpsgCode);
    }

    [Fact]
    public void ACodeThatPutsTheGroundElsewhereIsAskedWithTheUnitThatFits()
    {
        // Indiana East in metres in place of feet: the ground would be in another state.
        var bytes = GdalFile.Read("navd88-ftus");
        WriteKey(bytes, 3072, [3072, 0, 1, 26973]);

        var file = GroundReader.Read(bytes);

        Assert.Contains("outside the area of that grid. Read as EPSG:2965 (NAD83 / Indiana East (ftUS), in US survey feet) it has its middle at 39.0", file.Problem("ClaimOutside").Message);
        Assert.Equal(["EPSG:26973", "EPSG:2965"], file.Question(GroundQuestionKind.System).Choices.Select(c => c.Value).Take(2));
    }

    [Fact]
    public void AnUnknownCodeIsAsked()
    {
        var bytes = GdalFile.Read("f32-strips");
        WriteKey(bytes, 3072, [3072, 0, 1, 5514]);

        var file = GroundReader.Read(bytes);

        Assert.Equal("The file says its plan coordinates are EPSG:5514 (WGS 84 / UTM zone 16N), which is not among the systems this program knows.", file.Problem("ClaimNotKnown").Message);
        Assert.NotEmpty(file.Questions);
    }

    [Theory]
    [InlineData("degrees", "Degrees")]
    [InlineData("ellipsoid", "Degrees")]
    [InlineData("picture", "Picture")]
    [InlineData("turned", "Turned")]
    [InlineData("south-up", "RowsFromSouth")]
    [InlineData("no-place", "NoPlace")]
    public void WhatIsNoUprightGridOfLengthsIsRefusedByName(string name, string code)
    {
        var file = Read(name);

        Assert.Equal(ProblemSeverity.Error, file.Problem(code).Severity);
        Assert.False(file.IsReady);
    }

    [Fact]
    public void AGridWithoutKeysIsAskedForItsSystem()
    {
        var file = Read("no-srs");

        Assert.Equal([GroundQuestionKind.System, GroundQuestionKind.HeightUnit], file.Questions.Select(q => q.Kind));
        Assert.Contains("They run from N 4400000 to 4400022, E 500000 to 500018.", file.Questions[0].Text);
        Assert.True(file.Answered(CoordinateSystemChoice.Epsg(32616), LinearUnit.Metre).IsReady);
    }

    [Fact]
    public void HeightsAtPointsLieOnTheirTiepoint()
    {
        // The same grid: GDAL writes the tiepoint half a cell inside when the raster is of points.
        var (area, point) = (Read("f32-strips").Grid(), Read("point").Grid());

        Assert.Equal((area.West, area.North), (point.West, point.North));
        var (a, p) = (Place("f32-strips"), Place("point"));
        Assert.Equal(213.0, a.HeightAt(500000 + 2.5 * 2, 4400022 - 5.5 * 2)!.Value, 1e-12);
        Assert.Equal(213.0, p.HeightAt(500000 + 2.5 * 2, 4400022 - 5.5 * 2)!.Value, 1e-12);
    }

    [Theory]
    [InlineData(259, 50000, "CompressionNotRead", "Zstandard")]
    [InlineData(259, 34887, "CompressionNotRead", "LERC")]
    [InlineData(258, 12, "SampleNotRead", "floating numbers of 12 bits")]
    [InlineData(339, 5, "SampleNotRead", "complex numbers")]
    [InlineData(262, 2, "Picture", "picture")]
    public void WhatIsNotReadIsNamed(int tag, ushort value, string code, string words)
    {
        var bytes = GdalFile.Read("f32-strips");
        WriteTag(bytes, tag, value);

        Assert.Contains(words, GroundReader.Read(bytes).Problem(code).Message);
    }

    [Fact]
    public void MoreCellsThanTheLimitAreRefusedWithTheExtentAndAWindowHelps()
    {
        var limits = new GroundLimits { Cells = 20 };
        var file = Read("f32-strips", new() { Limits = limits });

        Assert.Equal("11 rows of 9 columns are 99 heights; at most 20 are held at once. They cover N 4400000 to 4400022, E 500000 to 500018.", file.Problem("TooManyCells").Message);
        Assert.Equal(new GroundExtent(500000, 4400000, 500018, 4400022), file.Extent);
        Assert.Equal(16, Read("f32-strips", new() { Limits = limits, Window = new(500007, 4400009, 500009, 4400011) }).Grid().Valid);
        Assert.Contains("does not meet the grid", Read("f32-strips", new() { Window = new(0, 0, 10, 10) }).Problem("WindowOutside").Message);
    }

    [Fact]
    public void AFileFarTooSmallForItsGridTakesNoMemory()
    {
        // 6,000 rows of 6,000 columns in 800 bytes, all in one strip of its own.
        var bytes = GdalFile.Read("f32-strips");
        WriteTag(bytes, 256, 6000);
        WriteTag(bytes, 257, 6000);
        WriteTag(bytes, 278, 1500);

        var before = GC.GetAllocatedBytesForCurrentThread();
        var file = GroundReader.Read(bytes);

        Assert.Contains("Hollow", file.Codes());
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1_000_000);
    }

    private static GroundFile Read(string name, GroundOptions? options = null) => GroundReader.Read(GdalFile.Read(name), options);

    private static Engine.Site.Ground.IGroundSurface Place(string name) =>
        GroundPlacement.Place(Read(name).Answered(null, LinearUnit.Metre), GroundTarget.GridMetres(32616)).Surface!;

    /// <summary>Writes a number over that of a tag of the first directory, little-endian.</summary>
    private static void WriteTag(byte[] bytes, int tag, ushort value) => BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(Entry(bytes, tag) + 8), value);

    /// <summary>Writes four shorts over the entry of a geo key.</summary>
    private static void WriteKey(byte[] bytes, int key, ushort[] entry)
    {
        var directory = Entry(bytes, 34735);
        var at = (int)BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(directory + 8));
        while (BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(at)) != key) at += 8;
        for (var i = 0; i < 4; i++) BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(at + 2 * i), entry[i]);
    }

    private static int Entry(byte[] bytes, int tag)
    {
        var at = (int)BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(4)) + 2;
        while (BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(at)) != tag) at += 12;
        return at;
    }
}
