using Tautline.Engine.Quantities;
using Tautline.Engine.Site.TapeBook;

namespace Tautline.Engine.Tests.TapeBook;

public sealed class ClosingTests
{
    [Fact]
    public void YardThatComesBackExactlyHasItsFourLegsAndNoRemark()
    {
        var job = Books.Clean(Books.Spec + "leg 60'\nR 90\nleg 90'\nR 90\nleg 60'\nR 90\nleg 90'\nR 90\nclose");
        Assert.True(job.Lines[0].Closed);
        Assert.Equal([(0, 0), (0, 60), (90, 60), (90, 0)], Books.Points(job));
    }

    /// <summary>60 + 90 + 60 + 89.7 = 299.7 ft walked, 0.3 ft short: 1:999.</summary>
    [Fact]
    public void SlipOfTheTapeMakesNoFifthLegAndIsTold()
    {
        var reading = TapeBookReader.Read(Books.Spec + "leg 60'\nR 90\nleg 90'\nR 90\nleg 60'\nR 90\nleg 89.7'\nclose");
        Assert.Equal([(0, 0), (0, 60), (90, 60), (90, 0)], Books.Points(reading.Job!));
        Assert.Equal(90 * Length.NmPerFoot, Books.Legs(reading.Job!)[3].LevelNm);
        var told = Assert.Single(reading.Problems);
        Assert.Equal(
            "9:1 close-misclosure: The legs end 3 5/8\" east of the start after 299' 8 3/8\" walked, 1:999. The last leg is led to the start."
            + " If a closing leg was meant, write: close within 0\"",
            told.ToString());
    }

    [Fact]
    public void LegLeftForCloseIsMadeAndTold()
    {
        var reading = TapeBookReader.Read(Books.Spec + "leg 30'\nR 90\nleg 40'\nclose\ngate walk 4' from 10'");
        Assert.Equal([(0, 0), (0, 30), (40, 30)], Books.Points(reading.Job!));
        Assert.Equal(50 * Length.NmPerFoot, Books.Legs(reading.Job!)[2].LevelNm); // 3-4-5
        Assert.Equal("line-1/leg3", reading.Job!.Gates[0].Leg.Value);
        Assert.Equal(
            "5:1 close-leg: The closing leg is 50' 0\": the legs end north-east of the start after 70' 0\" walked, 1:1."
            + " If all legs were walked, one of them is wrong by that much.",
            Assert.Single(reading.Problems).ToString());
    }

    /// <summary>One foot in 12: too poor for a slip (1:100), long enough for a leg.</summary>
    [Fact]
    public void ShortClosingLegIsWarnedOf()
        => Assert.Equal(["close-short-leg"], Books.Codes(Books.Spec + "leg 3'\nR 90\nleg 3'\nR 90\nleg 3'\nR 90\nleg 2'\nclose"));

    [Fact]
    public void BookMayStateItsOwnLimit()
    {
        const string walk = "leg 60'\nR 90\nleg 90'\nR 90\nleg 60'\nR 90\nleg 87'\n";
        Assert.Equal(5, Books.Job(Books.Spec + walk + "close").Lines[0].Vertices.Count);
        Assert.Equal(4, Books.Job(Books.Spec + walk + "close within 3'").Lines[0].Vertices.Count);
        Assert.Equal(["close-misclosure"], Books.Codes(Books.Spec + walk + "close within 3'"));
        const string slip = "leg 60'\nR 90\nleg 90'\nR 90\nleg 60'\nR 90\nleg 89'\n";
        Assert.Equal(4, Books.Job(Books.Spec + slip + "close").Lines[0].Vertices.Count);
        Assert.Equal(5, Books.Job(Books.Spec + slip + "close within 0\"").Lines[0].Vertices.Count);
    }

    [Fact]
    public void TurnThatPointsElsewhereThanTheClosingLegIsWarnedOf()
    {
        Assert.Equal(["close-leg"], Books.Codes(Books.Spec + "leg 40'\nR 90\nleg 40'\nR 135\nclose"));
        Assert.Equal(["close-leg", "close-turn"], Books.Codes(Books.Spec + "leg 40'\nR 90\nleg 40'\nL 135\nclose"));
    }

    /// <summary>A yard of 100 by 70 ft with corners of 10 ft radius.</summary>
    [Fact]
    public void YardWithRoundCornersClosesOnItsLastArc()
    {
        const string walk = "leg 50'\narc right radius 10' turn 90\nleg 80'\narc right radius 10' turn 90\n";
        var job = Books.Clean(Books.Spec + walk + walk + "close");
        Assert.Equal([(0, 0), (0, 50), (10, 60), (90, 60), (100, 50), (100, 0), (90, -10), (10, -10)], Books.Points(job));
        var written = TapeBookWriter.Write(job, UnitSystem.UsCustomary).Text;
        Assert.EndsWith("leg 80'\narc right radius 10' turn 90°\nclose\n", written, StringComparison.Ordinal);
        Assert.Equal(Books.Points(job), Books.Points(Books.Clean(written)));
    }

    /// <summary>The last arc is 59.8 ft wide at most and is led to a point 60 ft away.</summary>
    [Fact]
    public void ArcThatNoLongerReachesTheStartIsTold()
        => Assert.Equal(
            ["close-misclosure", "arc-tight"],
            Books.Codes(Books.Spec + "leg 100'\nR 90\nleg 60'\nR 90\nleg 100'\narc right radius 29.9' turn 179.9\nclose within 3'"));
}
