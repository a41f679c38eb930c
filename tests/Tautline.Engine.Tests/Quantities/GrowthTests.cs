using CsCheck;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Quantities;

/// <summary>Against the platform's functions, which are right to a unit in the last place.</summary>
public sealed class GrowthTests
{
    [Fact]
    public void ExponentialIsThePlatforms()
        => Gen.Double[-700, 700].Always(x => Math.Abs(Growth.Exp(x) / Math.Exp(x) - 1) < 4e-15);

    [Fact]
    public void LogarithmIsThePlatforms()
        => Gen.Double[-300, 300].Always(x =>
        {
            var value = Math.Pow(10, x);
            return Math.Abs(Growth.Log(value) - Math.Log(value)) <= 4e-15 * Math.Max(1, Math.Abs(Math.Log(value)));
        });

    [Fact]
    public void LogarithmNearOneKeepsItsDigits()
        => Gen.Double[-1e-3, 1e-3].Always(x => Math.Abs(Growth.Log(1 + x) - Math.Log(1 + x)) <= 1e-15 * Math.Abs(x) + 1e-18);

    [Fact]
    public void PowerIsThePlatforms()
        => Gen.Select(Gen.Double[1e-3, 1e3], Gen.Double[-4, 4]).Always(p => Math.Abs(Growth.Power(p.Item1, p.Item2) / Math.Pow(p.Item1, p.Item2) - 1) < 1e-13);

    [Fact]
    public void EdgesAreTold()
    {
        Assert.Equal(1, Growth.Exp(0));
        Assert.Equal(0, Growth.Log(1));
        Assert.Equal(double.PositiveInfinity, Growth.Exp(710));
        Assert.Equal(0, Growth.Exp(-800));
        Assert.Equal(double.NegativeInfinity, Growth.Log(0));
        Assert.True(double.IsNaN(Growth.Log(-1)) && double.IsNaN(Growth.Exp(double.NaN)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Growth.Power(0, 2));
    }
}
