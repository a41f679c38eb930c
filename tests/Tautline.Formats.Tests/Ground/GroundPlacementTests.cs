using Tautline.Engine.Jobs;
using Tautline.Engine.Site.Ground;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Ground;
using Tautline.Formats.Import;
using static Tautline.Formats.Tests.Ground.GroundText;

namespace Tautline.Formats.Tests.Ground;

public sealed class GroundPlacementTests
{
    /// <summary>A job on the Indiana campus, on UTM, with the factor of its middle: scale 0.99980 and height 236 m, rounded.</summary>
    private static readonly GroundTarget Campus = new(CoordinateSystemChoice.Epsg(32616), new(627100, 4323700, 0.9997634));

    [Fact]
    public void TheSamePlaceHasTheSameHeightInMetresOnUtmAndInFeetOnTheStatePlane()
    {
        var (metres, feet) = BothOfIndiana();
        var all = Differences(metres, feet, 0, 0, roughness: double.PositiveInfinity);
        var smooth = Differences(metres, feet, 0, 0, roughness: 0.1);

        // Measured: 9,063 places, half of them within 15.3 mm, nine tenths within 236 mm. The derived grid is an average over 5 ft, which cuts the
        // corners of walls and trees; on smooth ground (1,754 places) half are within 2.3 mm, 99 of a hundred within 14.5 mm.
        Assert.Equal((9063, 1754), (all.Count, smooth.Count));
        Assert.True(Part(all, 0.5) < 0.0155, $"median {Part(all, 0.5)}");
        Assert.True(Part(smooth, 0.5) < 0.0025, $"median on smooth ground {Part(smooth, 0.5)}");
        Assert.True(Part(smooth, 0.99) < 0.015, $"99 % on smooth ground {Part(smooth, 0.99)}");
    }

    [Theory]
    [InlineData(0.3, 0)]
    [InlineData(-0.3, 0)]
    [InlineData(0, 0.3)]
    [InlineData(0, -0.3)]
    public void AFootsShiftInAnyDirectionWouldBeSeen(double east, double north)
    {
        // Measured 25 to 26 mm, in place of 15.3 mm: the two grids lie on each other to well within a foot.
        var (metres, feet) = BothOfIndiana();

        Assert.True(Part(Differences(metres, feet, east, north, double.PositiveInfinity), 0.5) > 0.024);
    }

    private static (IGroundSurface Metres, IGroundSurface Feet) BothOfIndiana() => (
        GroundPlacement.Place(Shared(Indiana), Campus).Surface!,
        GroundPlacement.Place(Shared(IndianaFeet).Answered(null, LinearUnit.SurveyFoot), Campus).Surface!);

    private static double Part(List<double> sorted, double part) => sorted[(int)(sorted.Count * part)];

    /// <summary>Differences at places 3.7 m apart, sorted; only where the first surface varies by no more than a roughness within 2 m.</summary>
    private static List<double> Differences(IGroundSurface a, IGroundSurface b, double eastOff, double northOff, double roughness)
    {
        var found = new List<double>();
        for (var east = -90.0; east <= 290; east += 3.7)
            for (var north = -150.0; north <= 180; north += 3.7)
            {
                if (a.HeightAt(east, north) is not { } first || b.HeightAt(east + eastOff, north + northOff) is not { } second) continue;
                var around = new[] { (2, 0), (-2, 0), (0, 2), (0, -2) }.Select(d => a.HeightAt(east + d.Item1, north + d.Item2)).ToList();
                if (around.TrueForAll(h => Math.Abs((h ?? first) - first) <= roughness)) found.Add(Math.Abs(first - second));
            }
        found.Sort();
        return found;
    }

    [Theory]
    [InlineData(627200, 4323700, 366902.628768, 1385832.379704)]
    [InlineData(627300.25, 4323650.75, 367229.182836, 1385665.965101)]
    [InlineData(627050, 4323850, 366417.690845, 1386331.752683)]
    public void APlaceIsCarriedToTheOtherGridAsProjDoes(double east, double north, double eastFeet, double northFeet)
    {
        // cs2cs EPSG:32616 EPSG:2965 of PROJ 9.1.1 (EPSG 10.076), printed to a millionth of a foot
        var file = Shared(IndianaFeet).Answered(null, LinearUnit.SurveyFoot);
        var own = GroundPlacement.Place(file, GroundTarget.GridMetres(2965)).Surface!;
        var carried = GroundPlacement.Place(file, GroundTarget.GridMetres(32616));

        // A tenth of a millimetre of plan on slopes up to ten to one.
        Assert.Equal(own.HeightAt(eastFeet * 1200 / 3937, northFeet * 1200 / 3937)!.Value, carried.Surface!.HeightAt(east, north)!.Value, 0.001);
        Assert.Equal("The ground is on NAD83 and the job on WGS 84. No change of datum is made: the ground may lie one to two metres off in plan.", carried.Problem("NoDatumChange").Message);
    }

