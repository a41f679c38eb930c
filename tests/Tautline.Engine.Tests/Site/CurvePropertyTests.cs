using CsCheck;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Tests.Surveys;

/// <summary>What holds for every curve. Radii of 1 to 1000 m.</summary>
public sealed class CurvePropertyTests
{
    private static readonly Gen<double> genRadius = Gen.Double[1, 1000];

    private static readonly Gen<PlacedCurve> genPlaced =
        Gen.Select(genRadius, Gen.Double[0.5, 355], Gen.Double[0, 360], Gen.Double[-500, 500], Gen.Double[-500, 5000], Gen.Bool).Select(
            (r, delta, azimuth, at, station, left) => new PlacedCurve(
                Of(r, delta), Field.Metres(at, -at), Direction.FromAzimuthDegrees(azimuth), left ? CurveSide.Left : CurveSide.Right, new Length(station)));

    /// <summary>Every pair of parts finds the curve again that the parts were taken from.</summary>
    [Fact]
    public void CurveComesBackFromAnyTwoOfItsParts() => Gen.Select(genRadius, Gen.Double[1, 170]).Always((r, delta) =>
    {
        var c = Of(r, delta);
        var (tangent, external) = (c.Tangent!.Value, c.External!.Value);
        Surveyed<Curve>[] again =
        [
            Curve.FromRadiusAndTangent(c.Radius, tangent), Curve.FromRadiusAndChord(c.Radius, c.Chord), Curve.FromRadiusAndArcLength(c.Radius, c.ArcLength),
            Curve.FromRadiusAndMiddleOrdinate(c.Radius, c.MiddleOrdinate), Curve.FromRadiusAndExternal(c.Radius, external),
            Curve.FromDeltaAndTangent(delta, tangent), Curve.FromDeltaAndChord(delta, c.Chord), Curve.FromDeltaAndArcLength(delta, c.ArcLength),
            Curve.FromDeltaAndMiddleOrdinate(delta, c.MiddleOrdinate), Curve.FromDeltaAndExternal(delta, external),
            Curve.FromChordAndMiddleOrdinate(c.Chord, c.MiddleOrdinate), Curve.FromTangentAndExternal(tangent, external),
            Curve.FromTangentAndChord(tangent, c.Chord), Curve.FromChordAndBulge(c.Chord, c.Bulge),
        ];
        foreach (var found in again.Select(Field.Ok))
        {
            Assert.Equal(1, found.Radius / c.Radius, 1e-9);
            Assert.Equal(delta, found.DeltaDegrees, 1e-8);
        }
    });

    [Fact]
    public void ChordIsNeverLongerThanItsArc() => Gen.Select(genRadius, Gen.Double[1e-9, 359], Gen.Double[0, 1]).Always((r, delta, part) =>
    {
        var curve = Of(r, delta);
        Assert.True(curve.Chord <= curve.ArcLength);
        Assert.True(curve.ChordOf(curve.ArcLength * part) <= curve.ArcLength * part);
        Assert.True(curve.ChordOf(curve.ArcLength * part) >= Length.Zero);
    });

    [Fact]
    public void ArcOfAChordHasThatChord() => Gen.Select(genRadius, Gen.Double[0.001, 0.99]).Always((r, part) =>
    {
        var (curve, chord) = (Of(r, 90), new Length(2 * r * part));
        Assert.Equal(chord.Metres, curve.ChordOf(curve.ArcOf(chord)!.Value).Metres, 1e-9 * r);
        Assert.Null(curve.ArcOf(new Length(2.001 * r)));
    });

