using Tautline.Engine.Jobs;

namespace Tautline.Engine.Editing;

internal enum StandingKind { Gate, Obstacle, Pin, Work, Hang, Shot }

/// <summary>Something along a leg: a stretch from one level distance to another, or a place where both are one.</summary>
/// <param name="OfGround">True for what is there whether or not a fence is built: it does not move when the line is drawn differently.</param>
internal readonly record struct Standing(StandingKind Kind, string Id, LegId Leg, long FromNm, long ToNm, bool OfGround)
{
    public bool IsPlace => Kind is StandingKind.Pin or StandingKind.Hang or StandingKind.Shot;

    public static Standing Of(Gate g) => new(StandingKind.Gate, g.Id.Value, g.Leg, g.NearFace.Nanometres, g.NearFace.Nanometres + g.Opening.Nanometres, false);

    public static Standing Of(Obstacle o) => new(StandingKind.Obstacle, o.Id.Value, o.Leg, o.From.Nanometres, o.To.Nanometres, true);

    public static Standing Of(SiteWork w) => new(StandingKind.Work, w.Id.Value, w.Leg, w.From.Nanometres, w.To.Nanometres, true);

    public static Standing Of(Pin p) => new(StandingKind.Pin, p.Id.Value, p.Leg, p.At.Nanometres, p.At.Nanometres, p.Stands);

    public static Standing Of(HangNote h) => new(StandingKind.Hang, h.Id.Value, h.Leg, h.At.Nanometres, h.At.Nanometres, false);

    public static Standing Of(GroundShot s) => new(StandingKind.Shot, "", s.Leg, s.At.Nanometres, s.At.Nanometres, true);
}
