using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

public enum GateKind { Walk, Double, Cantilever }

/// <summary>A gate on its line: level stations, whole nanometres.</summary>
public sealed record SiteGate(
    int Index, Gate Gate, GateKind Kind, SiteLeg Leg, long NearFaceNm, long OpeningNm, int Leaves, Section Post, GatePostRow Row)
{
    /// <summary>True where a cantilever leaf runs back towards the end of its leg.</summary>
    public bool RunsBackToEnd => Gate.RunsBack == "end";

    public long FarFaceNm => NearFaceNm + OpeningNm;

    public long MiddleNm => NearFaceNm + OpeningNm / 2;
}

/// <summary>Level stations between which no hole may be dug.</summary>
public sealed record SiteZone(Obstacle Obstacle, long FromNm, long ToNm, long ClearanceNm)
{
    /// <summary>Whether a hole at a station reaches into the stretch or its clearance; at the very edge it does not.</summary>
    /// <param name="halfHoleNm">Half of the hole's diameter.</param>
    public bool Reaches(long stationNm, long halfHoleNm)
        => stationNm + halfHoleNm > FromNm - ClearanceNm && stationNm - halfHoleNm < ToNm + ClearanceNm;
}

/// <summary>Level stations between which posts are held in another way: a slab, or rock.</summary>
public sealed record SiteGround(Obstacle Obstacle, long FromNm, long ToNm, Layout.Support Support);

/// <summary>A line post that stands already.</summary>
public sealed record SitePin(BuiltPost Built, long StationNm);

/// <summary>A line as the later stages see it: checked, measured, in order.</summary>
public sealed record SiteLine(
    int Index, Line Line, Chain Chain, IReadOnlyList<SiteGate> Gates, IReadOnlyList<SiteZone> Zones, IReadOnlyList<SitePin> Pins)
{
    /// <summary>Past the ends of a closed line no hole is wider than this, and a stretch beyond its own clearance concerns nobody.</summary>
    private const long WidestHoleNm = 2_000_000_000;

    /// <summary>
    /// The no-dig stretches with the stations they are near to. On a closed line those about its start are there twice, for they
    /// are near to both of its ends: stations before the start are negative, those past the end go on.
    /// </summary>
    public IReadOnlyList<SiteZone> ZonesAround { get; } = Line.Closed ? [.. Zones.SelectMany(z => Around(z, Chain.LevelNm))] : Zones;

    /// <summary>Slabs and rock, in the order they were entered.</summary>
    public IReadOnlyList<SiteGround> Grounds { get; init; } = [];

    /// <summary>The standing post the line starts from, where it ties to a fence.</summary>
    public Section? TieAtStart { get; init; }

    /// <summary>The standing post the line ends at.</summary>
    public Section? TieAtFinish { get; init; }

    private static IEnumerable<SiteZone> Around(SiteZone zone, long levelNm)
    {
        yield return zone;
        if (zone.FromNm - zone.ClearanceNm < WidestHoleNm) yield return zone with { FromNm = zone.FromNm + levelNm, ToNm = zone.ToNm + levelNm };
        if (zone.ToNm + zone.ClearanceNm > levelNm - WidestHoleNm) yield return zone with { FromNm = zone.FromNm - levelNm, ToNm = zone.ToNm - levelNm };
    }
}
