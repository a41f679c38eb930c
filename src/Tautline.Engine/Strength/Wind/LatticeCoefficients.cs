using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Wind;

public enum MemberForm { Flat, Round }

/// <summary>Force coefficients of open signs and lattices, ASCE 7-16 Table 29.4-2: on the solid area, openings 30 % or more.</summary>
public static class LatticeCoefficients
{
    /// <summary>The table's last row ends here: more closed than this is a wall.</summary>
    public const double MostSolid = 0.7;

    private static readonly double[] steps = [0.1, 0.3];

    private static readonly double[] flat = [2.0, 1.8, 1.6];

    private static readonly double[] round = [1.2, 1.3, 1.5];

    /// <summary>
    /// Cf by the row a solidity falls in: below 0.1, to below 0.3, to 0.7. Of round members the column for small D root(q) is taken always: it is the
    /// larger one, so that more wind never lowers a load; fence wire and pipe are well inside it (9-ga wire at 20 psf 0.055, 4-in pipe 1.5, limit 2.5).
    /// </summary>
    public static N Cf<N>(double solidity, MemberForm form) where N : struct, INumber<N>
        => N.Listed("Cf", Values(form)[Row(solidity)], Unit.Ratio, StrengthSources.OpenSigns);

    /// <summary>
    /// Force on the gross area over q G: Cf e. Where Cf steps down from one row to the next the load at the step is kept until the next row
    /// has grown past it, so that closing more of the fence never lowers its load.
    /// </summary>
    public static N OnGross<N>(N solidity, MemberForm form) where N : struct, INumber<N>
    {
        var force = Cf<N>(solidity.Value, form) * solidity;
        foreach (var at in steps)
            if (solidity.Value >= at && Values(form)[Row(at) - 1] * at > force.Value)
                force = N.Larger(force, N.Listed("Cf e at the step of the table", Values(form)[Row(at) - 1] * at, Unit.Ratio, StrengthSources.OpenSigns));
        return force;
    }

    /// <summary>Where a row's Cf ends and the next begins, with both values.</summary>
    public static IReadOnlyList<(double At, double Below, double From)> Steps(MemberForm form)
        => [.. steps.Select((at, i) => (at, Values(form)[i], Values(form)[i + 1]))];

    private static double[] Values(MemberForm form) => form == MemberForm.Flat ? flat : round;

    private static int Row(double solidity) => solidity < steps[0] ? 0 : solidity < steps[1] ? 1 : 2;
}
