using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Footings;

/// <summary>
/// Posts embedded in earth, IBC 1807.3.2. P lateral force and M moment at the ground, at service level; b diameter of the post or of its concrete
/// (the diagonal of a square one); S lateral soil pressure for each length of depth; d depth.
/// </summary>
public static class PoleFormulas
{
    private const double FootMetres = 0.3048;

    /// <summary>Beyond this depth lateral pressure does not count as growing.</summary>
    public const double MostDepth = 12 * FootMetres;

    /// <summary>A = 2.34 P / (S1 b).</summary>
    public static N A<N>(N force, N pressure, N breadth) where N : struct, INumber<N>
        => N.Listed("factor of the pole formula", 2.34, Unit.Ratio, StrengthSources.PoleFormula) * force / (pressure * breadth);

    /// <summary>
    /// Nonconstrained: d = (A / 2)(1 + root(1 + 4.36 h / A)). Written here with A h = 2.34 M / (S1 b), which is the same and holds for a moment
    /// without a force too: d = (A + root(A^2 + 4.36 A h)) / 2.
    /// </summary>
    /// <param name="pressure">S1, at a third of the depth.</param>
    public static N Depth<N>(N force, N moment, N pressure, N breadth) where N : struct, INumber<N>
    {
        var a = A(force, pressure, breadth);
        var ah = A(moment, pressure, breadth);
        return (a + N.Root(a * a + N.Listed("factor of the pole formula", 4.36, Unit.Ratio, StrengthSources.PoleFormula) * ah)) / N.Constant(2);
    }

    /// <summary>Constrained at the ground by rigid pavement: d^2 = 4.25 M / (S3 b) with S3 at the depth d, so d^3 = 4.25 M / (S b).</summary>
    public static N ConstrainedDepth<N>(N moment, N soil, N breadth) where N : struct, INumber<N>
    {
        // The cube root as a power of a bare number: the lengths are taken out and put back.
        var unit = N.Listed("unit length", 1, Unit.Length, StrengthSources.PoleFormula);
        var cube = N.Listed("factor of the pole formula", 4.25, Unit.Ratio, StrengthSources.PoleFormula) * moment / (soil * breadth) / (unit * unit * unit);
        return cube.Value > 0 ? N.Power(cube, N.Constant(1) / N.Constant(3)) * unit : N.Constant(0) * unit;
    }

    /// <summary>Lateral pressure at a depth, no deeper than 12 ft.</summary>
    public static N Pressure<N>(N soil, N depth) where N : struct, INumber<N>
        => soil * N.Smaller(depth, N.Listed("deepest that counts", MostDepth, Unit.Length, StrengthSources.PoleFormula));

    /// <summary>
    /// The depth at which the nonconstrained formula, its S1 taken at a third of that depth, gives that depth: a post no deeper needs, a deeper one
    /// has to spare. Halved until nothing moves.
    /// </summary>
    /// <returns>Metres; infinite where nothing below the 12 ft the code allows holds and far beyond.</returns>
    public static double Converged(double force, double moment, double soil, double breadth)
    {
        if (force == 0 && moment == 0) return 0;
        double Needs(double d) => Depth(new Plain(force), new Plain(moment), Pressure(new Plain(soil), new Plain(d / 3)), new Plain(breadth)).Value;
        var (low, high) = (0.0, 1.0);
        while (Needs(high) > high)
            if ((high *= 2) > 1e4) return double.PositiveInfinity;
        for (var i = 0; i < 200 && high - low > 1e-15 * high; i++)
        {
            var middle = (low + high) / 2;
            if (Needs(middle) > middle) low = middle;
            else high = middle;
        }
        return high;
    }
}
