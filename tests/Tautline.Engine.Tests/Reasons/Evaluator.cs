using System.Numerics;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Tests.Reasons;

/// <summary>
/// Recomputes an expression from its leaves without the Engine's arithmetic: whole decisions on big integers, packing by its
/// own first-fit decreasing.
/// </summary>
internal static class Evaluator
{
    public static double Recompute(Expr expr) => expr switch
    {
        Leaf leaf => leaf.Value,
        Operation operation => Apply(operation.Op, [.. operation.Of.Select(Recompute)]),
        _ => throw new InvalidOperationException($"unknown step {expr.GetType().Name}"),
    };

    private static double Apply(Op op, double[] x) => op switch
    {
        Op.Add => x[0] + x[1],
        Op.Sum => x.Sum(),
        Op.Subtract => x[0] - x[1],
        Op.Multiply => x[0] * x[1],
        Op.Divide => x[0] / x[1],
        Op.Root => Math.Pow(x[0], 0.5),
        Op.Size => x[0] < 0 ? -x[0] : x[0],
        Op.Larger => x[0] >= x[1] ? x[0] : x[1],
        Op.Smaller => x[0] <= x[1] ? x[0] : x[1],
        Op.Cover => Quotient(x, up: true),
        Op.Fit => Quotient(x, up: false),
        Op.Nearest => (double)((2 * Whole(x[0]) + Whole(x[1])) / (2 * Whole(x[1]))),
        Op.NextSize => x.Skip(1).Where(s => Whole(s) >= Whole(x[0])).DefaultIfEmpty(x[0]).First(),
        Op.Pack => Pack(x),
        Op.Power => Math.Pow(x[0], x[1]),
        Op.Exp => Math.Exp(x[0]),
        Op.Log => Math.Log(x[0]),
        _ => throw new InvalidOperationException($"unknown operation {op}"),
    };

    private static double Quotient(double[] x, bool up)
    {
        var (a, b) = (Whole(x[0]), Whole(x[1]));
        if (a <= 0) return 0;
        var quotient = BigInteger.DivRem(a, b, out var rest);
        return (double)(up && !rest.IsZero ? quotient + 1 : quotient);
    }

    private static double Pack(double[] x)
    {
        var sticks = new List<BigInteger>();
        foreach (var piece in x.Skip(1).Select(Whole).Where(p => p > 0).OrderDescending())
        {
            var room = sticks.FindIndex(r => r >= piece);
            if (room >= 0) sticks[room] -= piece;
            else sticks.Add(Whole(x[0]) - piece);
        }
        return sticks.Count;
    }

    private static BigInteger Whole(double value) => (BigInteger)Math.Round((decimal)value * 1_000_000_000m, MidpointRounding.AwayFromZero);
}
