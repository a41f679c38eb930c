using System.Diagnostics;
using System.Globalization;
using BenchmarkDotNet.Running;
using Tautline.Bench;
using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;

// 'quick' prints one line a size in seconds instead of minutes; everything else goes to BenchmarkDotNet.
if (args is ["quick"]) Quick();
else BenchmarkSwitcher.FromAssembly(typeof(PlanBenchmarks).Assembly).Run(args);

static void Quick()
{
    var (catalog, rules) = (FenceCatalog.BuiltIn(), Rules.BuiltIn());
    foreach (var miles in new[] { 0.5, 5, 50, 100 })
    {
        var job = LongJobs.Line(miles);
        var plan = JobPlanner.Plan(job, catalog, rules, BuiltFacts.None);
        List<double> times = [];
        long bytes = 0;
        for (var i = 0; i < 15; i++)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            var start = Stopwatch.GetTimestamp();
            plan = JobPlanner.Plan(job, catalog, rules, BuiltFacts.None);
            times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        }
        times.Sort();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{miles} mi: {plan.Lines[0].Posts.Count} posts, {plan.Lines[0].Runs.Count} runs, median {times[7]:0.00} ms, least {times[0]:0.00} ms, {bytes / 1048576.0:0.0} MB allocated, {plan.Problems.Count} problems, hash {PlanFile.Hash(plan)[..8]}"));
    }
}
