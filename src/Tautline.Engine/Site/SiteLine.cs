using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

public enum GateKind { Walk, Double }

/// <summary>A gate on its line: level stations, whole nanometres.</summary>
public sealed record SiteGate(
    int Index, Gate Gate, GateKind Kind, SiteLeg Leg, long NearFaceNm, long OpeningNm, int Leaves, Section Post, GatePostRow Row)
{
    public long FarFaceNm => NearFaceNm + OpeningNm;

    public long MiddleNm => NearFaceNm + OpeningNm / 2;
}

/// <summary>Level stations between which no hole may be dug.</summary>
public sealed record SiteZone(Obstacle Obstacle, long FromNm, long ToNm, long ClearanceNm);

/// <summary>A line post that stands already.</summary>
public sealed record SitePin(BuiltPost Built, long StationNm);

/// <summary>A line as the later stages see it: checked, measured, in order.</summary>
public sealed record SiteLine(
    int Index, Line Line, Chain Chain, IReadOnlyList<SiteGate> Gates, IReadOnlyList<SiteZone> Zones, IReadOnlyList<SitePin> Pins);
