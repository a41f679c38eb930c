using Tautline.Engine.Problems;
using Tautline.Engine.Site.TapeBook;

namespace Tautline.Engine.Tests.TapeBook;

/// <summary>Slips, each with the line, the column and the code it is told at; counted by hand in the text.</summary>
public sealed class SlipTests
{
    private const string S = Books.Spec; // one line

    public static TheoryData<string, int, int, string> Slips => new()
    {
        { "", 1, 1, "book-empty" },
        { "# nothing\n\n", 1, 1, "book-empty" },
        { S, 1, 1, "book-no-leg" },
        { S + "  lge 100'", 2, 3, "word-unknown" },
        { S + "100'", 2, 1, "word-unknown" },
        { S + "leg 100 furlongs", 2, 9, "unit-unknown" },
        { S + "leg 100yd", 2, 8, "unit-unknown" },
        { S + "leg 100", 2, 5, "unit-missing" },
        { S + "measured level\nleg 100 up 5%", 3, 5, "unit-missing" },
        { S + "leg", 2, 4, "length-missing" },
        { S + "leg about 100'", 2, 5, "length-expected" },
        { S + "leg -100'", 2, 5, "length-negative" },
        { S + "leg 6' 14\"", 2, 8, "length-bad" },
        { S + "leg 2000000 m", 2, 5, "length-huge" },
        { S + "leg 5 15/16\"", 2, 5, "leg-short" },
        { S + "leg 100' now", 2, 10, "text-after" },
        { S + "R 90\nleg 100'", 2, 1, "turn-no-leg" },
        { S + "leg 100'\nR 90\nL 45\nleg 9'", 4, 1, "turn-twice" },
        { S + "leg 100'\nR 200\nleg 100'", 3, 1, "turn-range" },
        { S + "leg 100'\nR\nleg 100'", 3, 2, "turn-bad" },
        { S + "leg 100'\nR 90", 3, 1, "turn-unused" },
        { S + "leg 100'\nR 90\nleg 10' bearing N 5 E", 4, 9, "turn-and-bearing" },
        { S + "leg 100'\nR 90\nleg to 10' east 10' north", 4, 8, "turn-and-bearing" },
        { S + "leg 10' bearing", 2, 16, "bearing-missing" },
        { S + "leg 10' bearing N 95 E", 2, 19, "bearing-bad" },
        { S + "leg 10' level level", 2, 15, "clause-twice" },
        { S + "leg 10' up 5%", 2, 9, "measure-missing" },
        { S + "measured along\nleg 10' up 5", 3, 12, "slope-unit" },
        { S + "measured along\nleg 10' up -5%", 3, 12, "slope-negative" },
        { S + "measured along\nleg 10' up 101%", 3, 12, "slope-steep" },
        { S + "measured along\nleg 10' up", 3, 11, "slope-missing" },
        { S + "measured along\nleg 10' up 5%%", 3, 14, "slope-bad" },
        { S + "measured twice\nleg 10'", 2, 10, "word-expected" },
        { S + "gate walk 4' from 20'\nleg 100'", 2, 1, "gate-no-leg" },
        { S + "leg 20'\ngate walk 4' from 17'", 3, 19, "gate-off-leg" },
        { S + "leg 20'\ngate walk 4' centred at 1'", 3, 25, "gate-off-leg" },
        { S + "leg 20'\ngate slide 4' from 1'", 3, 6, "word-expected" },
        { S + "leg 20'\ngate walk 4' at 1'", 3, 14, "word-expected" },
        { S + "leg 20'\ngate walk 0' from 1'", 3, 11, "gate-zero" },
        { S + "no-dig 1' to 2'\nleg 20'", 2, 1, "no-dig-no-leg" },
        { S + "leg 20'\nno-dig 2' to 1'", 3, 8, "no-dig-range" },
        { S + "leg 20'\nno-dig 18' to 21'", 3, 8, "no-dig-range" },
        { S + "leg 20'\nno-dig 18'", 3, 11, "word-missing" },
        { S + "arc up 30'", 2, 5, "word-expected" },
        { S + "arc right 30' turn 90", 2, 11, "word-expected" },
        { S + "arc right radius 30 turn 90", 2, 18, "unit-missing" },
        { S + "arc right radius 0' turn 90", 2, 18, "arc-radius" },
        { S + "arc right radius 30'", 2, 21, "word-missing" },
        { S + "arc right radius 30' turn", 2, 26, "angle-missing" },
        { S + "arc right radius 30' turn ninety", 2, 27, "turn-bad" },
        { S + "arc right radius 30' turn 180", 2, 27, "arc-half-circle" },
        { S + "arc right radius 30' length 95'", 2, 29, "arc-half-circle" }, // 94 ft 3 in are half a circle
        { S + "arc right radius 30' length 5\"", 2, 29, "leg-short" },
        { S + "arc right radius 30' to 60' east 0' north", 2, 25, "arc-tight" },
        { S + "arc right radius 30' length 20' up 5%", 2, 33, "measure-missing" },
        { S + "leg 20'\nR 90\narc right radius 30' to 40' east 20' north", 4, 25, "turn-and-bearing" },
        { S + "leg 99'\ngate cantilever 20' from 5'", 3, 28, "word-missing" },
        { S + "leg 99'\ngate cantilever 20' from 5' run-back west", 3, 38, "word-expected" },
        { S + "leg 99'\ngate rolling 20' from 5' run-back end", 3, 38, "word-missing" },
        { S + "leg 99'\ngate rolling 20' from 5' run-back end post 4.000-sch40 leaf 850", 3, 61, "weight-bad" },
        { S + "leg 99'\ngate walk 4' from 5' run-back end", 3, 22, "clause-unknown" },
        { S + "leg 99'\ngate walk 4' from 5' post a post b", 3, 29, "clause-twice" },
        { S + "tie start building\nleg 20'", 2, 11, "word-expected" },
        { S + "tie start to house\nleg 20'", 2, 14, "word-expected" },
        { S + "tie start to fence\nleg 20'", 2, 19, "word-missing" },
        { S + "tie start to wall\ntie start to wall\nleg 20'", 3, 1, "line-said-twice" },
        { S + "tie finish to wall\nleg 20'\nR 90\nleg 20'\nR 90\nleg 20'\nR 90\nleg 20'\nclose", 2, 1, "tie-closed" },
        { S + "slab 1' to 2'\nleg 20'", 2, 1, "mark-no-leg" },
        { S + "leg 20'\nslab 18' to 21'", 3, 6, "mark-range" },
        { S + "leg 20'\ntree 1' to 2' cored", 3, 15, "clause-unknown" },
        { S + "leg 20'\nrock 1' to 2' cored plated", 3, 21, "clause-twice" },
        { S + "leg 20'\nslab 1' to 2' bracketed", 3, 15, "clause-unknown" },
        { S + "leg 20'\nwall 1' to 2' plated bracketed", 3, 22, "clause-twice" },
        { S + "leg 20'\nswale 1' to 2'", 3, 15, "word-missing" },
        { S + "leg 20'\nwall 1' to 2' width 8", 3, 21, "unit-missing" },
        { S + "leg 20'\npin 21'", 3, 5, "pin-off-leg" },
        { S + "pin 2'\nleg 20'", 2, 1, "mark-no-leg" },
        { S + "leg 20'\nremoval 0' to 9' posts many", 3, 24, "word-expected" },
        { S + "leg 20'\nremoval 9' to 30'", 3, 9, "mark-range" },
        { S + "leg 20'\nclearing 0' to 9'", 3, 18, "word-missing" },
        { S + "leg 20'\nclearing 0' to 9' width 0'", 3, 25, "clearing-zero" },
        { S + "temporary 0'\nleg 20'", 2, 11, "temporary-zero" },
        { S + "fabric out\nleg 20'", 2, 8, "word-expected" },
        { S + "keeps\nleg 20'", 2, 6, "word-missing" },
        { S + "keeps rail rail\nleg 20'", 2, 12, "clause-twice" },
        { "spec park height 6' laced 5\nleg 20'", 1, 27, "laced-range" },
        { "spec park height 6' barb three left\nleg 20'", 1, 26, "word-expected" },
        { "spec park height 6' barb 3 out\nleg 20'", 1, 28, "word-expected" },
        { "spec park height 6' colour red\nleg 20'", 1, 28, "word-expected" },
        { "spec park height 6' colour black color brown\nleg 20'", 1, 34, "clause-twice" },
        { "spec park height 6' concertina 20'\nleg 20'", 1, 35, "word-missing" },
        { "spec park height 6' slats lock top\nleg 20'", 1, 27, "word-expected" },
        { S + "line \"north\nleg 20'", 2, 6, "quote-unclosed" },
        { S + "line north\nleg 20'\nline NORTH\nleg 20'", 4, 6, "line-twice" },
        { S + "line north\nline south\nleg 20'", 2, 6, "line-empty" },
        { S + "leg 20'\nclose", 3, 1, "close-few-legs" },
        { S + "leg 20'\nR 179.9\nleg 20'\nclose", 5, 1, "close-few-legs" },
        { S + "leg 3'\nR 90\nleg 3'\nR 90\nleg 3'\nR 90\nleg 2' 7\"\nclose", 9, 1, "close-gap" },
        { S + "leg 20'\nR 90\nleg 20'\nR 90\nleg 20'\nR 90\nleg 20'\nclose\nleg 20'", 10, 1, "line-closed" },
        { S + "leg 20'\nstart 1' east 1' north", 3, 1, "start-late" },
        { S + "leg 20'\nfacing due E", 3, 1, "start-late" },
        { S + "start 1' north 1' east\nleg 20'", 2, 10, "word-expected" },
        { S + "height 4'\nleg 20'", 2, 1, "height-no-line" },
        { "line a\nheight 4'\nspec fence height 6'\nleg 20'", 2, 1, "height-no-spec" },
        { "leg 20'", 1, 1, "spec-missing" },
        { S + "spec park height 4'\nline a\nleg 20'", 4, 1, "spec-open" },
        { S + "spec Fence height 4'\nleg 20'", 2, 6, "spec-twice" },
        { S + "line a\nspec park\nleg 20'", 3, 6, "spec-unknown" },
        { S + "spec fence\nleg 20'", 2, 6, "spec-no-line" },
        { "spec park\nleg 20'", 1, 6, "spec-height-missing" },
        { "spec park gauge 9\nline a\nleg 20'", 1, 6, "spec-height-missing" },
        { "spec park height 6' guage 9\nleg 20'", 1, 21, "clause-unknown" },
        { "spec park height 6' height 5'\nleg 20'", 1, 21, "clause-twice" },
        { "spec park height 6' top steel\nleg 20'", 1, 25, "word-expected" },
        { "spec park height 6' brace\nleg 20'", 1, 26, "word-missing" },
        { "job a\njob b\n" + S + "leg 20'", 2, 1, "statement-twice" },
        { "units feet\n" + S + "leg 20'", 1, 7, "word-expected" },
        { "as specified bay.mux 8'\n" + S + "leg 20'", 1, 14, "rule-unknown" },
        { "as specified bay.max 8\n" + S + "leg 20'", 1, 22, "unit-missing" },
        { "as specified terminal.turn 8\n" + S + "leg 20'", 1, 28, "rule-value" },
        { "ten pickets 14\"\n" + S + "leg 20'", 1, 16, "calibration-which" },
        { S + "ten pickets 14\" of park\nleg 20'", 2, 20, "spec-unknown" },
        { S + "ten pickets 14\"\nten pickets 14\"\nleg 20'", 3, 13, "calibration-twice" },
        { S + "leg\0 20'\nleg 20'", 2, 4, "control-character" },
        { S + "leg 20'\n\u001b[31mleg 20'", 3, 1, "control-character" },
    };