    [Fact]
    public void AGridOnTheJobsOwnGridKeepsItsHeightsAndTakesTheFactorInPlan()
    {
        var file = Shared(Indiana);
        var placed = GroundPlacement.Place(file, Campus);

        // README: bilinear at (627200, 4323700) = 234.206102; 100 m on the grid is 100/0.9997634 m on the ground.
        Assert.Equal(234.206102, placed.Surface!.HeightAt(100.0236656, 0)!.Value, 1e-6);
        Assert.Equal("File and job lie on EPSG:32616: local = (grid - (627100, 4323700)) / 0.9997634.", placed.How);
        Assert.Equal(file.Sha256, placed.Sha256);
        Assert.Equal(-100.519, placed.Extent!.Value.West, 0.001);
        Assert.Equal(["Placed"], placed.Codes());
    }

    [Fact]
    public void ProfilesOnTheOtherGridLieOnTheirSurface()
    {
        var ground = GroundPlacement.Place(Shared(IndianaFeet).Answered(null, LinearUnit.SurveyFoot), Campus).Surface!;
        var path = GroundPath.Through(new(-60, -120), new(250, 40), new(250, 160), new(-200, 100));

        var profile = ground.Along(path);

        Assert.Equal(path.Range, profile.Range);
        Assert.NotEmpty(profile.Gaps); // the last leg leaves the grid
        var checkedPlaces = 0;
        for (var i = 1; i < path.Points.Count; i++)
        {
            var (a, b) = (path.Points[i - 1], path.Points[i]);
            for (var part = 0.0137; part < 1; part += 0.0271)
            {
                var at = ground.HeightAt(a.East + part * (b.East - a.East), a.North + part * (b.North - a.North));
                var along = profile.HeightAt(a.Station + part * (b.Station - a.Station));
                Assert.Equal(at is null, along is null);
                if (at is null) continue;
                // A millimetre of the Engine's chords, and a tenth of a millimetre of the map on slopes up to ten to one.
                Assert.Equal(at.Value, along!.Value, 0.003);
                checkedPlaces++;
            }
        }
        Assert.InRange(checkedPlaces, 60, 110);
    }

    [Fact]
    public void AWindowAroundTheJobHasTheHeightsOfTheWhole()
    {
        var whole = GroundPlacement.Place(Shared(IndianaFeet).Answered(null, LinearUnit.SurveyFoot), Campus).Surface!;
        var window = GroundPlacement.WindowFor(CoordinateSystemChoice.Epsg(2965), Campus, new(20, -40, 60, 10), margin: 5)!.Value;
        var file = Shared(IndianaFeet, new() { Window = window, HeightUnit = LinearUnit.SurveyFoot });
        var part = GroundPlacement.Place(file, Campus).Surface!;

        // 50 x 60 m and margins are 33 x 40 cells of 5 ft, and two more on each side.
        Assert.InRange(file.Grid().Columns, 33, 40);
        Assert.InRange(file.Grid().Rows, 39, 46);
        foreach (var (east, north) in new[] { (20.0, -40.0), (60, 10), (20, 10), (60, -40), (41.3, -7.7) })
            Assert.Equal(whole.HeightAt(east, north)!.Value, part.HeightAt(east, north)!.Value, 1e-9);
    }

    [Fact]
    public void AJobsFrameSaysWhereItIs()
    {
        var target = GroundTarget.Of(new CoordinateFrame { System = "EPSG:32616", OriginEast = 627100, OriginNorth = 4323700, GroundScale = 1.00023666 })!;

        Assert.Equal(32616, target.System.EpsgCode);
        Assert.Equal(0.9997634, target.Origin.GridPerLocal, 1e-8);
        Assert.Same(GroundTarget.Local, GroundTarget.Of(null));
        Assert.Null(GroundTarget.Of(new CoordinateFrame { System = "EPSG:32616", GroundScale = 0 }));
        Assert.Null(GroundTarget.Of(new CoordinateFrame { System = "somewhere" }));
    }

