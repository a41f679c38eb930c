using System.Globalization;
using System.Text;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.TapeBook;

namespace Tautline.Engine.Tests.TapeBook;

public sealed class ExactLengthTests
{
    [Theory]
    [InlineData("leg 100' bearing N 37 E", 30_480_000_000)]
    [InlineData("leg 132' 6 1/2\" bearing S 12°34'56\" W", 40_398_700_000)]
    [InlineData("leg 40.4 m bearing az 291", 40_400_000_000)]
    [InlineData("start 9000' east 9000' south\nleg 100' bearing N 37 E", 30_480_000_000)]
    public void LegIsAsLongAsTypedToTheNanometre(string walk, long nanometres)
        => Assert.Equal(nanometres, Assert.Single(Books.Legs(Books.Job(Books.Spec + walk))).LevelNm);

    /// <summary>100 ft at 3:4 along the ground: level 80 ft, 24.384 m; along again 30.48 m.</summary>
    [Fact]
    public void SlopingLegIsAsLongAlongTheGroundAsTyped()
    {
        var leg = Assert.Single(Books.Legs(Books.Job(Books.Spec + "measured along\nleg 100' up 3:4 bearing N 37 E")));
        Assert.Equal((24_384_000_000, 30_480_000_000), (leg.LevelNm, leg.AlongNm));
    }

    [Theory]
    [InlineData("R 7")]
    [InlineData("L 45°30'")]
    [InlineData("R 179.99")]
    public void EachOfTwoHundredLegsIsExact(string turn)
    {
        var walk = string.Join($"\n{turn}\n", Enumerable.Repeat("leg 100'", 200));
        var legs = Books.Legs(Books.Job(Books.Spec + "facing N 37 E\n" + walk));
        Assert.Equal(200, legs.Count);
        Assert.All(legs, leg => Assert.Equal(30_480_000_000, leg.LevelNm));
    }

    /// <summary>360 turns of 7 degrees are seven full circles: the walk ends where it began.</summary>
    [Fact]
    public void ThreeHundredAndSixtyTurnsComeBackToTheStart()
    {
        var walk = string.Join("\nR 7\n", Enumerable.Repeat("leg 10'", 360));
        Assert.Empty(TapeBookReader.Read(Books.Spec + walk + "\nclose").Problems);
        Assert.Equal(360, Books.Job(Books.Spec + walk + "\nclose").Lines[0].Vertices.Count);
    }

    [Fact]
    public void ABookOfTenThousandLinesIsReadWhole()
    {
        var book = new StringBuilder(Books.Spec);
        for (var i = 0; i < 3333; i++) book.Append(CultureInfo.InvariantCulture, $"leg 10' {i % 12}\"\n{(i % 2 == 0 ? "R" : "L")} 90\ngate walk 4' from 2'\n");
        book.Append("leg 10'");
        var reading = TapeBookReader.Read(book.ToString());
        Assert.Empty(reading.Problems);
        Assert.Equal(3334, reading.Job!.Lines[0].Vertices.Count - 1);
    }
}
