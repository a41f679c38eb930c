using BenchmarkDotNet.Attributes;
using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Bench;

/// <summary>Which roll feeds which pull, by length of fence: 500-ft pulls that differ a little, rolls of 50 ft alone and of three lengths.</summary>
[MemoryDiagnoser]
public class RollBenchmarks
{
    private const long Foot = 304_800_000;
    private const long Advance = 35_560_000;

    private RollRequest request = null!;

    [Params(1, 10, 100)]
    public double Miles { get; set; }

    [Params("one", "three", "remnants", "limited", "uncalibrated", "free")]
    public string Stock { get; set; } = "one";

    [GlobalSetup]
    public void SetUp() => request = Request(Miles, Stock);

    [Benchmark]
    public RollPlan Plan() => RollPlanner.Plan(request);

    public static RollRequest Request(double miles, string stock)
    {
        var pulls = (int)Math.Round(miles * 10.56);
        var high = stock == "uncalibrated" ? Advance * 108 / 100 : Advance;
        return new RollRequest
        {
            Kinds = [new FabricKind("6", Advance, high, false, 4)],
            Pulls = [.. Enumerable.Range(0, pulls).Select(i => Pull(i, high))],
            New = stock == "three" ? [New("25", 25), New("50", 50), New("100", 100)]
                : stock == "limited" ? [New("50", 50, pulls * 6), New("50b", 50, pulls * 6, "b")] : [New("50", 50)],
            Remnants = stock != "remnants" ? [] : [.. Enumerable.Range(0, 12).Select(i => new Remnant($"r{i}", "old", "6", i % 2 == 0 ? "a" : "b", (12 + 3 * i) * Foot))],
            LeastUsefulNm = 3 * Foot,
            Order = stock == "free" ? HangingOrder.Free : HangingOrder.AsListed,
        };
    }

    private static NewRolls New(string id, long feet, int? count = null, string of = "a") => new(id, id, "6", of, feet * Foot, count);

    private static FabricPull Pull(int i, long high)
    {
        var need = (480 + i * 37 % 41) * Foot;
        return new FabricPull($"p{i}", "6", need, new PicketRange((int)((need + high - 1) / high), (int)((need + Advance - 1) / Advance)), i * 505 * Foot, i * 505 * Foot + need);
    }
}
