namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// Confines a program to the best answers of a phase. Every answer costs the optimum plus the sum of multiplier times distance from the
/// bound, over all bounds. So a bound with a multiplier may be left only by so much that the sum stays within the tolerance: local
/// limits, in place of one dense row over the whole line. Where that leaves next to nothing the row is rigid from then on.
/// </summary>
internal static class Narrowing
{
    private const double Nothing = 1e-7;
    private const double Wide = 10;
    private const double Further = 4;

    /// <param name="tolerance">By how much later phases may worsen this one in all.</param>
    public static void ToBest(ChainArrays chain, ChainAnswer answer, double tolerance)
    {
        var (sum, count) = Multipliers(chain, answer);
        if (count == 0 || sum == 0) return;
        var (each, common) = (tolerance / (2 * count), tolerance / (2 * sum));
        for (var g = 0; g < chain.Groups; g++)
            if (chain.Use[g] == SlackUse.Open && each / answer.AtLow[chain.Rows + g] + common + Further * answer.Y[g] < Nothing) Shut(chain, g, answer.Y[g]);
        for (var r = 0; r < chain.Rows + chain.Groups; r++)
            if (chain.Counts(r) && chain.Low[r] != chain.High[r]) Narrow(chain, r, answer, each, common);
    }

    /// <summary>A slack that stays what it is: its rows take it into their bounds.</summary>
    private static void Shut(ChainArrays chain, int g, double slack)
    {
        chain.Use[g] = SlackUse.Shut;
        for (var r = chain.First[chain.GroupLead[g]]; r < chain.First[chain.GroupLead[g] + 1]; r++)
            if (chain.Group[r] == g) (chain.Low[r], chain.High[r]) = (chain.Low[r] - slack, chain.High[r] - slack);
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
        var (here, up) = (chain.Activity(r, answer.X, answer.Y), answer.AtLow[r] > answer.AtHigh[r]);
        var multiplier = up ? answer.AtLow[r] : answer.AtHigh[r];
        if (multiplier <= 0) return;
        // As far again as it is now, a few times: what stands off its bound in the middle of the best answers stands off further in others.
        var off = Math.Max(0, up ? here - chain.Low[r] : chain.High[r] - here);
        var width = each / multiplier + common + Further * off;
        if (width < Nothing) (chain.Low[r], chain.High[r]) = (here, here);
        else if (width > Wide) return;
        else if (up) chain.High[r] = Math.Min(chain.High[r], Math.Max(here, chain.Low[r]) + width);
        else chain.Low[r] = Math.Max(chain.Low[r], Math.Min(here, chain.High[r]) - width);
    }
}