    [Fact]
    public void GroundOnAGridCannotBeLaidUnderAJobWithoutOne()
    {
        var placed = GroundPlacement.Place(Shared(Indiana), GroundTarget.Local);

        Assert.Null(placed.Surface);
        Assert.Equal("The ground is in EPSG:32616, and the job is tied to no map.", placed.Problem("JobHasNoGrid").Message);
    }

    [Fact]
    public void GroundInTheJobsOwnFeetIsLaidAsItIs()
    {
        var file = Points("1,0,0,10,a\n2,100,0,20,b\n3,0,100,10,c").Answered(LocalFeet, LinearUnit.Foot);
        var placed = GroundPlacement.Place(file, Campus);

        // Half way north, 50 ft = 15.24 m: 15 ft = 4.572 m
        Assert.Equal(4.572, placed.Surface!.HeightAt(0, 15.24)!.Value, 1e-9);
        Assert.Contains("taken as the job's own metres", placed.Problem("TakenAsJobs").Message);
    }

    [Fact]
    public void GroundOfTheSitesOwnGridIsShiftedLikeTheJobsOutline()
    {
        // An outline of a local system gets an origin at whole hundreds of metres.
        var job = GroundTarget.Of(new CoordinateFrame { System = "local metres", OriginEast = 5000, OriginNorth = 4900 })!;
        var placed = GroundPlacement.Place(Shared(Lot, new() { System = LocalMetres }), job);

        // README: 4.458582 at N 4975, E 5015
        Assert.Equal(4.458582, placed.Surface!.HeightAt(15, 75)!.Value, 5e-7);
    }

    [Fact]
    public void LongFacesAtTheRimAreTakenAwayWhenAsked()
    {
        var file = Points("1,0,0,5,a\n2,0,10,5,b\n3,10,0,5,c\n4,10,10,5,d\n5,5,90,5,e");

        Assert.Equal(5, GroundPlacement.Place(file, GroundTarget.Local).Surface!.HeightAt(40, 5));
        Assert.Null(GroundPlacement.Place(file, GroundTarget.Local, longestEdge: 30).Surface!.HeightAt(40, 5));
    }

    [Fact]
    public void WhatTheTriangulationFindsIsToldWithPointsAndLines()
    {
        var file = Points("7,0,0,5,a\n8,0,10,5,b\n9,10,0,5,c\n10,0,10,6,d");

        Assert.Equal(
            "Point 8 (line 2) and Point 10 (line 4) stand at one place at E 10.00, N 0.00 with heights 5 and 6 m; the first is taken.",
            GroundPlacement.Place(file, GroundTarget.Local).Problem("TwoHeights").Message);
    }

    [Fact]
    public void GroundFarFromTheJobAndLengthsForAnotherHeightAreTold()
    {
        var far = GroundPlacement.Place(Shared(Indiana), new(CoordinateSystemChoice.Epsg(32616), new(327100, 4323700, 1)));
        Assert.Equal("The ground lies 299.9 km from the job's origin.", far.Problem("FarAway").Message);

        // A gully at 1,700 m under a job whose factor is the grid's alone: R/(R + h) is 267 millionths, 0.27 m in a kilometre.
        var gully = Shared(Gully, new() { System = CoordinateSystemChoice.Epsg(26913), HeightUnit = LinearUnit.Metre });
        var factor = GroundPlacement.Place(gully, new(CoordinateSystemChoice.Epsg(26913), new(559700, 4380200, 0.999644)));
        Assert.Matches("^The job's ground lengths are for a height of about -?[0-9]+ m; this ground lies at 1703 m. Lengths of the job are off by 0.2[67][0-9] m in 1000 m.$", factor.Problem("FactorForOtherHeight").Message);
    }

    [Fact]
    public void AFileWithOpenQuestionsIsNotPlaced() => Assert.Equal(["NotReady"], GroundPlacement.Place(Shared(Vermont), GroundTarget.GridMetres(26918)).Codes());

    [Fact]
    public void FewerThanThreePointsAreNoGround()
    {
        var placed = GroundPlacement.Place(Points("1,0,0,10\n2,100,0,20\n3,200,0,"), GroundTarget.Local);

        Assert.Null(placed.Surface);
        Assert.Contains("NoSurface", placed.Codes());
    }
}
