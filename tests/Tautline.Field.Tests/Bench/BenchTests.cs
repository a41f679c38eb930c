using CsCheck;
using Tautline.Engine.Quantities;
using Tautline.Field.Bench;

namespace Tautline.Field.Tests.Bench;

/// <summary>Sums done at the truck against figures that others printed.</summary>
public sealed class BenchTests
{
    private static string Answer(string sum, string line, UnitSystem units, params (string Input, string Text)[] typed)
    {
        var answer = BenchBook.Answer(sum, typed.ToDictionary(t => t.Input, t => t.Text), units);
        Assert.Empty(answer.Faults);
        return answer.Lines.Single(l => l.Key == line).Value;
    }

    private static string Us(string sum, string line, params (string, string)[] typed) => Answer(sum, line, UnitSystem.UsCustomary, typed);

    /// <summary>Euclid, Elements I.47: 3, 4, 5; and 5, 12, 13.</summary>
    [Fact]
    public void ThreeFourFiveIsSquare()
    {
        Assert.Equal("5' 0\"", Us("square", "diagonal", ("a", "3'"), ("b", "4'")));
        Assert.Equal("13.000 m", Answer("square", "diagonal", UnitSystem.Metric, ("a", "5"), ("b", "12")));
    }

    /// <summary>Practice table of the trade, row 10 as it is counted: a mismatch of three pickets over 24 rows crosses at 8 and 16 and runs out at the bottom. Common practice, no source.</summary>
    [Fact]
    public void ThreePicketsOverTwentyFourRowsCrossAtEightAndSixteen()
    {
        (string, string)[] typed = [("top", "30\""), ("bottom", "25.8\""), ("ten", "14\""), ("diamonds", "24")];
        Assert.Equal("3", Us("cut", "columns", typed));
        Assert.Equal("8, 16", Us("cut", "crossings", typed));
        Assert.Equal("24", Us("cut", "out", typed));
    }

    /// <summary>Check job 3, worked by hand: 72-in fabric at 25 % is 18 in out; at 1.40 in a picket that is 13 columns and 12 crossings.</summary>
    [Fact]
    public void TwentyFivePercentIsThirteenColumns()
    {
        (string, string)[] typed = [("height", "72"), ("slope", "25%"), ("ten", "14"), ("diamonds", "24")];
        Assert.Equal("1' 6\"", Us("bias", "mismatch", typed));
        Assert.Equal("13", Us("bias", "columns", typed));
        Assert.Equal(12, Us("bias", "crossings", typed).Split(", ").Length);
    }

    /// <summary>Check job 3: 150 ft level at 25 % is 154.62 ft along the slope; 16 bays, for 15 give 10.31 ft.</summary>
    [Fact]
    public void AHundredAndFiftyFeetAtAQuarterTakesSixteenBays()
    {
        Assert.Equal("25.0%", Us("slope", "slope", ("rise", "37.5'"), ("run", "150'")));
        Assert.Equal("154' 7 3/8\"", Us("slope", "along", ("rise", "37.5'"), ("run", "150'")));
        Assert.Equal("16", Us("bays", "bays", ("span", "154.62'"), ("most", "10'")));
    }

    /// <summary>By hand: 100 ft in 12-ft bays is nine of 11 ft 1 1/3 in; marks rounded from the start, to half an inch.</summary>
    [Fact]
    public void TapeNumbersRunAndAddUp()
        => Assert.Equal("11' 1 1/2\", 22' 2 1/2\", 33' 4\", 44' 5 1/2\", 55' 6 1/2\", 66' 8\", 77' 9 1/2\", 88' 10 1/2\", 100' 0\"", Us("bays", "marks", ("span", "100'"), ("most", "12'")));

