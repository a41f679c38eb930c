using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Field.Bench;
using Tautline.Field.Building;

namespace Tautline.Field.Cards;

/// <summary>Holes alike.</summary>
/// <param name="Net">Of one hole: hole minus post, the least it takes.</param>
/// <param name="WithBreak">Of one hole, with what the ground broke out besides.</param>
/// <param name="Bags">Whole bags for one hole: an opened bag is not carried to the next.</param>
public sealed record PourHoles(int Count, Length Diameter, Length Depth, Volume Net, Volume WithBreak, int Bags);

public enum PourWeather
{
    Unknown,

    /// <summary>Below 40 °F (4.4 °C): it hardens slowly or not at all and must be kept from freezing. Common practice, no source.</summary>
    Cold,

    Mild,

    /// <summary>Above 90 °F (32.2 °C): it sets fast and dries out. Common practice, no source.</summary>
    Hot,
}

/// <summary>What a pour takes and when the fence may be hung on it.</summary>
public sealed record PourCard(IReadOnlyList<PourHoles> Holes)
{
    private const double Cold = (40 - 32) / 1.8, Hot = (90 - 32) / 1.8;

    public int Count => Holes.Sum(h => h.Count);

    /// <summary>From a truck.</summary>
    public Volume Total => new(Holes.Sum(h => h.Count * h.WithBreak.CubicMetres));

    public int Bags => Holes.Sum(h => h.Count * h.Bags);

    /// <summary>The holes of a run that the plan fills with concrete; a terminal belongs to the first run it stands at, a second roller post to its first.</summary>
    /// <param name="overBreak">0.1 for a tenth more than hole minus post, from the crew's own pours.</param>
    /// <param name="bag">What one bag yields.</param>
    /// <exception cref="ArgumentOutOfRangeException">Over-break below zero, or a bag that yields nothing.</exception>
    public static PourCard OfRun(Plan plan, int line, int run, double overBreak, Volume bag)
    {
        var planned = plan.Lines[line];
        var posts = RunPosts.WithRollers(planned)[run].Select(p => planned.Posts[p]).Where(p => p.Support == Support.Concrete);
        return new([.. posts.GroupBy(p => (p.HoleDiameter, p.HoleDepth, p.Concrete)).Select(g => Of(g.Count(), g.Key.HoleDiameter, g.Key.HoleDepth, g.Key.Concrete, overBreak, bag))]);
    }

    /// <summary>So many holes alike, measured.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The post is no thinner than its hole, or as for a run.</exception>
    public static PourCard OfHoles(int count, Length diameter, Length depth, Length post, double overBreak, Volume bag)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(post, diameter);
        var net = BenchFormulas.Concrete(Given(diameter.Metres), Given(post.Metres), Given(depth.Metres), Given(0)).Value;
        return new([Of(count, diameter, depth, new(net), overBreak, bag)]);
    }

    /// <summary>The earliest day anything hangs on it.</summary>
    /// <param name="days">Age the spec or the crew asks.</param>
    public static DateOnly HangFrom(DateOnly poured, int days) => poured.AddDays(days);

    /// <param name="celsius">The lowest of the days it hardens in for cold, the highest for heat.</param>
    public static PourWeather Weather(double? celsius) => celsius switch { null => PourWeather.Unknown, < Cold => PourWeather.Cold, > Hot => PourWeather.Hot, _ => PourWeather.Mild };

    private static PourHoles Of(int count, Length diameter, Length depth, Volume net, double overBreak, Volume bag)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(overBreak);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(bag.CubicMetres);
        var with = net * (1 + overBreak);
        return new(count, diameter, depth, net, with, (int)BenchFormulas.Bags(Given(with.CubicMetres), Given(bag.CubicMetres)).Value);
    }

    private static Plain Given(double value) => Plain.Constant(value);
}
