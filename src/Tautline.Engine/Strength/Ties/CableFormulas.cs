using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Ties;

/// <summary>Wires. w load for each length of span, l span, f sag, H horizontal pull, T pull at a support.</summary>
public static class CableFormulas
{
    /// <summary>Flat parabola: H = w l^2 / (8 f).</summary>
    public static N Pull<N>(N load, N span, N sag) where N : struct, INumber<N> => load * (span * span) / (N.Constant(8) * sag);

    /// <summary>f = w l^2 / (8 H).</summary>
    public static N Sag<N>(N load, N span, N pull) where N : struct, INumber<N> => load * (span * span) / (N.Constant(8) * pull);

    /// <summary>Pull in a wire from its horizontal and its upright part: root(H^2 + V^2).</summary>
    public static N Along<N>(N horizontal, N upright) where N : struct, INumber<N> => N.Root(horizontal * horizontal + upright * upright);

    /// <summary>At the supports of a flat parabola: root(H^2 + (w l / 2)^2).</summary>
    public static N AtSupport<N>(N pull, N load, N span) where N : struct, INumber<N> => Along(pull, load * span / N.Constant(2));

    /// <summary>Length of a flat parabola: l (1 + 8/3 (f / l)^2).</summary>
    public static N Length<N>(N span, N sag) where N : struct, INumber<N>
        => span * (N.Constant(1) + N.Constant(8) / N.Constant(3) * (sag / span) * (sag / span));

    /// <summary>Least sag that keeps the pull at the supports to a limit: l / (4 root((2 T / (w l))^2 - 1)).</summary>
    public static N LeastSag<N>(N load, N span, N limit) where N : struct, INumber<N>
    {
        var ratio = N.Constant(2) * limit / (load * span);
        return span / (N.Constant(4) * N.Root(ratio * ratio - N.Constant(1)));
    }

    /// <summary>c of a catenary from half its length s and its sag: (s^2 - f^2) / (2 f); H = w c, T = w (c + f).</summary>
    public static N Parameter<N>(N halfLength, N sag) where N : struct, INumber<N> => (halfLength * halfLength - sag * sag) / (N.Constant(2) * sag);

    /// <summary>Span of a catenary of half length s: 2 c asinh(s / c).</summary>
    public static N CatenarySpan<N>(N parameter, N halfLength) where N : struct, INumber<N>
    {
        var x = halfLength / parameter;
        return N.Constant(2) * parameter * N.Log(x + N.Root(x * x + N.Constant(1)));
    }

    /// <summary>Sag of a catenary over a span: c (cosh(l / 2c) - 1).</summary>
    public static N CatenarySag<N>(N parameter, N span) where N : struct, INumber<N>
    {
        var up = N.Exp(span / (N.Constant(2) * parameter));
        return parameter * ((up + N.Constant(1) / up) / N.Constant(2) - N.Constant(1));
    }

    /// <summary>c of a catenary from its span and sag, halved until nothing moves.</summary>
    public static double Parameter(double span, double sag)
    {
        double Sag(double c) => CatenarySag(new Plain(c), new Plain(span)).Value;
        var (low, high) = (span / 1000, span / 1000);
        while (Sag(high) > sag) high *= 2;
        for (var i = 0; i < 200; i++)
        {
            var middle = (low + high) / 2;
            if (Sag(middle) > sag) low = middle;
            else high = middle;
        }
        return high;
    }

    /// <summary>Two loads square to each other, weight and wind.</summary>
    public static N Resultant<N>(N upright, N level) where N : struct, INumber<N> => N.Root(upright * upright + level * level);

    /// <summary>Supports at different heights: the lowest point lies l / 2 - h H / (w l) from the lower one.</summary>
    public static N Lowest<N>(N span, N rise, N pull, N load) where N : struct, INumber<N> => span / N.Constant(2) - rise * pull / (load * span);

    /// <summary>Fall of the wire from a support to its lowest point x away: w x^2 / (2 H).</summary>
    public static N Fall<N>(N load, N away, N pull) where N : struct, INumber<N> => load * (away * away) / (N.Constant(2) * pull);

    /// <summary>Strain of a straight wire pulled aside by a at its middle: root(1 + (2 a / l)^2) - 1.</summary>
    public static N AsideStrain<N>(N aside, N span) where N : struct, INumber<N>
    {
        var slope = N.Constant(2) * aside / span;
        return N.Root(N.Constant(1) + slope * slope) - N.Constant(1);
    }

    /// <summary>Upright reaction at the higher end of a weightless wire with loads at equal panels: (sum of load times its distance from the lower end + H drop) / span.</summary>
    public static N HigherEnd<N>(ReadOnlySpan<N> loads, N panel, N pull, N drop) where N : struct, INumber<N>
    {
        var moment = pull * drop;
        for (var i = 0; i < loads.Length; i++) moment += loads[i] * (N.Constant(loads.Length - i) * panel);
        return moment / (N.Constant(loads.Length + 1) * panel);
    }
}
