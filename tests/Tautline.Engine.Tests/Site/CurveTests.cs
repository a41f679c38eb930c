using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Tests.Surveys;

/// <summary>Curves worked by hand, and what is told of impossible ones.</summary>
public sealed class CurveTests
{
    private static Length M(double metres) => new(metres);

    /// <summary>R 100, delta 90: tangent R, chord R sqrt 2, arc R pi/2, external R (sqrt 2 - 1), ordinate R (1 - 1/sqrt 2).</summary>
    [Fact]
    public void QuarterCircle()
    {
        var curve = Field.Ok(Curve.FromRadiusAndDelta(M(100), 90));
        Assert.Equal(100, curve.Tangent!.Value.Metres, 1e-12);
        Assert.Equal(141.4213562373095, curve.Chord.Metres, 1e-12);
        Assert.Equal(157.07963267948966, curve.ArcLength.Metres, 1e-12);
        Assert.Equal(41.42135623730951, curve.External!.Value.Metres, 1e-12);
        Assert.Equal(29.28932188134524, curve.MiddleOrdinate.Metres, 1e-12);
        Assert.Equal(0.4142135623730951, curve.Bulge, 1e-15);
    }

    /// <summary>Chord 8, ordinate 2: R = (16 + 4) / 4 = 5, bulge 2 / 4, delta 4 atan 0.5 = 106.260205.</summary>
    [Fact]
    public void KerbBetweenStringAndRule()
    {
        foreach (var curve in new[] { Field.Ok(Curve.FromChordAndMiddleOrdinate(M(8), M(2))), Field.Ok(Curve.FromChordAndBulge(M(8), 0.5)) })
        {
            Assert.Equal(5, curve.Radius.Metres, 1e-12);
            Assert.Equal(106.260205, curve.DeltaDegrees, 1e-6);
            Assert.Equal(2, curve.OrdinateAt(M(0))!.Value.Metres, 1e-12);
            Assert.Equal(1, curve.OrdinateAt(M(3))!.Value.Metres, 1e-12); // 4 - 3
            Assert.Equal(0, curve.OrdinateAt(curve.Chord / 2)!.Value.Metres, 1e-12);
            Assert.Null(curve.OrdinateAt(M(4.001)));
        }
    }

    [Fact]
    public void HalfCircleHasNoPointOfIntersection()
    {
        var curve = Field.Ok(Curve.FromChordAndBulge(M(10), 1));
        Assert.Equal((5, 180, 5), (Math.Round(curve.Radius.Metres, 12), Math.Round(curve.DeltaDegrees, 12), Math.Round(curve.MiddleOrdinate.Metres, 12)));
        Assert.Null(curve.Tangent);
        Assert.Null(curve.External);
        var placed = new PlacedCurve(curve, default, Direction.DueNorth, CurveSide.Left, default);
        Assert.Null(placed.Pi);
        Assert.Null(placed.PiStation);
    }

    /// <summary>A quarter circle of 100 that leaves north, and its middle 100 (1 - 1/sqrt 2) aside and 100/sqrt 2 ahead.</summary>
    [Theory]
    [InlineData(CurveSide.Right, 1)]
    [InlineData(CurveSide.Left, -1)]
    public void PlacedQuarterCircle(CurveSide side, int sign)
    {
        var placed = Field.Ok(PlacedCurve.BetweenTangents(
            Field.Metres(0, 100), Direction.DueNorth, new Direction(sign, 0), M(100), M(1100)));
        Assert.Equal((side, 1000.0), (placed.Side, Math.Round(placed.PcStation.Metres, 9)));
        Near(0, 0, placed.Pc);
        Near(0, 100, placed.Pi!.Value);
        Near(sign * 100, 100, placed.Pt);
        Near(sign * 100, 0, placed.Centre);
        Assert.Equal(0, Direction.Between(new Direction(sign, 0), placed.Ahead), 1e-12);
        Assert.Equal(1157.07963267948966, placed.PtStation.Metres, 1e-9);
        var middle = placed.At(M(1000 + 78.53981633974483))!.Value;
        Near(sign * 29.28932188134524, 70.71067811865476, middle.Point);
        Assert.Equal(sign * 45, Direction.Between(Direction.DueNorth, middle.Tangent), 1e-12);
        Assert.Null(placed.At(M(999.9)));
        Assert.Null(placed.At(M(1157.1)));
        Assert.Null(placed.At(M(double.NaN)));
    }

