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
public sealed record SiteZone(Obstacle Obstacle, long FromNm, long ToNm, long ClearanceNm);

/// <summary>Level stations between which posts are held in another way: a slab, or rock.</summary>
public sealed record SiteGround(Obstacle Obstacle, long FromNm, long ToNm, Layout.Support Support);

/// <summary>A line post that stands already.</summary>
public sealed record SitePin(BuiltPost Built, long StationNm);

/// <summary>A line as the later stages see it: checked, measured, in order.</summary>
public sealed record SiteLine(
    int Index, Line Line, Chain Chain, IReadOnlyList<SiteGate> Gates, IReadOnlyList<SiteZone> Zones, IReadOnlyList<SitePin> Pins)
{
    /// <summary>Slabs and rock, in the order they were entered.</summary>
    public IReadOnlyList<SiteGround> Grounds { get; init; } = [];

    /// <summary>The standing post the line starts from, where it ties to a fence.</summary>
    public Section? TieAtStart { get; init; }

    /// <summary>The standing post the line ends at.</summary>
    public Section? TieAtFinish { get; init; }
}
