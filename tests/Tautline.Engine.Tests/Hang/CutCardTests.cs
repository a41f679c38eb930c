using CsCheck;
using Tautline.Engine.Fabric;
using Tautline.Engine.Quantities;
using static Tautline.Engine.Tests.Hang.Hung;

namespace Tautline.Engine.Tests.Hang;

/// <summary>The cut on one sheet: letters, strokes, words.</summary>
public sealed class CutCardTests
{
    private static readonly Length advance = In(1.4);

    private static CutCard Card(int columns, int rows, LongEdge edge, FirstInterlock first = FirstInterlock.Unknown)
        => CutCard.Of(Bias.Cut(columns * advance, edge, advance, rows, first), advance);

    /// <summary>Row 10 of trade_practice.md, common practice, no source: cut at 8, move over one, cut at 16, move over one, run out at the bottom.</summary>
    [Fact]
    public void TheCountedExampleInWords() => Assert.Equal(
        [
            "Left square the end would miss the terminal at the top and pass it at the bottom: the cut runs over 3 pickets and takes the bottom back.",
            "At the top, begin on the end picket.",
            "Count 8 down, step over one picket toward the roll.",
            "Count 8 more, to 16, step over one picket toward the roll.",
            "Count 8 down and run out at the bottom.",
        ], Card(3, 24, LongEdge.Bottom).Words.Take(5));

    [Fact]
    public void DownhillItStepsTowardTheTerminal()
    {
        var words = Card(3, 24, LongEdge.Top).Words;
        Assert.Equal("At the top, begin on picket 3 counted in from the end.", words[1]);
        Assert.Equal("Count 8 down, step over one picket toward the terminal.", words[2]);
        Assert.Contains(words, w => w.StartsWith("Cut mid-leg, leave the interlocked bend whole", StringComparison.Ordinal));
    }

    [Fact]
    public void OnePicketIsDressedAtTheShortEdge()
    {
        var words = Card(1, 20, LongEdge.Bottom).Words;
        Assert.Equal("Dress it out with a short puller at the top, the short edge.", words[1]);
        Assert.Single(Card(0, 20, LongEdge.None).Words);
    }

    /// <summary>Drawn by hand: three columns over four rows, 1 1/2 and 2 1/2 down.</summary>
    [Fact]
    public void ThreeColumnsInLetters() => Assert.Equal(
        [
            "   top roll this side, terminal that side ->",
            @"     0 \/\/|..",
            @"       /\/\|..",
            @"       \/\/|..",
            @" 1 1/2>/\/\/|.",
            @"       \/\/\|.",
            @" 2 1/2>/\/\/\|",
            @"       \/\/\/|",
            @"       /\/\/\|",
            "bottom",
        ], Card(3, 4, LongEdge.Top).Drawing);

    /// <summary>
    /// By coordinates alone: the rail rises t to the right, pickets stand square to it, so a picket's direction is (-t, 1); the terminal is plumb
    /// at x = 0 with the fabric to its left. A picket that meets the terminal at the bottom is W t short of it at the top, measured along the rail. So as cut
    /// the fabric reaches farther at the top going uphill, and at the bottom going downhill.
    /// </summary>
    [Theory]
    [InlineData(0.25)]
    [InlineData(0.1)]
    [InlineData(-0.1)]
    [InlineData(-0.25)]
    public void ThePathFollowsAPlumbTerminal(double t)
    {
        var length = Math.Sqrt(1 + t * t);
        var topOfPicket = (X: -t / length * 72, Y: 72 / length); // from (0, 0), 72 in square to the rail
        var alongTop = -topOfPicket.X * length; // from there along the rail to x = 0
        var pickets = alongTop / 1.4; // by which the top is to reach farther
        var card = CutCard.Of(Bias.Cut(Spec(72, calibrated: true), new Slope(t), advance), advance);
        var reach = 2 * (Math.Min(card.Path[0].FromX, card.Path[0].ToX) - Math.Min(card.Path[^1].FromX, card.Path[^1].ToX));
        Assert.Equal(Math.Sign(pickets), Math.Sign(reach));
        Assert.InRange(Math.Abs(pickets) - Math.Abs(reach), 0.5, 1.5); // N columns are N - 1 steps
    }

    [Fact]
    public void NoLineIsLongerThan79Letters() => Gen.Select(Gen.Int[0, 160], Gen.Int[6, 48], Gen.Enum<LongEdge>(), Gen.Enum<FirstInterlock>()).Always((columns, rows, edge, first) =>
    {
        var card = Card(columns, rows, edge, first);
        Assert.All(card.Drawing, l => Assert.True(l.Length <= 79, l));
        if (card.Cut.Cuttable) Assert.InRange(card.Drawing.Count, 2 * rows + 2, 2 * rows + 3);
    });

    /// <summary>Forty columns over twenty rows: an interlock each half row is not enough.</summary>
    [Fact]
    public void WhatCannotBeCutIsNotDrawn()
    {
        var card = Card(40, 20, LongEdge.Bottom);
        Assert.Empty(card.Drawing);
        Assert.Equal("Step the fence there.", card.Words[^1]);
        Assert.NotEmpty(Card(39, 20, LongEdge.Bottom).Drawing);
    }

    /// <summary>The path goes from the top edge to the bottom edge without a gap, half a diamond at a time, and steps over once for each crossing.</summary>
    [Fact]
    public void ThePathIsOneLineFromEdgeToEdge() => Gen.Select(Gen.Int[2, 39], Gen.Int[20, 48], Gen.Enum<LongEdge>(), Gen.Enum<FirstInterlock>()).Always((columns, rows, edge, first) =>
    {
        var card = Card(columns, rows, edge, first);
        Assert.Equal((0, rows), (card.Path[0].FromY, card.Path[^1].ToY));
        Assert.All(card.Path.Zip(card.Path.Skip(1)), p => Assert.Equal((p.First.ToX, p.First.ToY), (p.Second.FromX, p.Second.FromY)));
        Assert.Equal(card.Crossings, card.Path.Where(s => s.Line == CutLine.StepOver).Select(s => s.FromY));
        // All wires of the sheet: kept, taken off and path, one leg for each picket and half row.
        Assert.Equal(2 * rows * (columns + 3), card.Mesh.Count + card.Path.Count(s => s.Line == CutLine.Path));
    });

    /// <summary>Where the end was looked at the two pickets touch at the step-over, so it is a point on the lattice.</summary>
    [Fact]
    public void AKnownCrossingLiesOnAnInterlock() => Gen.Select(Gen.Int[2, 30], Gen.Int[20, 48], Gen.Bool, Gen.Bool).Always((columns, rows, top, whole) =>
    {
        var card = Card(columns, rows, top ? LongEdge.Top : LongEdge.Bottom, whole ? FirstInterlock.Whole : FirstInterlock.Half);
        Assert.All(card.Path.Where(s => s.Line == CutLine.StepOver), s => Assert.Equal((s.FromX, s.FromY), (s.ToX, s.ToY)));
    });

    /// <summary>By hand: of 3 columns and 24 rows the part pickets are 8 and 16 diamonds, so 48 legs are taken off.</summary>
    [Theory]
    [InlineData(LongEdge.Bottom)]
    [InlineData(LongEdge.Top)]
    public void WhatIsDrawnAsTakenOffIsTheWaste(LongEdge edge)
    {
        var card = Card(3, 24, edge);
        Assert.Equal(48, card.Mesh.Count(s => s.Line == CutLine.TakenOff));
        Assert.Equal(1.4, card.Waste.Inches, 9);
    }
}
