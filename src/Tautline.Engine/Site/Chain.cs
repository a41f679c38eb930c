using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>A leg with its measures; on a curve they run along the arc. Level and along distances are whole nanometres; stations are level.</summary>
public sealed record SiteLeg(
    int Index, Leg? Leg, Vertex From, Vertex To, Direction Heading, long LevelNm, long AlongNm, double Grade, long StartNm, long StartAlongNm,
    ResolvedSpec Spec, PlacedCurve? Curve = null)
{
    /// <summary>The way the line runs at the end of the leg; <see cref="Heading"/> is at its start.</summary>
    public Direction Ahead => Curve?.Ahead ?? Heading;

    public long EndNm => StartNm + LevelNm;

    public long EndAlongNm => StartAlongNm + AlongNm;
}

/// <summary>The legs of one line in order, and the ways between level station, distance along the ground, and the map.</summary>
/// <param name="ground">The ground where it was measured; else it runs on the grade of each leg.</param>
public sealed class Chain(IReadOnlyList<SiteLeg> legs, GroundLine? ground = null)
{
    public IReadOnlyList<SiteLeg> Legs { get; } = legs;

    /// <summary>Nothing where the line runs on the grades of its legs.</summary>
    public GroundLine? Ground { get; } = ground;

    public long LevelNm { get; } = legs.Count == 0 ? 0 : legs[^1].EndNm;

    public long AlongNm { get; } = ground?.AlongNm ?? (legs.Count == 0 ? 0 : legs[^1].EndAlongNm);

    /// <summary>Distance along the ground of a level station; exact at the ends of legs.</summary>
    public long Along(long stationNm)
    {
        if (Ground is not null) return Ground.Along(stationNm);
        var leg = LegAt(stationNm);
        return leg.StartAlongNm + Scale(stationNm - leg.StartNm, leg.AlongNm, leg.LevelNm);
    }

    /// <summary>Level station of a distance along the ground.</summary>
    public long Station(long alongNm)
    {
        if (Ground is not null) return Ground.Station(alongNm);
        var leg = Legs[Find(alongNm, static l => l.EndAlongNm)];
        return leg.StartNm + Scale(alongNm - leg.StartAlongNm, leg.LevelNm, leg.AlongNm);
    }

    /// <summary>The leg a station lies on; a vertex belongs to the leg before it.</summary>
    public SiteLeg LegAt(long stationNm) => Legs[Find(stationNm, static l => l.EndNm)];

    /// <summary>The leg that leaves a station; a vertex belongs to the leg after it.</summary>
    public SiteLeg LegFrom(long stationNm)
    {
        var at = Find(stationNm, static l => l.EndNm);
        return stationNm == Legs[at].EndNm && at + 1 < Legs.Count ? Legs[at + 1] : Legs[at];
    }

    /// <summary>Rise over run from one level station of a leg to a later one.</summary>
    public double GradeBetween(SiteLeg leg, long fromNm, long toNm)
        => Ground is null ? leg.Grade : toNm > fromNm ? (Ground.HeightAt(toNm) - Ground.HeightAt(fromNm)) / ((toNm - fromNm) * 1e-9) : 0;

    public (double East, double North) Point(long stationNm)
    {
        var leg = LegAt(stationNm);
        if (leg.Curve is { } curve) return OnCurve(curve, stationNm - leg.StartNm);
        var along = (stationNm - leg.StartNm) / (double)leg.LevelNm;
        return (Between(leg.From.East.Metres, leg.To.East.Metres, along), Between(leg.From.North.Metres, leg.To.North.Metres, along));
    }

    private static (double East, double North) OnCurve(PlacedCurve curve, long fromStartNm)
    {
        var at = curve.At(Length.Min(curve.PcStation + Length.FromNanometres(fromStartNm), curve.PtStation))!.Value.Point;
        return (at.East.Metres, at.North.Metres);
    }

    private static double Between(double a, double b, double part) => a + (b - a) * part;

    /// <summary>value * by / of, rounded to the nearest nanometre; the product would overflow a long past three metres.</summary>
    private static long Scale(long value, long by, long of) => (long)((2 * (Int128)value * by + of) / (2 * (Int128)of));

    /// <summary>Index of the first leg that ends at or past a distance, the last one where none does.</summary>
    private int Find(long distance, Func<SiteLeg, long> end)
    {
        var (low, high) = (0, Legs.Count - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (end(Legs[middle]) >= distance) high = middle;
            else low = middle + 1;
        }
        return low;
    }
}
