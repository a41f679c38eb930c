using CsCheck;
using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Engine.Tests.Rolls;

/// <summary>Invented cases small enough to try everything.</summary>
internal static class GenCase
{
    public static Gen<HangStock> Remnant { get; } = Gen.Select(Gen.Int[1, 7], Gen.Int[0, 1]).Select((pickets, of) => new HangStock(pickets, pickets, of, 1, false));

    /// <summary>Rolls of two lengths in one class; the longer holds a picket more than twice the shorter at times, as with whole pickets.</summary>
    public static Gen<HangStock[]> Unlimited { get; } = Gen.Select(Gen.Int[2, 5], Gen.Int[0, 1], Gen.Bool).Select((pickets, more, both)
        => both ? new[] { New(pickets, 100, 0), New(2 * pickets + more, 200, 0) } : [New(pickets, 100, 0)]);

    /// <summary>Rolls without limit, a lot of a few of another class, up to two remnants of either.</summary>
    public static Gen<HangStock[]> Mixed { get; } = Gen.Select(Unlimited, Gen.Int[0, 2], Remnant.Array[0, 2], Gen.Bool).Select((free, few, remnants, bought)
        => (HangStock[])[.. bought ? free : free.Select(s => s with { Limit = 3 }), .. few > 0 ? [New(4, 110, 1) with { Limit = few }] : Array.Empty<HangStock>(), .. remnants]);

    public static Gen<HangCase> Small(Gen<HangStock[]> stock)
        => Gen.Select(Gen.Int[1, 9].Array[1, 4], stock, Gen.Int[0, 3], Gen.Long[0, 3].Array[4])
            .Select((needs, of, useful, gaps) => new HangCase(needs, [0, .. gaps.Take(needs.Length - 1)], of, useful));

    public static string Text(HangCase work)
        => $"needs {string.Join(",", work.Needs)}, gaps {string.Join(",", work.Gaps)}, least useful {work.LeastUseful}, stock {string.Join("; ", work.Stock)}";

    private static HangStock New(int pickets, long length, int of) => new(pickets, length, of, int.MaxValue, true);
}
