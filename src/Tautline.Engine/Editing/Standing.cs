using Tautline.Engine.Jobs;

namespace Tautline.Engine.Editing;

internal enum StandingKind { Gate, Obstacle, Pin, Work, Hang, Shot }

/// <summary>Something along a leg: a stretch from one level distance to another, or a place where both are one.</summary>
/// <param name="OfGround">True for what is there whether or not a fence is built: it does not move when the line is drawn differently.</param>
internal readonly record struct Standing(StandingKind Kind, string Id, LegId Leg, long FromNm, long ToNm, bool OfGround)
{
    public bool IsPlace => Kind is StandingKind.Pin or StandingKind.Hang or StandingKind.Shot;

    public static Standing Of(Gate g) => new(StandingKind.Gate, g.Id.Value, g.Leg, Whole.Nm(g.NearFace), Whole.Nm(g.NearFace) + Whole.Nm(g.Opening), false);

    public static Standing Of(Obstacle o) => new(StandingKind.Obstacle, o.Id.Value, o.Leg, Whole.Nm(o.From), Whole.Nm(o.To), true);

    public static Standing Of(SiteWork w) => new(StandingKind.Work, w.Id.Value, w.Leg, Whole.Nm(w.From), Whole.Nm(w.To), true);

    public static Standing Of(Pin p) => new(StandingKind.Pin, p.Id.Value, p.Leg, Whole.Nm(p.At), Whole.Nm(p.At), p.Stands);

    public static Standing Of(HangNote h) => new(StandingKind.Hang, h.Id.Value, h.Leg, Whole.Nm(h.At), Whole.Nm(h.At), false);

    public static Standing Of(GroundShot s) => new(StandingKind.Shot, "", s.Leg, Whole.Nm(s.At), Whole.Nm(s.At), true);
}
