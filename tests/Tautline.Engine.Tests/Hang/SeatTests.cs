using Tautline.Engine.Catalog;
using Tautline.Engine.Fabric;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;
using static Tautline.Engine.Tests.Hang.Hung;

namespace Tautline.Engine.Tests.Hang;

/// <summary>Where the fabric hangs at its top, and the gap that follows. At an advance of 1.40 in half a diamond is 1.674 in (by hand in MeshTests).</summary>
public sealed class SeatTests
{
    private static ResolvedSpec With(string selvage, string top = "rail")
        => Spec(72, calibrated: true, s => s with { Selvage = selvage, Top = top, Brace = "yes" });

    /// <summary>Row 8 of trade_practice.md, common practice, no source: half a diamond above the rail's centre.</summary>
    [Fact]
    public void AKnuckledTopSitsHalfADiamondOverTheRailsCentre()
    {
        var seat = Seating.FromFabric(With("KK"), Slope.Level, In(72), In(70));
        Assert.Equal((SeatOn.Rail, 0), (seat.On, seat.Tail.Metres));
        Assert.Equal(1.674, seat.TopOver.Low.Inches, 3);
        Assert.Equal(seat.TopOver.Low, seat.TopOver.High);
        Assert.Equal(70.326, seat.Carrier.Low.Inches, 3);
        Assert.Equal(0.326, seat.CapOffset.Low.Inches, 3); // line post 2 in under the fabric: the cap carries the rail a third of an inch up
        Assert.Equal(0, seat.Gap.Low.Inches, 9);
        Assert.Equal(
            [
                "Middle of the top diamond on the middle of the top rail: top of the fabric 1 11/16\" over it (common practice, verify).",
                "The rail's middle is 70 5/16\" over the ground, 5/16\" over the line post's top.",
                "Under the fabric 0\".",
            ], HangWords.Seat(seat, UnitSystem.UsCustomary));
    }

    /// <summary>Trade notes 12 (common practice): a twisted top adds its tail, nearly an inch. Then the usual post stands through the rail's centre.</summary>
    [Fact]
    public void ATwistedTopAddsItsTail()
    {
        var seat = Seating.FromFabric(With("TK"), Slope.Level, In(72), In(70));
        Assert.Equal((2.674, 1), (Math.Round(seat.TopOver.Low.Inches, 3), Math.Round(seat.Tail.Inches, 9)));
        Assert.True(seat.CapOffset.Low < Length.Zero);
        Assert.True(Seating.FromFabric(With("KT"), Slope.Level, In(72), In(70)).Tail == Length.Zero);
    }

    /// <summary>By hand: post 70 in, cap 1 in, rail at 71, knuckles at 72.674; 72 in of fabric ends 0.674 in over the ground, a twisted top 1.674.</summary>
    [Theory]
    [InlineData("KK", 0.674)]
    [InlineData("TK", 1.674)]
    public void TheGapFollowsFromPostAndCap(string selvage, double gap)
        => Assert.Equal(gap, Seating.FromPost(With(selvage), Slope.Level, In(70), In(1)).Gap.Low.Inches, 3);

    /// <summary>Trade notes 2: 72 in at 25 % stand 74.2 in plumb. Half a diamond stands 1.674 * 1.03078 = 1.726 in.</summary>
    [Fact]
    public void OnAGradeAllStandsTaller()
    {
        var seat = Seating.FromPost(With("KK"), new Slope(0.25), In(73.2), In(1));
        Assert.Equal(1.726, seat.TopOver.Low.Inches, 3);
        Assert.Equal(74.2 + 1.726 - 74.216, seat.Gap.Low.Inches, 3);
    }

    [Fact]
    public void BeforeCalibrationTheSeatIsARange()
    {
        var seat = Seating.FromPost(Spec(72), Slope.Level, In(70), In(1));
        Assert.Equal((1.45, 1.76), (Math.Round(seat.TopOver.Low.Inches, 2), Math.Round(seat.TopOver.High.Inches, 2)));
        Assert.Equal((0.45, 0.76), (Math.Round(seat.Gap.Low.Inches, 2), Math.Round(seat.Gap.High.Inches, 2)));
        var fixedTop = Seating.FromFabric(Spec(72), Slope.Level, In(72), In(70));
        Assert.True(fixedTop.Carrier.Low < fixedTop.Carrier.High);
    }

    /// <summary>
    /// Top wire: within 2 in of the fabric's top (Caltrans 80-3.03, seen). Half a diamond, 1.674 in, keeps it; with a twisted top 2.674 in does
    /// not, which is told. The base set states none.
    /// </summary>
    [Theory]
    [InlineData("KK", "caltrans", true)]
    [InlineData("TK", "caltrans", false)]
    [InlineData("TK", "navy", true)] // MIL-HDBK-1013/10: top 6 in
    [InlineData("TK", "base", true)]
    public void ATopWireHasItsOwnSeat(string selvage, string rules, bool keeps)
    {
        var spec = With(selvage, "wire") with { Rules = RuleSets.Find(rules)! };
        var seat = Seating.FromFabric(spec, Slope.Level, In(72), In(70));
        Assert.Equal((SeatOn.Wire, keeps), (seat.On, seat.WireHighEnough));
        Assert.Equal(!keeps, HangWords.Seat(seat, UnitSystem.UsCustomary).Contains("The rule set wants the wire at most 2\" under the top of the fabric."));
    }
}
