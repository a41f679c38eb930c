using System.Diagnostics;
using System.Globalization;
using BenchmarkDotNet.Running;
using Tautline.Bench;
using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;

// 'quick' prints one line a size in seconds instead of minutes, 'quick ground' the same over measured ground, 'fit' does so for the ground fit,
// 'papers' makes the papers of the same line,
// 'ground' measures a surface of a million points once; everything else goes to BenchmarkDotNet.
if (args is ["quick"]) Quick(m => LongJobs.Line(m), [0.5, 5, 50, 100], 15);
else if (args is ["quick", "ground"]) Quick(m => LongJobs.OverGround(m), [0.5, 5, 50, 100], 3);
else if (args is ["fit"]) FitBenchmarks.Quick();
else if (args is ["papers"]) PaperRun.Print([0.5, 3], 5);
else if (args is ["ground"]) GroundRun.Print(1_000_000);
else BenchmarkSwitcher.FromAssembly(typeof(PlanBenchmarks).Assembly).Run(args);

static void Quick(Func<double, Job> make, double[] sizes, int runs)
{
    Reasons();
    var (catalog, rules) = (FenceCatalog.BuiltIn(), Rules.BuiltIn());
    foreach (var miles in sizes)
    {
        var job = make(miles);
        var plan = JobPlanner.Plan(job, catalog, rules, BuiltFacts.None);
        List<double> times = [];
        long bytes = 0;
        for (var i = 0; i < runs; i++)
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
            $"{miles} mi: {plan.Lines[0].Posts.Count} posts, {plan.Lines[0].Runs.Count} runs, median {times[runs / 2]:0.00} ms, least {times[0]:0.00} ms, {bytes / 1048576.0:0.0} MB allocated, {plan.Problems.Count} problems, hash {PlanFile.Hash(plan)[..8]}"));
    }
}

// Planning allocates the same whether or not anybody ever asked why.
static void Reasons()
{
    var (catalog, rules, job) = (FenceCatalog.BuiltIn(), Rules.BuiltIn(), LongJobs.Line(0.5));
    long Bytes(out Plan plan)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        plan = JobPlanner.Plan(job, catalog, rules, BuiltFacts.None);
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }
    for (var i = 0; i < 20; i++) Bytes(out _);
    var unasked = Bytes(out var half);
    var facts = Facts.All(half).ToList();
    foreach (var fact in facts) Facts.Why(half, fact);
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"0.5 mi: {unasked} bytes before, {Bytes(out _)} bytes after {facts.Count} facts were asked why"));
}
