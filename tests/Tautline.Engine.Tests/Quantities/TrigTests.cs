using CsCheck;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Quantities;

/// <summary>
/// The tables were computed with mpmath 250-bit arithmetic and rounded once to double: an outside judge of both Trig
/// and the platform.
/// </summary>
public sealed class TrigTests
{
    public static TheoryData<double, double, double, double> SinCosTan => new()
    {
        { 0.1, 0.001745328365898309, 0.9999984769132877, 0.0017453310241888004 },
        { 1, 0.01745240643728351, 0.9998476951563913, 0.017455064928217585 },
        { 7.5, 0.1305261922200516, 0.9914448613738104, 0.13165249758739586 },
        { 15, 0.25881904510252074, 0.9659258262890683, 0.2679491924311227 },
        { 22.5, 0.3826834323650898, 0.9238795325112867, 0.41421356237309503 },
        { 29.999999999999996, 0.49999999999999994, 0.8660254037844387, 0.5773502691896257 },
        { 30, 0.5, 0.8660254037844386, 0.5773502691896257 },
        { 37.25, 0.6052939880428944, 0.796002002534622, 0.7604176699499787 },
        { 44.99, 0.7069833570023731, 0.7072301838310177, 0.9996509950589108 },
        { 45, 0.7071067811865476, 0.7071067811865476, 1.0 },
        { 45.01, 0.7072301838310177, 0.7069833570023731, 1.0003491267880633 },
        { 59.5, 0.8616291604415257, 0.5075383629607042, 1.697663119326089 },
        { 60, 0.8660254037844386, 0.5, 1.7320508075688772 },
        { 63.42, 0.8943104797679736, 0.44744694185699474, 1.9986961494393178 },
        { 75.390277777777, 0.9676663842148705, 0.2522335601392461, 3.836390303021803 },
        { 89.999, 0.9999999998476913, 1.7453292519140536e-05, 57295.77950699098 },
        { 90.001, 0.9999999998476913, -1.7453292519140536e-05, -57295.77950699098 },
        { 123.45055555, 0.8343618157089657, -0.5512171627288449, -1.513671692620002 },
        { 135.5, 0.7009092642998509, -0.7132504491541816, -0.9826972631156901 },
        { 179.9999, 1.7453292520513824e-06, -0.9999999999984769, -1.7453292520540408e-06 },
        { 181.25, -0.02181488503456112, -0.9997620270799091, 0.021820077622149475 },
        { 251.1, -0.9460853588275453, -0.3239174181981495, 2.9207609892988153 },
        { 270.0001, -0.9999999999984769, 1.74532925155533e-06, -572957.7952740656 },
        { 359.9, -0.0017453283658987056, 0.9999984769132877, -0.0017453310241891972 },
        { -12.0916666, -0.20947634674234902, 0.9778137144443614, -0.21422929914762248 },
        { -91.3, -0.9997426093226983, -0.02268733357278131, 44.066113195519826 },
        { 1e-09, 1.7453292519943298e-11, 1.0, 1.7453292519943298e-11 },
        { 720.3, 0.005235963831418787, 0.9999862922474267, 0.0052360356056993336 },
        { 123456.789, -0.394118363647059, 0.9190596908994347, -0.4288278199442697 },
    };

    public static TheoryData<double, double, double> Atan2 => new()
    {
        { 1, 2, 26.56505117707799 },
        { 1, 3, 18.43494882292201 },
        { 3, 4, 36.86989764584402 },
        { 4, 3, 53.13010235415598 },
        { 0.0625, 1, 3.576334374997351 },
        { 0.06, 1, 3.433630362450522 },
        { 0.07, 1, 4.004172940709387 },
        { 1, 8, 7.125016348901798 },
        { 3, 16, 10.619655276155134 },
        { 1e-12, 1, 5.729577951308232e-11 },
        { 1, 1e-12, 89.9999999999427 },
        { 0.9999, 1, 44.99713506778012 },
        { 1, 0.9999, 45.00286493221988 },
        { 5, -7, 144.46232220802563 },
        { -5, -7, -144.46232220802563 },
        { -2, 9, -12.528807709151511 },
        { -248.538, 121.28, -63.98884253439421 },
        { 1, -1e-09, 90.00000005729578 },
        { 7, 0.3, 87.54596832547293 },
        { 3e+300, 4e+300, 36.86989764584402 },
        { 3e-300, 4e-300, 36.86989764584402 },
    };

