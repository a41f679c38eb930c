using System.Diagnostics;
using System.Globalization;
using Tautline.Engine.Site.Ground;

namespace Tautline.Bench;

/// <summary>Measures a large ground surface once: points to triangles, then ten miles of profile. Memory is the process's own peak, so it runs alone.</summary>
public static class GroundRun
{
    private const double Side = 20_000;

    public static void Print(int count)
    {
        Measure("scattered", Scattered(count));
        Measure("square grid", Squares(count));
        var points = Scattered(count);
        var lines = Enumerable.Range(0, 1000).Select(i => new Breakline(Ridge(i))).ToArray();
        var made = Time($"scattered, {count} points and {lines.Length} breaklines of 100 points to triangles", () => Triangulation.Of(new() { Points = points, Breaklines = lines }));
        Line($"{made.ForcedEdges.Length} forced edges, {made.Findings.Count} findings");
    }

    private static GroundPoint[] Ridge(int number) =>
        [.. Enumerable.Range(0, 100).Select(i => On(50 + number % 20 * 950 + i * 8.5, 200 + number / 20 * 390 + 30 * Math.Sin(i * 0.2 + number)))];

    private static void Measure(string name, GroundPoint[] points)
    {
        var made = Time($"{name}, {points.Length} points to triangles", () => Triangulation.Of(new() { Points = points }));
        var triangles = made.Triangles!;
        var path = TenMiles();
        var profile = Time($"{name}, 10 miles of profile", () => triangles.Along(path));
        var again = Time($"{name}, the same profile again", () => triangles.Along(path));
        var thin = Time($"{name}, thinned to 0.1 mm", () => ProfileReduce.Thin(again, 0.0001));
        Line($"{name}: {triangles.FaceCount} triangles, profile of {profile.Stretches.Sum(s => s.Points.Count)} vertices, thinned {thin.Stretches.Sum(s => s.Points.Count)}");
        Time($"{name}, 100000 heights", () => Enumerable.Range(0, 100_000).Sum(i => triangles.HeightAt(i * 7919L % 20_000, i * 104_729L % 20_000) ?? 0));
    }

    private static T Time<T>(string what, Func<T> work)
    {
        var allocated = GC.GetTotalAllocatedBytes(true);
        var start = Stopwatch.GetTimestamp();
        var result = work();
        var time = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        using var process = Process.GetCurrentProcess();
        Line($"{what}: {time:0.0} ms, {(GC.GetTotalAllocatedBytes(true) - allocated) / 1048576.0:0.0} MB allocated, peak of the process {process.PeakWorkingSet64 / 1048576.0:0} MB");
        return result;
    }

    private static void Line(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));

    private static GroundPath TenMiles()
    {
        const double leg = 10 * 1609.344 / 4;
        return GroundPath.Through(new(3000, 3000), new(3000 + leg, 3100), new(3000 + 2 * leg, 3500), new(3000 + 2.6 * leg, 3500 + 0.8 * leg), new(3000 + 2.6 * leg, 3500 + 1.8 * leg));
    }

    private static GroundPoint[] Scattered(int count)
    {
        var random = new Random(20_260_101);
        return [.. Enumerable.Range(0, count).Select(_ => On(random.NextDouble() * Side, random.NextDouble() * Side))];
    }

    private static GroundPoint[] Squares(int count)
    {
        var lines = (int)Math.Sqrt(count);
        return [.. Enumerable.Range(0, lines * lines).Select(i => On(i % lines * (Side / lines), i / lines * (Side / lines)))];
    }

    private static GroundPoint On(double east, double north) => new(east, north, 40 * Math.Sin(east / 700) + 25 * Math.Cos(north / 450));
}
