using CsCheck;
using Tautline.Engine.Fabric;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using static Tautline.Engine.Tests.Hang.Hung;

namespace Tautline.Engine.Tests.Hang;

/// <summary>The shape of a diamond and what measurements on it say. Wires of 2-in 9-ga mesh are 2.148 in apart.</summary>
public sealed class MeshTests
{
    private static readonly Length wires = In(2.148);

    private static MeshReading Read(MeshMeasured measured, bool calibrated = false)
    {
        var told = MeshReader.Read(Spec(72, calibrated), measured);
        Assert.True(told.Ok, string.Join(' ', told.Problems.Select(Said)));
        return told.Value;
    }

    /// <summary>
    /// Texas DOT Standard Specifications, Item 550: at least 7 meshes in 23 in of vertical diagonal. On the limit c = 23/14 in; a side stands
    /// at half the top angle from plumb, sin = 2.148 / 2c, so 40.824 degrees, and a = c tan 40.824 = 1.4193 in, by angles, not by our formula.
    /// </summary>
    [Fact]
    public void SevenMeshesIn23InchesAreAnAdvanceOf1Point419()
    {
        var limit = MeshShape.FromHalfDiamond(wires, In(23.0 / 14))!;
        Assert.Equal(1.4193, limit.Advance.Inches, 4);
        Assert.Equal(7, limit.Count(In(23)), 9);
    }

    /// <summary>
    /// The same rule against the table: the published count over the height (20 1/2 at 72 in) would be 6.55 meshes in 23 in and fail, since
    /// the height holds both selvages; the other end of the range, 1.60 in, passes with 7.93.
    /// </summary>
    [Fact]
    public void ThePublishedCountOverstatesTheDiamondAndTheTexasCountShowsIt()
    {
        var delivered = MeshReader.Delivered(Spec(72));
        Assert.Equal([6.55, 7.94], delivered.Select(d => Math.Round(d.Count(In(23)), 2)));
        Assert.Equal([1.36, 1.60], delivered.Select(d => Math.Round(d.Advance.Inches, 2)));
    }

    /// <summary>fabric_geometry_calc.csv, rows 9-ga and 6-ga, 2-in: advance from clear mesh, wire and count, printed to a hundredth.</summary>
    [Theory]
    [InlineData(0.148, 36, 10.5, 1.38)]
    [InlineData(0.148, 48, 13.5, 1.35)]
    [InlineData(0.148, 72, 20.5, 1.36)]
    [InlineData(0.148, 84, 24.5, 1.38)]
    [InlineData(0.148, 120, 34.5, 1.37)]
    [InlineData(0.192, 36, 10.5, 1.43)]
    [InlineData(0.192, 42, 12.5, 1.45)]
    [InlineData(0.192, 84, 24.5, 1.43)]
    [InlineData(0.120, 48, 13.5, 1.32)]
    [InlineData(0.120, 144, 41.5, 1.34)]
    public void AdvanceByTheGeometryTable(double wire, double height, double diamonds, double advance)
        => Assert.Equal(advance, MeshShape.FromHalfDiamond(In(2 + wire), In(height / diamonds / 2))!.Advance.Inches, 2);

    /// <summary>A 3-4-5 leg: pulled from an advance of 3 to one of 4 the half diamond falls from 4 to 3.</summary>
    [Fact]
    public void StretchingKeepsTheWire()
    {
        var pulled = new MeshShape(In(3), In(4)).AtAdvance(In(4))!;
        Assert.Equal((4, 3, 5), (pulled.Advance.Inches, Math.Round(pulled.HalfDiamond.Inches, 9), Math.Round(pulled.Leg.Inches, 9)));
        Assert.Null(new MeshShape(In(3), In(4)).AtAdvance(In(5)));
        // Parallel sides of that rhombus are twice its area over its side apart, area 2 * 3 * 4 = 24, side 5: 4.8 in.
        Assert.Equal(4.8, pulled.Wires.Inches, 9);
    }

    [Fact]
    public void WhatWasWovenIsFoundFromWhatIsStretched() => Gen.Select(Gen.Double[1.2, 1.518], Gen.Double[0.95, 1.15]).Always((woven, pull) =>
    {
        var delivered = MeshShape.FromAdvance(wires, In(woven))!;
        var now = delivered.AtAdvance(In(woven * pull))!;
        var found = MeshShape.Woven(wires, now.Leg);
        Assert.Equal(woven, found.Advance.Inches, 6);
        Assert.Equal(pull - 1, new MeshChange(found, now).Stretch, 6);
        Assert.Equal(wires.Inches, delivered.Wires.Inches, 9);
    });

    /// <summary>
    /// Delivered 14 in over ten pickets, hung it measures 14 1/2. By hand: c was 1.40 * 2.148 / root(4 * 1.96 - 4.6139) = 1.67412;
    /// now root(1.40^2 + 1.67412^2 - 1.45^2) = 1.63101; over 20 1/2 diamonds 41 * 0.04311 = 1.77 in are lost, 3.6 % of length gained.
    /// </summary>
    [Fact]
    public void HalfAnInchOverTenPicketsCostsAnInchAndThreeQuarters()
    {
        var read = Read(new(TenPickets: In(14.5)), calibrated: true);
        Assert.Equal(0.0357, read.StretchLow, 4);
        Assert.Equal(read.StretchLow, read.StretchHigh);
        Assert.Equal(1.77, read.LostLow.Inches, 2);
        Assert.Contains(HangWords.Mesh(read, UnitSystem.UsCustomary), w => w.Contains("forbid", StringComparison.Ordinal) && w.Contains("UFGS-02821A, 3.7", StringComparison.Ordinal));
    }

