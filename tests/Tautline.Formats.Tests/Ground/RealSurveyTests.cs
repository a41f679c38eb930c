using Tautline.Formats.Ground;
using Tautline.Formats.Ground.Points;
using Tautline.Formats.Import;
using static Tautline.Formats.Tests.Ground.GroundText;

namespace Tautline.Formats.Tests.Ground;

/// <summary>Real survey files against the facts of the README beside them, which were counted by other means.</summary>
public sealed class RealSurveyTests
{
    [Fact]
    public void TheParkHasTheReadmesPointsAndExtent()
    {
        var file = SharedPoints(Park, "PNEZD");
        var points = file.PointContent().Points;

        Assert.True(file.IsReady);
        Assert.Equal(1311, points.Length);
        Assert.Equal((61566, "1", "1312"), (file.Bytes, points[0].Name, points[^1].Name));
        Assert.Equal(1311, points.Select(p => p.Name).Distinct().Count());
        Assert.Equal((538402.68483, 539259.64397), (points.Min(p => p.North), points.Max(p => p.North)));
        Assert.Equal((1454146.84700, 1455709.87032), (points.Min(p => p.East), points.Max(p => p.East)));
        Assert.Equal((583.02092, 701.09828), (points.Min(p => p.Height), points.Max(p => p.Height)));
        Assert.Equal(679.40088, points.Average(p => p.Height!.Value), 5e-6);
        Assert.DoesNotContain("RowLeftOut", file.Codes());
        Assert.DoesNotContain("LinesSkipped", file.Codes());
    }

    [Fact]
    public void TheParkHasTheReadmesDescriptions()
    {
        var points = SharedPoints(Park, "PNEZD").PointContent().Points;
        var codes = points.CountBy(p => p.Description).ToDictionary();

        Assert.Equal(156, codes.Count);
        Assert.Equal((252, 155, 94, 83, 70, 48), (codes["SW"], codes["GS"], codes["EC"], codes["TOPWALL"], codes["TOE"], codes["TOP"]));
        Assert.Equal(["226", "583", "786", "843"], points.Where(p => p.Description.Length == 0).Select(p => p.Name));
        Assert.Equal(["TOP WALL 18\" WI", "TOP WALL 18\" WI"], points.Where(p => p.Name is "1081" or "1082").Select(p => p.Description));
        Assert.Contains(points, p => p.Description == "CL1.5*1.5COLMN");
    }

    [Fact]
    public void TheParkLeavesItsColumnsSystemAndUnitOpen()
    {
        var file = Shared(Park);

        Assert.Equal([GroundQuestionKind.Columns, GroundQuestionKind.System, GroundQuestionKind.HeightUnit], file.Questions.Select(q => q.Kind));
        Assert.Null(file.Content);
        Assert.Equal(GroundFormat.SurveyPoints, file.Format);
        var columns = file.Question(GroundQuestionKind.Columns);
        Assert.Equal("Which column is north, and which is east? The file has 1,311 rows of points, split by commas, and no header that says it.", columns.Text);
        Assert.Equal(["PNEZD", "PENZD", "NEZD", "ENZD"], columns.Choices.Select(c => c.Value));
        Assert.Equal("PNEZD: point 1 at north 538542.57, east 1455644.371, height 681.31, 'I'", columns.Choices[0].Text);
    }

    [Fact]
    public void TheParkIsInItsParkOnTheGridItFits()
    {
        // README: N 538800 E 1455100 of EPSG:2264 falls at 35.21669 N, 80.82451 W
        var file = GroundReader.Read(SharedData.Read(Park), new()
        {
            System = Coordinates.CoordinateSystemChoice.Epsg(2264),
            HeightUnit = Coordinates.LinearUnit.SurveyFoot,
            Points = new() { Columns = ColumnOrder.Of("PNEZD") },
        });
        Assert.True(file.IsReady);

        // The other way round the park would lie in another state.
        var swapped = GroundReader.Read(SharedData.Read(Park), new()
        {
            System = Coordinates.CoordinateSystemChoice.Epsg(2264),
            HeightUnit = Coordinates.LinearUnit.SurveyFoot,
            Points = new() { Columns = ColumnOrder.Of("PENZD") },
        });
        Assert.Contains("outside the area of that grid", swapped.Problem("OutsideArea").Message);
    }