    [Theory, MemberData(nameof(Slips))]
    public void SlipIsToldAtItsPlaceAndOnce(string book, int line, int column, string code)
    {
        var reading = TapeBookReader.Read(book);
        var told = Assert.Single(reading.Problems);
        Assert.Equal((line, column, code), (told.Line, told.Column, told.Code));
        Assert.NotEqual("", told.Hint);
        Assert.DoesNotContain("{", told.Message + told.Hint, StringComparison.Ordinal);
        Assert.Equal(told.Severity == Severity.Error, reading.Job is null);
    }

    [Fact]
    public void EverySlipOfABookIsToldInOneReport()
    {
        var reading = TapeBookReader.Read("""
            spec fence height 6 brace no
            lin north
            leg 100
            gate walk 4' from 200'
            R ninety
            leg 50' up 5%
            """);
        Assert.Null(reading.Job);
        Assert.Equal(
            [(1, 19, "unit-missing"), (2, 1, "word-unknown"), (3, 5, "unit-missing"), (5, 3, "turn-bad"), (6, 9, "measure-missing")],
            reading.Problems.Select(p => (p.Line, p.Column, p.Code)));
    }

    [Fact]
    public void MessageNamesWhatWasFoundAndWhatWouldBeRight()
    {
        var told = TapeBookReader.Read(S + "lge 100'").Problems[0];
        Assert.Equal("2:1 word-unknown: 'lge' is not a statement. Did you mean 'leg'?", told.ToString());
        told = TapeBookReader.Read(S + "leg 132").Problems[0];
        Assert.Equal("2:5 unit-missing: '132' has no unit. Write 132' for feet, 132\" for inches or 132 m for metres.", told.ToString());
    }

    [Fact]
    public void BookOfAHundredMegabytesIsRefused()
    {
        var reading = TapeBookReader.Read(new string('x', 100 << 20));
        Assert.Null(reading.Job);
        Assert.Equal((1, 1, "book-too-large"), Assert.Single(reading.Problems) is var p ? (p.Line, p.Column, p.Code) : default);
    }

    [Fact]
    public void BookOfNothingButSlipsIsToldUpToALimit()
    {
        var reading = TapeBookReader.Read(string.Concat(Enumerable.Repeat("lge 1'\n", 10_000)));
        Assert.Equal(501, reading.Problems.Count);
        Assert.Equal("too-many-problems", reading.Problems[^1].Code);
    }
}
