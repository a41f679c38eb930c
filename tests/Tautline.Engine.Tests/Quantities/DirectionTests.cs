using CsCheck;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Quantities;

public sealed class DirectionTests
{
    [Theory]
    [InlineData(0, 0, 1)]
    [InlineData(90, 1, 0)]
    [InlineData(180, 0, -1)]
    [InlineData(270, -1, 0)]
    [InlineData(360, 0, 1)]
    [InlineData(-90, -1, 0)]
    public void QuarterTurnsAreExact(double azimuth, double east, double north) =>
        Assert.Equal(new Direction(east, north), Direction.FromAzimuthDegrees(azimuth));

    [Fact]
    public void FourRightTurnsComeBackExactly()
    {
        var start = Direction.FromAzimuthDegrees(33.7);
        var turned = start.TurnRight(90).TurnRight(90).TurnRight(90).TurnRight(90);
        Assert.Equal(start, turned);
        Assert.Equal(start, start.TurnLeft(180).TurnRight(180));
        Assert.Equal(start.Left, start.TurnLeft(90));
    }

    [Theory]
    [InlineData(0, 90, 90)]
    [InlineData(90, 0, -90)]
    [InlineData(0, 180, 180)]
    [InlineData(180, 0, 180)]
    [InlineData(350, 20, 30)]
    [InlineData(20, 350, -30)]
    public void TurnBetweenIsSignedRightPositive(double from, double to, double turn) => Assert.Equal(
        turn, Direction.Between(Direction.FromAzimuthDegrees(from), Direction.FromAzimuthDegrees(to)), 1e-13);

    [Fact]
    public void SquareCornersAreExactWhateverTheLine() => Gen.Double[0, 360].Always(azimuth =>
    {
        var line = Direction.FromAzimuthDegrees(azimuth);
        Assert.Equal(90, Direction.Between(line, line.TurnRight(90)));
        Assert.Equal(-90, Direction.Between(line, line.TurnLeft(90)));
        Assert.Equal(180, Direction.Between(line, -line));
        Assert.Equal(0, Direction.Between(line, line));
    });

    [Fact]
    public void AzimuthSurvivesTheVector() => Gen.Double[0, 359.999].Always(azimuth =>
        Assert.Equal(azimuth, Direction.FromAzimuthDegrees(azimuth).AzimuthDegrees, 1e-13));

    [Fact]
    public void AHairWestOfNorthIsZeroAndNot360() => Assert.Equal(0, new Direction(-1e-18, 1).AzimuthDegrees);

    [Fact]
    public void AVectorOfAnyLengthHasADirection()
    {
        Assert.Equal(new Direction(0.6, 0.8), Direction.FromVector(3e200, 4e200));
        Assert.Equal(Direction.DueWest, Direction.FromVector(-5, 0));
        Assert.Throws<ArgumentException>(() => Direction.FromVector(0, 0));
        Assert.Throws<ArgumentException>(() => Direction.FromVector(double.NaN, 1));
    }

    // J. Mahun, Open Access Surveying Library, Traverse Adjustment self study, Problem 1: latitudes and departures
    // printed to 0.001.
    [Theory]
    [InlineData("S36-00-00E", 379.25, -306.820, 222.918)]
    [InlineData("S75-23-18W", 408.90, -103.152, -395.675)]
    [InlineData("N14-43-29W", 298.65, 288.842, -75.909)]
    [InlineData("N63-59-20E", 276.55, 121.280, 248.538)]
    public void LatitudeAndDepartureAgreeWithMahun(string bearing, double distance, double latitude, double departure)
    {
        var direction = BearingText.Parse(bearing).Value;
        // Half a unit of the last printed digit, and the unit in which the page rounded its trigonometry.
        Assert.Equal(latitude, distance * direction.North, 0.001);
        Assert.Equal(departure, distance * direction.East, 0.001);
    }
}
