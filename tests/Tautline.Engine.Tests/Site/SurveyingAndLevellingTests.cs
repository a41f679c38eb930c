using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Tests.Surveys;

/// <summary>
/// N. N. Basak, Surveying and Levelling, read through an open textbook-companion notebook that works the problems in full
/// precision and prints four decimals; tolerances are one to five of the last. Lengths are metres.
/// </summary>
public sealed class SurveyingAndLevellingTests
{
    /// <summary>SV-06. P. 302, problem 1. Bearings are decimal degrees, as in the companion. DA leads from where ABCD ends to its start: N 74.10 W.</summary>
    [Fact]
    public void MissingCourseIsTheMisclosureWalkedBack()
    {
        var missing = Walked(("N 30.4 E", 75.5), ("S 69.4 E", 180.5), ("S 30.5 W", 60.25));
        Assert.Equal(183.61, missing.Size.Metres, 0.001);
        Assert.Equal(360 - 74.1002, (-missing.Heading!.Value).AzimuthDegrees, 0.0002);
    }

    /// <summary>SV-07. P. 307, problem 4.</summary>
    [Fact]
    public void ObstructedLineByTraverse()
        => Assert.Equal(41.1145, Walked(("N 30.25 E", 75.5), ("S 40.5 E", 80.25), ("S 60.5 W", 75.0)).Size.Metres, 0.0005);

    /// <summary>SV-15. P. 379, problem 1: R 275, I 24, PI at 1320.5.</summary>
    [Fact]
    public void SimpleCurveOfAllElements()
    {
        var placed = AtPi(275, 24, 1320.5);
        Elements(placed, 58.4531, 114.3514, 115.1917, 1262.0469, 1377.2387);
        Assert.Equal(6.1437, placed.Curve.External!.Value.Metres, 0.0002);
        Assert.Equal(6.0094, placed.Curve.MiddleOrdinate.Metres, 0.0002);
    }

    /// <summary>SV-16. P. 379-380, problem 2: R 1719/3 = 573, I 30, PI at 2760. Ordinates at a distance from the middle of the chord.</summary>
    [Theory]
    [InlineData(30, 18.7386)]
    [InlineData(60, 16.3745)]
    [InlineData(90, 12.4123)]
    [InlineData(120, 6.8182)]
    public void OrdinatesFromTheLongChord(double fromMiddle, double ordinate)
    {
        var placed = AtPi(573, 30, 2760);
        Elements(placed, 153.5349, 296.6066, 300.0221, 2606.4651, 2906.4872);
        Assert.Equal(ordinate, placed.Curve.OrdinateAt(new Length(fromMiddle))!.Value.Metres, 0.0002);
        Assert.Equal(ordinate, placed.Curve.OrdinateAt(new Length(-fromMiddle))!.Value.Metres, 0.0002);
    }

    /// <summary>
    /// SV-20. P. 383, problem 5: compound curve, R1 400, I1 30, I2 60, common tangent 320; the PI at 900 is the first curve's own. The
    /// second curve has what the first leaves of the common tangent.
    /// </summary>
    [Fact]
    public void CompoundCurve()
    {
        var first = AtPi(400, 30, 900);
        var second = Field.Ok(Curve.FromDeltaAndTangent(60, new Length(320) - first.Curve.Tangent!.Value));
        Assert.Equal(368.6156, second.Radius.Metres, 0.0005);
        Assert.Equal(209.4395, first.Curve.ArcLength.Metres, 0.0005);
        Assert.Equal(386.0134, second.ArcLength.Metres, 0.0005);
        Assert.Equal(792.8203, first.PcStation.Metres, 0.0005);
        Assert.Equal(1388.2732, (first.PtStation + second.ArcLength).Metres, 0.0005);
    }

    /// <summary>
    /// SV-22. P. 386, problem 8: one radius, I1 30.5, I2 40.5, common tangent 175, PI at 1500. R = 175 / (tan 15.25 + tan 20.25). Here the
    /// PI is that of the outer tangents, by the sine rule 175 sin 40.5 / sin 71 = 120.202195 past the first curve's own.
    /// </summary>
    [Fact]
    public void CompoundCurveOfOneRadius()
    {
        var tangents = Field.Ok(Curve.FromRadiusAndDelta(new Length(1), 30.5)).Tangent!.Value.Metres
            + Field.Ok(Curve.FromRadiusAndDelta(new Length(1), 40.5)).Tangent!.Value.Metres;
        var radius = 175 / tangents;
        Assert.Equal(272.7765, radius, 0.0005);
        var first = AtPi(radius, 30.5, 1500 - 120.202195);
        var second = Field.Ok(Curve.FromRadiusAndDelta(new Length(radius), 40.5));
        Assert.Equal(145.2059, first.Curve.ArcLength.Metres, 0.0005);
        Assert.Equal(192.8144, second.ArcLength.Metres, 0.0005);
        Assert.Equal(1305.4304, first.PcStation.Metres, 0.0005);
        Assert.Equal(1643.4506, (first.PtStation + second.ArcLength).Metres, 0.0005);
    }

    /// <summary>
    /// SV-23. P. 389, problem 11: R 343.8, I 35, PI at 1580. Erratum: the deflection angles the companion prints use 1781.6 for 1718.9 and
    /// are left out. Sub-chords are pieces of station there. Its pegs stand at 1480, 1510 ... 1660,
    /// so that stations, for the staking, count from 10.
    /// </summary>
    [Fact]
    public void FiveDegreeCurveAndItsSubchords()
    {
        var placed = AtPi(343.8, 35, 1580);
        Elements(placed, 108.3997, null, 210.0155, 1471.6003, 1681.6157);
        Assert.Equal(16.6843, placed.Curve.External!.Value.Metres, 0.0002);
        Assert.Equal(15.9121, placed.Curve.MiddleOrdinate.Metres, 0.0002);
        var stakes = Field.Ok((placed with { PcStation = placed.PcStation - new Length(10) }).Stakes(new Length(30)));
        Assert.Equal(9, stakes.Count); // PC, seven pegs, PT
        Assert.Equal(8.3997, (stakes[1].Station - stakes[0].Station).Metres, 0.0002);
        Assert.Equal(21.6157, (stakes[8].Station - stakes[7].Station).Metres, 0.0002);
    }

    private static LinearMisclosure Walked(params (string Bearing, double Metres)[] legs) => Field.Loop(
        default, [.. legs.Select(l => new HeadingLeg(BearingText.Parse(l.Bearing).Value, new Length(l.Metres)))]).Misclosure;

    private static PlacedCurve AtPi(double radius, double delta, double piStation) => Field.Ok(PlacedCurve.BetweenTangents(
        default, Direction.DueNorth, Direction.FromAzimuthDegrees(delta), new Length(radius), new Length(piStation)));

    private static void Elements(PlacedCurve placed, double tangent, double? chord, double arc, double pc, double pt)
    {
        Assert.Equal(tangent, placed.Curve.Tangent!.Value.Metres, 0.0002);
        if (chord is { } c) Assert.Equal(c, placed.Curve.Chord.Metres, 0.0002);
        Assert.Equal(arc, placed.Curve.ArcLength.Metres, 0.0002);
        Assert.Equal(pc, placed.PcStation.Metres, 0.0002);
        Assert.Equal(pt, placed.PtStation.Metres, 0.0002);
    }
}
