namespace Tautline.Documents.Paper.Layout;

/// <summary>Shares the page's width out among the columns of a table.</summary>
internal static class ColumnFit
{
    // Halvings of a page's width until nothing a printer could show is left.
    private const int Halvings = 40;

    /// <summary>
    /// Widths that add up to <paramref name="available"/>, all in points. What is over goes to the widest column. What is missing is
    /// taken from the widest columns first, down to their longest words, and only then from all.
    /// </summary>
    /// <param name="natural">Width of each column with nothing broken.</param>
    /// <param name="least">Width below which a word or a figure would be cut; at most the natural width.</param>
    /// <param name="available">Width of the whole table.</param>
    public static double[] Widths(double[] natural, double[] least, double available)
    {
        if (natural.Sum() <= available) return Widened(natural, available);
        return least.Sum() <= available ? Widened(Capped(natural, least, available), available) : Scaled(least, available);
    }

    private static double[] Widened(double[] widths, double available)
    {
        double[] widened = [.. widths];
        widened[Array.IndexOf(widths, widths.Max())] += available - widths.Sum();
        return widened;
    }

    /// <summary>No column wider than one common width, unless its longest word is; that width as great as the table allows.</summary>
    private static double[] Capped(double[] natural, double[] least, double available)
    {
        (double fits, double tooWide) = (0, natural.Max());
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (fits + tooWide) / 2;
            if (At(middle, natural, least).Sum() <= available) fits = middle;
            else tooWide = middle;
        }

        return At(fits, natural, least);
    }

    private static double[] At(double cap, double[] natural, double[] least) =>
        [.. natural.Zip(least, (n, l) => Math.Min(n, Math.Max(l, cap)))];

    private static double[] Scaled(double[] least, double available)
    {
        double sum = least.Sum();
        return [.. least.Select(l => l * available / sum)];
    }
}
