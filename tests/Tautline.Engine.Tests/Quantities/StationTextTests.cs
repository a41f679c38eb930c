using CsCheck;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Quantities;

public sealed class StationTextTests
{
    // 432.5 ft x 304 800 000 nm and so on, worked by hand. 12+34.56 = 1234.56 ft is the reference's own example.
    [Theory]
    [InlineData("4+32.5", UnitSystem.UsCustomary, 131_826_000_000)]
    [InlineData("sta 4 + 32.5", UnitSystem.UsCustomary, 131_826_000_000)]
    [InlineData("12+34.56", UnitSystem.UsCustomary, 376_293_888_000)]
    [InlineData("0+00", UnitSystem.UsCustomary, 0)]
    [InlineData("-0+50", UnitSystem.UsCustomary, -15_240_000_000)]
    [InlineData("0+131.8", UnitSystem.Metric, 131_800_000_000)]
    [InlineData("2+005", UnitSystem.Metric, 2_005_000_000_000)]
    public void StationsAreReadExactly(string text, UnitSystem units, long nanometres)
    {
        var parsed = StationText.Parse(text, units);
        Assert.Null(parsed.Problem);
        Assert.Equal(Length.FromNanometres(nanometres), parsed.Value);
    }

    [Theory]
    [InlineData("0+131.8", UnitSystem.UsCustomary, "other-station", 2)]
    [InlineData("4+32.5", UnitSystem.Metric, "other-station", 2)]
    [InlineData("4+5", UnitSystem.UsCustomary, "plus-digits", 2)]
    [InlineData("4+.5", UnitSystem.UsCustomary, "plus-digits", 2)]
    [InlineData("4+1000", UnitSystem.Metric, "plus-digits", 2)]
    [InlineData("432.5", UnitSystem.UsCustomary, "plus-missing", 5)]
    [InlineData("4.5+32", UnitSystem.UsCustomary, "station-whole", 0)]
    [InlineData("4+", UnitSystem.UsCustomary, "number-expected", 2)]
    [InlineData("4+32,5", UnitSystem.UsCustomary, "comma", 4)]
    [InlineData("4+32.5 ft", UnitSystem.UsCustomary, "leftover", 7)]
    [InlineData("", UnitSystem.Metric, "empty", 0)]
    public void WhatIsNoStationIsRefused(string text, UnitSystem units, string code, int position)
    {
        var problem = StationText.Parse(text, units).Problem;
        Assert.Equal(code, problem?.Code);
        Assert.Equal(position, problem?.Position);
    }

    [Theory]
    [InlineData(432.5, 1, "4+32.5")]
    [InlineData(499.99, 1, "5+00.0")]
    [InlineData(499.99, 2, "4+99.99")]
    [InlineData(99.5, 0, "1+00")]
    [InlineData(5, 2, "0+05.00")]
    [InlineData(-50, 1, "-0+50.0")]
    [InlineData(-0.01, 1, "0+00.0")]
    [InlineData(123456.78, 2, "1234+56.78")]
    public void UsStationsCarry(double feet, int decimals, string text) =>
        Assert.Equal(text, StationText.Format(Length.FromFeet(feet), UnitSystem.UsCustomary, decimals));

    [Theory]
    [InlineData(131.8, 1, "0+131.8")]
    [InlineData(999.96, 1, "1+000.0")]
    [InlineData(2005, 0, "2+005")]
    public void MetricStationsCarry(double metres, int decimals, string text) =>
        Assert.Equal(text, StationText.Format(Length.FromMetres(metres), UnitSystem.Metric, decimals));

    [Fact]
    public void HundredthsOfAFootReadBackExactly() => Gen.Long[-50_000_000, 50_000_000].Always(hundredths =>
    {
        var station = Length.FromNanometres(hundredths * 3_048_000);
        Assert.Equal(station, StationText.Parse(StationText.Format(station, UnitSystem.UsCustomary, 2), UnitSystem.UsCustomary).Value);
    });
}
