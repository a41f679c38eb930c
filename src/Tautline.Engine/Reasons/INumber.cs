using Tautline.Engine.Catalog;

namespace Tautline.Engine.Reasons;

/// <summary>
/// A number of the calculation. Every formula is written once over this interface: with <see cref="Plain"/> it is bare
/// arithmetic, with <see cref="Traced"/> the same code builds the expression that answers 'why'. Values are SI.
/// </summary>
public interface INumber<TSelf> where TSelf : struct, INumber<TSelf>
{
    double Value { get; }

    /// <summary>A figure the job states.</summary>
    static abstract TSelf Given(string name, double value, Unit unit);

    /// <summary>A limit of the rule set or of the job's own 'as specified'.</summary>
    static abstract TSelf Rule(Limit limit);

    /// <summary>A figure of a catalogue row.</summary>
    static abstract TSelf Listed(string name, double value, Unit unit, Provenance from);

    /// <summary>A figure found before, which can be asked 'why' itself.</summary>
    static abstract TSelf Known(FactKey key, double value, Unit unit);

    /// <summary>A number that needs no source: pi, a half, one.</summary>
    static abstract TSelf Constant(double value);

    static abstract TSelf operator +(TSelf a, TSelf b);
    static abstract TSelf operator -(TSelf a, TSelf b);
    static abstract TSelf operator *(TSelf a, TSelf b);
    static abstract TSelf operator /(TSelf a, TSelf b);

    /// <summary>The sum of at least one number, all of one unit.</summary>
    static abstract TSelf Sum(ReadOnlySpan<TSelf> terms);

    static abstract TSelf Root(TSelf a);

    /// <summary>A ratio above zero raised to a power that is a ratio.</summary>
    static abstract TSelf Power(TSelf a, TSelf exponent);

    /// <summary>e raised to a ratio.</summary>
    static abstract TSelf Exp(TSelf a);

    /// <summary>The natural logarithm of a ratio above zero.</summary>
    static abstract TSelf Log(TSelf a);

    static abstract TSelf Size(TSelf a);
    static abstract TSelf Larger(TSelf a, TSelf b);
    static abstract TSelf Smaller(TSelf a, TSelf b);

    /// <summary>How many <paramref name="b"/> it takes to cover <paramref name="a"/>: decided on whole billionths (<see cref="Decide"/>).</summary>
    static abstract TSelf Cover(TSelf a, TSelf b);

    /// <summary>How many whole <paramref name="b"/> fit into <paramref name="a"/>.</summary>
    static abstract TSelf Fit(TSelf a, TSelf b);

    /// <summary>The whole number nearest to a / b, halves up.</summary>
    static abstract TSelf Nearest(TSelf a, TSelf b);

    /// <summary>The first of an ascending ladder of sizes that is not below <paramref name="a"/>; a itself above the last.</summary>
    static abstract TSelf NextSize(TSelf a, Ladder ladder);

    /// <summary>Sticks needed for pieces, first-fit decreasing, no piece longer than the stick.</summary>
    static abstract TSelf Pack(TSelf stick, ReadOnlySpan<TSelf> pieces);
}
