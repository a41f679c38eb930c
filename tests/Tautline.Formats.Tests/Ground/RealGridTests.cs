using Tautline.Engine.Site.Ground;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Ground;
using Tautline.Formats.Import;
using static Tautline.Formats.Tests.Ground.GroundText;

namespace Tautline.Formats.Tests.Ground;

/// <summary>Real grids against the facts of the README beside them, which an independent reading gave; sums of all cells by GDAL 3.6.2.</summary>
public sealed class RealGridTests
{
    private static readonly GroundOptions UtmMetres = new() { System = CoordinateSystemChoice.Epsg(26913), HeightUnit = LinearUnit.Metre };

    [Fact]
    public void TheGullyHasTheReadmesCells()
    {
        var file = Shared(Gully, UtmMetres);
        var grid = file.Grid();

        Assert.True(file.IsReady);
        Assert.Equal((89, 43, 1088), (grid.Rows, grid.Columns, grid.Valid));
        Assert.Equal(new GroundExtent(559705, 4380220, 559705 + 129, 4380220 + 267), grid.Extent);
        // Kept as floats, an eighth of a millimetre apart at this height; the README's figures are of floats too.
        Assert.Equal((1680.7794, 1725.4326), (Math.Round(grid.Lowest, 4), Math.Round(grid.Highest, 4)));
        Assert.Equal(1708.4775, grid.Mean, 5e-5);
        Assert.Equal(1701.277954, grid.HeightOf(44, 21)!.Value, 5e-7);
        Assert.Null(grid.HeightOf(0, 0));
    }

    [Fact]
    public void TheGullyIsReadLevelOnlyWhereItHasGround()
    {
        var ground = OnGrid(Shared(Gully, UtmMetres), 26913);

        Assert.Equal(1712.681020, ground.HeightAt(559770, 4380400)!.Value, 5e-7);
        var profile = ground.Along(GroundPath.Through(new(559706, 4380225), new(559832, 4380480)));
        Assert.NotEmpty(profile.Gaps);
        Assert.All(profile.Stretches.SelectMany(s => s.Points), p => Assert.InRange(p.Height, 1680.7794, 1725.4327));
    }

    [Fact]
    public void WithItsMarkOverruledTheGullyFallsToZeroAndThatIsTold()
    {
        var file = Shared(Gully, UtmMetres with { NoData = -9999 });

        Assert.Equal((3827, 0.0), (file.Grid().Valid, file.Grid().Lowest));
    }

    [Fact]
    public void TheGullyLeavesItsSystemAndHeightUnitOpen() =>
        Assert.Equal([GroundQuestionKind.System, GroundQuestionKind.HeightUnit], Shared(Gully).Questions.Select(q => q.Kind));

    [Fact]
    public void IndianaHasTheReadmesCellsAndClaims()
    {
        var file = Shared(Indiana);
        var grid = file.Grid();

        // Its heights are of an unknown system, and in metres.
        Assert.True(file.IsReady);
        Assert.Equal((32616, LinearUnit.Metre, "unknown"), (file.System!.EpsgCode, file.HeightUnit, file.Claims.HeightSystemText));
        Assert.Equal((344, 405, 134821), (grid.Rows, grid.Columns, grid.Valid));
        Assert.Equal((626999.504176399, 4323885.918092704), (grid.West, grid.North));
        Assert.Equal((225.8178, 290.7416, 236.0286), (Math.Round(grid.Lowest, 4), Math.Round(grid.Highest, 4), Math.Round(grid.Mean, 4)));
        Assert.Equal(290.74160024835345, grid.HeightOf(276, 341));
        Assert.Equal(233.851345864, grid.HeightOf(172, 202)!.Value, 5e-10);
        Assert.Equal(31821605.685640723, grid.Mean * grid.Valid, 1e-6);
    }

    [Fact]
    public void IndianaHasTheReadmesHeightsBetweenCells()
    {
        var ground = OnGrid(Shared(Indiana), 32616);

        Assert.Equal(234.206102, ground.HeightAt(627200, 4323700)!.Value, 5e-7);
        Assert.Equal(240.052464, ground.HeightAt(627300.25, 4323650.75)!.Value, 5e-7);
    }

