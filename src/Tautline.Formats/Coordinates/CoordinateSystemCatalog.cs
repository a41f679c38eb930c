using System.Collections.Immutable;
using System.Text.Json;

namespace Tautline.Formats.Coordinates;

/// <summary>The systems this program knows, read from coordinate_systems.json. UTM zones are made by rule.</summary>
internal static class CoordinateSystemCatalog
{
    private const string ResourceName = "coordinate_systems.json";
    private static readonly Lazy<Contents> Loaded = new(Load);

    public static ImmutableDictionary<int, ProjectedSystem> Projected => Loaded.Value.Projected;
    public static ImmutableDictionary<int, GeographicSystem> Geographic => Loaded.Value.Geographic;
    public static ImmutableDictionary<int, RefusedSystem> Refused => Loaded.Value.Refused;

    /// <summary>A grid by its number, UTM zones included; null when it is not known.</summary>
    public static ProjectedSystem? FindProjected(int code) => code switch
    {
        >= 32601 and <= 32660 => Utm(new UtmZone(code - 32600, South: false)),
        >= 32701 and <= 32760 => Utm(new UtmZone(code - 32700, South: true)),
        >= 26901 and <= 26923 => UtmNad83(code - 26900),
        _ => Projected.GetValueOrDefault(code),
    };

    /// <summary>A UTM zone on WGS 84.</summary>
    public static ProjectedSystem Utm(UtmZone zone) =>
        Utm(zone, "WGS 84", "WGS 84", (zone.South ? 32700 : 32600) + zone.Number);

    /// <summary>A northern UTM zone on NAD83, 1 to 23.</summary>
    public static ProjectedSystem UtmNad83(int number) =>
        Utm(new UtmZone(number, South: false), "NAD83", "GRS 1980", 26900 + number);

    private static ProjectedSystem Utm(UtmZone zone, string datum, string ellipsoid, int code) => Loaded.Value.Utm with
    {
        EpsgCode = code,
        Name = $"{datum} / UTM zone {zone}",
        Ellipsoid = Loaded.Value.Ellipsoids[ellipsoid],
        CentralMeridian = zone.CentralMeridian,
        FalseNorthing = zone.South ? Loaded.Value.UtmFalseNorthingSouth : 0,
        // Wider than six degrees: the zones of Norway and Svalbard are, and a site at a border uses one zone.
        Extent = new(zone.South ? UtmZone.SouthLimit : -1, zone.South ? 1 : UtmZone.NorthLimit, zone.CentralMeridian - 6, zone.CentralMeridian + 6),
    };

    private static Contents Load()
    {
        using var stream = typeof(CoordinateSystemCatalog).Assembly.GetManifestResourceStream(ResourceName)
            ?? throw new InvalidOperationException($"The resource {ResourceName} is missing from the build.");
        using var document = JsonDocument.Parse(stream);
        return Contents.Of(document.RootElement);
    }

    private sealed record Contents(
        ImmutableDictionary<string, ReferenceEllipsoid> Ellipsoids,
        ProjectedSystem Utm,
        double UtmFalseNorthingSouth,
        ImmutableDictionary<int, GeographicSystem> Geographic,
        ImmutableDictionary<int, RefusedSystem> Refused,
        ImmutableDictionary<int, ProjectedSystem> Projected)
    {
        public static Contents Of(JsonElement root)
        {
            var ellipsoids = Rows(root, "ellipsoids").Select(Ellipsoid).ToImmutableDictionary(e => e.Name);
            var utm = root.GetProperty("utm");
            return new(
                ellipsoids,
                UtmTemplate(utm, ellipsoids["WGS 84"]),
                Number(utm, "falseNorthingSouth"),
                Rows(root, "geographic").Select(GeographicRow).ToImmutableDictionary(s => s.EpsgCode),
                Rows(root, "refused").Select(RefusedRow).ToImmutableDictionary(s => s.EpsgCode),
                Rows(root, "projected").Select(r => ProjectedRow(r, ellipsoids)).ToImmutableDictionary(s => s.EpsgCode));
        }

        private static ReferenceEllipsoid Ellipsoid(JsonElement row) =>
            new(Text(row, "name"), Number(row, "semiMajorAxisMetres"), Number(row, "inverseFlattening"));

        private static GeographicSystem GeographicRow(JsonElement row) =>
            new(Code(row), Text(row, "name"), Text(row, "datum"), Text(row, "source"));

        private static RefusedSystem RefusedRow(JsonElement row) =>
            new(Code(row), Text(row, "name"), Text(row, "reason"), Text(row, "source"));

        private static ProjectedSystem UtmTemplate(JsonElement row, ReferenceEllipsoid ellipsoid) => new()
        {
            EpsgCode = 0,
            Name = "UTM",
            Ellipsoid = ellipsoid,
            Unit = LinearUnit.Metre,
            Method = ProjectionMethod.TransverseMercator,
            LatitudeOfOrigin = 0,
            CentralMeridian = 0,
            ScaleFactor = Number(row, "scaleFactor"),
            FalseEasting = Number(row, "falseEasting"),
            FalseNorthing = 0,
            Extent = default,
            Source = Text(row, "source"),
        };

        private static ProjectedSystem ProjectedRow(JsonElement row, ImmutableDictionary<string, ReferenceEllipsoid> ellipsoids)
        {
            var lambert = Text(row, "method") == "lambert-conformal-conic-2sp";
            return new()
            {
                EpsgCode = Code(row),
                Name = Text(row, "name"),
                Ellipsoid = ellipsoids[Text(row, "ellipsoid")],
                Unit = Unit(Text(row, "unit")),
                Method = lambert ? ProjectionMethod.LambertConformalConic2SP : ProjectionMethod.TransverseMercator,
                LatitudeOfOrigin = Angle(row, "latitudeOfOrigin"),
                CentralMeridian = Angle(row, "centralMeridian"),
                ScaleFactor = lambert ? 1 : Number(row, "scaleFactor"),
                StandardParallel1 = lambert ? Angle(row, "standardParallel1") : 0,
                StandardParallel2 = lambert ? Angle(row, "standardParallel2") : 0,
                FalseEasting = Number(row, "falseEasting"),
                FalseNorthing = Number(row, "falseNorthing"),
                Extent = new(Number(row, "south"), Number(row, "north"), Number(row, "west"), Number(row, "east")),
                Source = Text(row, "source"),
            };
        }

        private static LinearUnit Unit(string name) => name switch
        {
            "metre" => LinearUnit.Metre,
            "foot" => LinearUnit.Foot,
            "us-survey-foot" => LinearUnit.SurveyFoot,
            _ => throw new InvalidOperationException($"{ResourceName}: unit '{name}' is none of metre, foot, us-survey-foot."),
        };

        private static JsonElement.ArrayEnumerator Rows(JsonElement root, string name) => root.GetProperty(name).EnumerateArray();
        private static int Code(JsonElement row) => row.GetProperty("epsg").GetInt32();
        private static string Text(JsonElement row, string name) => row.GetProperty(name).GetString()!;
        private static double Number(JsonElement row, string name) => row.GetProperty(name).GetDouble();
        private static double Angle(JsonElement row, string name) => DegreesMinutesSeconds.Parse(Text(row, name));
    }
}
