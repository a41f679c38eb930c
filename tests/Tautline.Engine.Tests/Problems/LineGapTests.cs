using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Problems;

/// <summary>Lines that end close to one another and do not meet.</summary>
public sealed class LineGapTests
{
    private static Job Job(params Line[] lines)
    {
        var keys = OrderKey.Spread(lines.Length);
        return Some.Job(lines[0]) with { Lines = [.. lines.Select((l, i) => l with { Order = keys[i] })] };
    }

    private static List<Problem> Told(params Line[] lines) => [.. Some.Plan(Job(lines)).Problems.Where(p => p.Code == ProblemCode.LinesGap)];

    private static Line Straight(string id, (double, double) from, (double, double) to) => Some.Line(id, false, [from, to]);

    private static readonly Line first = Straight("back", (0, 0), (0, 100));

    [Fact]
    public void TwoEndsFourFeetApartAreToldOnce()
    {
        var told = Assert.Single(Told(first, Straight("side", (4, 100), (80, 100))));
        Assert.Equal(Severity.Note, told.Severity);
        Assert.Equal(("lines[0]", "back", 100.0), (told.Place.Path, told.Place.Line!.Value.Value, Math.Round(told.Place.Station!.Value.Feet, 6)));
        Assert.Equal("The end of line 'back' and the start of line 'side' are 4' 0\" apart: a person or a dog gets through.", ProblemText.Message(told, UnitSystem.UsCustomary));
        Assert.Equal("Join them, or say what stands between with a tie-in.", ProblemText.Hint(told, UnitSystem.UsCustomary));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.03, 0)] // 9.1 mm
    [InlineData(0.035, 1)] // 10.7 mm
    [InlineData(5.99, 1)]
    [InlineData(6.01, 0)]
    public void FromTenMillimetresToSixFeetItIsAGap(double feet, int told) => Assert.Equal(told, Told(first, Straight("side", (feet, 100), (80, 100))).Count);

    /// <summary>The squares that ends are sorted into are of 6 ft: neighbours across the corner of a square are neighbours too.</summary>
    [Fact]
    public void AGapAcrossTheGridIsFound()
        => Assert.Single(Told(Straight("a", (-90, -90), (-0.5, -0.5)), Straight("b", (0.5, 0.5), (90, 90))));

    [Fact]
    public void AnEndThatTiesInLeavesNoGap()
    {
        var tied = first with { Finish = new TieIn { Kind = TieIn.Building } };
        Assert.Empty(Told(tied, Straight("side", (4, 100), (80, 100))));
    }

    /// <summary>A cross fence that starts on the back fence 3 ft before its end, straight or on an arc.</summary>
    [Fact]
    public void AnEndThatStandsOnTheOtherLineLeavesNoGap()
    {
        Assert.Empty(Told(first, Straight("cross", (0, 97), (80, 97))));
        // A quarter circle of 50 ft about (50, 0) from (0, 0) to (50, 50); 3 ft of chord before its end: 50 (1 - cos), 50 sin of 86.5616 degrees.
        var leg = first.Vertices[0].Leg! with { Curve = new LegCurve { Radius = Length.FromFeet(50), Bends = "right" } };
        var arc = Straight("arc", (0, 0), (50, 50));
        arc = arc with { Vertices = [arc.Vertices[0] with { Leg = leg }, arc.Vertices[1]] };
        Assert.Empty(Told(arc, Straight("cross", (50 - 2.998650, 49.910000), (0, 90))));
        Assert.Single(Told(arc, Straight("cross", (50 - 2.998650, 50.2), (0, 90))));
    }

    /// <summary>Two stubs on one fence, 3 ft apart: what is between them is closed by the fence.</summary>
    [Fact]
    public void TwoEndsOnAThirdLineLeaveNoGap()
        => Assert.Empty(Told(first, Straight("stub", (0, 50), (20, 50)), Straight("other", (0, 53), (20, 60))));

    [Fact]
    public void ALineThatAllButClosesIsTold()
    {
        var told = Assert.Single(Told(Some.Line("yard", false, [(0, 0), (0, 60), (90, 60), (90, 0), (3, 0)])));
        Assert.Equal("The start of line 'yard' and the end of line 'yard' are 3' 0\" apart: a person or a dog gets through.", ProblemText.Message(told, UnitSystem.UsCustomary));
    }

    [Fact]
    public void TheEndsOfOneShortLineAreNoGap() => Assert.Empty(Told(Straight("stub", (0, 0), (0, 5))));

    [Fact]
    public void AmongAThousandLinesEachGapIsToldOnce()
    {
        var told = Told([.. Enumerable.Range(0, 1000).Select(i => Straight($"line{i:000}", (i * 24.0, 0), (i * 24.0 + 20, 0)))]);
        Assert.Equal(Enumerable.Range(0, 999).Select(i => $"line{i:000}"), told.Select(t => t.Place.Line!.Value.Value));
        Assert.All(told, t => Assert.Equal(4, new Length(t.Figures[4].Value).Feet, 6));
    }
}
