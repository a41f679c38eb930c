using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Takeoff;
using Tautline.Field.Building;

namespace Tautline.Field.Cards;

/// <summary>Pipe of one section and length.</summary>
public sealed record DropPosts(string Section, Length Order, int Count, Mass Mass);

/// <summary>A part of the take-off as far as it goes with a bundle.</summary>
/// <param name="Mass">Nothing where the catalogue has no weight.</param>
public sealed record DropPart(TakeoffLine Part, double Net, Mass? Mass);

/// <summary>What is laid down at one place.</summary>
/// <param name="Run">Index of the run in its line; nothing for what belongs to the line as a whole: fittings of its posts, gates, posts that stand in no run.</param>
/// <param name="Rolls">Rolls the run is the first to open, by their index among the plan's rolls.</param>
/// <param name="Bags">For its holes.</param>
/// <param name="Weight">Of all that has one: posts as cut, rolls whole, parts net, and bags where their weight was given.</param>
public sealed record DropBundle(int Line, int? Run, IReadOnlyList<DropPosts> Posts, IReadOnlyList<DropPart> Parts, IReadOnlyList<int> Rolls, int Bags, Mass Weight)
{
    /// <summary>Nothing of it has a weight.</summary>
    public bool NotWeighed => Weight.Kilograms <= 0;
}

/// <summary>One trip of the truck.</summary>
/// <param name="Drops">Indices of bundles in the order they are laid down; loaded the other way round.</param>
/// <param name="Over">One bundle alone is more than the limit.</param>
public sealed record DropTrip(IReadOnlyList<int> Drops, Mass Weight, bool Over)
{
    /// <summary>What is laid down last is loaded first.</summary>
    public IEnumerable<int> LoadOrder => Drops.Reverse();
}

/// <summary>Bundles in the order of the lines, and the trips that carry them.</summary>
/// <param name="Unweighed">Parts of which the catalogue has no weight; with bags of unknown weight, them too.</param>
public sealed record DropSheet(IReadOnlyList<DropBundle> Bundles, IReadOnlyList<DropTrip> Trips, IReadOnlyList<TakeoffLine> Unweighed)
{
    private static readonly string[] notCarried = ["post", "concrete-bag", "grout", "spoil"];

    /// <param name="limit">Payload, or what the axle has left; nothing for one trip however heavy.</param>
    /// <param name="bag">Weight of one bag of concrete.</param>
    public static DropSheet Of(Plan plan, Mass? limit, Mass? bag)
    {
        var rolls = Rolls(plan);
        var byRoll = rolls.Count > 0;
        var shares = PlaceQuantities.Of(plan).Select(q => (q.Place, Part: plan.Takeoff.First(t => t.Number == q.Item), q.Net))
            .Where(q => q.Place.Kind is not (FencePlaceKind.Temporary or FencePlaceKind.Works) && !notCarried.Contains(q.Part.Part) && !(byRoll && q.Part.Part == "fabric")).ToList();
        List<DropBundle> bundles = [];
        for (var l = 0; l < plan.Lines.Count; l++)
        {
            var posts = RunPosts.WithRollers(plan.Lines[l]);
            for (var r = 0; r < plan.Lines[l].Runs.Count; r++)
                bundles.Add(Bundle(plan, l, r, posts[r], Parts(shares.Where(s => s.Place == new FencePlace(FencePlaceKind.Run, l, r))), rolls.GetValueOrDefault((l, r), []), bag));
            var rest = Parts(shares.Where(s => s.Place.Line == l && s.Place.Kind != FencePlaceKind.Run));
            List<int> between = [.. Enumerable.Range(0, plan.Lines[l].Posts.Count).Except(posts.SelectMany(p => p))];
            if (rest.Count + between.Count > 0) bundles.Add(Bundle(plan, l, null, between, rest, [], bag));
        }
        var unweighed = bundles.SelectMany(b => b.Parts).Where(p => p.Mass is null).Select(p => p.Part).Distinct().OrderBy(p => p.Number);
        return new(bundles, Trip(bundles, limit), [.. unweighed, .. plan.Takeoff.Where(t => t.Part == "concrete-bag" && bag is null)]);
    }

    private static DropBundle Bundle(Plan plan, int line, int? run, IReadOnlyList<int> posts, IReadOnlyList<DropPart> parts, IReadOnlyList<int> rolls, Mass? bag)
    {
        var standing = posts.Select(p => plan.Lines[line].Posts[p]).Where(p => p.Support != Support.Standing).ToList();
        List<DropPosts> pipes = [.. standing.GroupBy(p => (p.Section, p.OrderLength)).Select(g => new DropPosts(g.Key.Section, g.Key.OrderLength, g.Count(), new(g.Sum(p => p.Mass.Kilograms))))];
        var bags = standing.Sum(p => p.Bags);
        var weight = pipes.Sum(p => p.Mass.Kilograms) + parts.Sum(p => p.Mass?.Kilograms ?? 0) + rolls.Sum(r => plan.Rolls!.Rolls[r].Kilograms) + bags * (bag?.Kilograms ?? 0);
        return new(line, run, pipes, parts, rolls, bags, new(weight));
    }

    /// <summary>Rolls by the run that opens them first.</summary>
    private static Dictionary<(int Line, int Run), IReadOnlyList<int>> Rolls(Plan plan)
    {
        Dictionary<(int, int), IReadOnlyList<int>> found = [];
        if (plan.Rolls is not { } rolls) return found;
        for (var l = 0; l < plan.Lines.Count; l++)
            for (var r = 0; r < plan.Lines[l].Runs.Count; r++)
            {
                var pull = RollFeeds.PullId(plan.Lines[l], plan.Lines[l].Runs[r], 0)[..^1];
                List<int> first = [.. Enumerable.Range(0, rolls.Rolls.Count).Where(i => rolls.Rolls[i].FirstPull.StartsWith(pull, StringComparison.Ordinal))];
                if (first.Count > 0) found[(l, r)] = first;
            }
        return found;
    }

    /// <summary>Of a take-off line's weight the part that its share of the net quantity has.</summary>
    private static List<DropPart> Parts(IEnumerable<(FencePlace Place, TakeoffLine Part, double Net)> shares)
        => [.. shares.GroupBy(s => s.Part).Select(g => (Part: g.Key, Net: g.Sum(s => s.Net))).Where(p => p.Net > 0)
            .Select(p => new DropPart(p.Part, p.Net, p.Part.Mass is { } mass && p.Part.Net > 0 ? new Mass(mass.Kilograms * p.Net / p.Part.Net) : null))];

    private static List<DropTrip> Trip(List<DropBundle> bundles, Mass? limit)
    {
        List<DropTrip> trips = [];
        List<int> load = [];
        for (var i = 0; i < bundles.Count; i++)
        {
            if (limit is { } most && load.Count > 0 && load.Append(i).Sum(b => bundles[b].Weight.Kilograms) > most.Kilograms)
            {
                trips.Add(Trip(bundles, load, limit));
                load = [];
            }
            load.Add(i);
        }
        if (load.Count > 0) trips.Add(Trip(bundles, load, limit));
        return trips;
    }

    private static DropTrip Trip(List<DropBundle> bundles, List<int> load, Mass? limit)
        => load.Sum(b => bundles[b].Weight.Kilograms) is var weight && limit is { } most && weight > most.Kilograms ? new(load, new(weight), true) : new(load, new(weight), false);
}
