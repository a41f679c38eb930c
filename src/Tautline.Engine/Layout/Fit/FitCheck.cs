using System.Globalization;

namespace Tautline.Engine.Layout.Fit;

/// <summary>What a caller must see to before it asks for a fit.</summary>
internal static class FitCheck
{
    public static void Check(FitInput input)
    {
        Limits(input.Limits);
        if (!(input.TrenchWidth >= 0)) throw Wrong(nameof(FitInput.TrenchWidth), input.TrenchWidth, "zero or above");
        if (input.Posts.Count < 2) throw Wrong(nameof(FitInput.Posts), input.Posts.Count, "two or more");
        if (input.Ground.Count < 2) throw Wrong(nameof(FitInput.Ground), input.Ground.Count, "two or more");
        Posts(input.Posts);
        Ground(input.Ground);
        if (input.Ground[0].Station > input.Posts[0].Station) throw Wrong("first ground station", input.Ground[0].Station, "at or before the first post");
        if (input.Ground[^1].Station < input.Posts[^1].Station) throw Wrong("last ground station", input.Ground[^1].Station, "at or after the last post");
    }

    private static void Limits(FitLimits limits)
    {
        Above(nameof(limits.FabricHeight), limits.FabricHeight);
        Above(nameof(limits.GreatestRake), limits.GreatestRake);
        Above(nameof(limits.CutCost), limits.CutCost);
        Above(nameof(limits.FillCost), limits.FillCost);
        if (limits.GapWeight is { } weight) Above(nameof(limits.GapWeight), weight);
        if (!(limits.GreatestBend >= 0)) throw Wrong(nameof(limits.GreatestBend), limits.GreatestBend, "zero or above");
        if (!double.IsFinite(limits.LeastGap)) throw Wrong(nameof(limits.LeastGap), limits.LeastGap, "a length");
        if (!(limits.MostGap >= limits.LeastGap)) throw Wrong(nameof(limits.MostGap), limits.MostGap, "at or above the least gap");
        if (!(limits.WantedGap >= limits.LeastGap && limits.WantedGap <= limits.MostGap)) throw Wrong(nameof(limits.WantedGap), limits.WantedGap, "between the least and the largest gap");
    }

    private static void Posts(IReadOnlyList<FitPost> posts)
    {
        for (var i = 0; i < posts.Count; i++)
        {
            if (!double.IsFinite(posts[i].Station)) throw Wrong($"station of post {i}", posts[i].Station, "a length");
            if (posts[i].Pinned is { } pin && !double.IsFinite(pin)) throw Wrong($"pinned top of post {i}", pin, "a height");
            if (double.IsNaN(posts[i].LongestAbove)) throw Wrong($"longest above ground of post {i}", posts[i].LongestAbove, "a length");
            if (i > 0 && !(posts[i].Station - posts[i - 1].Station > 1e-6)) throw Wrong($"station of post {i}", posts[i].Station, "beyond the post before it");
        }
    }

    private static void Ground(IReadOnlyList<GroundVertex> ground)
    {
        for (var i = 0; i < ground.Count; i++)
        {
            if (!double.IsFinite(ground[i].Station) || !double.IsFinite(ground[i].Height)) throw Wrong($"ground vertex {i}", ground[i].Height, "a station and a height");
            if (i > 0 && ground[i].Station < ground[i - 1].Station) throw Wrong($"station of ground vertex {i}", ground[i].Station, "at or beyond the one before it");
        }
    }

    private static void Above(string name, double value)
    {
        if (!(value > 0 && double.IsFinite(value))) throw Wrong(name, value, "above zero");
    }

    private static ArgumentException Wrong(string name, double value, string right)
        => new(string.Create(CultureInfo.InvariantCulture, $"{name} is {value}; it must be {right}."));
}
