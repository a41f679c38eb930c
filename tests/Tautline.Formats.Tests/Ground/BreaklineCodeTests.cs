using Tautline.Formats.Ground.Points;
using static Tautline.Formats.Tests.Ground.GroundText;

namespace Tautline.Formats.Tests.Ground;

public sealed class BreaklineCodeTests
{
    [Fact]
    public void WithoutCodesThereAreNone() => Assert.Empty(Points("1,0,0,5,TOE\n2,0,9,5,TOE").PointContent().Breaklines);

    [Theory]
    [InlineData("TOE|TOE|GS|TOE|TOE|TOE", "0-1 3-4-5")]
    [InlineData("toe|TOE/SW|TOE SW|GS", "0-1-2")]
    [InlineData("TOE1|TOE2|TOE1|TOE2", "")]
    [InlineData("TOE1|TOE1|TOE2|TOE2", "0-1 2-3")]
    [InlineData("TOEWALL|TOE|TOP|TOE", "")]
    [InlineData("TOE|GS TOE|TOE", "0-1-2")]
    public void NeighbouringRowsOfOneCodeMakeALine(string codes, string lines) => Assert.Equal(lines, Lines(codes, new(["TOE"])));

    [Theory]
    [InlineData("TOE B|GS|TOE|GS|TOE E|TOE|TOE", "0-2-4 5-6")]
    [InlineData("TOE B|TOE|TOE B|TOE", "0-1 2-3")]
    [InlineData("TOE1 BEGIN|TOE2 BEGIN|TOE1|TOE2|TOE1 END|TOE2 END", "0-2-4 1-3-5")]
    public void BeginAndEndHoldALineTogether(string codes, string lines) => Assert.Equal(lines, Lines(codes, new(["TOE"]) { BeginEnd = true }));

    [Fact]
    public void ALongStepBreaksALine() => Assert.Equal("0-1 2-3", Lines("EP|EP|EP@50|EP@51", new(["EP"]) { LongestStep = 20 }));

    [Fact]
    public void APointWithoutHeightIsAHole()
    {
        var file = Points("1,0,0,5,EP\n2,1,0,5,EP\n3,2,0,,EP\n4,3,0,5,EP\n5,4,0,5,EP", "PNEZD", new() { Breaklines = new(["EP"]) });

        Assert.Equal(["0-1", "3-4"], file.PointContent().Breaklines.Select(l => string.Join('-', l.Points)));
    }

    [Fact]
    public void CodesWithoutALineAreTold()
    {
        var file = Points("1,0,0,5,EP\n2,1,0,5,EP", "PNEZD", new() { Breaklines = new(["EP", "TOE"]) });

        Assert.Equal("No line came of the code 'TOE'.", file.Problem("CodeNotFound").Message);
        Assert.Equal("1 breakline was made of 2 points by their codes.", file.Problem("LinesMade").Message);
    }

    /// <summary>Rows a metre apart unless a place is given behind @.</summary>
    private static string Lines(string codes, BreaklineCodes options)
    {
        var rows = codes.Split('|').Select((c, i) => c.Split('@') is [var code, var place] ? $"{i},{place},0,5,{code}" : $"{i},{i},0,5,{c}");
        var file = Points(string.Join('\n', rows), "PNEZD", new() { Breaklines = options });
        return string.Join(' ', file.PointContent().Breaklines.OrderBy(l => l.Points[0]).Select(l => string.Join('-', l.Points)));
    }
}
