using Tautline.Engine.Catalog;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Layout;

/// <summary>Rail, wire and fabric of a run whose terminals' centres are S apart along the fence.</summary>
public static class RunFormulas
{
    /// <summary>Fewest equal bays within the limit; a hundredth of a millimetre past it does not count.</summary>
    public static N Bays<N>(N along, Rules rules) where N : struct, INumber<N>
        => N.Cover(along, N.Rule(rules.BayMax) + N.Rule(rules.BayTolerance));

    /// <summary>Between the faces of the two terminals.</summary>
    public static N BetweenFaces<N>(N along, Section from, Section to) where N : struct, INumber<N>
        => along - (Radius<N>(from) + Radius<N>(to));

    /// <summary>A rail cut bay by bay: the bay less half of each post.</summary>
    public static N BayPiece<N>(N bay, Section from, Section to) where N : struct, INumber<N> => BetweenFaces(bay, from, to);

    /// <summary>
    /// Barbed wire of a run before its tails: every strand centre to centre, and at each end what its reach adds or takes where the
    /// line turns, reach * tan(turn / 2).
    /// </summary>
    /// <param name="reaches">Sum of the strands' horizontal distances from the fence.</param>
    public static N Strand<N>(N along, N strands, N reaches, N tanStart, N tanEnd) where N : struct, INumber<N>
        => strands * along + reaches * (tanStart + tanEnd);

    /// <summary>Tension wire with its wraps.</summary>
    public static N Wire<N>(N along, Section from, Section to, Rules rules) where N : struct, INumber<N>
        => BetweenFaces(along, from, to) + N.Constant(2) * N.Rule(rules.WireWrap);

    /// <summary>Between the two tension bars; none where two posts leave no room for a bar each.</summary>
    public static N Fabric<N>(N along, Section from, Section to, Rules rules) where N : struct, INumber<N>
        => N.Larger(BetweenFaces(along, from, to) - N.Constant(2) * N.Rule(rules.BarOffFace), N.Constant(0) * N.Rule(rules.BarOffFace));

    /// <summary>Pieces of rail in a run, none longer than a stick.</summary>
    public static N Pieces<N>(N rail, Rules rules) where N : struct, INumber<N> => N.Cover(rail, N.Rule(rules.RailStick));

    /// <summary>One sleeve between two pieces.</summary>
    public static N Sleeves<N>(N pieces) where N : struct, INumber<N> => N.Larger(pieces, N.Constant(1)) - N.Constant(1);

    /// <summary>Fastenings between two ends that are held already.</summary>
    public static N Between<N>(N length, N space) where N : struct, INumber<N>
        => N.Larger(N.Cover(length, space), N.Constant(1)) - N.Constant(1);

    /// <summary>What a pull takes from a square-cut roll: its length and half the mismatch of each end.</summary>
    public static N RollTake<N>(N fabric, N mismatchStart, N mismatchEnd) where N : struct, INumber<N>
        => fabric + (mismatchStart + mismatchEnd) / N.Constant(2);

    /// <summary>Pickets in a piece of fabric.</summary>
    public static N Pickets<N>(N length, N advance) where N : struct, INumber<N> => N.Cover(length, advance);

    private static N Radius<N>(Section post) where N : struct, INumber<N>
        => N.Listed("post", post.OutsideDiameter.Metres, Unit.Length, post.From) / N.Constant(2);
}