    [Fact]
    public void OxfordAsksForColumnsAndPlaceHolders()
    {
        var file = Shared(Oxford);

        Assert.Equal(
            [GroundQuestionKind.Columns, GroundQuestionKind.PlaceHolders, GroundQuestionKind.System, GroundQuestionKind.HeightUnit], file.Questions.Select(q => q.Kind));
        Assert.Equal(["PNEZD", "PENZD"], file.Question(GroundQuestionKind.Columns).Choices.Select(c => c.Value).Take(2));
        Assert.Equal("29 rows stand at one and the same place, 1.00, 1.00, 1.00. Are they place-holders?", file.Question(GroundQuestionKind.PlaceHolders).Text);
        Assert.Equal(71, SharedPoints(Oxford, "PNEZD", new() { PlaceHolders = PlaceHolders.Keep }).PointContent().Points.Length);
    }

    [Fact]
    public void OxfordHasTheReadmesPoints()
    {
        var file = SharedPoints(Oxford, "PENZD", new() { PlaceHolders = PlaceHolders.LeaveOut });
        var points = file.PointContent().Points;

        Assert.True(file.IsReady);
        Assert.Equal(42, points.Length);
        Assert.Equal((993.626, 1004.293), (points.Min(p => p.East), points.Max(p => p.East)));
        Assert.Equal((997.323, 1008.034), (points.Min(p => p.North), points.Max(p => p.North)));
        Assert.Equal((95.212, 100.368), (points.Min(p => p.Height), points.Max(p => p.Height)));
        var codes = points.CountBy(p => p.Description).ToDictionary();
        Assert.Equal((3, 19, 10, 13), (codes.Count, codes["WALL01"], codes["WALL03"], codes["WALL04"]));
        Assert.Equal(42, points.Select(p => p.Name).Distinct().Count());
        Assert.Equal(["T1", "T2", "T3", "T4"], points.Select(p => p.Name).Where(n => n.StartsWith('T')).Order());
    }

    [Fact]
    public void OxfordTellsWhatIsOddInItWithItsLines()
    {
        var file = SharedPoints(Oxford, "PENZD", new() { PlaceHolders = PlaceHolders.LeaveOut });

        Assert.Equal("29 rows stand at one place, 1.00, 1.00, 1.00 (lines 23, 24, 25, 26, 27 and 24 more). They are left out as place-holders.", file.Problem("PlaceHolders").Message);
        // Points 111 and 112, a millimetre of height apart.
        var twice = file.Problem("TwoHeights");
        Assert.Equal("At the place of line 58 (point 111, height 98.362) the height here is 98.361. The ground takes the first.", twice.Message);
        Assert.Equal(59, twice.Where.Line);
        Assert.Equal("A rule of dashes behind the code was left away on 71 lines.", file.Problem("RulesCut").Message);
        Assert.Contains("(the first is line 1, 'Oxford Archaeology Survey.')", file.Problem("LinesSkipped").Message);
        Assert.DoesNotContain("NumberTwice", file.Codes());
        Assert.DoesNotContain(file.Problems, p => p.Severity == ProblemSeverity.Error);
    }

    [Fact]
    public void TheParksBreaklinesLieInItsGround()
    {
        var file = SharedPoints(Park, "PNEZD", new() { Breaklines = new(["EC", "TOPWALL", "TOE"]) { LongestStep = 150 } });
        var content = file.PointContent();

        Assert.All(content.Breaklines, l => Assert.True(l.Points.Length >= 2));
        // Rows 4 to 7 of the file are the first run of TOPWALL.
        Assert.Equal(["4", "5", "6", "7"], content.Breaklines.First(l => l.Code == "TOPWALL").Points.Select(i => content.Points[i].Name));
        var ground = GroundPlacement.Place(file, GroundTarget.Local);
        Assert.NotNull(ground.Surface);
        // On the first of them, half way between rows 4 and 5: the mean of their heights.
        Assert.Equal((682.48019 + 682.23335) / 2, ground.Surface.HeightAt((1455530.75412 + 1455544.53672) / 2, (538488.14912 + 538484.57092) / 2)!.Value, 1e-6);
    }
}