    /// <summary>From 5 east of the origin by 5 south to 3 west 4 north, clockwise: 360 - 126.869898 degrees of the circle of 5.</summary>
    [Fact]
    public void ThreePointsOfMoreThanHalfACircle()
    {
        var placed = Field.Ok(PlacedCurve.ThroughPoints(Field.Metres(5, 0), Field.Metres(0, -5), Field.Metres(-3, 4), default));
        Assert.Equal(5, placed.Curve.Radius.Metres, 1e-12);
        Assert.Equal(233.130102, placed.Curve.DeltaDegrees, 1e-6);
        Assert.Equal(CurveSide.Right, placed.Side);
        Near(0, 0, placed.Centre);
        Near(-3, 4, placed.Pt);
        Assert.Equal(180, placed.Tangent.AzimuthDegrees, 1e-9);
        Assert.Null(placed.Curve.OrdinateAt(M(0)));
    }

    [Fact]
    public void PositiveBulgeBendsLeft()
    {
        var left = Field.Ok(PlacedCurve.FromBulge(default, Field.Metres(8, 0), 0.5, default));
        Assert.Equal(CurveSide.Left, left.Side);
        Near(4, 3, left.Centre); // eastward, the centre of a left bend lies north: R 5, ordinate 2
        Near(4, -3, Field.Ok(PlacedCurve.FromBulge(default, Field.Metres(8, 0), -0.5, default)).Centre);
    }

    /// <summary>Stations of 10 on a curve from 95 to 95 + 10 pi = 126.4159; a PC on a full station is not staked twice.</summary>
    [Fact]
    public void StakesStandOnFullStationsAndAtBothEnds()
    {
        var curve = Field.Ok(Curve.FromRadiusAndDelta(M(20), 90));
        double[] Staked(double pc) => [.. Field.Ok(new PlacedCurve(curve, default, Direction.DueNorth, CurveSide.Left, M(pc)).Stakes(M(10)))
            .Select(s => Math.Round(s.Station.Metres, 4))];
        Assert.Equal([95, 100, 110, 120, 126.4159], Staked(95));
        Assert.Equal([100, 110, 120, 130, 131.4159], Staked(100));
        Assert.Equal([-15, -10, 0, 10, 16.4159], Staked(-15));
    }

