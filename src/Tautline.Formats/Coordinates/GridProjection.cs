using ProjNet.CoordinateSystems;
using ProjNet.CoordinateSystems.Transformations;

namespace Tautline.Formats.Coordinates;

/// <summary>
/// Degrees to grid metres and back, on the grid's own ellipsoid: no change of datum is made. WGS 84 and NAD83 differ by
/// one to two metres in place and by nothing that a fence's length would show.
/// </summary>
internal sealed class GridProjection
{
    private readonly MathTransform _forward;
    private readonly MathTransform _inverse;

    public GridProjection(ProjectedSystem system)
    {
        System = system;
        var grid = Build(system);
        var degrees = grid.GeographicCoordinateSystem;
        var factory = new CoordinateTransformationFactory();
        _forward = factory.CreateFromCoordinateSystems(degrees, grid).MathTransform;
        _inverse = factory.CreateFromCoordinateSystems(grid, degrees).MathTransform;
    }

    public ProjectedSystem System { get; }

    /// <summary>Grid east and north in metres; not finite where the projection has no answer.</summary>
    public (double East, double North) ToGrid(GeographicPoint point) =>
        Answer(_forward, point.Longitude, point.Latitude);

    /// <summary>Degrees of a place on the grid, given in metres; null where the projection has no answer.</summary>
    public GeographicPoint? ToGeographic(double east, double north)
    {
        var (longitude, latitude) = Answer(_inverse, east, north);
        return double.IsFinite(longitude) && Math.Abs(latitude) <= 90 ? new(latitude, UtmZone.Wrap(longitude)) : null;
    }

    // The package throws, of several kinds, at the poles and where its iteration does not settle.
    private static (double X, double Y) Answer(MathTransform transform, double x, double y)
    {
        try
        {
            return transform.Transform(x, y);
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            return (double.NaN, double.NaN);
        }
    }

    /// <summary>
    /// Grid length over ellipsoid length at a place. Both projections are conformal, so one direction serves: a short
    /// piece of meridian, measured on the grid and by the radius of curvature. Good to about 1e-9.
    /// </summary>
    public double PointScaleFactor(GeographicPoint point)
    {
        const double halfStep = 0.001; // degrees, about 110 m
        var (east1, north1) = ToGrid(point with { Latitude = point.Latitude - halfStep });
        var (east2, north2) = ToGrid(point with { Latitude = point.Latitude + halfStep });
        var meridian = System.Ellipsoid.MeridianRadius(point.Latitude) * double.DegreesToRadians(2 * halfStep);
        return Math.Sqrt((east2 - east1) * (east2 - east1) + (north2 - north1) * (north2 - north1)) / meridian;
    }

    private static ProjectedCoordinateSystem Build(ProjectedSystem system)
    {
        var factory = new CoordinateSystemFactory();
        var ellipsoid = factory.CreateFlattenedSphere(
            system.Ellipsoid.Name, system.Ellipsoid.SemiMajorAxis, system.Ellipsoid.InverseFlattening, Metre);
        var datum = factory.CreateHorizontalDatum(system.Ellipsoid.Name, DatumType.HD_Geocentric, ellipsoid, new Wgs84ConversionInfo());
        var degrees = factory.CreateGeographicCoordinateSystem(
            system.Name, AngularUnit.Degrees, datum, PrimeMeridian.Greenwich,
            new AxisInfo("Lon", AxisOrientationEnum.East), new AxisInfo("Lat", AxisOrientationEnum.North));
        var projection = factory.CreateProjection(system.Name, ClassName(system.Method), Parameters(system));
        return factory.CreateProjectedCoordinateSystem(
            system.Name, degrees, projection, Metre,
            new AxisInfo("East", AxisOrientationEnum.East), new AxisInfo("North", AxisOrientationEnum.North));
    }

    private static ProjNet.CoordinateSystems.LinearUnit Metre => ProjNet.CoordinateSystems.LinearUnit.Metre;

    private static string ClassName(ProjectionMethod method) =>
        method == ProjectionMethod.TransverseMercator ? "transverse_mercator" : "lambert_conformal_conic_2sp";

    private static List<ProjectionParameter> Parameters(ProjectedSystem system)
    {
        List<ProjectionParameter> all =
        [
            new("latitude_of_origin", system.LatitudeOfOrigin),
            new("central_meridian", system.CentralMeridian),
            new("false_easting", system.Unit.ToMetres(system.FalseEasting)),
            new("false_northing", system.Unit.ToMetres(system.FalseNorthing)),
        ];
        all.AddRange(system.Method == ProjectionMethod.TransverseMercator
            ? [new("scale_factor", system.ScaleFactor)]
            : [new("standard_parallel_1", system.StandardParallel1), new("standard_parallel_2", system.StandardParallel2)]);
        return all;
    }
}
