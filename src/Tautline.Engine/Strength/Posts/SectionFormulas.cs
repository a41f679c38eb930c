using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Posts;

/// <summary>Properties of round and square hollow sections from outside size and wall; a wall of half the diameter is a solid bar.</summary>
public static class SectionFormulas
{
    /// <summary>A = pi (D^2 - d^2) / 4.</summary>
    public static N Area<N>(N outside, N wall) where N : struct, INumber<N>
    {
        var inside = Inside(outside, wall);
        return N.Constant(Math.PI) / N.Constant(4) * (outside * outside - inside * inside);
    }

    /// <summary>I = pi (D^4 - d^4) / 64.</summary>
    public static N SecondMoment<N>(N outside, N wall) where N : struct, INumber<N>
        => N.Constant(Math.PI) / N.Constant(64) * (Fourth(outside) - Fourth(Inside(outside, wall)));

    /// <summary>S = I / (D / 2), elastic.</summary>
    public static N Elastic<N>(N secondMoment, N outside) where N : struct, INumber<N> => N.Constant(2) * secondMoment / outside;

    /// <summary>Z = (D^3 - d^3) / 6, plastic.</summary>
    public static N Plastic<N>(N outside, N wall) where N : struct, INumber<N>
    {
        var inside = Inside(outside, wall);
        return (outside * outside * outside - inside * inside * inside) / N.Constant(6);
    }

    /// <summary>r = root(I / A).</summary>
    public static N Gyration<N>(N secondMoment, N area) where N : struct, INumber<N> => N.Root(secondMoment / area);

    /// <summary>Square or rectangular tube with sharp corners, bent in the direction of its height: I = (b h^3 - bi hi^3) / 12.</summary>
    public static N TubeSecondMoment<N>(N breadth, N height, N wall) where N : struct, INumber<N>
        => (breadth * Cube(height) - Inside(breadth, wall) * Cube(Inside(height, wall))) / N.Constant(12);

    /// <summary>Largest shear stress of such a tube, V Q / (2 I t).</summary>
    public static N TubeShear<N>(N shear, N breadth, N height, N wall) where N : struct, INumber<N>
    {
        var half = N.Constant(0.5) * height;
        var web = half - wall;
        var first = breadth * wall * (half - N.Constant(0.5) * wall) + wall * (web * web);
        return shear * first / (N.Constant(2) * wall * TubeSecondMoment(breadth, height, wall));
    }

    /// <summary>Largest shear stress of a round hollow section: (4 V / 3 A)(R^2 + R r + r^2) / (R^2 + r^2).</summary>
    public static N RoundShear<N>(N shear, N outside, N wall) where N : struct, INumber<N>
    {
        var (big, small) = (N.Constant(0.5) * outside, N.Constant(0.5) * Inside(outside, wall));
        return N.Constant(4) * shear / (N.Constant(3) * Area(outside, wall)) * ((big * big + big * small + small * small) / (big * big + small * small));
    }

    private static N Inside<N>(N outside, N wall) where N : struct, INumber<N> => outside - N.Constant(2) * wall;

    private static N Cube<N>(N a) where N : struct, INumber<N> => a * a * a;

    private static N Fourth<N>(N a) where N : struct, INumber<N> => a * a * (a * a);
}
