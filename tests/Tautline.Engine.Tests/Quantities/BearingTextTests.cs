using CsCheck;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Quantities;

public sealed class BearingTextTests
{
    // Worked by hand: NE b, SE 180 - b, SW 180 + b, NW 360 - b; minutes / 60, seconds / 3600.
    [Theory]
    [InlineData("N 45°30' E", 45.5)]
    [InlineData("N45-30-15E", 45.50416666666667)]
    [InlineData("S 12°05'30\" W", 192.09166666666667)]
    [InlineData("s 12° 05' 30\" e", 167.90833333333333)]
    [InlineData("N 14.75 W", 345.25)]
    [InlineData("N30.4E", 30.4)]
    [InlineData("N 0 W", 0)]
    [InlineData("N 90 E", 90)]
    [InlineData("S 0° E", 180)]
    [InlineData("due N", 0)]
    [InlineData("due west", 270)]
    [InlineData("45.5°", 45.5)]
    [InlineData("359°59'", 359.98333333333335)]
    [InlineData("az 123-27-02", 123.45055555555556)]
    [InlineData("AZIMUTH 210", 210)]
    public void BearingsAndAzimuthsAreRead(string text, double azimuth)
    {
        var parsed = BearingText.Parse(text);
        Assert.Null(parsed.Problem);
        Assert.Equal(azimuth, parsed.Value.AzimuthDegrees, 6e-14);
    }

    [Theory]
    [InlineData("due E", 1, 0)]
    [InlineData("S 90 W", -1, 0)]
    [InlineData("S 0 W", 0, -1)]
    public void CardinalDirectionsAreExact(string text, double east, double north) =>
        Assert.Equal(new Direction(east, north), BearingText.Parse(text).Value);

    [Theory]
    [InlineData("N 91 E", "past-quadrant", 2)]
    [InlineData("N 90°00'01\" E", "past-quadrant", 2)]
    [InlineData("N 45°60' E", "sixty-or-more", 5)]
    [InlineData("N45-30-60E", "sixty-or-more", 7)]
    [InlineData("N 45.5°30' E", "decimal-before-part", 2)]
    [InlineData("az 360", "full-circle", 3)]
    [InlineData("400°", "full-circle", 0)]
    [InlineData("45.5", "bare-bearing", 0)]
    [InlineData("E 45 N", "bearing-start", 0)]
    [InlineData("N 45", "bearing-end", 4)]
    [InlineData("N 45 S", "bearing-end", 5)]
    [InlineData("N E", "number-expected", 2)]
    [InlineData("due up", "cardinal-expected", 4)]
    [InlineData("N 45 E x", "leftover", 7)]
    [InlineData("-45°", "number-expected", 0)]
    [InlineData("N 45,5 E", "comma", 4)]
    [InlineData("", "empty", 0)]
    public void WhatIsNoBearingIsRefused(string text, string code, int position)
    {
        var problem = BearingText.Parse(text).Problem;
        Assert.Equal(code, problem?.Code);
        Assert.Equal(position, problem?.Position);
    }

    [Theory]
    [InlineData(45.5, "N 45°30'00\" E", "45°30'00\"")]
    [InlineData(192.09166666666667, "S 12°05'30\" W", "192°05'30\"")]
    [InlineData(167.90833333333333, "S 12°05'30\" E", "167°54'30\"")]
    [InlineData(345.25, "N 14°45'00\" W", "345°15'00\"")]
    [InlineData(0, "N 0°00'00\" E", "0°00'00\"")]
    [InlineData(90, "N 90°00'00\" E", "90°00'00\"")]
    [InlineData(180, "S 0°00'00\" E", "180°00'00\"")]
    [InlineData(270, "S 90°00'00\" W", "270°00'00\"")]
    [InlineData(359.99999, "N 0°00'00\" E", "0°00'00\"")]
    [InlineData(44.99999, "N 45°00'00\" E", "45°00'00\"")]
    public void DirectionsAreWrittenToTheSecondWithCarry(double azimuth, string bearing, string text)
    {
        var direction = Direction.FromAzimuthDegrees(azimuth);
        Assert.Equal(bearing, BearingText.Format(direction));
        Assert.Equal(text, BearingText.FormatAzimuth(direction));
    }

    [Fact]
    public void EverySecondReadsBack() => Gen.Int[0, 1_295_999].Always(seconds =>
    {
        var direction = Direction.FromAzimuthDegrees(seconds / 3600.0);
        Assert.Equal(seconds / 3600.0, BearingText.Parse(BearingText.Format(direction)).Value.AzimuthDegrees, 1e-12);
        Assert.Equal(seconds / 3600.0, BearingText.Parse(BearingText.FormatAzimuth(direction)).Value.AzimuthDegrees, 1e-12);
    });

    // J. Mahun, Open Access Surveying Library, Traverse Computations ch. G and I: latitude and departure of each course.
    [Theory]
    [InlineData("S68-05-35W", 472.68, -176.357, -438.548)]
    [InlineData("N19-46-00W", 216.13, 203.395, -73.093)]
    [InlineData("N45-55-20E", 276.52, 192.357, 198.651)]
    [InlineData("S54-59-15E", 382.24, -219.312, 313.065)]
    public void CoursesOfAPublishedTraverseComeOut(string bearing, double distance, double latitude, double departure)
    {
        var direction = BearingText.Parse(bearing).Value;
        Assert.Equal(latitude, direction.North * distance, 0.0015);
        Assert.Equal(departure, direction.East * distance, 0.0015);
    }

    // N. N. Basak, Surveying and Levelling, p. 302 Problem 1: the missing course is 183.61 long, N 74.1002 W.
    [Fact]
    public void TheMissingCourseOfAPublishedLoopComesOut()
    {
        var (east, north) = (0.0, 0.0);
        foreach (var (text, length) in new[] { ("N30.4E", 75.5), ("S69.4E", 180.5), ("S30.5W", 60.25) })
        {
            var course = BearingText.Parse(text).Value;
            (east, north) = (east + course.East * length, north + course.North * length);
        }
        Assert.Equal(183.61, Math.Sqrt(east * east + north * north), 0.001);
        Assert.Equal(360 - 74.1002, Direction.FromVector(-east, -north).AzimuthDegrees, 0.0002);
    }
}
