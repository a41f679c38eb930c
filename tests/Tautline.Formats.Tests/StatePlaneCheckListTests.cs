using Tautline.Formats.Coordinates;

namespace Tautline.Formats.Tests;

/// <summary>
/// State Plane NAD 83 check list of NOAA/NMD program L176, as kept in the PROJ library's nad83 test; zone constants of
/// NOAA Manual NOS NGS 5. The list prints US survey feet to 0.001; the tolerance is 0.0015 ft. Zones that the EPSG
/// list has in metres only, or with a rounded false easting (North Carolina), are taken by their metre code.
/// </summary>
public sealed class StatePlaneCheckListTests
{
    private const double PrintedDigit = 0.0015;

    [Theory]
    [InlineData("PR-10", 2239, "32-38-03.003", "-81-27-15.592", 875449.222, 958850.568)]
    [InlineData("PR-12", 26929, "34-48-58.708", "-86-36-58.670", 421151.975, 1571298.908)]
    [InlineData("PR-14", 3435, "41-46-11.855", "-88-07-06.790", 1042839.901, 1858837.259)]
    [InlineData("PR-16", 2260, "42-17-01.775", "-74-02-53.671", 614362.369, 1257287.611)]
    [InlineData("PR-17", 3734, "40-17-50.894", "-80-49-28.238", 2435851.621, 234309.717)]
    [InlineData("PR-19", 32119, "35-09-31.049", "-81-12-31.790", 1339869.379, 520003.003)]
    [InlineData("PR-20", 32119, "35-33-51.452", "-76-31-54.918", 2733923.842, 669426.932)]
    [InlineData("PR-22", 2231, "40-25-33.504", "-108-45-55.378", 2091110.958, 1414758.884)]
    [InlineData("PR-24", 2227, "37-07-41.470", "-119-46-32.733", 6772808.251, 1869963.783)]
    [InlineData("PR-26", 2275, "34-39-35.684", "-100-33-06.303", 941333.504, 3522390.511)]
    [InlineData("PR-28", 2285, "47-50-51.069", "-119-51-37.006", 1879336.368, 310659.110)]
    [InlineData("PR-30", 26849, "47-08-19.177", "-91-27-51.183", 3031741.394, 565338.600)]
    [InlineData("PR-31", 2246, "38-14-35.963", "-84-05-43.283", 1684830.325, 270726.733)]
    [InlineData("PR-32", 2263, "40-47-50.624", "-73-02-36.247", 1249103.533, 231235.845)]
    [InlineData("PR-34", 2271, "41-23-48.566", "-74-33-20.644", 2844678.533, 464365.610)]
    [InlineData("PR-35", 2238, "29-39-06.589", "-82-45-52.412", 2519743.236, 241248.726)]
    public void GridFeetAgreeToThePrintedDigits(string example, int code, string latitude, string longitude, double eastFeet, double northFeet)
    {
        var projection = new GridProjection(CoordinateSystemCatalog.FindProjected(code)!);
        var place = new GeographicPoint(Angle.Of(latitude), Angle.Of(longitude));

        var (east, north) = projection.ToGrid(place);

        Assert.True(Math.Abs(east * 3937 / 1200 - eastFeet) <= PrintedDigit, $"{example}: east {east * 3937 / 1200:F5}, printed {eastFeet}");
        Assert.True(Math.Abs(north * 3937 / 1200 - northFeet) <= PrintedDigit, $"{example}: north {north * 3937 / 1200:F5}, printed {northFeet}");

        var back = projection.ToGeographic(east, north)!.Value;
        Assert.Equal(place.Latitude, back.Latitude, 1e-9);
        Assert.Equal(place.Longitude, back.Longitude, 1e-9);
    }
}
