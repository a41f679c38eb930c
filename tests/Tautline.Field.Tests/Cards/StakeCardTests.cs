using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Quantities;
using Tautline.Field.Cards;

namespace Tautline.Field.Tests.Cards;

public sealed class StakeCardTests
{
    private static StakeCard Card(Job job, Length? laser = null) => StakeCard.Of(Yard.Plan(job).Now, 0, 0, laser);

    [Fact]
    public void OnTheLevelTheTapeReadsTenFeetAtEveryPost()
        => Assert.Equal(["0\"", "10' 0\"", "20' 0\"", "30' 0\""], Card(Yard.Job).Rows.Take(4).Select(r => TapeMark.Text(r.Tape, UnitSystem.UsCustomary)));

    /// <summary>
    /// Check job 3: 150 ft level at 25 % is 154.62 ft of slope in 16 bays; 9.664 ft each, so the third post stands at 19.327 ft, 19' 4" to the half inch. Plumb 74.2 in of
    /// fabric, so a line post two inches lower stands 72.2 in over its stake.
    /// </summary>
    [Fact]
    public void OnASlopeTheTapeLiesOnTheGround()
    {
        var rows = Card(Yard.Sloped(150, 0.25)).Rows;
        Assert.Equal(17, rows.Count);
        Assert.Equal(154.62, rows[^1].Tape.Feet, 0.005);
        Assert.Equal("19' 4\"", TapeMark.Text(rows[2].Tape, UnitSystem.UsCustomary));
        Assert.Equal(72.2, rows[2].AboveStake.Inches, 0.05);
    }

    /// <summary>Ground at 100 ft all along, the laser at 108.50 ft. The fabric hangs an inch over the ground, 2 in over a line post's top and 2 in under a terminal's: 71 and 75 in up, the rod reads 31 and 27 in.</summary>
    [Fact]
    public void TheRodReadsTheLaserLessTheTop()
    {
        var card = Card(Yard.Shot(100, 100), Length.FromFeet(108.5));
        Assert.True(card.Ground);
        Assert.Equal(27, card.Rows[0].Rod!.Value.Inches, 0.01);
        Assert.Equal(31, card.Rows[1].Rod!.Value.Inches, 0.01);
        Assert.False(card.Rows[1].UnderTop);
        Assert.True(Card(Yard.Shot(100, 100), Length.FromFeet(105)).Rows[1].UnderTop);
    }

    [Fact]
    public void WithoutMeasuredGroundThereIsNoRod()
    {
        var card = Card(Yard.Job, Length.FromFeet(108.5));
        Assert.False(card.Ground);
        Assert.All(card.Rows, r => Assert.Null(r.Rod));
    }

    /// <summary>The tape of a half inch or half a centimetre never adds up: a third of a hundred feet is 33' 4", two thirds 66' 8".</summary>
    [Fact]
    public void MarksAreRoundedFromTheStart()
    {
        Assert.Equal("33' 4\"", TapeMark.Text(Length.FromFeet(100 / 3.0), UnitSystem.UsCustomary));
        Assert.Equal("66' 8\"", TapeMark.Text(Length.FromFeet(200 / 3.0), UnitSystem.UsCustomary));
        Assert.Equal("33.335 m", TapeMark.Text(Length.FromMetres(33.3333), UnitSystem.Metric));
    }

    /// <summary>A square of 40 ft that closes: its fourth run ends where the tape has gone 40 ft, not back at nothing.</summary>
    [Fact]
    public void AClosedLineEndsWithTheWholeRunOnTheTape()
    {
        var plan = Yard.Plan(Yard.Closed(40)).Now;
        var rows = StakeCard.Of(plan, 0, 3, null).Rows;
        Assert.Equal(40, rows[^1].Tape.Feet, 0.001);
        Assert.Equal(PostKind.Corner, rows[^1].Kind);
        Assert.Equal(1, rows[^1].Number);
    }
}
