using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>To which hand a curve bends, seen the way its stations run.</summary>
public enum CurveSide
{
    Left,
    Right,
}

/// <summary>A point of a curve and the way the line runs there.</summary>
public readonly record struct CurvePoint(SitePoint Point, Direction Tangent);

/// <summary>A stake on a curve, as it is set out from the PC.</summary>
/// <param name="DeflectionDegrees">From the tangent at the PC to the stake, to the curve's side; not signed.</param>
/// <param name="ChordFromPc">Straight from the PC.</param>
/// <param name="ChordFromLast">Straight from the stake before; zero at the PC.</param>
public sealed record CurveStake(Length Station, SitePoint Point, double DeflectionDegrees, Length ChordFromPc, Length ChordFromLast);

/// <summary>A curve on the site: it leaves the tangent at its PC (point of curve), bends to one side and ends at its PT (point of tangent).</summary>
/// <param name="Tangent">The way the line runs at the PC.</param>
/// <param name="PcStation">Station of the PC; stations run along the arc.</param>
public sealed record PlacedCurve(Curve Curve, SitePoint Pc, Direction Tangent, CurveSide Side, Length PcStation)
{
    private const int MostStakes = 10_000;

    /// <summary>Places between stations are not told apart below this, a nanometre.</summary>
    private static readonly Length slack = new(1e-9);

    public Length PtStation => PcStation + Curve.ArcLength;

    /// <summary>Station of the point where the tangents meet, measured along the tangent; null from half a circle on.</summary>
    public Length? PiStation => Curve.Tangent is { } tangent ? PcStation + tangent : null;

    public SitePoint Pt => Pc.Step(Turned(Curve.DeltaDegrees / 2), Curve.Chord);

    /// <summary>Where the tangents meet; null from half a circle on.</summary>
    public SitePoint? Pi => Curve.Tangent is { } tangent ? Pc.Step(Tangent, tangent) : null;

    public SitePoint Centre => Pc.Step(Turned(90), Curve.Radius);

    /// <summary>The way the line runs at the PT.</summary>
    public Direction Ahead => Turned(Curve.DeltaDegrees);

    /// <summary>The curve between two tangents.</summary>
    /// <param name="pi">Where they meet.</param>
    /// <param name="back">The way the line runs into the PI.</param>
    /// <param name="ahead">The way it runs out of it: turned by more than 0 and less than 180 degrees.</param>
    /// <param name="radius">Above zero.</param>
    /// <param name="piStation">Station of the PI along the tangent it is reached by.</param>
    public static Surveyed<PlacedCurve> BetweenTangents(SitePoint pi, Direction back, Direction ahead, Length radius, Length piStation)
    {
        var problems = new ProblemList();
        Survey.CheckPoint(pi, "pi", problems);
        Survey.CheckDirection(back, "back", problems);
        Survey.CheckDirection(ahead, "ahead", problems);
        CheckStation(piStation, problems);
        if (problems.HasErrors) return new(null, problems.Found);
        var turn = Direction.Between(back, ahead);
        if (Math.Abs(turn) is 0 or 180) return Survey.Fail<PlacedCurve>(ProblemCode.CurveTurn, "ahead", Math.Abs(turn));
        var curve = Curve.FromRadiusAndDelta(radius, Math.Abs(turn));
        return Placed(curve, c => new(c, pi.Step(back, -c.Tangent!.Value), back, SideOf(turn), piStation - c.Tangent.Value));
    }

    /// <summary>The curve from one point to another by its bulge, tan(delta/4): positive bends left, negative right.</summary>
    public static Surveyed<PlacedCurve> FromBulge(SitePoint from, SitePoint to, double bulge, Length pcStation)
    {
        var problems = new ProblemList();
        Survey.CheckPoint(from, "from", problems);
        Survey.CheckPoint(to, "to", problems);
        CheckStation(pcStation, problems);
        if (problems.HasErrors) return new(null, problems.Found);
        var curve = Curve.FromChordAndBulge(from.DistanceTo(to), Math.Abs(bulge));
        return Placed(curve, c => OnChord(c, from, Survey.Way(from, to)!.Value, SideOf(-bulge), pcStation));
    }

