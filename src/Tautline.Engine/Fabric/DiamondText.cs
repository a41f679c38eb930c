using System.Globalization;

namespace Tautline.Engine.Fabric;

/// <summary>Positions in diamonds as a crew says them.</summary>
public static class DiamondText
{
    /// <summary>'1 down, then every 4, last one 2 1/2'; where the spaces differ more than that, each position from the top.</summary>
    public static string Positions(FasteningSet set)
    {
        var at = set.Diamonds;
        if (at.Count == 0) return "none";
        if (at.Count == 1) return $"one, {Number(at[0])} down";
        return Even(at) ? $"{Number(at[0])} down, then {Spaces(set)}" : $"at {Spaces(set)} from the top";
    }

    /// <summary>The same without where the first one sits: 'every 4, last one 4 1/2'.</summary>
    public static string Spaces(FasteningSet set)
    {
        var at = set.Diamonds;
        if (at.Count < 2) return Positions(set);
        if (!Even(at)) return string.Join(", ", at.Select(Number));
        var (first, last) = (at[1] - at[0], at[^1] - at[^2]);
        return $"every {Number(first)}" + (Math.Abs(last - first) > 1e-9 ? $", last one {Number(last)}" : "");
    }

    /// <summary>All spaces but the last are alike.</summary>
    private static bool Even(IReadOnlyList<double> at)
        => at.Zip(at.Skip(1), (a, b) => b - a).SkipLast(1).All(s => Math.Abs(s - (at[1] - at[0])) <= 1e-9);

    /// <summary>A whole or half number: 4, 2 1/2.</summary>
    public static string Number(double diamonds)
    {
        var halves = (long)Math.Round(diamonds * 2);
        var (whole, half) = (halves / 2, halves % 2 != 0);
        var text = whole.ToString(CultureInfo.InvariantCulture);
        return !half ? text : whole == 0 ? "1/2" : $"{text} 1/2";
    }
}
