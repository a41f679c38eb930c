using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Field.Cards;

namespace Tautline.Field.Tests.Cards;

/// <summary>Check job 1: a hundred feet at 1.40 in takes 854 pickets.</summary>
public sealed class FabricCardTests
{
    private static readonly Job calibrated = Yard.Counted with { Calibrations = [new RollCalibration { Spec = new("fence"), TenPickets = Length.FromInches(14) }] };

    private static FabricCard Card(params int[] counted) => FabricCard.Of(Yard.Plan(calibrated).Now, 0, 0, counted);

    [Fact]
    public void TheRunTakesEightHundredAndFiftyFourPickets()
    {
        Assert.Equal((854, 854), (Card().Need.Low, Card().Need.High));
        Assert.Equal(FabricWord.Uncounted, Card().Word);
    }

    /// <summary>Two pieces are one splice, for which one picket is allowed until the ends are seen: 855.</summary>
    [Theory]
    [InlineData(FabricWord.Enough, 0, 428, 427)]
    [InlineData(FabricWord.Perhaps, 1, 428, 426)]
    [InlineData(FabricWord.Short, 2, 428, 425)]
    [InlineData(FabricWord.Enough, 0, 854)]
    [InlineData(FabricWord.Short, 1, 853)]
    public void PiecesAreCountedAgainstIt(FabricWord word, int shortBy, params int[] counted)
        => Assert.Equal((word, shortBy), (Card(counted).Word, Card(counted).ShortBy));

    /// <summary>Not calibrated the advance has a range, and so has the need: what lies between is neither enough nor short.</summary>
    [Fact]
    public void BeforeARollIsMeasuredTheNeedIsARange()
    {
        var need = FabricCard.Of(Yard.Plan().Now, 0, 0, []).Need;
        Assert.True(need.Low < need.High);
        Assert.Equal(FabricWord.Perhaps, FabricCard.Of(Yard.Plan().Now, 0, 0, [need.High - 1]).Word);
    }
}