    public static TheoryData<double, double> Acos => new()
    {
        { 0.1, 84.26082952273322 },
        { 0.25, 75.52248781407008 },
        { 0.7, 45.5729959991943 },
        { 0.9999, 0.8102914370656549 },
        { 0.9999999999, 0.0008102847180697748 },
        { -0.3, 107.4576031237221 },
        { -0.99, 171.89038554400582 },
        { 1e-10, 89.99999999427042 },
    };

    public static TheoryData<double, double> Asin => new()
    {
        { 0.1, 5.739170477266787 },
        { 0.25, 14.477512185929925 },
        { 0.7, 44.4270040008057 },
        { 0.9999, 89.18970856293434 },
        { 0.9999999999, 89.99918971528193 },
        { -0.3, -17.45760312372209 },
        { -0.99, -81.89038554400582 },
        { 1e-10, 5.729577951308233e-09 },
    };

    public static TheoryData<double, double, double> Radians => new()
    {
        { 0.1, 0.09983341664682815, 0.9950041652780258 },
        { 0.5, 0.479425538604203, 0.8775825618903728 },
        { 0.785, 0.706825181105366, 0.7073882691671998 },
        { 0.8, 0.7173560908995228, 0.6967067093471654 },
        { 1.5, 0.9974949866040544, 0.0707372016677029 },
        { 1.5707963267948966, 1.0, 6.123233995736766e-17 },
        { 3.141592653589793, 1.2246467991473532e-16, -1.0 },
        { 2.5, 0.5984721441039565, -0.8011436155469337 },
        { -4, 0.7568024953079282, -0.6536436208636119 },
        { 10, -0.5440211108893698, -0.8390715290764524 },
        { 100.5, -0.030959966783271346, 0.9995206253283515 },
        { 12345.678, -0.7040813137533816, 0.7101193587160628 },
        { 999999, -0.9773520315382229, 0.21161995758460128 },
    };

    [Theory, MemberData(nameof(SinCosTan))]
    public void SineAndCosineAreWithinOneUlpAndTangentWithinTwo(double degrees, double sin, double cos, double tan)
    {
        var found = Trig.SinCosDegrees(degrees);
        AssertUlps(sin, found.Sin, 1);
        AssertUlps(cos, found.Cos, 1);
        AssertUlps(tan, Trig.TanDegrees(degrees), 2);
    }

    [Theory, MemberData(nameof(Atan2))]
    public void ArctangentIsWithinTwoUlps(double y, double x, double degrees) => AssertUlps(degrees, Trig.Atan2Degrees(y, x), 2);

    [Theory, MemberData(nameof(Acos))]
    public void ArccosineIsWithinTwoUlps(double cosine, double degrees) => AssertUlps(degrees, Trig.AcosDegrees(cosine), 2);

    [Theory, MemberData(nameof(Asin))]
    public void ArcsineIsWithinTwoUlps(double sine, double degrees) => AssertUlps(degrees, Trig.AsinDegrees(sine), 2);

    [Theory, MemberData(nameof(Radians))]
    public void SineAndCosineOfRadiansAreWithinOneUlp(double radians, double sin, double cos)
    {
        var found = Trig.SinCos(radians);
        AssertUlps(sin, found.Sin, 1);
        AssertUlps(cos, found.Cos, 1);
    }

    [Theory]
    [InlineData(0, 0.0, 1.0)]
    [InlineData(30, 0.5, null)]
    [InlineData(60, null, 0.5)]
    [InlineData(90, 1.0, 0.0)]
    [InlineData(120, null, -0.5)]
    [InlineData(150, 0.5, null)]
    [InlineData(180, 0.0, -1.0)]
    [InlineData(210, -0.5, null)]
    [InlineData(240, null, -0.5)]
    [InlineData(270, -1.0, 0.0)]
    [InlineData(300, null, 0.5)]
    [InlineData(330, -0.5, null)]
    [InlineData(-90, -1.0, 0.0)]
    [InlineData(-180, 0.0, -1.0)]
    [InlineData(36_000_090, 1.0, 0.0)]
    public void RoundAnglesAreExact(double degrees, double? sin, double? cos)
    {
        var found = Trig.SinCosDegrees(degrees);
        if (sin is not null) Assert.Equal(sin.Value, found.Sin);
        if (cos is not null) Assert.Equal(cos.Value, found.Cos);
    }

