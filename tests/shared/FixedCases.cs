using System.Collections.Concurrent;
using System.Globalization;
using System.Runtime.ExceptionServices;
using CsCheck;

namespace Tautline;

/// <summary>
/// Properties tried on the same cases at every run. The library's own loop draws new ones each time, whatever seed it is given for the first, so a build could
/// turn red over something it did not touch. To hunt on other cases, set TAUTLINE_CASES to any whole number.
/// </summary>
internal static class FixedCases
{
    private static readonly ulong family
        = ulong.TryParse(Environment.GetEnvironmentVariable("TAUTLINE_CASES"), NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0;

    /// <summary>Fails on the first of <paramref name="iter"/> cases that throws; the case is then made small by the library and shown.</summary>
    public static void Always<T>(this Gen<T> gen, Action<T> holds, int iter = 100, Func<T, string>? print = null)
    {
        var faults = new ConcurrentBag<(int Case, Exception Fault)>();
        Parallel.For(0, iter, (i, loop) =>
        {
            if (loop.ShouldExitCurrentIteration) return;
            var draw = new PCG((uint)i + 1, Mixed((family << 32) + (ulong)i));
            var seed = draw.ToString(draw.State);
            var item = gen.Generate(draw, null, out _);
            try
            {
                holds(item);
            }
            catch (Exception slip)
            {
                loop.Break();
                var again = Record.Exception(() => gen.Sample(holds, seed: seed, iter: 1, threads: 1, print: print!));
                faults.Add((i, again ?? new InvalidOperationException($"Case {i} (seed {seed}) fails, but not when tried again: {print?.Invoke(item) ?? item?.ToString()}", slip)));
            }
        });
        if (!faults.IsEmpty) ExceptionDispatchInfo.Throw(faults.MinBy(f => f.Case).Fault);
    }

    /// <summary>Fails on the first case that is not so.</summary>
    public static void Always<T>(this Gen<T> gen, Func<T, bool> holds, int iter = 100, Func<T, string>? print = null)
        => gen.Always(
            t =>
            {
                if (!holds(t)) throw new InvalidOperationException("It is not so.");
            },
            iter, print);

    public static void Always<T1, T2>(this Gen<(T1, T2)> gen, Action<T1, T2> holds, int iter = 100, Func<(T1, T2), string>? print = null)
        => gen.Always(t => holds(t.Item1, t.Item2), iter, print);

    public static void Always<T1, T2>(this Gen<(T1, T2)> gen, Func<T1, T2, bool> holds, int iter = 100, Func<(T1, T2), string>? print = null)
        => gen.Always(t => holds(t.Item1, t.Item2), iter, print);

    public static void Always<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Action<T1, T2, T3> holds, int iter = 100, Func<(T1, T2, T3), string>? print = null)
        => gen.Always(t => holds(t.Item1, t.Item2, t.Item3), iter, print);

    public static void Always<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Func<T1, T2, T3, bool> holds, int iter = 100, Func<(T1, T2, T3), string>? print = null)
        => gen.Always(t => holds(t.Item1, t.Item2, t.Item3), iter, print);

    public static void Always<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Action<T1, T2, T3, T4> holds, int iter = 100, Func<(T1, T2, T3, T4), string>? print = null)
        => gen.Always(t => holds(t.Item1, t.Item2, t.Item3, t.Item4), iter, print);

    public static void Always<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Func<T1, T2, T3, T4, bool> holds, int iter = 100, Func<(T1, T2, T3, T4), string>? print = null)
        => gen.Always(t => holds(t.Item1, t.Item2, t.Item3, t.Item4), iter, print);

    public static void Always<T1, T2, T3, T4, T5>(this Gen<(T1, T2, T3, T4, T5)> gen, Action<T1, T2, T3, T4, T5> holds, int iter = 100, Func<(T1, T2, T3, T4, T5), string>? print = null)
        => gen.Always(t => holds(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5), iter, print);

    public static void Always<T1, T2, T3, T4, T5>(this Gen<(T1, T2, T3, T4, T5)> gen, Func<T1, T2, T3, T4, T5, bool> holds, int iter = 100, Func<(T1, T2, T3, T4, T5), string>? print = null)
        => gen.Always(t => holds(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5), iter, print);

    public static void Always<T1, T2, T3, T4, T5, T6>(this Gen<(T1, T2, T3, T4, T5, T6)> gen, Action<T1, T2, T3, T4, T5, T6> holds, int iter = 100, Func<(T1, T2, T3, T4, T5, T6), string>? print = null)
        => gen.Always(t => holds(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5, t.Item6), iter, print);

    public static void Always<T1, T2, T3, T4, T5, T6>(this Gen<(T1, T2, T3, T4, T5, T6)> gen, Func<T1, T2, T3, T4, T5, T6, bool> holds, int iter = 100, Func<(T1, T2, T3, T4, T5, T6), string>? print = null)
        => gen.Always(t => holds(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5, t.Item6), iter, print);

    /// <summary>Neighbouring numbers far apart (the finaliser of SplitMix64).</summary>
    private static ulong Mixed(ulong x)
    {
        unchecked
        {
            x += 0x9E3779B97F4A7C15;
            x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9;
            x = (x ^ (x >> 27)) * 0x94D049BB133111EB;
            return x ^ (x >> 31);
        }
    }
}
