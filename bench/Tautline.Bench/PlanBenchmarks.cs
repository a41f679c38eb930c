using BenchmarkDotNet.Attributes;
using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Reasons;

namespace Tautline.Bench;

/// <summary>A whole plan by length of fence: time, allocations, growth.</summary>
[MemoryDiagnoser]
public class PlanBenchmarks
{
    private readonly FenceCatalog catalog = FenceCatalog.BuiltIn();
    private readonly Rules rules = Rules.BuiltIn();
    private Job job = null!;
    private Job ground = null!;
    private Plan plan = null!;

    [Params(0.5, 5, 50, 100)]
    public double Miles { get; set; }

    [GlobalSetup]
    public void SetUp() => (job, ground, plan) = (LongJobs.Line(Miles), LongJobs.OverGround(Miles), JobPlanner.Plan(LongJobs.Line(Miles), catalog, rules, BuiltFacts.None));

    [Benchmark]
    public Plan Whole() => JobPlanner.Plan(job, catalog, rules, BuiltFacts.None);

    /// <summary>The same with a shot of the ground at every foot.</summary>
    [Benchmark]
    public Plan OverGround() => JobPlanner.Plan(ground, catalog, rules, BuiltFacts.None);

    [Benchmark]
    public string Hash() => PlanFile.Hash(plan);

    [Benchmark]
    public object? WhyOfOnePost() => Facts.Why(plan, new FactKey(FactKind.Concrete, 0, 3));
}
