using System.Text;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Ground;
using Tautline.Formats.Import;
using static Tautline.Formats.Tests.Ground.GroundText;

namespace Tautline.Formats.Tests.Ground;

public sealed class GroundReaderTests
{
    [Theory]
    [InlineData("1,5,6,7,a", GroundFormat.SurveyPoints)]
    [InlineData("ncols 2\nnrows 2", GroundFormat.AsciiGrid)]
    [InlineData("  NROWS 2\nncols 2", GroundFormat.AsciiGrid)]
    [InlineData("<?xml version=\"1.0\"?><LandXML/>", GroundFormat.LandXml)]
    [InlineData("\uFEFF<LandXML/>", GroundFormat.LandXml)]
    public void TheFormatIsToldByTheFirstBytes(string text, GroundFormat format) => Assert.Equal(format, Read(text, new GroundOptions()).Format);

    [Fact]
    public void GeoTiffIsToldByItsFirstBytesInBothOrdersAndBothSizes()
    {
        foreach (var name in new[] { "f32-strips", "f32-bigendian", "f32-deflate-tiles-big" }) Assert.Equal(GroundFormat.GeoTiff, GroundReader.Read(GdalFile.Read(name)).Format);
    }

    [Theory]
    [InlineData("PK\u0003\u0004xxxx", "a ZIP archive")]
    [InlineData("LASF\u0001\u0002", "a lidar point cloud")]
    [InlineData("AC1027\0", "a DWG drawing")]
    [InlineData("%PDF-1.7", "a PDF")]
    public void OtherFormatsAreRefusedByName(string text, string name)
    {
        var file = Read(text, new GroundOptions());

        Assert.Contains(name, file.Problem("OtherFormat").Message);
        Assert.Null(file.Format);
        Assert.Empty(file.Questions);
    }

    [Fact]
    public void AnEmptyFileIsTold() => Assert.Equal(["Empty"], GroundReader.Read(ReadOnlyMemory<byte>.Empty).Codes());

    [Fact]
    public void TheHashIsThatOfTheBytes()
    {
        // FIPS 180-2, appendix B.1: SHA-256 of "abc"
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", Read("abc").Sha256);
        using var stream = new MemoryStream("abc"u8.ToArray());
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", GroundReader.Read(stream).Sha256);
    }

    [Theory]
    [InlineData(Gully)]
    [InlineData(Lot)]
    [InlineData(IndianaFeet)]
    [InlineData(Oxford)]
    public void AStreamGivesWhatTheBytesGive(string path)
    {
        var bytes = SharedData.Read(path);
        var whole = GroundReader.Read(bytes);

        foreach (var canSeek in new[] { true, false })
        {
            using var stream = new OneWay(bytes, canSeek);
            var file = GroundReader.Read(stream);
            Assert.Equal((whole.Sha256, whole.Bytes, whole.Extent), (file.Sha256, file.Bytes, file.Extent));
            Assert.Equal(whole.Codes(), file.Codes());
        }
    }

    [Fact]
    public void AStreamThatFailsIsAProblemNotAnException()
    {
        using var stream = new OneWay(new byte[100], canSeek: true) { Fails = true };

        Assert.Equal("The file could not be read to its end: the disk is gone", GroundReader.Read(stream).Problem("CannotBeRead").Message);
    }

    [Fact]
    public void SizesAreLimited()
    {
        var limits = new GroundLimits { TextBytes = 10, StreamedBytes = 20 };
        Assert.Equal("The file has 15 bytes; at most 10 are read.", Read("1,5000,1000,98,", new GroundOptions { Limits = limits }).Problem("TooLarge").Message);
        Assert.Contains("TooLarge", Read("ncols 2\nnrows 2\nxllcorner", new GroundOptions { Limits = limits }).Codes());
        using var stream = new OneWay(new byte[100], canSeek: false);
        Assert.Contains("TooLarge", GroundReader.Read(stream, new() { Limits = limits }).Codes());
    }

    [Theory]
    [InlineData(GroundQuestionKind.System, "EPSG:2264")]
    [InlineData(GroundQuestionKind.System, "2264")]
    [InlineData(GroundQuestionKind.System, "local:survey-foot")]
    [InlineData(GroundQuestionKind.HeightUnit, "foot")]
    [InlineData(GroundQuestionKind.Columns, "XYZ")]
    [InlineData(GroundQuestionKind.PlaceHolders, "keep")]
    [InlineData(GroundQuestionKind.Surface, "EG")]
    public void AnswersAreTakenAsText(GroundQuestionKind kind, string text) => Assert.NotNull(GroundAnswers.Apply(new(), kind, text));

    [Theory]
    [InlineData(GroundQuestionKind.System, "EPSG:here")]
    [InlineData(GroundQuestionKind.System, "local:yard")]
    [InlineData(GroundQuestionKind.HeightUnit, "feet?")]
    [InlineData(GroundQuestionKind.PlaceHolders, "perhaps")]
    [InlineData(GroundQuestionKind.Surface, " ")]
    public void WhatIsNoAnswerIsNone(GroundQuestionKind kind, string text) => Assert.Null(GroundAnswers.Apply(new(), kind, text));

    [Fact]
    public void EveryChoiceOfferedIsAnAnswer()
    {
        foreach (var path in new[] { Park, Oxford, Gully, Vermont, "plans/subdivision-1.1-feet.xml" })
            foreach (var question in Shared(path).Questions)
                Assert.All(question.Choices, c => Assert.NotNull(GroundAnswers.Apply(new(), question.Kind, c.Value)));
    }

    [Theory]
    [InlineData(2965, false)]
    [InlineData(3857, true)]
    [InlineData(99999, true)]
    [InlineData(4326, true)]
    public void ASystemThatCannotBeUsedIsRefusedWithTheReason(int code, bool refused) => Assert.Equal(
        refused, Points("1,1386000,365000,800,a").Answered(CoordinateSystemChoice.Epsg(code), LinearUnit.SurveyFoot).HasErrors);

    [Fact]
    public void HeightsNoSiteHasAreTold() =>
        Assert.Equal("The heights run from 10 to 99998 m, which no site has.", Points("1,5,6,10,a\n2,7,8,99998,b").Problem("HeightsImplausible").Message);

    [Fact]
    public void TooSteepGroundIsToldForPointsWhenItIsMade()
    {
        // Twenty-five over ten; as feet over metres it is 76 %.
        var steep = GroundPlacement.Place(Points("1,0,0,100,a\n2,0,10,125,b\n3,10,0,100,c\n4,10,10,125,d"), GroundTarget.Local);
        Assert.Equal("100 % of the ground is steeper than 100 % with plan in metres and heights in metres. Were the heights feet, it would be none.", steep.Problem("TooSteep").Message);
        var mixed = Points("1,0,0,100,a\n2,0,10,125,b\n3,10,0,100,c\n4,10,10,125,d").Answered(LocalMetres, LinearUnit.Foot);
        Assert.Contains("Half of the ground is steeper than 7", GroundPlacement.Place(mixed, GroundTarget.Local).Problem("Steepness").Message);
    }

    /// <summary>A stream that may not seek, gives few bytes at a time, and may fail.</summary>
    private sealed class OneWay(byte[] bytes, bool canSeek) : MemoryStream(bytes)
    {
        public bool Fails { get; init; }

        public override bool CanSeek => canSeek;

        public override int Read(byte[] buffer, int offset, int count) => Fails ? throw new IOException("the disk is gone") : base.Read(buffer, offset, Math.Min(count, 1000));
    }
}
