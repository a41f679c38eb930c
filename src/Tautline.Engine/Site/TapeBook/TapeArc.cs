using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>The arc a leg is walked on: its radius and the hand it bends to. Less than half a circle is one leg.</summary>
internal sealed record TapeArc(Length Radius, string Bends)
{
    /// <summary>The longest arc a job can hold: it keeps the shorter arc between two points.</summary>
    public const double HalfCircle = 180;

    private const double DegreesPerRadian = 180 / Math.PI;

    private double Hand => Bends == "right" ? 1 : -1;

    public LegCurve Curve => new() { Radius = Radius, Bends = Bends };

    public static TapeArc? Of(LegCurve? curve) => curve is null ? null : new TapeArc(curve.Radius, curve.Bends);

    /// <summary>The turn an arc of a level length makes, without a sign.</summary>
    public double Degrees(double levelMetres) => levelMetres / Radius.Metres * DegreesPerRadian;

    /// <summary>Level length of the arc over a chord; the chord itself where the arc cannot reach that far.</summary>
    public double LevelMetres(double chord) => DegreesOver(chord) is { } degrees ? Radius.Metres * degrees / DegreesPerRadian : chord;

    /// <summary>The turn of the shorter arc over a chord; null where no arc of this radius reaches that far.</summary>
    public double? DegreesOver(double chord)
        => chord / (2 * Radius.Metres) is var sine and < 1 ? 2 * Trig.AsinDegrees(sine) : null;

    /// <summary>Walks the arc from a point, the way faced there being its tangent.</summary>
    public (TapePoint To, TapeWay Way) Walk(TapePoint from, TapeWay way, double degrees)
    {
        var chord = 2 * Radius.Metres * Trig.SinCosDegrees(degrees / 2).Sin;
        return (from.Step(way.Turn(Hand * degrees / 2).Facing, chord), way.Turn(Hand * degrees));
    }

    /// <summary>The way the walk faces at the start of the arc between two points.</summary>
    public TapeWay WayFrom(TapePoint from, TapePoint to) => Turned(from, to, -Hand);

    /// <summary>The way the walk faces at its end.</summary>
    public TapeWay WayAt(TapePoint from, TapePoint to) => Turned(from, to, Hand);

    private TapeWay Turned(TapePoint from, TapePoint to, double hand)
        => new(from.WayTo(to), hand * (DegreesOver(from.To(to)) ?? HalfCircle) / 2);
}
