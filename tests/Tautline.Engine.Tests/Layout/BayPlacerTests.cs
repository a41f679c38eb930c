using CsCheck;
using Tautline.Engine.Layout;

namespace Tautline.Engine.Tests.Layout;

public sealed class BayPlacerTests
{
    [Fact]
    public void WithNothingInTheWayBaysAreEvenAndFewest()
    {
        var placing = BayPlacer.Place(101, 10, 2, []);
        Assert.Equal(11, placing.Posts.Count - 1);
        Assert.Equal(0, placing.Excess);
        Assert.All(Bays(placing), b => Assert.InRange(b, 9, 10));
    }

    [Fact]
    public void AForbiddenPostMovesToTheEdgeAndItsNeighboursShareTheRest()
    {
        // Four bays of 10 would stand at 20; the stretch 18..24 is forbidden.
        var placing = BayPlacer.Place(40, 12, 2, [new(18, 24)]);
        Assert.Equal([0, 9, 18, 29, 40], placing.Posts);
    }

    [Fact]
    public void AStretchLongerThanABayIsCrossedInOneWithTheExcessTold()
    {
        var placing = BayPlacer.Place(40, 10, 2, [new(12, 27)]);
        Assert.Equal(5, placing.Excess);
        Assert.Equal([0, 6, 12, 27, 34, 40], placing.Posts);
    }

    /// <summary>Every set of posts on a small grid, by brute force: least excess, fewest bays, smallest largest bay, least squares.</summary>
    [Fact]
    public void EqualsExhaustiveSearchOnSmallGrids()
        => Gen.Select(Gen.Int[6, 15], Gen.Int[2, 6], Gen.Int[0, 13], Gen.Int[1, 5], Gen.Int[0, 13], Gen.Int[1, 4])
            .Always((length, largest, from, width, from2, width2) =>
            {
                Forbidden[] zones = [new(from, from + width), new(from2, from2 + width2)];
                var found = Cost(BayPlacer.Place(length * 60L, largest * 60L, 1, [.. zones.Select(z => new Forbidden(z.From * 60, z.To * 60))]).Posts, largest * 60);
                var best = Best(length, largest, zones);
                Assert.True(found.CompareTo(best) <= 0, $"{length}/{largest} {zones[0]} {zones[1]}: placed {found}, search {best}");
            }, iter: 400);

    /// <summary>Whatever is in the way: posts ascend, sum to the run, stand in no forbidden stretch, and only told bays are too long.</summary>
    [Fact]
    public void PlacingKeepsItsPromises()
        => Gen.Select(Gen.Long[1_000_000, 60_000_000_000], Gen.Long[300_000_000, 4_000_000_000], Gen.Select(Gen.Long[0, 60_000_000_000], Gen.Long[1, 6_000_000_000]).List[0, 5])
            .Always((length, largest, list) =>
            {
                Forbidden[] zones = [.. list.Select(z => new Forbidden(z.Item1, z.Item1 + z.Item2))];
                var placing = BayPlacer.Place(length, largest, largest / 5, zones);
                Assert.Equal((0, length), (placing.Posts[0], placing.Posts[^1]));
                Assert.All(Bays(placing), b => Assert.True(b > 0));
                Assert.Equal(placing.Excess, Bays(placing).Sum(b => Math.Max(0, b - largest)));
                Assert.DoesNotContain(placing.Posts.Skip(1).SkipLast(1), p => zones.Any(z => p > z.From && p < z.To));
            }, iter: 500);

    private static IEnumerable<long> Bays(Placing placing) => placing.Posts.Zip(placing.Posts.Skip(1), (a, b) => b - a);

    private static (long, int, long, long) Cost(IReadOnlyList<long> posts, long largest)
    {
        var bays = posts.Zip(posts.Skip(1), (a, b) => b - a).ToList();
        var within = bays.Where(b => b <= largest).DefaultIfEmpty(0).Max();
        return (bays.Sum(b => Math.Max(0, b - largest)), bays.Count, within, bays.Sum(b => b * b));
    }

    /// <summary>Tries every choice of whole grid points; the optimum may lie between them, so it bounds from above.</summary>
    private static (long, int, long, long) Best(int length, int largest, Forbidden[] zones)
    {
        (long, int, long, long) best = (long.MaxValue, 0, 0, 0);
        for (var chosen = 0; chosen < 1 << (length - 1); chosen++)
        {
            List<long> posts = [0, .. Enumerable.Range(1, length - 1).Where(i => (chosen >> (i - 1) & 1) == 1).Select(i => i * 60L), length * 60L];
            if (posts.Skip(1).SkipLast(1).Any(p => zones.Any(z => p > z.From * 60 && p < z.To * 60))) continue;
            var cost = Cost(posts, largest * 60);
            if (cost.CompareTo(best) < 0) best = cost;
        }
        return best;
    }
}
