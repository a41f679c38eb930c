using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Quantities;

public sealed class OtherQuantityTests
{
    // NIST SP 811, appendix B: exact factors of the foot, yard and pound.
    [Fact]
    public void UsUnitsHaveTheirLegalSize()
    {
        Assert.Equal(0.09290304, Area.FromSquareFeet(1).SquareMetres);
        Assert.Equal(0.028316846592, Volume.FromCubicFeet(1).CubicMetres);
        Assert.Equal(0.764554857984, Volume.FromCubicYards(1).CubicMetres);
        Assert.Equal(27, Volume.FromCubicYards(1).CubicFeet, 1e-12);
        Assert.Equal(0.45359237, Mass.FromPounds(1).Kilograms);
        Assert.Equal(1.48816394, LinearMass.FromPoundsPerFoot(1).KilogramsPerMetre, 5e-9);
    }

    // Worked by hand: 5.79 lb/ft over 21 ft is 121.59 lb.
    [Fact]
    public void MassPerLengthTimesLengthIsMass() =>
        Assert.Equal(121.59, (LinearMass.FromPoundsPerFoot(5.79) * Length.FromFeet(21)).Pounds, 1e-10);

    [Theory]
    [InlineData(100, 45)]
    [InlineData(-100, -45)]
    [InlineData(0, 0)]
    public void SlopeInPercentIsAnAngle(double percent, double degrees)
    {
        Assert.Equal(degrees, Slope.FromPercent(percent).Degrees);
        Assert.Equal(percent, Slope.FromDegrees(degrees).Percent);
    }

    [Theory]
    [InlineData(90)]
    [InlineData(-90)]
    [InlineData(double.NaN)]
    public void APlumbSlopeIsNoSlope(double degrees) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Slope.FromDegrees(degrees));

    [Fact]
    public void RiseIsSlopeTimesRun() => Assert.Equal(1.5, (Slope.FromRatio(0.125) * Length.FromMetres(12)).Metres);
}
