using Tautline.Engine.Catalog;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Fabric;

/// <summary>Where fastenings sit on a post, in diamonds from the top of the fabric, ascending.</summary>
/// <param name="Diamonds">Positions; halves are the middle of a diamond.</param>
/// <param name="LargestSpace">Largest space between two, in diamonds.</param>
public sealed record FasteningSet(IReadOnlyList<double> Diamonds, double LargestSpace)
{
    public int Count => Diamonds.Count;
}

/// <summary>
/// Bands on a terminal and ties on a line post. Two counts are made, by inches and by whole diamonds, and the larger holds, so
/// neither the limit nor the crew's way of counting is broken.
/// </summary>
public static class Fastening
{
    /// <summary>Tension bar: the fabric's height standing plumb less the rule's shortening.</summary>
    public static N Bar<N>(N plumbHeight, Rules rules) where N : struct, INumber<N> => plumbHeight - N.Rule(rules.BarShorter);

    /// <summary>The larger of the count by inches and the count by diamonds.</summary>
    public static N Count<N>(ResolvedSpec spec, N bar, Limit limit) where N : struct, INumber<N>
        => N.Larger(ByInches(bar, spec.Rules, limit), ByDiamonds<N>(spec, limit));

    /// <summary>Spaces of at most the limit between two fastenings that sit an end distance in from the bar's ends.</summary>
    public static N ByInches<N>(N bar, Rules rules, Limit limit) where N : struct, INumber<N>
        => N.Cover(bar - N.Constant(2) * N.Rule(rules.BandEndDistance), N.Rule(limit)) + N.Constant(1);

    /// <summary>Spaces of whole diamonds within the limit between the first diamond from the top and the last from the bottom.</summary>
    public static N ByDiamonds<N>(ResolvedSpec spec, Limit limit) where N : struct, INumber<N>
        => N.Cover(Diamonds<N>(spec) - N.Constant(2), WholeSpace<N>(spec, limit)) + N.Constant(1);

    /// <summary>Positions for a count: whole diamonds from the top where they suffice, else even half diamonds.</summary>
    public static FasteningSet Positions(ResolvedSpec spec, int count, Limit limit)
    {
        var diamonds = spec.Diamonds.Diamonds;
        var space = (int)WholeSpace<Plain>(spec, limit).Value;
        var whole = count == (int)ByDiamonds<Plain>(spec, limit).Value;
        List<double> at = [];
        for (var i = 0; i < count - 1; i++)
            at.Add(1 + (whole ? i * space : HalfFloor((diamonds - 2) * i / (count - 1))));
        at.Add(diamonds - 1);
        return new FasteningSet(at, Largest(at));
    }

    /// <summary>
    /// What crews do (common practice, no source): one band fewer than the height in feet, every so many whole diamonds, the odd
    /// half in the last space, the rest shared by top and bottom. Nothing for heights it is not known for.
    /// </summary>
    public static FasteningSet? Habit(ResolvedSpec spec)
    {
        var (diamonds, feet) = (spec.Diamonds.Diamonds, spec.Height.Feet);
        if (feet is < 4 - 1e-9 or > 7 + 1e-9 || Math.Abs(feet - Math.Round(feet)) > 1e-9) return null;
        var count = (int)Math.Round(feet) - 1;
        var space = Math.Floor(diamonds / count);
        var last = space + (diamonds - Math.Floor(diamonds));
        var start = HalfFloor((diamonds - (count - 2) * space - last) / 2);
        List<double> at = [.. Enumerable.Range(0, count - 1).Select(i => start + i * space)];
        at.Add(at[^1] + last);
        return new FasteningSet(at, Largest(at));
    }

    /// <summary>Mean height of a diamond by the published count.</summary>
    public static N Pitch<N>(ResolvedSpec spec) where N : struct, INumber<N>
        => N.Given("fabric height", spec.Height.Metres, Unit.Length) / Diamonds<N>(spec);

    private static N WholeSpace<N>(ResolvedSpec spec, Limit limit) where N : struct, INumber<N>
        => N.Larger(N.Constant(1), N.Fit(N.Rule(limit), Pitch<N>(spec)));

    private static N Diamonds<N>(ResolvedSpec spec) where N : struct, INumber<N>
        => N.Listed("diamonds over the height", spec.Diamonds.Diamonds, Unit.Count, spec.Diamonds.From);

    private static double HalfFloor(double value) => Math.Floor(value * 2 + 1e-9) / 2;

    private static double Largest(List<double> at) => at.Zip(at.Skip(1), (a, b) => b - a).DefaultIfEmpty(0).Max();
}
