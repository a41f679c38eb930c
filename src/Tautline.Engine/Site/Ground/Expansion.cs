namespace Tautline.Engine.Site.Ground;

/// <summary>
/// Exact sums and products of doubles. A number is held as a sum of doubles that do not overlap, smallest first (Shewchuk, Adaptive Precision
/// Floating-Point Arithmetic and Fast Robust Geometric Predicates, 1997, section 2). Parts that are zero are dropped; zero is one zero part.
/// Exact as long as nothing overflows or underflows.
/// </summary>
internal static class Expansion
{
    private const double Splitter = 134217729; // 2^27 + 1 cuts 53 bits in two halves.

    /// <summary>sum + rest = a + b.</summary>
    public static double TwoSum(double a, double b, out double rest)
    {
        var sum = a + b;
        var ofB = sum - a;
        rest = a - (sum - ofB) + (b - ofB);
        return sum;
    }

    /// <summary>product + rest = a * b; written without a fused multiply-add, which differs by platform.</summary>
    public static double TwoProduct(double a, double b, out double rest)
    {
        var product = a * b;
        var (aHigh, aLow) = Split(a);
        var (bHigh, bLow) = Split(b);
        rest = aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow);
        return product;
    }

    /// <summary>The parts of a * b; room for two.</summary>
    public static int Product(double a, double b, Span<double> parts)
    {
        var product = TwoProduct(a, b, out var rest);
        return Write(rest, product, parts);
    }

    /// <summary>The parts of a - b; room for two.</summary>
    public static int Difference(double a, double b, Span<double> parts)
    {
        var difference = TwoSum(a, -b, out var rest);
        return Write(rest, difference, parts);
    }

    /// <summary>The parts of e + f; room for as many as both have.</summary>
    public static int Sum(ReadOnlySpan<double> e, ReadOnlySpan<double> f, Span<double> parts)
    {
        var (i, j, count, carried) = (0, 0, 0, 0.0);
        while (i < e.Length || j < f.Length)
        {
            var fromE = j == f.Length || i < e.Length && Math.Abs(e[i]) < Math.Abs(f[j]);
            carried = TwoSum(carried, fromE ? e[i++] : f[j++], out var rest);
            if (rest != 0) parts[count++] = rest;
        }
        return Close(carried, parts, count);
    }

    /// <summary>The parts of e times b; room for twice as many as e has.</summary>
    public static int Scale(ReadOnlySpan<double> e, double b, Span<double> parts)
    {
        var count = 0;
        var carried = TwoProduct(e[0], b, out var rest);
        if (rest != 0) parts[count++] = rest;
        foreach (var part in e[1..])
        {
            var high = TwoProduct(part, b, out var low);
            var sum = TwoSum(carried, low, out rest);
            if (rest != 0) parts[count++] = rest;
            carried = TwoSum(high, sum, out rest);
            if (rest != 0) parts[count++] = rest;
        }
        return Close(carried, parts, count);
    }

    /// <summary>The parts of e times f; room for twice the product of their counts.</summary>
    public static int Product(ReadOnlySpan<double> e, ReadOnlySpan<double> f, Span<double> parts)
    {
        Span<double> scaled = stackalloc double[2 * e.Length];
        Span<double> sum = stackalloc double[2 * e.Length * f.Length];
        var count = Scale(e, f[0], parts);
        foreach (var factor in f[1..])
        {
            var more = Scale(e, factor, scaled);
            count = Sum(parts[..count], scaled[..more], sum);
            sum[..count].CopyTo(parts);
        }
        return count;
    }

    public static void Negate(Span<double> parts)
    {
        foreach (ref var part in parts) part = -part;
    }

    /// <summary>The nearest double but for a few last bits, with the sign of the exact number.</summary>
    public static double Estimate(ReadOnlySpan<double> parts)
    {
        var sum = 0.0;
        foreach (var part in parts) sum += part;
        return sum;
    }

    private static int Write(double low, double high, Span<double> parts)
    {
        if (low == 0) return Close(high, parts, 0);
        (parts[0], parts[1]) = (low, high);
        return 2;
    }

    private static int Close(double highest, Span<double> parts, int count)
    {
        if (highest != 0 || count == 0) parts[count++] = highest;
        return count;
    }

    private static (double High, double Low) Split(double a)
    {
        var scaled = Splitter * a;
        var high = scaled - (scaled - a);
        return (high, a - high);
    }
}
