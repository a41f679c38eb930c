using Tautline.Formats.Coordinates;
using Tautline.Formats.Import;

namespace Tautline.Formats.GeoJson;

/// <summary>
/// Settles how the coordinates are to be read: as stated, otherwise as GeoJSON lays down, and never by a guess. What the
/// file itself claims is compared and told.
/// </summary>
internal sealed class FrameFinder(List<RawLine> lines, List<SystemClaim> claims, CoordinateSystemChoice? stated, ProblemList problems)
{
    private const int Wgs84 = 4326;
    private const double WidestFromMeridian = 6; // degrees; the projection's series is good to a millimetre within
    private readonly PlanBounds _bounds = PlanBounds.Of(lines);

    /// <summary>The frame, or null when it cannot be settled; the reason is then among the problems.</summary>
    public FileFrame? Find()
    {
        if (stated is null) return WithoutStatement();
        var name = stated.LocalUnit is { } unit ? $"a local system in {unit.Name()}" : $"EPSG:{stated.EpsgCode}";
        foreach (var claim in Claims(c => c.Text is not null && (c.Code is null || c.Code != stated.EpsgCode)))
            problems.Add(GeoJsonFindings.ClaimContradicts(claim, name, Verdict(claim)), null, claim.Offset);
        return stated.LocalUnit is { } local ? new($"local, in {local.Name()}", local, null, Degrees: false) : Numbered(stated.EpsgCode!.Value);
    }

    private FileFrame? WithoutStatement()
    {
        var foreign = Claims(c => c.Text is not null && !c.IsWgs84).ToList();
        foreach (var claim in foreign) problems.Add(GeoJsonFindings.SystemClaimed(claim, Verdict(claim)), null, claim.Offset);
        foreach (var claim in Claims(c => c.Text is null)) problems.Add(GeoJsonFindings.ClaimIsNull(claim), null, claim.Offset);
        return foreign.Count == 0 ? Numbered(Wgs84) : null;
    }

    private IEnumerable<SystemClaim> Claims(Func<SystemClaim, bool> which) => claims.Where(which).DistinctBy(c => (c.Member, c.Text));

    private string Verdict(SystemClaim claim)
    {
        if (claim.Code is not { } code || CoordinateSystemCatalog.FindProjected(code) is not { } grid) return "";
        var placement = GridPlacement.Of(grid, _bounds);
        var verdict = $"Read as {placement.SystemName} the outline {placement.Where}.";
        return placement.IsNear ? verdict : $"{verdict} {GridPlacement.TwinThatFits(grid, _bounds)}".TrimEnd();
    }

    private FileFrame? Numbered(int code)
    {
        if (CoordinateSystemCatalog.Geographic.TryGetValue(code, out var degrees)) return Degrees(degrees);
        if (CoordinateSystemCatalog.FindProjected(code) is { } grid) return Grid(grid);
        return Refuse(CoordinateSystemCatalog.Refused.TryGetValue(code, out var refused)
            ? GeoJsonFindings.RefusedSystem(refused)
            : GeoJsonFindings.UnknownSystem(code));
    }

    private FileFrame? Refuse(Finding finding)
    {
        problems.Add(finding);
        return null;
    }

    private FileFrame? Grid(ProjectedSystem grid)
    {
        var placement = GridPlacement.Of(grid, _bounds);
        if (!placement.IsNear)
            return Refuse(GeoJsonFindings.OutsideArea(placement.SystemName, placement.Where, GridPlacement.TwinThatFits(grid, _bounds)));
        if (!placement.IsInside) problems.Add(GeoJsonFindings.NearArea(placement.SystemName, placement.Middle!.Value));
        return new(placement.SystemName, grid.Unit, new GridProjection(grid), Degrees: false);
    }

    private FileFrame? Degrees(GeographicSystem system)
    {
        if (!AreDegrees()) return null;
        var bounds = AcrossDateLine(_bounds);
        if (bounds.Top > UtmZone.NorthLimit) return Refuse(GeoJsonFindings.OutsideUtm(bounds.Top));
        if (bounds.Bottom < UtmZone.SouthLimit) return Refuse(GeoJsonFindings.OutsideUtm(bounds.Bottom));
        var middle = new GeographicPoint(bounds.MiddleY, UtmZone.Wrap(bounds.MiddleX));
        var zone = UtmZone.Of(middle);
        if (system.Datum == "NAD83" && (zone.South || zone.Number > 23)) return Refuse(GeoJsonFindings.OutsideNad83(middle));
        var grid = system.Datum == "NAD83" ? CoordinateSystemCatalog.UtmNad83(zone.Number) : CoordinateSystemCatalog.Utm(zone);
        return OnOneZone(zone) ? new(system.Name, LinearUnit.Metre, new GridProjection(grid), Degrees: true) : null;
    }

    private bool AreDegrees()
    {
        foreach (var line in lines)
        {
            foreach (var p in line.Positions)
            {
                if (Math.Abs(p.X) <= 180 && Math.Abs(p.Y) <= 90) continue;
                problems.Add(WhyNotDegrees(p), line.Feature, p.Offset);
                return false;
            }
        }

        return true;
    }

    // One position looks swapped only if the whole outline could be.
    private Finding WhyNotDegrees(RawPosition p) =>
        _bounds is { Left: >= -90, Right: <= 90, Bottom: >= -180, Top: <= 180 }
            ? GeoJsonFindings.Swapped(p.X, p.Y)
            : GeoJsonFindings.NotDegrees(p.X, p.Y);

    private PlanBounds AcrossDateLine(PlanBounds bounds)
    {
        if (bounds.Right - bounds.Left <= 180) return bounds;
        problems.Add(GeoJsonFindings.AcrossDateLine);
        return lines.SelectMany(l => l.Positions)
            .Aggregate(PlanBounds.Nothing, (box, p) => box.With(p.X < 0 ? p.X + 360 : p.X, p.Y));
    }

    private bool OnOneZone(UtmZone zone)
    {
        var places = lines.SelectMany(l => l.Positions).Select(p => new GeographicPoint(p.Y, p.X));
        var widest = places.Max(p => Math.Abs(UtmZone.Wrap(p.Longitude - zone.CentralMeridian)));
        // Bergen lies six degrees from the middle of its widened zone; half a degree more is still an ordinary site there.
        if (widest > WidestFromMeridian + 0.5) return Refuse(GeoJsonFindings.TooWide(widest)) is not null;
        if (places.Any(p => UtmZone.Of(p) != zone)) problems.Add(GeoJsonFindings.AcrossZones(zone.ToString()));
        return true;
    }
}
