using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

public enum GateKind { Walk, Double, Cantilever, Rolling, Overhead }

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

/// <summary>Level stations between which posts are held in another way: a slab, a wall, rock; nothing for wet ground, which leaves it to the spec.</summary>
public sealed record SiteGround(Obstacle Obstacle, long FromNm, long ToNm, Layout.Support? Support);

/// <summary>A line post that a person has placed.</summary>
/// <param name="Path">Where the job says so.</param>
/// <param name="Stands">True where it stands and nothing of it is bought.</param>
/// <param name="Top">Height of the fabric's top here over the job's datum, where it is settled.</param>
public sealed record SitePin(string Id, string Path, long StationNm, bool Stands, Length? Top = null)
{
    /// <summary>True for a post of this job that was built.</summary>
    public bool Built { get; init; }
}

public enum WorkKind { Removal, Clearing, Swale, Culvert }

/// <summary>Work along a line between two level stations: old fence out, ground cleared, an opening closed.</summary>
/// <param name="Width">Cleared.</param>
/// <param name="Depth">Of the opening.</param>
/// <param name="Posts">Old posts where they were counted.</param>
/// <param name="Pulled">True where old posts come out with their footings.</param>
/// <param name="GroundNm">Length along the measured ground, where there is any.</param>
public sealed record SiteTask(
    WorkKind Kind, string Id, SiteLeg Leg, long FromNm, long ToNm, Length Width, Length Depth, int? Posts, bool Pulled, long? GroundNm = null);

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

    /// <summary>Slabs, walls and rock, in the order they were entered.</summary>
    public IReadOnlyList<SiteGround> Grounds { get; init; } = [];

    /// <summary>What is done along the line besides building it.</summary>
    public IReadOnlyList<SiteTask> Tasks { get; init; } = [];

    /// <summary>Level stations where the fit over the ground asks for a terminal.</summary>
    public IReadOnlyList<long> Breaks { get; init; } = [];

    /// <summary>True where this line repairs standing fence and the part is there already.</summary>
    public bool Keeps(string part) => Line.Keeps.Contains(part);

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
