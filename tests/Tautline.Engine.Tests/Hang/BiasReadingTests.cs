using CsCheck;
using Tautline.Engine.Fabric;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using static Tautline.Engine.Tests.Hang.Hung;

namespace Tautline.Engine.Tests.Hang;

/// <summary>The cut of a far end from two tape readings under tension.</summary>
public sealed class BiasReadingTests
{
    private static BiasReadings Readings(double top, double bottom) => new(In(top), In(bottom), In(1.4), In(1.4));

    /// <summary>The counted example read off a tape (common practice, no source): 31 1/8 and 35 5/16 in; 4 3/16 is three pickets of 1.40.</summary>
    [Fact]
    public void ThreePicketsFromTwoReadings()
    {
        var told = BiasReader.Read(Spec(84), Readings(31.125, 35.3125));
        var cut = told.Value!;
        Assert.Equal((3, "8 16", LongEdge.Top), (cut.Cut.Columns, Numbers(cut.Cut.Crossings), cut.Cut.LongEdge));
        Assert.Equal((3, 3, 22), (cut.ColumnsLow, cut.ColumnsHigh, cut.StartAfter)); // 31.125 / 1.4 = 22.2
        Assert.Equal(4.1875, cut.Mismatch.Inches, 9);
    }

    [Fact]
    public void TheEdgeThatReadsMoreReachesFartherAndTheOtherIsCutBack()
    {
        Assert.Equal(LongEdge.Bottom, BiasReader.Read(Spec(84), Readings(40, 30)).Value!.Cut.LongEdge);
        var even = BiasReader.Read(Spec(84), Readings(30, 30)).Value!.Cut;
        Assert.Equal((0, LongEdge.None, true), (even.Columns, even.LongEdge, even.Dressed));
    }

    [Fact]
    public void WithoutMeasuredPicketsColumnsAreARange()
    {
        var cut = BiasReader.Read(Spec(72), new(In(48), In(30), In(1.36), In(1.60))).Value!;
        Assert.Equal((11, 12, 13), (cut.ColumnsLow, cut.Cut.Columns, cut.ColumnsHigh)); // 18 over 1.60, 1.48, 1.36
    }

    /// <summary>There and back: the mismatch of a slope, read on a tape to a sixteenth, gives the plan's cut unless it lies on the edge between two.</summary>
    [Fact]
    public void ReadingsOfAPlannedSlopeGiveThePlannedCut() => Gen.Select(Gen.Double[-0.5, 0.5], Gen.Double[20, 60]).Always((rise, from) =>
    {
        var spec = Spec(72, calibrated: true);
        var planned = Bias.Cut(spec, new Slope(rise), In(1.4));
        var longer = Math.Round((from + 72 * Math.Abs(rise)) * 16) / 16;
        var (top, bottom) = rise > 0 ? (longer, from) : (from, longer); // uphill the top has farther to reach
        var read = BiasReader.Read(spec, Readings(top, bottom)).Value!.Cut;
        var share = 72 * Math.Abs(rise) / 1.4 + 0.5;
        if (Math.Abs(share - Math.Round(share)) < 0.05) return;
        Assert.Equal((planned.Columns, planned.LongEdge, Numbers(planned.Crossings)), (read.Columns, read.LongEdge, Numbers(read.Crossings)));
    });

    private static readonly Dictionary<string, (BiasReadings Readings, ProblemCode[] Codes, string Says)> slips = new()
    {
        ["negative"] = (Readings(-3, 30), [ProblemCode.BiasReading], "The reading along the top edge is -3\". Mark one picket short of where the bar will stand"),
        ["both nothing"] = (Readings(0, 0), [ProblemCode.BiasReading, ProblemCode.BiasReading], "both readings are above zero"),
        ["swapped"] = (Readings(48, 30) with { Expected = LongEdge.Top }, [ProblemCode.BiasEdges], "By the readings the top has to reach farther by 1' 6\"; by the slope of the rail it is the bottom."),
        ["too much"] = (Readings(100, 20), [ProblemCode.BiasTooMuch], "Top and bottom differ by 6' 8\""),
        ["feet for inches"] = (Readings(48, 30) with { AdvanceLow = In(14), AdvanceHigh = In(14) }, [ProblemCode.CalibrationRange], "Ten pickets over 11' 8\" cannot be this mesh."),
        ["endless"] = (Readings(double.PositiveInfinity, 30), [ProblemCode.NotFinite], "finite"),
        ["all at once"] = (Readings(-1, double.NaN) with { AdvanceLow = In(0) }, [ProblemCode.BiasReading, ProblemCode.NotFinite, ProblemCode.CalibrationRange], "-1\""),
    };

    public static TheoryData<string> Slips => [.. slips.Keys];

    [Theory]
    [MemberData(nameof(Slips))]
    public void ASlipIsToldWithWhatWouldBeRight(string slip)
    {
        var (readings, codes, says) = slips[slip];
        var told = BiasReader.Read(Spec(72), readings);
        Assert.False(told.Ok);
        Assert.Equal(codes, told.Problems.Select(p => p.Code));
        Assert.Contains(says, Said(told.Problems[0]), StringComparison.Ordinal);
        Assert.DoesNotContain("{", Said(told.Problems[0]), StringComparison.Ordinal);
    }

    /// <summary>One picket the other way is dressing, not a contradiction.</summary>
    [Fact]
    public void ASmallMismatchContradictsNothing()
        => Assert.True(BiasReader.Read(Spec(72), Readings(31, 30) with { Expected = LongEdge.Top }).Ok);
}
