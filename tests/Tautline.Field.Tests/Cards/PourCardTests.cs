using Tautline.Engine.Quantities;
using Tautline.Field.Cards;

namespace Tautline.Field.Tests.Cards;

/// <summary>
/// Check job 1: 100 ft with two ends, nine line posts in 10 x 30 in holes, two terminals in 12 x 30 in: 15.28 cu ft, 35 bags of 0.6 cu ft by whole hole, 26 by the total.
/// One hole by hand: pi/4 x (100 - 5.640625) x 30 = 2223.3 cu in = 1.2866 cu ft; of a terminal pi/4 x (144 - 8.265625) x 30 = 3198.2 cu in = 1.8508 cu ft.
/// </summary>
public sealed class PourCardTests
{
    private static readonly Volume bag80 = Volume.FromCubicFeet(0.6);

    private static PourCard Run(double overBreak) => PourCard.OfRun(Yard.Plan(Yard.Counted).Now, 0, 0, overBreak, bag80);

    [Fact]
    public void TheCountedRunTakesThirtyFiveBagsByHole()
    {
        var card = Run(0);
        Assert.Equal(11, card.Count);
        Assert.Equal(15.28, card.Total.CubicFeet, 0.005);
        Assert.Equal(35, card.Bags);
        Assert.Equal(1.2866, card.Holes.Single(h => h.Count == 9).Net.CubicFeet, 0.0001);
        Assert.Equal(1.8508, card.Holes.Single(h => h.Count == 2).Net.CubicFeet, 0.0001);
    }

    /// <summary>A fifth more: 18.34 cu ft are 0.679 cu yd; 1.544 cu ft still take three bags, 2.221 cu ft take four: 9 x 3 + 2 x 4.</summary>
    [Fact]
    public void OverBreakComesOnTopOfEveryHole()
    {
        var card = Run(0.2);
        Assert.Equal(0.679, card.Total.CubicYards, 0.001);
        Assert.Equal(35, card.Bags);
        Assert.Equal(9 * 4 + 2 * 5, Run(0.5).Bags); // 1.930 and 2.776 cu ft
    }

    [Fact]
    public void HolesThatWereMeasuredAreWorkedOutAlike()
    {
        var card = PourCard.OfHoles(9, Length.FromInches(10), Length.FromInches(30), Length.FromInches(2.375), 0, bag80);
        Assert.Equal(11.58, card.Total.CubicFeet, 0.005);
        Assert.Equal(27, card.Bags);
        Assert.Throws<ArgumentOutOfRangeException>(() => PourCard.OfHoles(1, Length.FromInches(2), Length.FromInches(30), Length.FromInches(2.375), 0, bag80));
        Assert.Throws<ArgumentOutOfRangeException>(() => Run(-0.1));
    }

    /// <summary>The holes of all runs together are those of the take-off: the bags of a yard with a cantilever gate, its second roller post among them.</summary>
    [Fact]
    public void NoHoleIsLeftOut()
    {
        var job = Yard.Counted with
        {
            Gates = [new() { Id = new("gate"), Leg = new("leg"), Kind = Engine.Jobs.Gate.Cantilever, NearFace = Length.FromFeet(30), Opening = Length.FromFeet(20), RunsBack = "end" }],
        };
        var plan = Yard.Plan(job).Now;
        Assert.Equal(plan.Lines[0].Posts.Count + 1, Enumerable.Range(0, plan.Lines[0].Runs.Count).Sum(r => PourCard.OfRun(plan, 0, r, 0, bag80).Count));
        Assert.Equal(plan.Takeoff.Single(t => t.Part == "concrete-bag").Purchase, Enumerable.Range(0, plan.Lines[0].Runs.Count).Sum(r => PourCard.OfRun(plan, 0, r, 0, bag80).Bags));
    }

    /// <summary>Poured on 26 February of a leap year, five days: 2 March.</summary>
    [Fact]
    public void DaysAreCountedThroughALeapDay()
        => Assert.Equal(new DateOnly(2028, 3, 2), PourCard.HangFrom(new(2028, 2, 26), 5));

    [Theory]
    [InlineData(null, PourWeather.Unknown)]
    [InlineData(4.0, PourWeather.Cold)]
    [InlineData(4.5, PourWeather.Mild)]
    [InlineData(32.0, PourWeather.Mild)]
    [InlineData(33.0, PourWeather.Hot)]
    public void ColdAndHeatAreTold(double? celsius, PourWeather weather) => Assert.Equal(weather, PourCard.Weather(celsius));
}
