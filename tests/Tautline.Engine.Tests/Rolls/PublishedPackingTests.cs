using System.Globalization;
using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Engine.Tests.Rolls;

/// <summary>
/// The pool packer and its bounds on published instances with known optima (E. Falkenauer, J. Heuristics 2 (1996) 5-30, as kept in OR-Library): a
/// roll is a bin, a pull an item.
/// </summary>
public sealed class PublishedPackingTests
{
    // u120_08 and u120_19: the file prints 51 and 50, best known at publication; 50 and 49 are reached and are the bound (the README beside the file).
    private static readonly int[] uniform = [48, 49, 46, 49, 50, 48, 48, 49, 50, 46, 52, 49, 48, 49, 50, 48, 52, 52, 49, 49];

    [Fact]
    public void UniformItemsAreBoundedByTheirOptimum()
        => Assert.Equal(uniform, Read("data/cutting/binpack1.txt").Select(i => PackBound.Best(i.Sizes, i.Capacity)));

    [Fact]
    public void TripletsAreBoundedByTheirOptimum()
        => Assert.All(Read("reference/binpack_t60.txt"), i => Assert.Equal(20, PackBound.Best(i.Sizes, i.Capacity)));

    /// <summary>The gaps are what the packer reaches, not what is possible: 0 in every instance is.</summary>
    [Fact]
    public void UniformItemsTakeAtMostOneRollMoreAndFifteenOfTwentyNone()
        => Gaps("data/cutting/binpack1.txt", "1 0 0 1 0 0 0 1 0 1 0 0 0 0 0 0 0 1 0 0");

    [Fact]
    public void TripletsTakeAtMostOneRollMoreAndTwelveOfThirteenNone() => Gaps("reference/binpack_t60.txt", "0 1 0 0 0 0 0 0 0 0 0 0 0");

    private static void Gaps(string path, string expected)
        => Assert.Equal(expected, string.Join(" ", Read(path).Select(i => Packed(i) - PackBound.Best(i.Sizes, i.Capacity))));

    private static int Packed((int Capacity, int[] Sizes) instance)
    {
        var bins = PoolPacker.Pack(instance.Sizes, instance.Capacity);
        Assert.Equal(Enumerable.Range(0, instance.Sizes.Length), bins.SelectMany(b => b).Order());
        Assert.All(bins, b => Assert.True(b.Sum(i => instance.Sizes[i]) <= instance.Capacity));
        return bins.Count;
    }

    /// <summary>Number of instances; for each its name, 'capacity items best' and an item a line. One decimal becomes whole by tens.</summary>
    private static List<(int Capacity, int[] Sizes)> Read(string path)
    {
        var lines = SharedFile.Lines(path);
        List<(int, int[])> instances = [];
        for (var at = 1; at + 1 < lines.Length && lines[at].Trim().Length > 0;)
        {
            var head = lines[at + 1].Split(' ', StringSplitOptions.RemoveEmptyEntries);
            var count = int.Parse(head[1], CultureInfo.InvariantCulture);
            instances.Add((Tenths(head[0]), [.. lines.Skip(at + 2).Take(count).Select(Tenths)]));
            at += count + 2;
        }
        return instances;
    }

    private static int Tenths(string text) => (int)(decimal.Parse(text, CultureInfo.InvariantCulture) * 10);
}
