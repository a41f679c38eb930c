namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// Confines a program to the best answers of a phase. Every answer costs the optimum plus the sum of multiplier times distance from the
/// bound, over all bounds. So a bound with a multiplier may be left only by so much that the sum stays within the tolerance: local
/// limits, in place of one dense row over the whole line.
/// </summary>
internal static class Narrowing
{
    // A slack that is this small while its own bound clearly carries a price is zero in every best answer.
    private const double Zero = 1e-8;
    private const double Clear = 1e-2;

    private const double Thinnest = 1e-12;
    private const double Wide = 10;

    /// <param name="tolerance">By how much later phases may worsen this one in all.</param>
    public static void ToBest(ChainArrays chain, ChainAnswer answer, double tolerance)
    {
        for (var g = 0; g < chain.Groups; g++)
            if (chain.Use[g] == SlackUse.Open && chain.Price[g] > 0 && answer.Y[g] < Zero && answer.AtLow[chain.Rows + g] > Clear * chain.Price[g])
                chain.Use[g] = SlackUse.Shut;
        var (sum, count) = Multipliers(chain, answer);
        if (count == 0) return;
        for (var r = 0; r < chain.Rows + chain.Groups; r++)
            if (chain.Counts(r)) Narrow(chain, r, answer, tolerance / (2 * count), tolerance / (2 * sum));
    }

    private static (double Sum, int Count) Multipliers(ChainArrays chain, ChainAnswer answer)
    {
        var (sum, count) = (0.0, 0);
        for (var r = 0; r < chain.Rows + chain.Groups; r++)
            if (chain.Counts(r)) (sum, count) = (sum + answer.AtLow[r] + answer.AtHigh[r], count + 1);
        return (sum, count);
    }

    private static void Narrow(ChainArrays chain, int r, ChainAnswer answer, double each, double common)
    {
        var (low, high) = (answer.AtLow[r], answer.AtHigh[r]);
        if (low > high) chain.High[r] = Math.Min(chain.High[r], chain.Low[r] + Width(low, each, common));
        else if (high > 0) chain.Low[r] = Math.Max(chain.Low[r], chain.High[r] - Width(high, each, common));
    }

    private static double Width(double multiplier, double each, double common)
    {
        var width = Math.Max(Thinnest, each / multiplier + common);
        return width > Wide ? double.PositiveInfinity : width;
    }
}
