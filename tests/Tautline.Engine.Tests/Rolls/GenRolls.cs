using CsCheck;
using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Engine.Tests.Rolls;

/// <summary>Invented requests of a few pulls, small rolls, lots that differ, remnants with and without known ends.</summary>
internal static class GenRolls
{
    private static readonly Gen<EndState?> state = Gen.Int[0, 2].Select(i => i == 0 ? (EndState?)null : i == 1 ? EndState.Half : EndState.Whole);

    /// <summary>The advance is a range as often as not, the order free as often as not.</summary>
    public static Gen<RollRequest> Any { get; } = Request(Gen.Bool);

    public static Gen<RollRequest> Counted { get; } = Request(Gen.Const(true));

    private static Gen<FabricPull[]> Pulls(long high) => Gen.Select(Gen.Int[1, 60], Gen.Int[0, 40]).Array[1, 7].Select(all =>
    {
        var from = 0L;
        return all.Select((p, i) =>
        {
            var need = p.Item1 * 37L;
            var pull = new FabricPull($"p{i}", "6", need, new((int)((need + high - 1) / high), (int)((need + 99) / 100)), from, from + need, p.Item2 % 2);
            from += need + p.Item2 * 10;
            return pull;
        }).ToArray();
    });

    private static Gen<NewRolls[]> New { get; } = Gen.Select(Gen.Int[300, 900], Gen.Int[0, 3], Gen.Int[0, 2]).Select((length, few, kinds) => (NewRolls[])[
        new("n", "lot 1", "6", "a", length, kinds == 2 ? 3 : null),
        .. kinds > 0 ? [new NewRolls("m", "lot 2", "6", "a", 2 * length)] : Array.Empty<NewRolls>(),
        .. few > 0 ? [new NewRolls("f", "lot 3", "6", "b", 500, few)] : Array.Empty<NewRolls>()]);

    private static Gen<Remnant> Remnant { get; } = Gen.Select(Gen.Int[110, 600], Gen.Bool, Gen.Int[1, 5], Gen.Bool, state).Select((length, b, counted, isCounted, first)
        => new Remnant("", "old", "6", b ? "b" : "a", length, isCounted ? counted : null, first));

    private static Gen<RollRequest> Request(Gen<bool> calibrated) => calibrated.SelectMany(exact => Gen.Select(
        Pulls(exact ? 100 : 108), New, Remnant.Array[0, 3], Gen.Int[0, 250], Gen.Bool, Gen.Bool, state, (pulls, rolls, remnants, useful, free, turns, seen) => new RollRequest
        {
            Kinds = [new("6", 100, exact ? 100 : 108, turns, 1)],
            Pulls = pulls,
            New = rolls,
            // Shorter ones would be told, not planned.
            Remnants = [.. remnants.Where(r => r.LengthNm >= useful).Select((r, i) => r with { Id = $"r{i}" })],
            LeastUsefulNm = useful,
            Order = free ? HangingOrder.Free : HangingOrder.AsListed,
            Seen = [new(new("n", 1), seen, null)],
        }));
}
