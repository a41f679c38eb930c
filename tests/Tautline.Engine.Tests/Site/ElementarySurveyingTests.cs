using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Tests.Surveys;

/// <summary>Ghilani and Wolf, Elementary Surveying, 12th to 13th edition, ch. 10, the five-sided loop. All from memory.</summary>
public sealed class ElementarySurveyingTests
{
    /// <summary>
    /// SV-05. Printed to 0.001 ft: tolerance 0.0015, for the sum of five rounded latitudes 0.003, for the misclosure, printed 0.08
    /// but carried further, 0.002. Precision is printed as 1/30,000; unrounded it is about 1/30,800.
    /// </summary>
    [Fact]
    public void FiveSidedLoopFromAzimuths()
    {
        var loop = Field.Loop(
            default, Field.Leg("az 126-55-17", 647.25), Field.Leg("az 178-18-58", 203.03), Field.Leg("az 15-31-54", 720.35),
            Field.Leg("az 284-35-20", 610.24), Field.Leg("az 206-09-41", 285.13));
        Field.Near([517.451, 5.966, 192.889, -590.565, -125.715], loop.Courses.Select(c => c.Departure), 0.0015);
        Field.Near([-388.815, -202.942, 694.045, 153.708, -255.919], loop.Courses.Select(c => c.Latitude), 0.0015);
        Assert.Equal(0.026, loop.Misclosure.Departure.Feet, 0.0015);
        Assert.Equal(0.077, loop.Misclosure.Latitude.Feet, 0.003);
        Assert.Equal(0.08, loop.Misclosure.Size.Feet, 0.002);
        Assert.Equal(2466.00, loop.Perimeter.Feet, 1e-9);
        Assert.InRange(loop.Precision, 30_000, 31_500);
    }

    /// <summary>
    /// The field angles of the same loop, from memory; they sum to 540-00-11. What confirms them: freed of their misclosure
    /// they give the azimuths of SV-05. The book spreads 11 seconds over five angles in whole seconds, 2 to four and 3 to one, in
    /// place of 2.2: over four angles that comes to at most 0.8 + 3 * 0.2 = 1.4 seconds, the tolerance.
    /// </summary>
    [Fact]
    public void FieldAnglesSpreadByElevenSecondsGiveTheAzimuths()
    {
        AngleLeg[] legs = [At(647.25, 231, 23, 43), At(203.03, 17, 12, 59), At(720.35, 89, 3, 28), At(610.24, 101, 34, 24), At(285.13, 100, 45, 37)];
        var first = BearingText.Parse("az 126-55-17").Value;
        var loop = Field.Ok(TraverseReader.FromAngles(default, first, legs, AngleKind.OnLeft, new() { SpreadAngles = true }));
        Assert.Equal(11, loop.Angles!.MisclosureDegrees * 3600, 1e-6);
        Assert.Equal(-2.2, loop.Angles.CorrectionDegrees * 3600, 1e-6);
        double[] azimuths = [Degrees(126, 55, 17), Degrees(178, 18, 58), Degrees(15, 31, 54), Degrees(284, 35, 20), Degrees(206, 9, 41)];
        for (var i = 0; i < 5; i++) Assert.Equal(azimuths[i], loop.Courses[i].Heading.AzimuthDegrees, 1.4 / 3600);
    }

    private static AngleLeg At(double feet, int degrees, int minutes, int seconds) => new(Length.FromFeet(feet), Degrees(degrees, minutes, seconds));

    private static double Degrees(int degrees, int minutes, int seconds) => degrees + minutes / 60.0 + seconds / 3600.0;
}
