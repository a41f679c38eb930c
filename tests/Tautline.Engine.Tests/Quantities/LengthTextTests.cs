using CsCheck;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Quantities;

public sealed class LengthTextTests
{
    // Worked by hand from 304 800 000 nm to the foot and 25 400 000 nm to the inch.
    [Theory]
    [InlineData("132' 6 1/2\"", 40_398_700_000)]
    [InlineData("132-6.5", 40_398_700_000)]
    [InlineData("132-6 1/2", 40_398_700_000)]
    [InlineData("132'-6-1/2\"", 40_398_700_000)]
    [InlineData("132 ft 6 1/2 in", 40_398_700_000)]
    [InlineData("132’ 6½”", 40_398_700_000)]
    [InlineData("132′ 6 1⁄2″", 40_398_700_000)]
    [InlineData("132.54'", 40_398_192_000)]
    [InlineData("6'", 1_828_800_000)]
    [InlineData("84\"", 2_133_600_000)]
    [InlineData("84''", 2_133_600_000)]
    [InlineData("6'-6\"", 1_981_200_000)]
    [InlineData("5'6", 1_676_400_000)]
    [InlineData("5' 11.875\"", 1_825_625_000)]
    [InlineData("3/4\"", 19_050_000)]
    [InlineData("1/64\"", 396_875)]
    [InlineData("5/4 in", 31_750_000)]
    [InlineData(".5'", 152_400_000)]
    [InlineData("40.4 m", 40_400_000_000)]
    [InlineData("13 mm", 13_000_000)]
    [InlineData("13MM", 13_000_000)]
    [InlineData("40 cm", 400_000_000)]
    [InlineData("10 ft", 3_048_000_000)]
    [InlineData("6 in", 152_400_000)]
    [InlineData("6 INCHES", 152_400_000)]
    [InlineData("132 ft 6 in", 40_386_000_000)]
    [InlineData("3937 ftUS", 1_200_000_000_000)]
    [InlineData("-5' 6\"", -1_676_400_000)]
    [InlineData("−5' 6\"", -1_676_400_000)]
    [InlineData("+10'", 3_048_000_000)]
    [InlineData("  0 m ", 0)]
    public void TradeFormsAreReadExactly(string text, long nanometres)
    {
        var parsed = LengthText.Parse(text);
        Assert.Null(parsed.Problem);
        Assert.True(parsed.Ok);
        Assert.Equal(Length.FromNanometres(nanometres), parsed.Value);
    }

    // NIST SP 811: 1200/3937 m. 1200 survey feet are 365.76073152146304... m by long division.
    [Fact]
    public void SurveyFeetAreReadToTheNearestDouble()
    {
        Assert.Equal(0.3048006096012192, LengthText.Parse("1 ftUS").Value.Metres);
        Assert.Equal(365.760731521463, LengthText.Parse("1200 ftUS").Value.Metres, 1e-12);
    }

    [Theory]
    [InlineData("132.54", LengthUnit.Foot, 40_398_192_000)]
    [InlineData("3/4", LengthUnit.Inch, 19_050_000)]
    [InlineData("2 1/4", LengthUnit.Inch, 57_150_000)]
    [InlineData("40.4", LengthUnit.Metre, 40_400_000_000)]
    [InlineData("132-6", LengthUnit.Metre, 40_386_000_000)]
    [InlineData("13 mm", LengthUnit.Foot, 13_000_000)]
    public void ABareNumberTakesTheStatedUnitAndAWrittenUnitWins(string text, LengthUnit unit, long nanometres) =>
        Assert.Equal(Length.FromNanometres(nanometres), LengthText.Parse(text, unit).Value);

    [Theory]
    [InlineData("", "empty", 0)]
    [InlineData("   ", "empty", 0)]
    [InlineData("132.54", "unit-missing", 6)]
    [InlineData("5' 14\"", "too-many-inches", 3)]
    [InlineData("5' 12\"", "too-many-inches", 3)]
    [InlineData("132.5' 6\"", "inches-after-decimal-feet", 7)]
    [InlineData("132,54 m", "comma", 3)]
    [InlineData("1,200'", "comma", 1)]
    [InlineData("3/0\"", "zero-denominator", 2)]
    [InlineData("6 1/0\"", "zero-denominator", 4)]
    [InlineData("1.5/2\"", "fraction-parts", 0)]
    [InlineData("6 5/4\"", "mixed-fraction", 2)]
    [InlineData("6.5 1/2\"", "mixed-fraction", 4)]
    [InlineData("10 yd", "unknown-unit", 3)]
    [InlineData("10 m x", "leftover", 5)]
    [InlineData("6\" 5'", "leftover", 3)]
    [InlineData("1.2.3 m", "leftover", 3)]
    [InlineData("5 6", "leftover", 2)]
    [InlineData("6'-", "leftover", 2)]
    [InlineData("abc", "number-expected", 0)]
    [InlineData("-", "number-expected", 1)]
    [InlineData("6-1/2\"", "dash-before-fraction", 1)]
    [InlineData("132-6.5'", "inches-expected", 7)]
    [InlineData("5' 6 mm", "inches-expected", 5)]
    [InlineData("1234567890.1234567 m", "too-many-digits", 0)]
    [InlineData("99999999 m", "too-long", 0)]
    [InlineData("٣ m", "number-expected", 0)]
    public void WhatCannotBeReadIsRefusedAtItsColumn(string text, string code, int position)
    {
        var parsed = LengthText.Parse(text);
        Assert.False(parsed.Ok);
        Assert.Equal(code, parsed.Problem?.Code);
        Assert.Equal(position, parsed.Problem?.Position);
    }