    /// <summary>The curve that begins at one point, passes a second and ends at a third.</summary>
    public static Surveyed<PlacedCurve> ThroughPoints(SitePoint from, SitePoint by, SitePoint to, Length pcStation)
    {
        var problems = new ProblemList();
        Survey.CheckPoint(from, "from", problems);
        Survey.CheckPoint(by, "by", problems);
        Survey.CheckPoint(to, "to", problems);
        CheckStation(pcStation, problems);
        if (problems.HasErrors) return new(null, problems.Found);
        if (Survey.Way(from, by) is not { } first || Survey.Way(by, to) is not { } second || Survey.Way(from, to) is not { } chord)
            return Survey.Fail<PlacedCurve>(ProblemCode.CurvePoints, "by");
        // The angle between the two halves is half the angle at the centre, wherever on the arc they meet.
        var half = Direction.Between(first, second);
        var curve = Curve.FromDeltaAndChord(2 * Math.Abs(half), from.DistanceTo(to));
        return curve.Value is { } found && found.MiddleOrdinate > slack
            ? new(OnChord(found, from, chord, SideOf(half), pcStation), [])
            : Survey.Fail<PlacedCurve>(ProblemCode.CurvePoints, "by");
    }

    /// <summary>The point at a station and the way the line runs there; null off the curve.</summary>
    public CurvePoint? At(Length station)
    {
        var arc = station - PcStation;
        // Far from zero a station is only known to its last bit.
        var near = Length.Max(slack, 1e-15 * Length.Abs(station));
        return arc >= -near && arc <= Curve.ArcLength + near ? PointAt(arc) : null;
    }

    /// <summary>The stakes to set the curve out: the PC, every whole multiple of the interval on the way, the PT.</summary>
    /// <param name="interval">Between stations, along the arc; at most 10,000 of them.</param>
    public Surveyed<IReadOnlyList<CurveStake>> Stakes(Length interval)
    {
        if (!(interval > slack) || !Survey.IsMeasure(interval.Metres) || Curve.ArcLength / interval > MostStakes)
            return Survey.Fail<IReadOnlyList<CurveStake>>(ProblemCode.CurveInterval, "interval", Shown(interval), Curve.ArcLength, MostStakes);
        var (step, end) = (interval.Nanometres, PtStation.Nanometres);
        var stakes = new List<CurveStake> { Stake(Length.Zero, PcStation) };
        for (var at = FirstMultiple(step); at < end; at += step)
            stakes.Add(Stake(Length.FromNanometres(at) - PcStation, stakes[^1].Station));
        stakes.Add(Stake(Curve.ArcLength, stakes[^1].Station));
        return new(stakes, []);
    }

    private CurveStake Stake(Length arc, Length last)
    {
        var station = PcStation + arc;
        return new CurveStake(
            station, PointAt(arc).Point, Curve.DeflectionDegrees(arc), Curve.ChordOf(arc), Curve.ChordOf(station - last));
    }

    private CurvePoint PointAt(Length arc)
    {
        var deflection = Curve.DeflectionDegrees(arc);
        return new CurvePoint(Pc.Step(Turned(deflection), Curve.ChordOf(arc)), Turned(2 * deflection));
    }

    /// <summary>The first whole multiple of a step past the PC; stations before zero are negative.</summary>
    private long FirstMultiple(long step)
    {
        var from = PcStation.Nanometres;
        var rest = from % step;
        return from - (rest < 0 ? rest + step : rest) + step;
    }

    private Direction Turned(double degrees) => Tangent.TurnRight(Side == CurveSide.Right ? degrees : -degrees);

    private static CurveSide SideOf(double turn) => turn > 0 ? CurveSide.Right : CurveSide.Left;

    private static Figure Shown(Length length) => Survey.IsMeasure(length.Metres) ? length : "no finite length";

    private static void CheckStation(Length station, ProblemList problems)
    {
        if (!Survey.IsMeasure(station.Metres)) problems.Add(ProblemCode.NotFinite, new Place("station"));
    }

    private static PlacedCurve OnChord(Curve curve, SitePoint from, Direction chord, CurveSide side, Length pcStation)
    {
        var half = curve.DeltaDegrees / 2;
        return new PlacedCurve(curve, from, chord.TurnRight(side == CurveSide.Right ? -half : half), side, pcStation);
    }

    private static Surveyed<PlacedCurve> Placed(Surveyed<Curve> curve, Func<Curve, PlacedCurve> place)
        => curve.Value is { } found ? new(place(found), []) : new(null, curve.Problems);
}