    [Fact]
    public void WithoutACalibrationItMayBeUndecided()
    {
        var read = Read(new(TenPickets: In(14.5)));
        Assert.True(read.StretchLow < 0 && read.StretchHigh > 0);
        Assert.False(read.Decided);
        Assert.Contains(HangWords.Mesh(read, UnitSystem.UsCustomary), w => w.Contains("Measure ten pickets of the roll", StringComparison.Ordinal));
    }

    /// <summary>By hand: twelve diamonds over 39 1/8 in are c = 1.63021, so a = root(1.40^2 + 1.67412^2 - 1.63021^2) = 1.4509.</summary>
    [Fact]
    public void ACountOfDiamondsTellsTheSame()
    {
        var read = Read(new(Diamonds: 12, Over: In(39.125)), calibrated: true);
        Assert.Equal(1.4509, read.Changes.Single().Now.Advance.Inches, 3);
    }

    [Fact]
    public void MeasuredBothWaysNoCalibrationIsNeeded()
    {
        var read = Read(new(TenPickets: In(14.5), Diamonds: 10, Over: In(32.62)));
        Assert.Equal(1.40, read.Changes.Single().Delivered.Advance.Inches, 2);
        Assert.Equal(0.036, read.StretchLow, 2);
    }

    /// <summary>Row 3 of trade_practice.md (common practice, no source): about 1/2 in or a little less; trade notes: many say 1/4.</summary>
    [Theory]
    [InlineData(0.125, Squeezed.BarTight)]
    [InlineData(0.25, Squeezed.Good)]
    [InlineData(0.4375, Squeezed.Good)]
    [InlineData(0.5, Squeezed.Good)]
    [InlineData(0.75, Squeezed.Slack)]
    public void TheSqueezeTestHoldsARange(double gap, Squeezed expected)
        => Assert.Equal(expected, Read(new(Squeeze: In(gap))).Squeezed);

    public static TheoryData<string> Slips => [.. slips.Keys];

    private static readonly Dictionary<string, (MeshMeasured Measured, ProblemCode Code, string Says)> slips = new()
    {
        ["nothing"] = (new(), ProblemCode.MeshNothing, "Nothing was measured"),
        ["height without count"] = (new(Over: In(36)), ProblemCode.MeshCountAlone, "Give both"),
        ["count without height"] = (new(Diamonds: 12), ProblemCode.MeshCountAlone, "Give both"),
        ["eleven pickets and a foot"] = (new(TenPickets: In(22)), ProblemCode.CalibrationRange, "ten pickets measure between 11 9/16\" and 1' 6 3/8\""),
        ["not a number"] = (new(TenPickets: new Length(double.NaN)), ProblemCode.NotFinite, "finite"),
        ["half the diamonds"] = (new(Diamonds: 6, Over: In(36)), ProblemCode.MeshCount, "6 diamonds over 3' 0\" cannot be this mesh."),
        ["no diamonds"] = (new(Diamonds: 0, Over: In(36)), ProblemCode.MeshCount, "Count again, plumb"),
        ["contradiction"] = (new(TenPickets: In(12), Diamonds: 12, Over: In(30)), ProblemCode.MeshContradicts, "Measure both again"),
        ["negative gap"] = (new(Squeeze: In(-1)), ProblemCode.SqueezeRange, "between nothing and the mesh opening, 2\""),
    };

    [Theory]
    [MemberData(nameof(Slips))]
    public void ASlipIsToldWithWhatWouldBeRight(string slip)
    {
        var (measured, code, says) = slips[slip];
        var told = MeshReader.Read(Spec(72), measured);
        Assert.False(told.Ok);
        Assert.Equal(code, told.Problems.Single().Code);
        Assert.Contains(says, Said(told.Problems.Single()), StringComparison.Ordinal);
        Assert.DoesNotContain("{", Said(told.Problems.Single()), StringComparison.Ordinal);
    }

    [Fact]
    public void AllSlipsAreToldTogether()
    {
        var told = MeshReader.Read(Spec(72), new(TenPickets: In(22), Diamonds: 6, Over: In(36), Squeeze: In(3)));
        Assert.Equal([ProblemCode.CalibrationRange, ProblemCode.MeshCount, ProblemCode.SqueezeRange], told.Problems.Select(p => p.Code));
    }

    /// <summary>A job's calibration and a reading in the field are held against the same range.</summary>
    [Fact]
    public void TheJobsCalibrationIsRefusedAtTheSameLength()
    {
        var (low, high) = MeshFormulas.TenPickets(Spec(72));
        foreach (var (length, refused) in new[] { (low, false), (low - In(0.01), true), (high, false), (high + In(0.01), true) })
        {
            var job = Some.StraightHundred() with { Calibrations = [new RollCalibration { Spec = new("fence"), TenPickets = length }] };
            Assert.Equal(refused, Some.Plan(job).Problems.Any(p => p.Code == ProblemCode.CalibrationRange));
            Assert.Equal(refused, !MeshReader.Read(Spec(72), new(TenPickets: length)).Ok);
        }
    }
}
