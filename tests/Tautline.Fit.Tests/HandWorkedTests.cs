using Tautline.Engine.Layout.Fit;

namespace Tautline.Fit.Tests;

/// <summary>Fits worked by hand; the working stands in docs/checks/ground-fit.md.</summary>
public sealed class HandWorkedTests
{
    private static readonly FitLimits Limits = new(2, -0.05, 0.5, 0, 1, 0.1);

    private static readonly GroundVertex[] Hump = [new(0, 0), new(4, 0), new(4.5, 0.6), new(5, 0), new(9, 0)];

    [Fact]
    public void FourPostsOverAHumpRiseAsFarAsTheBendAllows()
    {
        var fit = GroundFit.Fit(new FitInput(Posts(), Hump, Limits));
        Heights([2, 2.3, 2.3, 2], fit.Tops);
        Assert.Equal(0.75, fit.Cost(Limits), 6);
        Heights([0, 0.25, 0], fit.Bays.Select(b => b.Cut));
        Heights([0.1, 0, -0.1], fit.Bays.Select(b => b.Slope));
        Heights([2.009975, 2, 2.009975], fit.Bays.Select(b => b.Plumb));
        Assert.Equal([1, 2], fit.Bindings.Where(b => b.Limit == FitLimit.Bend).Select(b => b.Index));
    }

    [Fact]
    public void WhatIsLeftOfTheHumpIsToBeCut()
    {
        var misfit = Assert.Single(GroundFit.Fit(new FitInput(Posts(), Hump, Limits, Remedies.Grading, TrenchWidth: 0.3)).Misfits);
        Assert.True(misfit.TooHigh);
        Heights([4.2916667, 4.7083333, 0.25, 0.0520833, 0.015625], [misfit.From, misfit.To, misfit.Deepest, misfit.Area, misfit.Volume]);
        Assert.Equal(Remedies.Grading, misfit.Remedy);
    }

    [Fact]
    public void PostsOverTheirStockLengthAreCounted()
    {
        var fit = GroundFit.Fit(new FitInput(Posts(2.2), Hump, Limits));
        Heights([2, 2.3, 2.3, 2], fit.Tops);
        Heights([0, 0.1, 0.1, 0], fit.Excess);
    }

    [Fact]
    public void WhereNoPostMayBeLongerTheHumpIsCutDeeper()
    {
        var fit = GroundFit.Fit(new FitInput(Posts(2.2), Hump, Limits, Remedies.Grading));
        Heights([2, 2.2, 2.2, 2], fit.Tops);
        Assert.Equal(1.05, fit.Cost(Limits), 6);
        Assert.Empty(fit.Violations);
    }

    [Fact]
    public void ALowHumpIsClearedWithNothingLeftOver()
    {
        var fit = GroundFit.Fit(new FitInput(Posts(), [new(0, 0), new(4, 0), new(4.5, 0.25), new(5, 0), new(9, 0)], Limits));
        Heights([2, 2.2, 2.2, 2], fit.Tops);
        Assert.Equal(0, fit.Cost(Limits), 7);
        Assert.Empty(fit.Misfits);
    }

    [Fact]
    public void WithoutAnyRemedyTheGapThatCannotBeKeptIsSaid()
    {
        var fit = GroundFit.Fit(new FitInput(Posts(), Hump, Limits, Remedies.None));
        var broken = Assert.Single(fit.Violations);
        Assert.Equal((FitLimit.LeastGap, 1), (broken.Limit, broken.Index));
        Assert.Equal(0.25, broken.Amount, 6);
    }

    [Fact]
    public void ADitchIsFilledUpToTheLargestGap()
    {
        // A ditch 1 m deep under level pins with no room to follow: gap at the bottom 1.1, allowed 0.5, so 0.6 of fill.
        FitPost[] posts = [new(0, true, 2.1), new(3, true, 2.1)];
        var fit = GroundFit.Fit(new FitInput(posts, [new(0, 0), new(1, 0), new(1.5, -1), new(2, 0), new(3, 0)], Limits with { FillCost = 2 }));
        Assert.Equal(3.6, fit.Cost(Limits with { FillCost = 2 }), 9);
        var misfit = Assert.Single(fit.Misfits);
        Assert.False(misfit.TooHigh);
        // Below -0.4 from station 1.2 to 1.8: half of 0.6 by 0.6.
        Heights([1.2, 1.8, 0.6, 0.18], [misfit.From, misfit.To, misfit.Deepest, misfit.Area]);
    }

    [Theory]
    [InlineData(3, 0.1)]
    [InlineData(4.5, 0.6)]
    public void OfAWallAtAPostEachBaySeesItsOwnSide(double wall, double most)
    {
        // Half a metre up at a post or within the second bay, pinned level 2.6: the fabric's bottom at 0.6 has 0.6 and 0.1 of gap under it.
        FitPost[] posts = [new(0, true, 2.6), new(3, true, 2.6), new(6, true, 2.6)];
        var fit = GroundFit.Fit(new FitInput(posts, [new(0, 0), new(wall, 0), new(wall, 0.5), new(6, 0.5)], Limits));
        Heights([0.6, most], fit.Bays.Select(b => b.MostGap));
        Heights([0.6, 0.1], fit.Bays.Select(b => b.LeastGap));
    }

    private static FitPost[] Posts(double longest = double.PositiveInfinity)
        => [new(0, true, 2), new(3, false, null, longest), new(6, false, null, longest), new(9, true, 2)];

    private static void Heights(double[] wanted, IEnumerable<double> found)
        => Assert.Equal(wanted, found, (a, b) => Math.Abs(a - b) < 1e-6);
}
