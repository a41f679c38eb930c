namespace Tautline.Documents.Paper.Layout;

/// <summary>Shares the page's width out among the columns of a table.</summary>
internal static class ColumnFit
{
    /// <summary>
    /// Widths that add up to <paramref name="available"/>. What is over goes to the widest column; what is
    /// missing is taken from the columns that can break their text between words, and only then from all.
    /// </summary>
    /// <param name="natural">Width of each column with nothing broken.</param>
    /// <param name="least">Width of its longest word; at most the natural width.</param>
    /// <param name="available">Width of the whole table. All in points.</param>
    public static double[] Widths(double[] natural, double[] least, double available)
    {
        double over = available - natural.Sum();
        if (over >= 0)
            return Widened(natural, over);
        double spare = available - least.Sum();
        return spare >= 0 ? Between(natural, least, spare) : Scaled(least, available);
    }

    private static double[] Widened(double[] natural, double over)
    {
        double[] widths = [.. natural];
        widths[Array.IndexOf(natural, natural.Max())] += over;
        return widths;
    }

    private static double[] Between(double[] natural, double[] least, double spare)
    {
        double give = natural.Sum() - least.Sum();
        return [.. natural.Zip(least, (n, l) => l + (spare * (n - l) / give))];
    }

    private static double[] Scaled(double[] least, double available)
    {
        double sum = least.Sum();
        return [.. least.Select(l => l * available / sum)];
    }
}
