namespace Tautline.Papers.Paper.Layout;

/// <summary>Shares the page's width out among the columns of a table.</summary>
internal static class ColumnFit
{
    // Halvings of a page's width until nothing a printer could show is left.
    private const int Halvings = 40;

    /// <summary>
    /// Widths that add up to <paramref name="available"/>, all in points. What is over is shared in proportion to the widths, so that figures stay near their names. What is missing is
    /// taken from the widest columns first, and from none beyond its next wish while another can still give.
    /// </summary>
    /// <param name="available">Width of the whole table.</param>
    /// <param name="wishes">Widths from the best to the last acceptable, one per column in each; none grows from one wish to the next.</param>
    public static double[] Widths(double available, params double[][] wishes)
    {
        if (wishes[0].Sum() <= available) return Widened(wishes[0], available);
        for (int i = 1; i < wishes.Length; i++)
            if (wishes[i].Sum() <= available) return Widened(Capped(wishes[i - 1], wishes[i], available), available);
        double[] last = wishes[^1];
        return Widened(Capped(last, new double[last.Length], available), available);
    }

    private static double[] Widened(double[] widths, double available)
    {
        double sum = widths.Sum();
        if (sum <= 0) return [.. widths.Select(_ => available / widths.Length)];
        return [.. widths.Select(w => w * available / sum)];
    }

    /// <summary>No column wider than one common width, unless its floor is; that width as great as the table allows.</summary>
    private static double[] Capped(double[] wish, double[] floor, double available)
    {
        (double fits, double tooWide) = (0, wish.Max());
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (fits + tooWide) / 2;
            if (At(middle, wish, floor).Sum() <= available) fits = middle;
            else tooWide = middle;
        }

        return At(fits, wish, floor);
    }

    private static double[] At(double cap, double[] wish, double[] floor) =>
        [.. wish.Zip(floor, (w, f) => Math.Min(w, Math.Max(f, cap)))];
}
