using Tautline.Engine.Fabric;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Field.Cards;

namespace Tautline.Field.Tests.Cards;

public sealed class FarCutTests
{
    private static FarCut Cut(double top, double bottom, double? ten, double heightFeet, double grade, int end = 1, FirstInterlock first = FirstInterlock.Unknown)
    {
        var sloped = Yard.Sloped(100, grade);
        var job = sloped with { Specs = [sloped.Specs[0] with { Height = Length.FromFeet(heightFeet) }] };
        return FarCut.Of(Yard.Plan(job).Now, 0, 0, end, Length.FromInches(top), Length.FromInches(bottom), ten is { } t ? Length.FromInches(t) : null, first);
    }

    /// <summary>Check job 4, the trade's counted example: 84 in has 24 rows, readings that differ by 4.2 in at 1.40 in a picket are three columns. Cross at 8 and 16, out at the bottom.</summary>
    [Fact]
    public void ThreePicketsOverTwentyFourRowsCrossAtEightAndSixteen()
    {
        var cut = Cut(30, 25.8, 14, 7, 0.05).Measured!.Cut;
        Assert.Equal((3, 24, LongEdge.Bottom), (cut.Columns, cut.Rows, cut.LongEdge));
        Assert.Equal([8, 16], cut.Crossings);
    }

    /// <summary>Check job 3: 72 in at 25 % is 18 in of mismatch: 13 columns, 12 crossings. The bottom is long at the top end.</summary>
    [Fact]
    public void EighteenInchesAreThirteenColumns()
    {
        var far = Cut(40, 22, 14, 6, 0.25);
        Assert.Equal((13, LongEdge.Bottom), (far.Measured!.Cut.Columns, far.Measured.Cut.LongEdge));
        Assert.Equal(12, far.Measured.Cut.Crossings.Count);
        Assert.Equal(12, far.Card!.Path.Count(s => s.Line == CutLine.StepOver));
        Assert.Empty(far.Problems);
    }

    /// <summary>Readings that say the other edge is long than the slope says are told: the tape was most likely held the wrong way round.</summary>
    [Fact]
    public void ReadingsTheWrongWayRoundAreTold()
        => Assert.Equal(ProblemCode.BiasEdges, Assert.Single(Cut(22, 40, 14, 6, 0.25).Problems).Code);

    /// <summary>About one picket or less is dressed out with a short puller, not cut: trade notes, 1.5.</summary>
    [Fact]
    public void OnePicketIsDressedOut()
    {
        Assert.True(Cut(30, 28.6, 14, 6, 0.02).Measured!.Cut.Dressed);
        Assert.True(Cut(30, 30, 14, 6, 0).Measured!.Cut.Dressed);
    }

    [Fact]
    public void AReadingOfNothingIsRefused()
    {
        var cut = Cut(0, 25, 14, 6, 0.05);
        Assert.Null(cut.Measured);
        Assert.Equal(ProblemCode.BiasReading, Assert.Single(cut.Problems).Code);
    }

    /// <summary>Looked at: with interlocks of the first crossing on halves, three columns over 24 rows cross at 7½ or 8½ first and at a whole row then.</summary>
    [Fact]
    public void OnceLookedAtCrossingsAlternate()
    {
        var crossings = Cut(30, 25.8, 14, 7, 0.05, first: FirstInterlock.Half).Measured!.Cut.Crossings;
        Assert.Equal([8.5, 16], crossings);
    }
}
