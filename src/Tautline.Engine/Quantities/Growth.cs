namespace Tautline.Engine.Quantities;

/// <summary>
/// Exponential, logarithm and power from basic operations, so that they agree to the last bit on every machine. Within some units of the last
/// place of the true value; they serve wind profiles and catenaries, where four digits are many.
/// </summary>
public static class Growth
{
    // ln 2 in two parts: the first has 33 bits, so that whole multiples of it are exact.
    private const double Ln2High = 0.6931471804855391;
    private const double Ln2Low = 7.440617110012397e-11;
    private const double PerLn2 = 1.4426950408889634;
    private const double RootHalf = 0.70710678118654752;

    /// <summary>e^x; infinite above about 709, zero below about -745.</summary>
    public static double Exp(double x)
    {
        if (double.IsNaN(x)) return x;
        if (x > 709.78) return double.PositiveInfinity;
        if (x < -745.2) return 0;
        var halves = Math.Floor(x * PerLn2 + 0.5);
        var r = x - halves * Ln2High - halves * Ln2Low;
        // Taylor for |r| up to ln 2 / 2, from the small end.
        var sum = 1.0;
        for (var n = 18; n >= 1; n--) sum = 1 + r / n * sum;
        return Math.ScaleB(sum, (int)halves);
    }

    /// <summary>The natural logarithm; not a number below zero, minus infinity at zero.</summary>
    public static double Log(double x)
    {
        if (double.IsNaN(x) || x < 0) return double.NaN;
        if (x == 0) return double.NegativeInfinity;
        if (double.IsPositiveInfinity(x)) return x;
        var exponent = Math.ILogB(x);
        var mantissa = Math.ScaleB(x, -exponent); // in [1, 2)
        if (mantissa * 0.5 >= RootHalf) (mantissa, exponent) = (mantissa * 0.5, exponent + 1);
        // ln m = 2 atanh((m - 1)/(m + 1)), |t| up to 0.172
        var t = (mantissa - 1) / (mantissa + 1);
        var (z, series) = (t * t, 0.0);
        for (var k = 27; k >= 3; k -= 2) series = z * (1.0 / k + series);
        return exponent * Ln2High + (2 * t + (2 * t * series + exponent * Ln2Low));
    }

    /// <summary>A number above zero raised to a power.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The base is not above zero.</exception>
    public static double Power(double x, double exponent)
        => x > 0 ? Exp(exponent * Log(x)) : throw new ArgumentOutOfRangeException(nameof(x), x, "only a number above zero is raised to a power");
}