    [Theory]
    [InlineData(40_398_700_000, 64, "132' 6 1/2\"")]
    [InlineData(40_386_000_000, 16, "132' 6\"")]
    [InlineData(40_233_600_000, 16, "132' 0\"")]
    [InlineData(40_246_300_000, 16, "132' 0 1/2\"")]
    [InlineData(0, 16, "0\"")]
    [InlineData(12_700_000, 16, "1/2\"")]
    [InlineData(304_799_999, 16, "1' 0\"")]
    [InlineData(304_000_000, 2, "1' 0\"")]
    [InlineData(-1_676_400_000, 8, "-5' 6\"")]
    [InlineData(-100, 64, "0\"")]
    [InlineData(396_875, 64, "1/64\"")]
    [InlineData(396_875, 32, "1/32\"")]
    [InlineData(-396_875, 32, "-1/32\"")]
    public void FeetAndInchesCarryAndReduce(long nanometres, int denominator, string text) =>
        Assert.Equal(text, LengthText.FeetInches(Length.FromNanometres(nanometres), denominator));

    [Theory]
    [InlineData(2_133_600_000, 16, "84\"")]
    [InlineData(2_139_950_000, 16, "84 1/4\"")]
    [InlineData(-19_050_000, 16, "-3/4\"")]
    public void InchesNeverBecomeFeet(long nanometres, int denominator, string text) =>
        Assert.Equal(text, LengthText.Inches(Length.FromNanometres(nanometres), denominator));

    [Theory]
    [InlineData(40_398_192_000, 2, "132.54'")]
    [InlineData(40_398_192_000, 0, "133'")]
    [InlineData(-1_000, 2, "0.00'")]
    [InlineData(-304_800_000, 1, "-1.0'")]
    public void DecimalFeetHaveFixedDecimals(long nanometres, int decimals, string text) =>
        Assert.Equal(text, LengthText.DecimalFeet(Length.FromNanometres(nanometres), decimals));

    [Theory]
    [InlineData(40_400_000_000, LengthUnit.Metre, 3, "40.400 m")]
    [InlineData(12_500_000, LengthUnit.Millimetre, 0, "13 mm")]
    [InlineData(123_456_000, LengthUnit.Centimetre, 1, "12.3 cm")]
    public void MetricHasTheUnitAsked(long nanometres, LengthUnit unit, int decimals, string text) =>
        Assert.Equal(text, LengthText.Metric(Length.FromNanometres(nanometres), unit, decimals));

    [Fact]
    public void FormattingRefusesWhatNobodyReadsOffATape()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => LengthText.FeetInches(Length.Zero, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => LengthText.Metric(Length.Zero, LengthUnit.Foot));
        Assert.Throws<OverflowException>(() => LengthText.DecimalFeet(new Length(double.NaN), 2));
    }

    [Fact]
    public void EverySixtyFourthOfTwentyFeetReadsBackExactly()
    {
        for (var sixtyFourths = -64; sixtyFourths <= 64 * 12 * 20; sixtyFourths++) AssertReadsBack(sixtyFourths);
    }

    [Fact]
    public void AnySixtyFourthUpTo500MilesReadsBackExactly() => Gen.Long[-2_000_000_000, 2_000_000_000].Always(AssertReadsBack);

    [Fact]
    public void ReadingNeverThrows() => Gen.String[Gen.Char["0123456789 .,'\"/-+°%:mftincUSNEWRL½\t\0"], 0, 14].Always(text =>
    {
        var parsed = LengthText.Parse(text);
        Assert.Equal(parsed.Ok, parsed.Problem is null);
        if (parsed.Problem is { } problem) Assert.InRange(problem.Position, 0, text.Length);
        _ = BearingText.Parse(text);
        _ = AngleText.Parse(text);
        _ = SlopeText.Parse(text);
        _ = StationText.Parse(text, UnitSystem.Metric);
    }, iter: 20_000);

    private static void AssertReadsBack(long sixtyFourths)
    {
        var nanometres = sixtyFourths * Length.NmPer64thInch;
        var length = Length.FromNanometres(nanometres);
        Assert.Equal(nanometres, LengthText.Parse(LengthText.FeetInches(length, 64)).Value.Nanometres);
        Assert.Equal(nanometres, LengthText.Parse(LengthText.Inches(length, 64)).Value.Nanometres);
    }
}
