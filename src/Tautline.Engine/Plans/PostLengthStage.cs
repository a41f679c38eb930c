using System.Collections.ObjectModel;
using Tautline.Engine.Catalog;
using Tautline.Engine.Fabric;
using Tautline.Engine.Layout;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;
using Tautline.Engine.Takeoff;

namespace Tautline.Engine.Plans;

/// <summary>Where the rules ask for few lengths of posts, chooses them for each section over the whole job, and gives every post its own.</summary>
public static class PostLengthStage
{
    /// <summary>The lengths posts are bought in, by the id of their section; none where the rules leave every post its next step.</summary>
    public static IReadOnlyDictionary<string, Ladder> Choose(IReadOnlyList<LinePlan> plans, Rules rules)
        => rules.PostLengthClasses is not { } most ? ReadOnlyDictionary<string, Ladder>.Empty
            : plans.SelectMany(Needed).GroupBy(p => p.Section, p => p.CutLength.Nanometres)
                .ToDictionary(g => g.Key, g => Ladder(g, most, rules.PostOrderStep));

    /// <summary>The same lines, each post in the shortest of the chosen lengths that it is cut from.</summary>
    public static IReadOnlyList<LinePlan> Fit(IReadOnlyList<LinePlan> plans, IReadOnlyList<HungLine> lines, IReadOnlyDictionary<string, Ladder> lengths)
        => lengths.Count == 0 ? plans : [.. plans.Select((p, i) => p with { Posts = [.. p.Posts.Select(post => Fit(post, lines[i], i, lengths))] })];

    private static PostPlan Fit(PostPlan post, HungLine line, int index, IReadOnlyDictionary<string, Ladder> lengths)
    {
        if (post.Support == Support.Standing) return post;
        var figures = new PostFigures(line.Posts[post.Number - 1], index);
        var order = figures.OrderLength<Plain>(post.CutLength.Metres, lengths[post.Section]).Value;
        return post with { OrderLength = new Length(order), CutOff = new Length(figures.CutOff<Plain>(order, post.CutLength.Metres).Value) };
    }

    /// <summary>Posts that are bought; the second roller post of a cantilever gate is like the first.</summary>
    private static IEnumerable<PostPlan> Needed(LinePlan plan)
        => plan.Posts.Concat(plan.Gates.Where(g => g.Kind == GateKind.Cantilever).Select(g => plan.Posts[g.Roller!.Value]))
            .Where(p => p.Support != Support.Standing);

    private static Ladder Ladder(IEnumerable<long> cut, Limit most, Limit step)
    {
        var stepNm = step.Length.Nanometres;
        var chosen = LengthClasses.Choose([.. cut.CountBy(nm => nm).Select(n => new LengthNeed(n.Key, n.Value))], stepNm, (int)most.Value);
        return new Ladder("chosen length", [.. chosen.Select(nm => nm / stepNm * step.Value)], most.From);
    }
}
