using System.Globalization;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Import;

namespace Tautline.Formats.Sites.Shape;

/// <summary>A coordinate system a file defines in full, in well-known text. The definition is preferred over the number beside it; where the two contradict, it is asked.</summary>
internal static class WrittenSystem
{
    private const double SameMetres = 0.002; // false origins rounded to the foot's fourth digit

    /// <summary>What the text says.</summary>
    public static SiteClaims Claims(string text, ProblemList problems)
    {
        var root = WktNode.Parse(text);
        var grid = root is null || root.Keyword.StartsWith("PROJC", StringComparison.OrdinalIgnoreCase) ? root : root.Find("PROJCS") ?? root.Find("PROJCRS") ?? root;
        if (grid is null || !(Is(grid, "PROJCS") || Is(grid, "GEOGCS") || Is(grid, "LOCAL_CS")))
        {
            problems.Add(ShapeFindings.PrjNotRead);
            return new() { SystemText = Short(text) };
        }
        var code = Code(grid);
        if (Is(grid, "GEOGCS")) return Geographic(grid, code);
        var metres = grid.Find("UNIT") is { Numbers: [var size, ..] } unit ? size : double.NaN;
        var unitName = grid.Find("UNIT")?.Name ?? "";
        return new()
        {
            Unit = UnitOf(metres),
            UnitText = unitName.Length > 0 ? string.Create(CultureInfo.InvariantCulture, $"{unitName} ({metres:0.################} m)") : "",
            SystemCode = code,
            SystemText = grid.Name,
            Written = Is(grid, "PROJCS") ? System(grid, metres) : null,
        };
    }

    /// <summary>The number of a listed grid that is the same as the written one, unit and all; null where there is none.</summary>
    public static int? ListedAs(ProjectedSystem written) => CoordinateSystemCatalog.Projected.Values
        .Concat(Enumerable.Range(1, 60).SelectMany(n => new[] { CoordinateSystemCatalog.Utm(new(n, false)), CoordinateSystemCatalog.Utm(new(n, true)) }))
        .Concat(Enumerable.Range(1, 23).Select(CoordinateSystemCatalog.UtmNad83))
        .Where(g => IsSame(g, written)).OrderBy(g => g.EpsgCode).FirstOrDefault()?.EpsgCode;

    /// <summary>Whether two are one grid in one unit.</summary>
    public static bool IsSame(ProjectedSystem a, ProjectedSystem b) => a.Unit == b.Unit && IsSameProjection(a, b);

    /// <summary>Whether two are one grid, in whatever unit.</summary>
    public static bool IsSameProjection(ProjectedSystem a, ProjectedSystem b) =>
        a.Method == b.Method && a.Ellipsoid.Name == b.Ellipsoid.Name && Close(a.LatitudeOfOrigin, b.LatitudeOfOrigin) && Close(a.CentralMeridian, b.CentralMeridian)
        && (a.Method == ProjectionMethod.TransverseMercator ? Math.Abs(a.ScaleFactor - b.ScaleFactor) < 1e-8 : Parallels(a, b))
        && Math.Abs(a.Unit.ToMetres(a.FalseEasting) - b.Unit.ToMetres(b.FalseEasting)) < SameMetres
        && Math.Abs(a.Unit.ToMetres(a.FalseNorthing) - b.Unit.ToMetres(b.FalseNorthing)) < SameMetres;

    private static bool Parallels(ProjectedSystem a, ProjectedSystem b) =>
        (Close(a.StandardParallel1, b.StandardParallel1) && Close(a.StandardParallel2, b.StandardParallel2))
        || (Close(a.StandardParallel1, b.StandardParallel2) && Close(a.StandardParallel2, b.StandardParallel1));

    private static bool Close(double a, double b) => Math.Abs(a - b) < 1e-7;

    private static bool Is(WktNode node, string keyword) => node.Keyword.Equals(keyword, StringComparison.OrdinalIgnoreCase);

    private static SiteClaims Geographic(WktNode node, int? code) => new()
    {
        Degrees = true,
        SystemCode = code ?? (node.Name.Contains("1983", StringComparison.Ordinal) || node.Name.Contains("NAD83", StringComparison.OrdinalIgnoreCase) ? 4269
            : node.Name.Replace("_", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal).Contains("WGS", StringComparison.OrdinalIgnoreCase) ? 4326 : null),
        SystemText = node.Name,
    };

