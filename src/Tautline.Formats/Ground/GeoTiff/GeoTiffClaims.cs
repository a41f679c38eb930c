using Tautline.Formats.Coordinates;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.GeoTiff;

/// <summary>Reads from its keys what a GeoTIFF says of its system and units, and shows where it contradicts itself.</summary>
internal sealed class GeoTiffClaims(GeoKeys keys, GdalMetadata notes, ProblemList problems)
{
    private const int UserDefined = 32767;

    public GroundClaims Read()
    {
        var projected = keys.Number(GeoKey.ProjectedCrs);
        var (vertical, heightUnit) = Heights();
        return new()
        {
            SystemCode = IsDegrees ? null : Known(projected),
            SystemText = keys.Text(GeoKey.ProjectedCitation) ?? keys.Text(GeoKey.Citation) ?? keys.Text(GeoKey.GeodeticCitation),
            Degrees = IsDegrees,
            PlanUnit = Unit(keys.Number(GeoKey.ProjectedUnits), "plan"),
            HeightSystemCode = vertical,
            HeightSystemText = keys.Text(GeoKey.VerticalCitation),
            HeightUnit = heightUnit,
        };
    }

    private bool IsDegrees => keys.Number(GeoKey.ModelType) switch
    {
        2 => true,
        null => keys.Number(GeoKey.ProjectedCrs) is null && keys.Number(GeoKey.GeodeticCrs) is not null,
        _ => false,
    };

    private static int? Known(int? code) => code == UserDefined ? null : code;

    private (int? Code, LinearUnit? Unit) Heights()
    {
        var code = Known(keys.Number(GeoKey.VerticalCrs));
        var system = code is { } number ? HeightSystem.Find(number) : null;
        if (code is { } found) Tell(found, system);
        var claims = new[]
        {
            ("its unit of heights is", Unit(keys.Number(GeoKey.VerticalUnits), "heights")),
            (system is null ? "" : $"its heights are {system.Name}, in", system?.Unit),
            ("its values are in", UnitOfWord(notes.Unit)),
        }.Where(c => c.Item2 is not null).ToArray();
        if (claims.DistinctBy(c => c.Item2).Count() <= 1) return (code, claims.FirstOrDefault().Item2);
        problems.Add(GeoTiffFindings.HeightUnitsContradict(string.Join(", ", claims.Select(c => $"{c.Item1} {c.Item2!.Value.Name()}"))));
        return (code, null);
    }

    private void Tell(int code, HeightSystem? system)
    {
        if (system is null) problems.Add(GeoTiffFindings.HeightSystemNotKnown(code));
        else if (system.Kind == HeightKind.Depth) problems.Add(GeoTiffFindings.Depths(system.Name));
        else if (system.Kind == HeightKind.Ellipsoid) problems.Add(GeoTiffFindings.Ellipsoid(system.Name));
        else problems.Add(GeoTiffFindings.HeightSystem(system.Name));
    }

    // EPSG unit codes (OGC GeoTIFF 1.1, section 7.4).
    private LinearUnit? Unit(int? code, string what)
    {
        switch (code)
        {
            case null: return null;
            case 9001: return LinearUnit.Metre;
            case 9002: return LinearUnit.Foot;
            case 9003: return LinearUnit.SurveyFoot;
        }
        problems.Add(GeoTiffFindings.UnitNotKnown(what, code.Value));
        return null;
    }

    // "ft" alone does not say which foot.
    private static LinearUnit? UnitOfWord(string? word) => word?.ToUpperInvariant() switch
    {
        "M" or "METRE" or "METER" or "METRES" or "METERS" => LinearUnit.Metre,
        "US SURVEY FOOT" or "US-FT" or "FTUS" or "USFT" or "US FT" or "FOOT_US" => LinearUnit.SurveyFoot,
        _ => null,
    };
}
