using Tautline.Engine.Layout.Fit;
using System.Diagnostics;

namespace Tautline.Fit.Tests;

public sealed class ScratchTests(ITestOutputHelper output)
{
    [Theory]






    [InlineData(10, 1)]
    [InlineData(50, 2)]
    [InlineData(500, 3)]
    [InlineData(50, 4)]
    [InlineData(50, 5)]
    [InlineData(5000, 5)]
    [InlineData(50000, 5)]
    public void Try(int bays, int seed)
    {
        var length = bays * 3.0;
        var ground = Rough(length, seed);
        var limits = new FitLimits(1.8, 0.02, 0.15, 0.05, 0.5, 0.06, 1, 1.5);
        var input = new FitInput(Grounds.Posts(length, bays, 20, 1.95), ground, limits);
        var fit = GroundFit.Fit(input);
        var start = Stopwatch.GetTimestamp();
        fit = GroundFit.Fit(input);
        output.WriteLine($"{Stopwatch.GetElapsedTime(start).TotalMilliseconds} ms, passes {fit.Certificate.Passes} change {fit.Certificate.HeightChange}");
        foreach (var p in fit.Certificate.Phases) output.WriteLine(p.ToString());
        var cost = fit.Cost(limits);
        var excess = fit.Excess.Sum();
        output.WriteLine($"cost {cost} excess {excess} violations {fit.Violations.Count} bindings {fit.Bindings.Count} misfits {fit.Misfits.Count}");
        if (bays > 600) return;
        var raw = new RawProgram(input, fit.Bays);
        var least = raw.Grading();
        output.WriteLine($"glop {least:R} rel {(cost - least) / least}");
        output.WriteLine($"glop2 {raw.PostLength(least * (1 + 1e-9) + 1e-12):R} .. {raw.PostLength(least * (1 + 1e-6)):R} ours {excess:R}");
    }

    private static IReadOnlyList<GroundVertex> Rough(double length, int seed)
    {
        var random = new Random(seed);
        double[] a = [.. Enumerable.Range(0, 12).Select(_ => random.NextDouble())];
        return Grounds.Of(length, 0.3, s => 1700 + Enumerable.Range(1, 6).Sum(k => a[k] * 1.5 / k * Math.Sin(s * k / 9 + 7 * a[k + 5])) + 0.05 * random.NextDouble());
    }
}
