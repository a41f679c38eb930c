using Tautline.Formats.Coordinates;

namespace Tautline.Formats.Tests;

/// <summary>
/// Numerical examples of J. P. Snyder, USGS Professional Paper 1395, and of EPSG Guidance Note 7-2, all on Clarke 1866.
/// Tolerances are the printed digits.
/// </summary>
public sealed class SnyderExampleTests
{
    // e2 = 0.00676866 as printed is 1/f = 294.97870 to its own digits; EPSG 7008 gives 294.9786982.
    private static readonly ReferenceEllipsoid Clarke1866 = new("Clarke 1866", 6378206.4, 294.9786982);

    [Fact]
    public void LambertConformalConic_Page296_PR01()
    {
        var projection = new GridProjection(Lambert(33, 45, 23, -96));

        var (x, y) = projection.ToGrid(new(35, -75));

        Assert.Equal(1894410.9, x, 0.06);
        Assert.Equal(1564649.5, y, 0.06);
        Assert.Equal(0.9970171, projection.PointScaleFactor(new(35, -75)), 6e-8);
    }

    [Fact]
    public void TransverseMercator_Page269_PR02()
    {
        var projection = new GridProjection(Lambert(0, 0, 0, -75) with { Method = ProjectionMethod.TransverseMercator, ScaleFactor = 0.9996 });

        var (x, y) = projection.ToGrid(new(40.5, -73.5));

        Assert.Equal(127106.5, x, 0.06);
        Assert.Equal(4484124.4, y, 0.06);
        Assert.Equal(0.9997989, projection.PointScaleFactor(new(40.5, -73.5)), 6e-8);
    }

    [Fact]
    public void TexasSouthCentral_GuidanceNoteMethod9802_PR03()
    {
        var system = Lambert(Angle.Of("28-23-00"), Angle.Of("30-17-00"), Angle.Of("27-50-00"), -99) with
        {
            Unit = LinearUnit.SurveyFoot,
            FalseEasting = 2000000,
        };

        var (east, north) = new GridProjection(system).ToGrid(new(28.5, -96));

        Assert.Equal(2963503.91, east * 3937 / 1200, 0.006);
        Assert.Equal(254759.80, north * 3937 / 1200, 0.006);
    }

    private static ProjectedSystem Lambert(double parallel1, double parallel2, double latitude, double meridian) => new()
    {
        EpsgCode = 0,
        Name = "example",
        Ellipsoid = Clarke1866,
        Unit = LinearUnit.Metre,
        Method = ProjectionMethod.LambertConformalConic2SP,
        LatitudeOfOrigin = latitude,
        CentralMeridian = meridian,
        StandardParallel1 = parallel1,
        StandardParallel2 = parallel2,
        FalseEasting = 0,
        FalseNorthing = 0,
        Extent = default,
        Source = "example",
    };
}