    [Fact]
    public void StationsSumToTheArcAndChordsDoNotExceedThem() => Gen.Select(genPlaced, Gen.Double[1, 50]).Always((placed, interval) =>
    {
        var stakes = Field.Ok(placed.Stakes(new Length(interval)));
        var steps = stakes.Zip(stakes.Skip(1)).Select(p => (p.Second.Station - p.First.Station).Metres).ToArray();
        Assert.All(steps, s => Assert.InRange(s, 0, interval + 2e-9));
        Assert.Equal(placed.Curve.ArcLength.Metres, steps.Sum(), 1e-8);
        Assert.True(stakes.Sum(s => s.ChordFromLast.Metres) <= placed.Curve.ArcLength.Metres + 1e-8);
        foreach (var (first, second) in stakes.Zip(stakes.Skip(1)))
            Assert.Equal(second.ChordFromLast.Metres, first.Point.DistanceTo(second.Point).Metres, 1e-7);
        Assert.All(stakes, s => Assert.Equal(s.ChordFromPc.Metres, placed.Pc.DistanceTo(s.Point).Metres, 1e-7));
    });

    [Fact]
    public void EveryPointLiesOnTheCircleAndItsTangentIsSquareToTheRadius() => Gen.Select(genPlaced, Gen.Double[0, 1]).Always((placed, part) =>
    {
        var radius = placed.Curve.Radius.Metres;
        var at = placed.At(placed.PcStation + placed.Curve.ArcLength * part)!.Value;
        Assert.Equal(radius, at.Point.DistanceTo(placed.Centre).Metres, 1e-9 * (radius + 1000));
        var (east, north) = ((at.Point.East - placed.Centre.East).Metres, (at.Point.North - placed.Centre.North).Metres);
        Assert.Equal(0, (east * at.Tangent.East + north * at.Tangent.North) / radius, 1e-8);
    });

    [Fact]
    public void BulgeAndThreePointsFindThePlacedCurveAgain() => genPlaced.Always(placed =>
    {
        var bulge = placed.Side == CurveSide.Left ? placed.Curve.Bulge : -placed.Curve.Bulge;
        var middle = placed.At(placed.PcStation + placed.Curve.ArcLength * 0.4)!.Value.Point;
        PlacedCurve[] again =
        [
            Field.Ok(PlacedCurve.FromBulge(placed.Pc, placed.Pt, bulge, placed.PcStation)),
            Field.Ok(PlacedCurve.ThroughPoints(placed.Pc, middle, placed.Pt, placed.PcStation)),
        ];
        foreach (var found in again)
        {
            Assert.Equal(placed.Side, found.Side);
            Assert.Equal(placed.Curve.DeltaDegrees, found.Curve.DeltaDegrees, 1e-6);
            Assert.Equal(1, found.Curve.Radius / placed.Curve.Radius, 1e-6);
            Assert.Equal(0, found.Pt.DistanceTo(placed.Pt).Metres, 1e-6);
        }
    });

    [Fact]
    public void CurveBetweenItsTangentsIsTheSameCurve() => genPlaced.Where(p => p.Curve.DeltaDegrees < 175).Always(placed =>
    {
        var found = Field.Ok(PlacedCurve.BetweenTangents(placed.Pi!.Value, placed.Tangent, placed.Ahead, placed.Curve.Radius, placed.PiStation!.Value));
        Assert.Equal(placed.Side, found.Side);
        Assert.Equal(0, found.Pc.DistanceTo(placed.Pc).Metres, 1e-7);
        Assert.Equal(0, found.Pt.DistanceTo(placed.Pt).Metres, 1e-7);
        Assert.Equal(placed.PcStation.Metres, found.PcStation.Metres, 1e-7);
    });

    /// <summary>A mirror swaps the sides and nothing else.</summary>
    [Fact]
    public void MirroredCurveHasMirroredPoints() => Gen.Select(genRadius, Gen.Double[1, 300], Gen.Double[0, 1]).Always((r, delta, part) =>
    {
        var right = new PlacedCurve(Of(r, delta), default, Direction.DueNorth, CurveSide.Right, default);
        var left = right with { Side = CurveSide.Left };
        var (a, b) = (right.At(right.PtStation * part)!.Value.Point, left.At(left.PtStation * part)!.Value.Point);
        Assert.Equal((-a.East.Metres + 0.0, a.North.Metres), (b.East.Metres + 0.0, b.North.Metres));
    });

    private static Curve Of(double radius, double delta) => Field.Ok(Curve.FromRadiusAndDelta(new Length(radius), delta));
}
