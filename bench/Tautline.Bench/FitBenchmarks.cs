using System.Diagnostics;
using System.Globalization;
using BenchmarkDotNet.Attributes;
using Tautline.Engine.Layout.Fit;

namespace Tautline.Bench;

/// <summary>The fit of a top line by number of posts, over gentle and over rough invented ground.</summary>
[MemoryDiagnoser]
public class FitBenchmarks
{
    private FitInput input = null!;

    [Params(50, 500, 5_000, 50_000)]
    public int Posts { get; set; }

    [Params(false, true)]
    public bool Rough { get; set; }

    [GlobalSetup]
    public void SetUp() => input = Line(Posts, Rough);

    [Benchmark]
    public FittedLine Fit() => GroundFit.Fit(input);

    /// <summary>Posts 3 m apart, a terminal after every 35 bays, a vertex each half metre. Rough: waves of 0.4 m every 31 m, where gentle ground has 0.05 m.</summary>
    public static FitInput Line(int posts, bool rough)
    {
        var length = 3.0 * (posts - 1);
        var height = rough ? 0.4 : 0.05;
        List<GroundVertex> ground = [];
        var (seed, walk) = (1u, 0.0);
        for (var i = 0; 0.5 * i <= length; i++)
        {
            var s = 0.5 * i;
            seed = unchecked(seed * 1664525 + 1013904223);
            walk = 0.9 * walk + 0.1 * (seed / 4294967296.0 - 0.5);
            ground.Add(new GroundVertex(s, 6 * Math.Sin(s / 170) + 3 * Math.Sin(s / 41) + height * (Math.Sin(s / 5) + walk)));
        }
        return new FitInput(
            [.. Enumerable.Range(0, posts).Select(i => new FitPost(3.0 * i, i % 35 == 0, null, 2.05))],
            ground,
            new FitLimits(1.83, 0.02, 0.15, 0.05, 0.6, 0.06, 1, 1.5));
    }

    /// <summary>One line a size and ground: wall and processor time, median of a few runs after one to warm up.</summary>
    public static void Quick()
    {
        foreach (var posts in new[] { 50, 500, 5_000, 50_000 })
            foreach (var rough in new[] { false, true })
                Print(posts, rough);
    }

    private static void Print(int posts, bool rough)
    {
        var input = Line(posts, rough);
        var certificate = GroundFit.Fit(input).Certificate;
        List<(double Wall, double Processor)> times = [];
        for (var i = 0; i < (posts > 5_000 ? 3 : 9); i++)
        {
            var (start, before) = (Stopwatch.GetTimestamp(), Process.GetCurrentProcess().TotalProcessorTime);
            certificate = GroundFit.Fit(input).Certificate;
            times.Add((Stopwatch.GetElapsedTime(start).TotalMilliseconds, (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds));
        }
        var (wall, processor) = (times.Select(t => t.Wall).Order().ElementAt(times.Count / 2), times.Select(t => t.Processor).Order().ElementAt(times.Count / 2));
        var steps = certificate.Phases.Sum(p => p.Iterations);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{posts} posts, {(rough ? "rough" : "gentle")}: wall {wall:0} ms, least {times.Min(t => t.Wall):0} ms, processor {processor:0} ms, {certificate.Passes} passes, {steps} steps in the last, sound {certificate.Sound}"));
    }
}
