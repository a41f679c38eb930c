using Tautline.Formats.Coordinates;

namespace Tautline.Formats.GeoJson;

/// <summary>Where on the earth an outline falls when its numbers are read as a grid's.</summary>
internal sealed record GridPlacement(ProjectedSystem System, GeographicPoint? Middle)
{
    /// <summary>Degrees by which a site may lie outside a grid's area and still be surveyed on it.</summary>
    private const double NearBy = 1;

    public bool IsInside => Middle is { } middle && System.Extent.Holds(middle, 0);
    public bool IsNear => Middle is { } middle && System.Extent.Holds(middle, NearBy);

    /// <summary>"EPSG:2992 (NAD83 / Oregon GIC Lambert (ft), in international feet)".</summary>
    public string SystemName => $"EPSG:{System.EpsgCode} ({System.Name}, in {System.Unit.Name()})";

    /// <summary>"has its middle at 49.3589 N, 117.2483 W, outside the area of that grid".</summary>
    public string Where => Middle is { } middle
        ? $"has its middle at {middle}, {(IsInside ? "inside" : "outside")} the area of that grid"
        : "has no place on the earth";

    public static GridPlacement Of(ProjectedSystem system, PlanBounds bounds) => new(
        system,
        new GridProjection(system).ToGeographic(system.Unit.ToMetres(bounds.MiddleX), system.Unit.ToMetres(bounds.MiddleY)));

    /// <summary>A sentence on the same grid in another unit, when the outline falls inside its area with it; otherwise empty.</summary>
    public static string TwinThatFits(ProjectedSystem system, PlanBounds bounds)
    {
        var fits = CoordinateSystemCatalog.Projected.Values.Where(system.IsTwinOf).OrderBy(t => t.EpsgCode)
            .Select(t => Of(t, bounds)).FirstOrDefault(p => p.IsInside);
        return fits is null ? "" : $"Read as {fits.SystemName} it {fits.Where}.";
    }
}
