using Tautline.Engine.Quantities;
using Tautline.Engine.Site.TapeBook;

namespace Tautline.Engine.Tests.TapeBook;

public sealed class AdjustTests
{
    private const string Walk = "leg 60'\nR 90\nleg 90'\nR 90\nleg 60'\nR 90\nleg 90'\n";

    /// <summary>
    /// 60, 90, 60 and 88 ft: 298 ft walked, 2 ft short to the east. Shares 60/298, 150/298 and 210/298 of 2 ft move the corners west by
    /// 0.402685, 1.006711 and 1.409396 ft: 4 13/16, 12 1/16 and 16 15/16 in.
    /// </summary>
    [Fact]
    public void EveryLegTakesItsShareAndTheNoteTellsHowFarEachCornerMoved()
    {
        var reading = TapeBookReader.Read(Books.Spec + "leg 60'\nR 90\nleg 90'\nR 90\nleg 60'\nR 90\nleg 88'\nclose\nadjust");
        Assert.Equal([(0, 0), (-0.402685, 60), (88.993289, 60), (88.590604, 0)], Books.Points(reading.Job!));
        Assert.Equal(["close-misclosure", "adjust-moved"], reading.Problems.Select(p => p.Code));
        Assert.Equal(
            "10:1 adjust-moved: The misclosure of 2' 0\" is spread over 4 legs, to each by its length."
            + " Corners moved: v2 4 13/16\", v3 1' 0 1/16\", v4 1' 4 15/16\". Without 'adjust' the last leg takes it all.",
            reading.Problems[1].ToString());
    }

    [Fact]
    public void LineThatComesBackExactlyIsNotMoved()
    {
        var job = Books.Clean(Books.Spec + Walk + "close\nadjust");
        Assert.Equal([(0, 0), (0, 60), (90, 60), (90, 0)], Books.Points(job));
        Assert.Equal([60, 90, 60, 90], Books.Legs(job).Select(l => l.LevelNm / (double)Length.NmPerFoot));
    }

    [Fact]
    public void AdjustedLineStandsWhereItStarts()
    {
        var job = Books.Job(Books.Spec + "start 500' east 20' south\n" + Walk.Replace("90'", "89'", StringComparison.Ordinal) + "close within 3'\nadjust");
        Assert.Equal((500, -20), Books.Points(job)[0]);
    }

    [Theory]
    [InlineData("adjust", 2, "adjust-open")]
    [InlineData(Walk + "adjust", 9, "adjust-open")]
    [InlineData(Walk + "close\nadjust\nadjust", 11, "adjust-twice")]
    [InlineData(Walk + "close\nadjust now", 10, "text-after")]
    [InlineData("leg 30'\nR 90\nleg 40'\nclose\nadjust", 6, "adjust-leg")]
    [InlineData("leg 90'\nR 90\nleg 6\"\nR 90\nleg 89'\nclose within 30'\nadjust", 8, "leg-short")]
    public void SlipsAreToldAtTheirLine(string walk, int line, string code)
    {
        var reading = TapeBookReader.Read(Books.Spec + walk);
        Assert.Null(reading.Job);
        Assert.Contains(reading.Problems, p => p.Line == line && p.Code == code);
    }
}