    [Fact]
    public void VermontHasTheReadmesCellsAndAsksForItsUnit()
    {
        var file = Shared(Vermont);
        var grid = file.Grid();

        Assert.Equal(GroundQuestionKind.HeightUnit, Assert.Single(file.Questions).Kind);
        Assert.Equal(26918, file.System!.EpsgCode);
        Assert.Equal((188, 237, 44556), (grid.Rows, grid.Columns, grid.Valid));
        Assert.Equal((664692.0, 4895824.0, 90.0), (grid.West, grid.North, grid.CellEast));
        Assert.Equal((212.2298, 1232.8783, 529.3746), (Math.Round(grid.Lowest, 4), Math.Round(grid.Highest, 4), Math.Round(grid.Mean, 4)));
        Assert.Equal(470.883698, grid.HeightOf(94, 118)!.Value, 5e-7);
        Assert.Equal(438.383973, OnGrid(file.Answered(null, LinearUnit.Metre), 26918).HeightAt(675000, 4887000)!.Value, 5e-7);
    }

    [Fact]
    public void DerivedIndianaHasTheReadmesCellsAndAsksForItsUnit()
    {
        var file = Shared(IndianaFeet);
        var grid = file.Grid();

        Assert.Equal(GroundQuestionKind.HeightUnit, Assert.Single(file.Questions).Kind);
        Assert.Equal((2965, LinearUnit.SurveyFoot), (file.System!.EpsgCode, file.PlanUnit));
        Assert.Equal((231, 270, 58056), (grid.Rows, grid.Columns, grid.Valid));
        Assert.Equal((366235.0, 1386455.0, 5.0), (grid.West, grid.North, grid.CellEast));
        Assert.Equal((741.0712, 953.3289, 774.3757), (Math.Round(grid.Lowest, 4), Math.Round(grid.Highest, 4), Math.Round(grid.Mean, 4)));
        Assert.Equal(767.541321, grid.HeightOf(115, 135)!.Value, 5e-7);
    }

    [Fact]
    public void DerivedIndianaHasTheReadmesHeightBetweenCells()
    {
        // In metres on its own grid: 366900, 1385900 survey feet; heights become floats of metres, 0.015 mm apart.
        var ground = OnGrid(Shared(IndianaFeet).Answered(null, LinearUnit.SurveyFoot), 2965);

        Assert.Equal(781.179825, ground.HeightAt(366900 * 1200 / 3937.0, 1385900 * 1200 / 3937.0)!.Value * 3937 / 1200, 5e-5);
    }

    [Fact]
    public void FeetReadAsMetresAreToldByTheSlopeTheyMake()
    {
        var file = Shared(IndianaFeet);

        // Shares counted with NumPy from the cells: 5.9 % and 21.7 % of the pairs of neighbours.
        Assert.Equal(
            ["metres: 22 % of the ground would be steeper than 100 %", "international feet: 6 % of the ground would be steeper than 100 %", "US survey feet: 6 % of the ground would be steeper than 100 %"],
            file.Question(GroundQuestionKind.HeightUnit).Choices.Select(c => c.Text));
        var wrong = file.Answered(null, LinearUnit.Metre);
        Assert.Equal(
            "22 % of the ground is steeper than 100 % with plan in US survey feet and heights in metres. Were the heights feet, it would be 6 %.", wrong.Problem("TooSteep").Message);
        Assert.Equal(ProblemSeverity.Warning, wrong.Problem("TooSteep").Severity);
        Assert.DoesNotContain("TooSteep", file.Answered(null, LinearUnit.SurveyFoot).Codes());
        Assert.Contains("6 % of it steeper than 100 %", file.Answered(null, LinearUnit.SurveyFoot).Problem("Steepness").Message);
    }

    [Theory]
    [InlineData(Gully)]
    [InlineData(Indiana)]
    [InlineData(Vermont)]
    public void RealGroundReadInItsOwnUnitIsNotTooSteep(string path)
    {
        var file = Shared(path, path == Gully ? UtmMetres : new() { HeightUnit = LinearUnit.Metre });

        Assert.DoesNotContain("TooSteep", file.Codes());
        Assert.Contains("Steepness", file.Codes());
    }

    private static IGroundSurface OnGrid(GroundFile file, int code)
    {
        var placed = GroundPlacement.Place(file, GroundTarget.GridMetres(code));
        Assert.Equal(["Placed"], placed.Codes());
        return placed.Surface!;
    }
}