    /// <summary>By hand: a 12-in hole, 3 ft deep, no post to speak of: pi/4 * 3 = 2.356 cu ft; four 80-lb bags of 0.6 cu ft (the bag's own word, common practice); 27 such holes make 2.36 cu yd.</summary>
    [Fact]
    public void BagsAreRoundedUpForEachHole()
    {
        (string, string)[] typed = [("holes", "27"), ("hole", "12"), ("post", "0.01"), ("depth", "36"), ("over", "0%"), ("yield", "0.6")];
        Assert.Equal("2.36 cu ft", Us("concrete", "oneHole", typed));
        Assert.Equal("4", Us("concrete", "bagsHole", typed));
        Assert.Equal("108", Us("concrete", "bagsAll", typed));
        Assert.Equal("2.36 cu yd", Us("concrete", "readyMix", typed));
    }

    /// <summary>Opening is face to face; centres are the opening and half of each post: 12 ft and 2 7/8 in. Leaves less 6 to 7 in for a pair: common practice, no source.</summary>
    [Fact]
    public void APairOfLeavesInTwelveFeet()
    {
        (string, string)[] typed = [("opening", "12'"), ("deduct", "6"), ("leaves", "2"), ("post", "2.875")];
        Assert.Equal("5' 9\"", Us("gate", "leaf", typed));
        Assert.Equal("12' 2 7/8\"", Us("gate", "centresOf", typed));
    }

    /// <summary>By hand: ten feet between centres less half of 2.375 and half of 1.9 in.</summary>
    [Fact]
    public void ARailIsCutBetweenTheFaces() => Assert.Equal("9' 9 7/8\"", Us("rail", "rail", ("centres", "10'"), ("first", "2.375"), ("second", "1.9")));

    /// <summary>The foot is 0.3048 m by definition (international yard and pound agreement, 1959).</summary>
    [Fact]
    public void AFootIs304Point8Millimetres()
    {
        Assert.Equal("3.048 m", Us("convert", "metres", ("length", "10'")));
        Assert.Equal("305 mm", Us("convert", "millimetres", ("length", "1'")));
        Assert.Equal("3' 3 3/8\"", Us("convert", "feetInches", ("length", "1 m")));
    }

    [Fact]
    public void EverySumAnswersInBothSystemsWithWhatStandsInItAtFirst()
    {
        foreach (var sum in BenchBook.All)
            foreach (var units in Enum.GetValues<UnitSystem>())
            {
                var answer = BenchBook.Answer(sum.Key, new Dictionary<string, string>(), units);
                Assert.True(answer.Faults.Count == 0 && answer.Lines.Count > 0, $"{sum.Key}: {string.Join("; ", answer.Faults)}");
            }
    }

    [Theory]
    [InlineData("bays", "span", "far")]
    [InlineData("bays", "span", "-5'")]
    [InlineData("bays", "most", "0.1\"")]
    [InlineData("slope", "run", "0")]
    [InlineData("bias", "slope", "9000%")]
    [InlineData("bias", "diamonds", "2.5")]
    [InlineData("concrete", "post", "12\"")]
    [InlineData("concrete", "holes", "")]
    [InlineData("gate", "deduct", "13'")]
    [InlineData("convert", "length", "1e9 m")]
    public void WhatIsNoMeasureIsToldAndNotThrown(string sum, string input, string text)
    {
        var answer = BenchBook.Answer(sum, new Dictionary<string, string> { [input] = text }, UnitSystem.UsCustomary);
        Assert.Empty(answer.Lines);
        Assert.NotEmpty(answer.Faults[0].Message);
    }

    /// <summary>Any text in any field of any sum: an answer or a fault, never a throw.</summary>
    [Fact]
    public void NoTextBreaksIt() => Gen.Select(Gen.Int[0, BenchBook.All.Count - 1], Gen.Int[0, signs.Length - 1].Array[0, 9], Gen.Int[0, 5]).Always((sum, text, at) =>
    {
        var of = BenchBook.All[sum];
        var answer = BenchBook.Answer(of.Key, new Dictionary<string, string> { [of.Inputs[at % of.Inputs.Count].Key] = string.Concat(text.Select(i => signs[i])) }, UnitSystem.UsCustomary);
        Assert.True(answer.Lines.Count > 0 ^ answer.Faults.Count > 0);
    }, iter: 2000);

    private const string signs = "0123456789.,'\"% -/ftinmedg:+e";
}
