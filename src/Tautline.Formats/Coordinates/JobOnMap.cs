using Tautline.Engine.Jobs;
using Tautline.Formats.Ground;

namespace Tautline.Formats.Coordinates;

/// <summary>How a job lies on the square map that tiles are cut from.</summary>
public static class JobOnMap
{
    /// <summary>Metres; the sphere of EPSG:3857.</summary>
    private const double Radius = 6378137;

    /// <summary>
    /// The six figures of map east = [0] e + [1] n + [2], map north = [3] e + [4] n + [5] for a job's metres e and n near a place of it, good to a few centimetres within a
    /// kilometre. East = a lambda, north = a ln tan(pi/4 + phi/2): IOGP guidance note 7-2, method 1024. No change of datum is made: up to two metres.
    /// </summary>
    /// <returns>Nothing where the job is tied to no map.</returns>
    public static double[]? Of(CoordinateFrame? frame, double nearEast, double nearNorth)
    {
        if (frame is null || GroundTarget.Of(frame) is not { System.EpsgCode: { } code } target) return null;
        if (CoordinateSystemCatalog.FindProjected(code) is not { } system) return null;
        var grid = new GridProjection(system);
        const double step = 500;
        var at = Map(grid, target, nearEast, nearNorth);
        var east = Map(grid, target, nearEast + step, nearNorth);
        var north = Map(grid, target, nearEast, nearNorth + step);
        var (a, b, d, e) = ((east.X - at.X) / step, (north.X - at.X) / step, (east.Y - at.Y) / step, (north.Y - at.Y) / step);
        double[] figures = [a, b, at.X - a * nearEast - b * nearNorth, d, e, at.Y - d * nearEast - e * nearNorth];
        return figures.All(double.IsFinite) ? figures : null;
    }

    /// <summary>The job's metres of a place on its own grid, given in the unit of that grid as world files are; nothing where the job is tied to no grid.</summary>
    public static (double East, double North, double Scale)? Local(CoordinateFrame? frame, double gridEast, double gridNorth)
    {
        if (frame is null) return (gridEast, gridNorth, 1);
        if (GroundTarget.Of(frame) is not { } target) return null;
        var unit = target.System.EpsgCode is { } code && CoordinateSystemCatalog.FindProjected(code) is { } system ? system.Unit.ToMetres(1) : 1;
        var (east, north) = target.Origin.ToLocal(gridEast * unit, gridNorth * unit);
        return (east, north, unit / target.Origin.GridPerLocal);
    }

    private static (double X, double Y) Map(GridProjection grid, GroundTarget target, double east, double north)
    {
        var (e, n) = target.Origin.ToGrid(east, north);
        if (grid.ToGeographic(e, n) is not { } place) return (double.NaN, double.NaN);
        return (Radius * double.DegreesToRadians(place.Longitude), Radius * Math.Log(Math.Tan(Math.PI / 4 + double.DegreesToRadians(place.Latitude) / 2)));
    }
}
