using CsCheck;
using Tautline.Papers.Paper.Layout;

namespace Tautline.Documents.Tests;

public sealed class ColumnFitTests
{
    [Fact]
    public void WhatIsOverIsSharedInProportion() => Near([60, 96, 24], ColumnFit.Widths(180, [50, 80, 20], [10, 10, 10]));

    [Fact]
    public void WhatIsMissingIsTakenFromTheWidestColumns() => Near([40, 80, 80], ColumnFit.Widths(200, [40, 120, 90], [10, 10, 10]));

    [Fact]
    public void AColumnKeepsItsLongestWordWhileOthersCanGive() => Near([40, 100, 60], ColumnFit.Widths(200, [40, 120, 90], [10, 100, 10]));

    [Fact]
    public void AWishThatCannotBeMetGivesWayToTheNext() => Near([60, 140], ColumnFit.Widths(200, [60, 300], [60, 250], [30, 20]));

    [Fact]
    public void WhereNoWishFitsTheWidestStillGiveFirst() => Near([20, 180], ColumnFit.Widths(200, [20, 300], [20, 300]));

    [Fact]
    public void WidthsAlwaysAddUpToTheTable() =>
        Gen.Select(Gen.Double[1, 400].Array[1, 12], Gen.Double[0, 1].Array[12], Gen.Double[50, 600]).Always((natural, part, available) =>
        {
            double[] least = [.. natural.Zip(part, (n, p) => n * p)];
            double[] widths = ColumnFit.Widths(available, natural, least);

            Assert.Equal(available, widths.Sum(), 6);
            Assert.All(widths, w => Assert.True(w >= 0));
            if (least.Sum() <= available) Assert.All(widths.Zip(least), pair => Assert.True(pair.First >= pair.Second - 1e-6));
        });

    private static void Near(double[] expected, double[] found)
    {
        Assert.Equal(expected.Length, found.Length);
        for (int i = 0; i < expected.Length; i++) Assert.Equal(expected[i], found[i], 6);
    }
}
