using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Quantities;

/// <summary>Every text a person can see, word for word.</summary>
public sealed class QuantityMessagesTests
{
    [Theory]
    [InlineData("", "Nothing is written here.", "Write it like 132' 6 1/2\", 132.54', 84\" or 40.4 m.")]
    [InlineData("abc", "A number was expected, but \"abc\" was found.", "Write it like 132' 6 1/2\", 132.54', 84\" or 40.4 m.")]
    [InlineData("10 m x", "\"x\" is left over and has no meaning here.", "Take it out, or write it like 132' 6 1/2\", 132.54', 84\" or 40.4 m.")]
    [InlineData("132,54'", "The comma could be a decimal point or a thousands mark.", "Write a point before decimals, and nothing between thousands: 1234.5.")]
    [InlineData("1.0000000000000001 m", "A number with more than 15 digits cannot be kept exactly.", "Write fewer decimals.")]
    [InlineData("3/0\"", "3/0 divides by zero.", "Write a number above zero after the dividing mark.")]
    [InlineData("1.5/2\"", "The fraction 1.5/2 has a decimal point in it.", "Write whole numbers above and below the line, such as 3/8.")]
    [InlineData("6 5/4\"", "6 5/4 does not add up: a fraction follows only a whole number, and is below 1.", "Write it like 6 1/2 or 6.5.")]
    [InlineData("132.54", "132.54 has no unit.", "Write 132.54' for feet, 132.54\" for inches or 132.54 m for metres.")]
    [InlineData("10 yd", "\"yd\" is not a unit of length known here.", "Known units: ' or ft, \" or in, m, cm, mm, ftUS (survey foot).")]
    [InlineData("6-1/2\"", "6-1/2\" could be feet and inches, or inches with a fraction.", "Write 6 1/2\" for inches with a fraction, or 6' 0 1/2\" for feet and inches.")]
    [InlineData("132.5' 6\"", "Inches follow feet that already hold a fraction.", "Write whole feet and inches, such as 132' 6\", or decimal feet alone, such as 132.5'.")]
    [InlineData("5' 14\"", "14 inches after feet make another foot: they must be below 12.", "Write 6' 2\" if 5 feet plus 14 inches is meant.")]
    [InlineData("5' 6'", "After feet only inches can follow, but \"'\" was found.", "Write it like 132' 6 1/2\".")]
    [InlineData("99999999 m", "This is longer than half way round the earth.", "Check the number and its unit: the limit is 20000 km.")]
    public void Lengths(string text, string message, string hint) => AssertSays(LengthText.Parse(text).Problem, message, hint);

    [Theory]
    [InlineData("432.5", "432.5 is not a station: the plus is missing.", "Write it like 4+32.5 for 432.5 ft.")]
    [InlineData("4.5+32", "4.5 before the plus is not a whole number.", "Put decimals at the end only, such as 4+32.5.")]
    [InlineData("4+5", "5 after the plus does not have 2 digits before the point.", "Fill up with zeros, and write it like 4+32.5 for 432.5 ft.")]
    [InlineData("0+131.8", "131.8 after the plus is metric style, but this job is in US units.", "Write it like 4+32.5 for 432.5 ft.")]
    public void UsStations(string text, string message, string hint) =>
        AssertSays(StationText.Parse(text, UnitSystem.UsCustomary).Problem, message, hint);

    [Fact]
    public void MetricStations() => AssertSays(
        StationText.Parse("4+32.5", UnitSystem.Metric).Problem,
        "32.5 after the plus is US style, but this job is in metric units.", "Write it like 0+131.8 for 131.8 m.");

    [Theory]
    [InlineData("2:1", "2:1 is written both ways: rise to run, and run to rise.", "Write 1:2 for a rise of 1 in a run of 2, or a percentage for anything steeper than 1:1.")]
    [InlineData("12", "\"12\" does not say how the slope is measured.", "Write it like 12%, 1:8 (rise to run), 7 deg or 1 1/2\"/ft.")]
    [InlineData("1\"", "\"1\"\" does not say over what length the inches rise.", "Write inches per foot, such as 1 1/2\"/ft.")]
    [InlineData("95°", "A slope of 95° is plumb or beyond.", "A slope is below 90 degrees.")]
    public void Slopes(string text, string message, string hint) => AssertSays(SlopeText.Parse(text).Problem, message, hint);

    [Theory]
    [InlineData("N 45°60' E", "60 minutes are too many.", "There are 60 minutes to the next larger unit: write 0 to under 60.")]
    [InlineData("N 4.5°30' E", "4.5 already holds a fraction; minutes cannot follow.", "Put decimals in the last part only.")]
    [InlineData("E 45 N", "A bearing begins with N or S, but \"E\" was found.", "Write it like N 45°30' E, S12-05-30W, due N or az 123-27-02.")]
    [InlineData("N 45", "A bearing ends with E or W, but the text ends.", "Write it like N 45°30' E, S12-05-30W, due N or az 123-27-02.")]
    [InlineData("due up", "After \"due\" comes N, E, S or W, but \"up\" was found.", "Write it like due N.")]
    [InlineData("N 91 E", "91 is more than a quadrant.", "The angle of a bearing is 0 to 90 degrees; write az before an azimuth.")]
    [InlineData("45.5", "45.5 alone does not say whether it is an azimuth.", "Write az 45.5 for an azimuth, or a bearing such as N 45°30' E.")]
    [InlineData("400°", "An azimuth of 400° is a full circle or more.", "An azimuth is 0 to under 360 degrees, clockwise from north.")]
    public void Bearings(string text, string message, string hint) => AssertSays(BearingText.Parse(text).Problem, message, hint);

    [Theory]
    [InlineData("90", "A turn begins with R or L, but \"90\" was found.", "Write it like R 90, L 45°30' or right 37.5 deg.")]
    [InlineData("R 360°", "A turn of 360° is a full circle or more.", "A turn is below 360 degrees.")]
    public void Turns(string text, string message, string hint) => AssertSays(AngleText.Parse(text).Problem, message, hint);

    private static void AssertSays(ParseProblem? problem, string message, string hint)
    {
        Assert.NotNull(problem);
        Assert.Equal(message, problem.Message);
        Assert.Equal(hint, problem.Hint);
    }
}