    private static int? Code(WktNode node) =>
        node.Find("AUTHORITY") is { Texts: [var who, var number, ..] } && who.Contains("EPSG", StringComparison.OrdinalIgnoreCase)
        && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var code) ? code : null;

    private static SiteUnit? UnitOf(double metres) => SiteUnit.All.FirstOrDefault(u => Math.Abs(u.Metres - metres) < 1e-9 * u.Metres + 1e-12)
        // The survey foot written with few digits is nearer to itself than to the other foot.
        ?? (Math.Abs(metres - SiteUnit.SurveyFoot.Metres) < 2e-7 ? SiteUnit.SurveyFoot : Math.Abs(metres - SiteUnit.Foot.Metres) < 2e-7 ? SiteUnit.Foot : null);

    private static ProjectedSystem? System(WktNode grid, double unitMetres)
    {
        var method = Method((grid.Find("PROJECTION")?.Name ?? "").Replace(" ", "_", StringComparison.Ordinal).ToUpperInvariant());
        if (method is null || UnitOf(unitMetres)?.Linear is not { } unit || Ellipsoid(grid) is not { } ellipsoid) return null;
        var values = new Dictionary<string, double>(StringComparer.OrdinalIgnoreCase);
        foreach (var parameter in grid.Nodes.Where(n => Is(n, "PARAMETER") && n.Numbers.Count > 0)) values[parameter.Name.Replace(' ', '_')] = parameter.Numbers[0];
        double Value(double otherwise, params string[] names) => names.Where(values.ContainsKey).Select(n => values[n]).DefaultIfEmpty(otherwise).First();
        var system = new ProjectedSystem
        {
            EpsgCode = 0,
            Name = grid.Name,
            Ellipsoid = ellipsoid,
            Unit = unit,
            Method = method.Value,
            LatitudeOfOrigin = Value(0, "latitude_of_origin", "latitude_of_center"),
            CentralMeridian = Value(0, "central_meridian", "longitude_of_center"),
            ScaleFactor = Value(1, "scale_factor"),
            StandardParallel1 = Value(0, "standard_parallel_1"),
            StandardParallel2 = Value(0, "standard_parallel_2"),
            FalseEasting = Value(0, "false_easting"),
            FalseNorthing = Value(0, "false_northing"),
            // A written system says no area: anywhere it reaches with sense.
            Extent = new(-80, 84, Value(0, "central_meridian", "longitude_of_center") - 9, Value(0, "central_meridian", "longitude_of_center") + 9),
            Source = "as the file defines it",
        };
        // With one parallel the Lambert grid is another projection, and a parallel of the wrong sign has no cone.
        return method == ProjectionMethod.LambertConformalConic2SP && !values.ContainsKey("standard_parallel_2") ? null : Sound(system) ? system : null;
    }

    private static bool Sound(ProjectedSystem s) =>
        Math.Abs(s.LatitudeOfOrigin) <= 90 && Math.Abs(s.CentralMeridian) <= 180 && s.ScaleFactor is > 0.9 and < 1.1 && Math.Abs(s.FalseEasting) < 1e8 && Math.Abs(s.FalseNorthing) < 1e8
        && (s.Method == ProjectionMethod.TransverseMercator || (Math.Abs(s.StandardParallel1) < 90 && Math.Abs(s.StandardParallel2) < 90 && Math.Abs(s.StandardParallel1 + s.StandardParallel2) > 1e-6));

    private static ProjectionMethod? Method(string name) => name switch
    {
        "TRANSVERSE_MERCATOR" or "GAUSS_KRUGER" => ProjectionMethod.TransverseMercator,
        "LAMBERT_CONFORMAL_CONIC" or "LAMBERT_CONFORMAL_CONIC_2SP" => ProjectionMethod.LambertConformalConic2SP,
        _ => null,
    };

    /// <summary>Only the two ellipsoids whose datums lie within metres of each other: on others a change of datum would be needed.</summary>
    private static ReferenceEllipsoid? Ellipsoid(WktNode grid)
    {
        if (grid.Find("GEOGCS")?.Find("DATUM")?.Find("SPHEROID") is not { Numbers: [var a, var f, ..] } || Math.Abs(a - 6378137) > 0.001) return null;
        return Math.Abs(f - 298.257222101) < 1e-7 ? new("GRS 1980", 6378137, 298.257222101) : Math.Abs(f - 298.257223563) < 1e-7 ? new("WGS 84", 6378137, 298.257223563) : null;
    }

    private static string Short(string text) => text.Length > 80 ? text[..80] + "..." : text;
}
