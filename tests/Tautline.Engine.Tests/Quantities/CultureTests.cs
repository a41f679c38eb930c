using System.Globalization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Quantities;

public sealed class CultureTests
{
    // The project runs without culture data, so the marks that could do harm are set by hand.
    public static TheoryData<string, string, string> Cultures => new()
    {
        { ",", ".", "-" }, // de-DE, tr-TR
        { ",", "\u00a0", "\u2212" }, // sv-SE
        { "\u066b", "\u066c", "\u061c-" }, // ar-SA
    };

    [Theory, MemberData(nameof(Cultures))]
    public void CultureChangesNothing(string point, string group, string minus)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = Culture(point, group, minus);
            Assert.Equal("1" + point + "5", 1.5.ToString(CultureInfo.CurrentCulture));
            AssertSameAsEver();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static CultureInfo Culture(string point, string group, string minus)
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = point;
        culture.NumberFormat.NumberGroupSeparator = group;
        culture.NumberFormat.NegativeSign = minus;
        return culture;
    }

    private static void AssertSameAsEver()
    {
        Assert.Equal(40_398_192_000, LengthText.Parse("132.54'").Value.Nanometres);
        Assert.Equal(152_400_000, LengthText.Parse("6 INCHES").Value.Nanometres);
        Assert.Equal(0.3048006096012192, LengthText.Parse("1 FTUS").Value.Metres);
        Assert.Equal("comma", LengthText.Parse("132,54'").Problem?.Code);
        Assert.Equal("-132.54'", LengthText.DecimalFeet(Length.FromFeet(-132.54), 2));
        Assert.Equal("-5' 6 1/2\"", LengthText.FeetInches(Length.FromInches(-66.5), 16));
        Assert.Equal("4+32.50", StationText.Format(Length.FromFeet(432.5), UnitSystem.UsCustomary, 2));
        Assert.Equal("-3.5%", SlopeText.Percent(Slope.FromPercent(-3.5), 1));
        Assert.Equal("S 12°05'30\" W", BearingText.Format(Direction.FromAzimuthDegrees(192.09166666666667)));
        Assert.Equal(-37.5, AngleText.Parse("LEFT 37.5 deg").Value);
        Assert.Equal("-1.5 m", new Length(-1.5).ToString());
    }
}
