using Tautline.Formats.Coordinates;

namespace Tautline.Formats.Tests;

/// <summary>Zones by the published grid; grid values from PROJ 9.1.1 (cs2cs, EPSG 10.076), printed to a micrometre.</summary>
public sealed class UtmTests
{
    [Theory]
    [InlineData(44.9, 6.05, "32N")]
    [InlineData(44.9, 5.99, "31N")]
    [InlineData(-33.86, 151.2, "56S")]
    [InlineData(0, -180, "1N")]
    [InlineData(0, 180, "1N")]
    [InlineData(-17, 179.99, "60S")]
    [InlineData(-17, 180.01, "1S")]
    [InlineData(60.39, 5.32, "32N")] // Bergen, in the widened 32V
    [InlineData(60.39, 2.99, "31N")]
    [InlineData(55.99, 5.32, "31N")]
    [InlineData(64, 5.32, "31N")]
    [InlineData(78.2, 8.99, "31N")] // Svalbard: 32X, 34X and 36X do not exist
    [InlineData(78.2, 9, "33N")]
    [InlineData(78.2, 20.99, "33N")]
    [InlineData(78.2, 21, "35N")]
    [InlineData(78.2, 33, "37N")]
    [InlineData(78.2, 42, "38N")]
    [InlineData(71.9, 9, "32N")]
    public void ZoneOfAPlace(double latitude, double longitude, string zone) =>
        Assert.Equal(zone, UtmZone.Of(new(latitude, longitude)).ToString());

    [Theory]
    [InlineData(32632, 44.907783722, 6.05487864642, 267506.890104, 4976926.674615)]
    [InlineData(32756, -33.8568, 151.2153, 334900.569652, 6252288.752888)]
    [InlineData(32632, 60.3913, 5.3221, 297353.932729, 6700648.345232)]
    [InlineData(32633, 78.2232, 15.6267, 514278.715113, 8683355.469471)]
    [InlineData(32633, 78.2232, 20.9, 634210.139839, 8690050.153874)]
    [InlineData(32760, -16.8, 179.99, 818722.240810, 8140164.498104)]
    [InlineData(32760, -16.8, -179.99, 820855.802291, 8140132.179445)]
    public void GridValuesAgreeWithProj(int code, double latitude, double longitude, double east, double north)
    {
        var (e, n) = new GridProjection(CoordinateSystemCatalog.FindProjected(code)!).ToGrid(new(latitude, longitude));

        // The package's series stops at the eighth power of the eccentricity: within a millimetre inside a zone.
        Assert.Equal(east, e, 0.001);
        Assert.Equal(north, n, 0.001);
    }
}