    private static IEnumerable<(ProblemCode Code, string Path, IReadOnlyList<Problem> Told)> Slips()
    {
        yield return (ProblemCode.CurvePart, "radius", Curve.FromRadiusAndDelta(M(0), 30).Problems);
        yield return (ProblemCode.CurvePart, "radius", Curve.FromRadiusAndDelta(M(double.NaN), 30).Problems);
        yield return (ProblemCode.CurvePart, "delta", Curve.FromRadiusAndDelta(M(1), 0).Problems);
        yield return (ProblemCode.CurvePart, "delta", Curve.FromRadiusAndDelta(M(1), 360).Problems);
        yield return (ProblemCode.CurvePart, "delta", Curve.FromRadiusAndDelta(M(1), double.NaN).Problems);
        yield return (ProblemCode.CurvePart, "bulge", Curve.FromChordAndBulge(M(1), 0).Problems);
        yield return (ProblemCode.CurveImpossible, "chord", Curve.FromRadiusAndChord(M(1), M(2.01)).Problems);
        yield return (ProblemCode.CurveImpossible, "arc length", Curve.FromRadiusAndArcLength(M(1), M(6.3)).Problems);
        yield return (ProblemCode.CurveImpossible, "middle ordinate", Curve.FromRadiusAndMiddleOrdinate(M(1), M(2)).Problems);
        yield return (ProblemCode.CurveImpossible, "tangent", Curve.FromDeltaAndTangent(180, M(1)).Problems);
        yield return (ProblemCode.CurveImpossible, "tangent", Curve.FromDeltaAndTangent(200, M(1)).Problems);
        yield return (ProblemCode.CurveImpossible, "external", Curve.FromDeltaAndExternal(200, M(1)).Problems);
        yield return (ProblemCode.CurveImpossible, "external", Curve.FromTangentAndExternal(M(1), M(1)).Problems);
        yield return (ProblemCode.CurveImpossible, "chord", Curve.FromTangentAndChord(M(1), M(2)).Problems);
        yield return (ProblemCode.CurvePart, "chord", PlacedCurve.FromBulge(default, default, 1, default).Problems);
        yield return (ProblemCode.CurvePart, "bulge", PlacedCurve.FromBulge(default, Field.Metres(1, 1), 0, default).Problems);
        yield return (ProblemCode.CurveTurn, "ahead", Between(Direction.DueNorth).Problems);
        yield return (ProblemCode.CurveTurn, "ahead", Between(Direction.DueSouth).Problems);
        yield return (ProblemCode.HeadingMissing, "ahead", Between(default).Problems);
        yield return (ProblemCode.CurvePoints, "by", Through(Field.Metres(1, 1), Field.Metres(2, 2)).Problems);
        yield return (ProblemCode.CurvePoints, "by", Through(Field.Metres(3, 3), Field.Metres(2, 2)).Problems);
        yield return (ProblemCode.CurvePoints, "by", Through(default, Field.Metres(2, 2)).Problems);
        yield return (ProblemCode.CurvePoints, "by", Through(Field.Metres(1, 1), default).Problems);
        yield return (ProblemCode.NotFinite, "to", Through(Field.Metres(1, 1), Field.Metres(double.NaN, 2)).Problems);
        yield return (ProblemCode.NotFinite, "station", PlacedCurve.FromBulge(default, Field.Metres(1, 1), 1, M(double.NaN)).Problems);
        yield return (ProblemCode.CurveInterval, "interval", Stakes(0));
        yield return (ProblemCode.CurveInterval, "interval", Stakes(double.PositiveInfinity));
        yield return (ProblemCode.CurveInterval, "interval", Stakes(0.001)); // 31,416 of them
    }

    public static TheoryData<int> SlipNumbers => [.. Enumerable.Range(0, Slips().Count())];

    [Theory]
    [MemberData(nameof(SlipNumbers))]
    public void SlipIsToldAtItsPart(int number)
    {
        var (code, path, told) = Slips().ElementAt(number);
        var problem = Assert.Single(told);
        Assert.Equal((code, path, Severity.Error), (problem.Code, problem.Place.Path, problem.Severity));
        Assert.DoesNotContain("{", ProblemText.Message(problem, UnitSystem.Metric), StringComparison.Ordinal);
        Assert.NotEmpty(ProblemText.Hint(problem, UnitSystem.Metric));
    }

    [Fact]
    public void ImpossibleCurveIsToldWithItsFigures() => Assert.Equal(
        "No curve has a delta of 200° and a tangent of 12' 6\".",
        ProblemText.Message(Curve.FromDeltaAndTangent(200, Length.FromFeet(12.5)).Problems[0], UnitSystem.UsCustomary));

    private static Surveyed<PlacedCurve> Between(Direction ahead) => PlacedCurve.BetweenTangents(default, Direction.DueNorth, ahead, M(10), default);

    private static Surveyed<PlacedCurve> Through(SitePoint by, SitePoint to) => PlacedCurve.ThroughPoints(default, by, to, default);

    private static IReadOnlyList<Problem> Stakes(double interval)
        => Field.Ok(PlacedCurve.FromBulge(default, Field.Metres(20, 0), 1, default)).Stakes(M(interval)).Problems;

    private static void Near(double east, double north, SitePoint found) => Assert.Equal(0, found.DistanceTo(Field.Metres(east, north)).Metres, 1e-9);
}
