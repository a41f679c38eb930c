using CsCheck;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Quantities;

public sealed class LengthTests
{
    // Federal Register 2020-21902: the international foot is 0.3048 m exactly.
    [Theory]
    [InlineData(1, 0.3048)]
    [InlineData(10, 3.048)]
    [InlineData(5280, 1609.344)]
    [InlineData(0.5, 0.1524)]
    public void FeetAreInternationalFeet(double feet, double metres) => Assert.Equal(metres, Length.FromFeet(feet).Metres);

    // NIST SP 811: the US survey foot is 1200/3937 m.
    [Fact]
    public void TheSurveyFootIsTwoPartsInAMillionLonger()
    {
        Assert.Equal(0.3048006096012192, Length.FromSurveyFeet(1).Metres);
        Assert.Equal(1200, Length.FromSurveyFeet(3937).Metres);
        Assert.Equal(3937, Length.FromMetres(1200).SurveyFeet);
    }

    // Published (letter on the two feet, State Plane size): 2 000 000 ft shift by 4 ft, 6 000 000 ft by 12 ft.
    [Theory]
    [InlineData(2_000_000, 4)]
    [InlineData(6_000_000, 12)]
    public void TheWrongFootShiftsStatePlaneCoordinates(double feet, double shiftFeet) =>
        Assert.Equal(shiftFeet, (Length.FromSurveyFeet(feet) - Length.FromFeet(feet)).Feet, 0.001);

    [Fact]
    public void NanometreConstantsAreExact()
    {
        Assert.Equal(Length.NmPerInch, Length.FromInches(1).Nanometres);
        Assert.Equal(Length.NmPerFoot, Length.FromFeet(1).Nanometres);
        Assert.Equal(396_875, Length.FromInches(1 / 64.0).Nanometres);
        Assert.Equal(13_000_000, Length.FromMillimetres(13).Nanometres);
    }

    [Theory]
    [InlineData(0.4e-9, 0)]
    [InlineData(0.6e-9, 1)]
    [InlineData(-0.6e-9, -1)]
    [InlineData(2.5e-9, 3)]
    [InlineData(-2.5e-9, -3)]
    public void NanometresRoundToTheNearestHalvesAwayFromZero(double metres, long nanometres) =>
        Assert.Equal(nanometres, new Length(metres).Nanometres);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(9.3e9)]
    [InlineData(-9.3e9)]
    public void NanometresOutOfRangeSayWhichLength(double metres)
    {
        var error = Assert.Throws<OverflowException>(() => new Length(metres).Nanometres);
        Assert.Contains("has no whole number of nanometres: it must be finite and within 9.22e9 m of zero.", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NanometresSurviveTheWayThroughMetres() =>
        Gen.Long[-2_000_000_000_000_000, 2_000_000_000_000_000].Always(nm => Assert.Equal(nm, Length.FromNanometres(nm).Nanometres));

    [Fact]
    public void SumsOfWholeNanometresCloseExactly() =>
        Gen.Long[-1_000_000_000_000, 1_000_000_000_000].Array[1, 50].Always(pieces =>
        {
            var total = Length.Zero;
            foreach (var piece in pieces) total += Length.FromNanometres(piece);
            Assert.Equal(pieces.Sum(), total.Nanometres);
        });

    [Fact]
    public void OperatorsMeanWhatTheySay()
    {
        var six = Length.FromMetres(6);
        var two = Length.FromMetres(2);
        Assert.Equal(8, (six + two).Metres);
        Assert.Equal(4, (six - two).Metres);
        Assert.Equal(-6, (-six).Metres);
        Assert.Equal(3, (six / 2).Metres);
        Assert.Equal(3, six / two);
        Assert.Equal(new Area(12), six * two);
        Assert.Equal(new Volume(24), six * two * two);
        Assert.Equal(six, Length.Max(two, six));
        Assert.Equal(two, Length.Min(two, six));
        Assert.Equal(six, Length.Abs(-six));
        Assert.True(two < six && six > two && two <= six && six >= two);
        Assert.True(two.CompareTo(six) < 0);
    }
}
