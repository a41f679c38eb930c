using System.Collections.Immutable;

namespace Tautline.Formats.Coordinates;

/// <summary>The systems a user may state.</summary>
public static class KnownSystems
{
    /// <summary>All of them, by number: longitude/latitude, UTM zones, state grids.</summary>
    public static ImmutableArray<KnownSystem> All { get; } =
    [
        .. CoordinateSystemCatalog.Geographic.Values.Select(g => new KnownSystem(g.EpsgCode, g.Name, null))
            .Concat(Grids().Select(p => new KnownSystem(p.EpsgCode, p.Name, p.Unit)))
            .OrderBy(s => s.EpsgCode),
    ];

    private static IEnumerable<ProjectedSystem> Grids() =>
        CoordinateSystemCatalog.Projected.Values
            .Concat(Enumerable.Range(1, 60).Select(n => CoordinateSystemCatalog.Utm(new UtmZone(n, South: false))))
            .Concat(Enumerable.Range(1, 60).Select(n => CoordinateSystemCatalog.Utm(new UtmZone(n, South: true))))
            .Concat(Enumerable.Range(1, 23).Select(CoordinateSystemCatalog.UtmNad83));
}
