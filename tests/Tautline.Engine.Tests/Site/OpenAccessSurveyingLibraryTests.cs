using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Tests.Surveys;

/// <summary>
/// J. Mahun, Open Access Surveying Library. Lengths are printed to 0.001 ft from values carried rounded, so that a last digit
/// may be off by one: tolerance 0.0015 ft.
/// </summary>
public sealed class OpenAccessSurveyingLibraryTests
{
    private const double Printed = 0.0015;

    private static readonly Traverse bearings = Field.Loop(
        Field.NorthEast(500, 2000),
        Field.Leg("S68-05-35W", 472.68), Field.Leg("N19-46-00W", 216.13), Field.Leg("N45-55-20E", 276.52), Field.Leg("S54-59-15E", 382.24));

    /// <summary>SV-01. Traverse Adjustment self study, problem 1. The printed sums are of rounded values; unrounded the departures sum to -0.129.</summary>
    [Fact]
    public void LoopOfFourCoursesAndItsCompassRule()
    {
        var loop = Field.Loop(
            default, Field.Leg("S36-00-00E", 379.25), Field.Leg("S75-23-18W", 408.9), Field.Leg("N14-43-29W", 298.65), Field.Leg("N63-59-20E", 276.55));
        Field.Near([-306.820, -103.152, 288.842, 121.280], loop.Courses.Select(c => c.Latitude), Printed);
        Field.Near([222.918, -395.675, -75.909, 248.538], loop.Courses.Select(c => c.Departure), Printed);
        Assert.Equal(0.150, loop.Misclosure.Latitude.Feet, Printed);
        Assert.Equal(-0.128, loop.Misclosure.Departure.Feet, Printed);
        Assert.Equal(1363.35, loop.Perimeter.Feet, 1e-9);
        var adjusted = loop.Adjust();
        Field.Near([-306.862, -103.197, 288.809, 121.250], adjusted.Courses.Select(c => c.Latitude), Printed);
        Field.Near([222.954, -395.637, -75.881, 248.564], adjusted.Courses.Select(c => c.Departure), Printed);
    }

    /// <summary>SV-03. Traverse Computations, ch. G and I; coordinates after the compass rule.</summary>
    [Fact]
    public void BearingTraverseCarriedToCoordinates()
    {
        Field.Near([-176.357, 203.395, 192.357, -219.312], bearings.Courses.Select(c => c.Latitude), Printed);
        Field.Near([-438.548, -73.093, 198.651, 313.065], bearings.Courses.Select(c => c.Departure), Printed);
        Assert.Equal(0.083, bearings.Misclosure.Latitude.Feet, Printed);
        Assert.Equal(0.075, bearings.Misclosure.Departure.Feet, Printed);
        Assert.Equal(1347.57, bearings.Perimeter.Feet, 1e-9);
        var corners = bearings.Adjust().Corners;
        Assert.Equal(4, corners.Count);
        Field.Near(323.614, 1561.426, corners[1], Printed);
        Field.Near(526.996, 1488.321, corners[2], Printed);
        Field.Near(719.336, 1686.956, corners[3], Printed);
    }

    /// <summary>
    /// SV-10. Traverse Computations, ch. G, example 1. The area is the arithmetic of the printed partial products, kept to 0.1 sq ft:
    /// tolerance 0.5 sq ft. 2.363 acres of 43,560 sq ft.
    /// </summary>
    [Fact]
    public void AreaByCoordinates()
    {
        var area = CoordinateArea.Of(
            [Field.NorthEast(500, 2000), Field.NorthEast(323.614, 1561.426), Field.NorthEast(526.996, 1488.321), Field.NorthEast(719.336, 1686.956)]);
        Assert.Equal(102_935.7, area.SquareFeet, 0.5);
        Assert.Equal(2.363, area.SquareFeet / 43_560, 0.0005);
        // The same corners, now carried from the bearings themselves.
        Assert.Equal(102_935.7, bearings.Adjust().Area!.Value.SquareFeet, 0.5);
    }

    /// <summary>
    /// SV-18. Horizontal Curves self study, set 2. Stations and lengths are printed to 0.01 ft, angles to the second: tolerance
    /// 0.011 ft and 1 second. Errata of the page: L stands once as 693.90 for 639.90, and the deflection to the EC as 24-54-52 for
    /// 22-54-52; both wrong figures are left out here.
    /// </summary>
    [Fact]
    public void CurveTableFromTheBeginningOfCurve()
    {
        var radius = Field.Ok(Curve.FromDeltaAndArcLength(7 + 9 / 60.0 + 43.1 / 3600, Length.FromFeet(100))).Radius;
        Assert.Equal(800.00, radius.Feet, 0.011);
        var curve = Field.Ok(Curve.FromRadiusAndDelta(radius, 45 + 49 / 60.0 + 45 / 3600.0));
        Assert.Equal(338.17, curve.Tangent!.Value.Feet, 0.011);
        Assert.Equal(622.97, curve.Chord.Feet, 0.011);
        Assert.Equal(639.90, curve.ArcLength.Feet, 0.011);
        var placed = new PlacedCurve(curve, default, Direction.DueNorth, CurveSide.Right, Length.FromFeet(5084.98));
        var stakes = Field.Ok(placed.Stakes(Length.FromFeet(100)));
        double[] seconds = [0, 1937, 14828, 27720, 40611, 53503, 66394, 79286]; // 0-32-17, 4-07-08, 7-42-00, 11-16-51, 14-51-43, 18-26-34, 22-01-26
        double[] chords = [0, 15.02, 114.92, 214.38, 312.99, 410.38, 506.18, 599.99];
        Assert.Equal(9, stakes.Count);
        for (var i = 1; i < 8; i++)
        {
            Assert.Equal(5000 + 100 * i, stakes[i].Station.Feet, 1e-6);
            Assert.Equal(seconds[i], stakes[i].DeflectionDegrees * 3600, 1.0);
            Assert.Equal(chords[i], stakes[i].ChordFromPc.Feet, 0.011);
        }
        // The EC's deflection as it should be printed, half of delta.
        Assert.Equal(22 * 3600 + 54 * 60 + 52, stakes[8].DeflectionDegrees * 3600, 1.0);
    }
}