    [Theory]
    [InlineData(45, 1)]
    [InlineData(135, -1)]
    [InlineData(-45, -1)]
    [InlineData(225, 1)]
    [InlineData(180, 0)]
    public void TangentOfEighthTurnsIsExact(double degrees, double tangent) => Assert.Equal(tangent, Trig.TanDegrees(degrees));

    [Theory]
    [InlineData(0, 1, 0)]
    [InlineData(1, 1, 45)]
    [InlineData(1, 0, 90)]
    [InlineData(7, -7, 135)]
    [InlineData(0, -1, 180)]
    [InlineData(-7, -7, -135)]
    [InlineData(-3, 0, -90)]
    [InlineData(-0.1, 0.1, -45)]
    [InlineData(0, 0, 0)]
    public void ArctangentOfEighthTurnsIsExact(double y, double x, double degrees) => Assert.Equal(degrees, Trig.Atan2Degrees(y, x));

    [Fact]
    public void MinusZeroIsZero() => Assert.Equal(180, Trig.Atan2Degrees(-0.0, -1));

    [Theory]
    [InlineData(1, 0)]
    [InlineData(0.5, 60)]
    [InlineData(0, 90)]
    [InlineData(-0.5, 120)]
    [InlineData(-1, 180)]
    public void ArccosineOfRoundAnglesIsExact(double cosine, double degrees) => Assert.Equal(degrees, Trig.AcosDegrees(cosine));

    [Fact]
    public void OutsideTheDomainThereIsNoNumber()
    {
        Assert.True(double.IsNaN(Trig.AcosDegrees(1.0000001)));
        Assert.True(double.IsNaN(Trig.AsinDegrees(-1.0000001)));
        Assert.True(double.IsNaN(Trig.SinCosDegrees(double.PositiveInfinity).Sin));
        Assert.True(double.IsNaN(Trig.Atan2Degrees(double.NaN, 1)));
        Assert.True(double.IsNaN(Trig.AtanDegrees(double.NaN)));
        Assert.Equal(90, Trig.AtanDegrees(double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>(() => Trig.SinCos(1_000_001));
    }

    // 23 041 angles. Math.Sin is given a rounded radian, worth up to 4e-16 by itself.
    [Fact]
    public void DegreesAgreeWithThePlatformAllTheWayRound()
    {
        for (var i = -180 * 64; i <= 180 * 64; i++)
        {
            var degrees = i / 64.0 + 0.001;
            var (sin, cos) = Trig.SinCosDegrees(degrees);
            Assert.Equal(Math.Sin(degrees * Math.PI / 180), sin, 1e-15);
            Assert.Equal(Math.Cos(degrees * Math.PI / 180), cos, 1e-15);
        }
    }

    [Fact]
    public void RadiansAgreeWithThePlatformWithinTwoUlps() => Gen.Double[-1e5, 1e5].Always(
        radians =>
        {
            var (sin, cos) = Trig.SinCos(radians);
            AssertUlps(Math.Sin(radians), sin, 2);
            AssertUlps(Math.Cos(radians), cos, 2);
        },
        iter: 20_000);

    // The platform's radians times 180/pi have two roundings of their own.
    [Fact]
    public void ArctangentAgreesWithThePlatform() => Gen.Select(Gen.Double[-1000, 1000], Gen.Double[-1000, 1000]).Always(
        (y, x) => AssertUlps(Math.Atan2(y, x) * 180 / Math.PI, Trig.Atan2Degrees(y, x), 4),
        iter: 20_000);

    private static void AssertUlps(double expected, double actual, int ulps)
    {
        var allowed = ulps * (Math.BitIncrement(Math.Abs(expected)) - Math.Abs(expected));
        Assert.True(Math.Abs(expected - actual) <= allowed, $"expected {expected:R}, found {actual:R}, off by more than {ulps} ulp");
    }
}
