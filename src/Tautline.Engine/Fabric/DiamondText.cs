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
        var spaces = at.Zip(at.Skip(1), (a, b) => b - a).ToList();
        var first = spaces[0];
        if (spaces.SkipLast(1).Any(s => Math.Abs(s - first) > 1e-9)) return "at " + string.Join(", ", at.Select(Number)) + " from the top";
        var last = spaces[^1];
        var odd = Math.Abs(last - first) > 1e-9;
        return $"{Number(at[0])} down, then every {Number(first)}" + (odd ? $", last one {Number(last)}" : "");
    }

    /// <summary>A whole or half number: 4, 2 1/2.</summary>
    public static string Number(double diamonds)
    {
        var halves = (long)Math.Round(diamonds * 2);
        var (whole, half) = (halves / 2, halves % 2 != 0);
        var text = whole.ToString(CultureInfo.InvariantCulture);
        return !half ? text : whole == 0 ? "1/2" : $"{text} 1/2";
    }
}
