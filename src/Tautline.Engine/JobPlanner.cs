using Tautline.Engine.Catalog;
using Tautline.Engine.Fabric;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Site;
using Tautline.Engine.Takeoff;

namespace Tautline.Engine;

/// <summary>
/// From a job to its plan: the one place that shows the order of the trade. Each stage is a static function from records to
/// records; problems are collected on the way and reported together.
/// </summary>
public static class JobPlanner
{
    /// <summary>Plans a job. Pure: the same arguments give the same plan, and the same hash, on every machine.</summary>
    /// <param name="job">What people entered.</param>
    /// <param name="catalog">What can be bought.</param>
    /// <param name="rules">The rule set; the job's own limits are laid over it.</param>
    /// <param name="built">What stands in the ground already.</param>
    /// <returns>The plan; without lines and take-off while it reports an error.</returns>
    public static Plan Plan(Job job, FenceCatalog catalog, Rules rules, BuiltFacts built)
    {
        var problems = new ProblemList();

        // Settle what is asked for: the document in order, the limits, the spec.
        JobCheck.Check(job, rules, problems);
        var limits = rules.AsSpecified(job.AsSpecified);
        var specs = SpecStage.Resolve(job, catalog, limits, problems);

        // Walk the site: legs, grades, gates, where nobody may dig, what stands.
        var site = SiteStage.Measure(job, specs, catalog, built, problems);

        // Lay it out: terminals, the bays between them, a post at every mark; over measured ground the top line, until fabric rolls over every bend.
        var set = LayoutStage.Lay(site, limits, problems);
        PostCheck.Check(set, limits, problems);

        // Hang the fabric, one pull on every run.
        var hung = FabricStage.Hang(set);

        // Work out the figures and take off what to buy.
        var specPlans = FigureStage.Specs(specs, problems);
        var asCut = FigureStage.Lines(hung, specPlans);
        var lengths = PostLengthStage.Choose(asCut, limits);
        var lines = HangStage.Of(job, PostLengthStage.Fit(asCut, hung, lengths), hung, problems);
        var rolls = RollStage.Of(job, lines, hung, specPlans, problems);
        var temporary = FigureStage.Temporary(job, limits, problems);
        var takeoff = TakeoffStage.Count(lines, hung, temporary, catalog, limits, problems);

        return new Plan(job.Id, limits.Name, LimitStage.Stated(limits), specPlans, lines, temporary, takeoff, problems.Found)
        {
            Rolls = rolls,
            Basis = new Basis(job, catalog, limits, specs, hung) { PostLengths = lengths },
        };
    }
}
