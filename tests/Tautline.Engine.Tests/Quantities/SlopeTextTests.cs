using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Quantities;

public sealed class SlopeTextTests
{
    [Theory]
    [InlineData("12%", 0.12)]
    [InlineData("-3.5%", -0.035)]
    [InlineData("+2 %", 0.02)]
    [InlineData("1:8", 0.125)]
    [InlineData("-1:2", -0.5)]
    [InlineData("1:1", 1)]
    [InlineData("0:1", 0)]
    [InlineData("45 deg", 1)]
    [InlineData("-45°", -1)]
    [InlineData("level", 0)]
    [InlineData("FLAT", 0)]
    [InlineData("1 1/2\"/ft", 0.125)]
    [InlineData("1-1/2\"/ft", 0.125)]
    [InlineData("3/4 in per foot", 0.0625)]
    [InlineData("-3\"/ft", -0.25)]
    public void SlopesAreRead(string text, double ratio)
    {
        var parsed = SlopeText.Parse(text);
        Assert.Null(parsed.Problem);
        Assert.Equal(ratio, parsed.Value.Ratio);
    }

    // tan 7 degrees = 0.1227845609 (any table of tangents).
    [Theory]
    [InlineData("7 deg")]
    [InlineData("7°")]
    [InlineData("7°00'00\"")]
    public void DegreesAreTangents(string text) => Assert.Equal(0.1227845609, SlopeText.Parse(text).Value.Ratio, 1e-10);

    [Theory]
    [InlineData("2:1", "steep-ratio", 0)]
    [InlineData("1:0", "zero-denominator", 2)]
    [InlineData("0:0", "zero-denominator", 2)]
    [InlineData("12", "slope-unit-missing", 0)]
    [InlineData("7-30", "slope-unit-missing", 0)]
    [InlineData("1/8", "slope-unit-missing", 0)]
    [InlineData("90 deg", "plumb-slope", 0)]
    [InlineData("-90°", "plumb-slope", 1)]
    [InlineData("1 1/2\"", "per-foot-missing", 6)]
    [InlineData("1\"/m", "per-foot-missing", 3)]
    [InlineData("12% up", "leftover", 4)]
    [InlineData("1,5%", "comma", 1)]
    [InlineData("%", "number-expected", 0)]
    [InlineData("", "empty", 0)]
    public void UnclearSlopesAreRefused(string text, string code, int position)
    {
        var problem = SlopeText.Parse(text).Problem;
        Assert.Equal(code, problem?.Code);
        Assert.Equal(position, problem?.Position);
    }

    [Fact]
    public void PercentHasFixedDecimals()
    {
        Assert.Equal("12.0%", SlopeText.Percent(Slope.FromRatio(0.12), 1));
        Assert.Equal("-3.5%", SlopeText.Percent(Slope.FromPercent(-3.5), 1));
        Assert.Equal("0%", SlopeText.Percent(Slope.FromRatio(-0.001), 0));
    }
}
