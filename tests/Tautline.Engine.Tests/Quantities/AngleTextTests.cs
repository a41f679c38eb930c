using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Quantities;

public sealed class AngleTextTests
{
    [Theory]
    [InlineData("R 90", 90)]
    [InlineData("L 45°30'", -45.5)]
    [InlineData("right 37.5 deg", 37.5)]
    [InlineData("lt 12-30-36", -12.51)]
    [InlineData("R 0", 0)]
    [InlineData("l90", -90)]
    public void TurnsAreRightPositive(string text, double degrees)
    {
        var parsed = AngleText.Parse(text);
        Assert.Null(parsed.Problem);
        Assert.Equal(degrees, parsed.Value);
    }

    [Theory]
    [InlineData("90", "turn-side-missing", 0)]
    [InlineData("up 90", "turn-side-missing", 0)]
    [InlineData("R", "number-expected", 1)]
    [InlineData("R -90", "number-expected", 2)]
    [InlineData("R 360", "full-turn", 2)]
    [InlineData("R 45°75'", "sixty-or-more", 5)]
    [InlineData("R 90 L", "leftover", 5)]
    [InlineData("", "empty", 0)]
    public void WhatIsNoTurnIsRefused(string text, string code, int position)
    {
        var problem = AngleText.Parse(text).Problem;
        Assert.Equal(code, problem?.Code);
        Assert.Equal(position, problem?.Position);
    }

    [Theory]
    [InlineData(45.5, "R 45°30'00\"")]
    [InlineData(-12.51, "L 12°30'36\"")]
    [InlineData(-0.0001, "R 0°00'00\"")]
    [InlineData(29.99999, "R 30°00'00\"")]
    public void TurnsAreWrittenToTheSecond(double degrees, string text) => Assert.Equal(text, AngleText.Format(degrees));
}
