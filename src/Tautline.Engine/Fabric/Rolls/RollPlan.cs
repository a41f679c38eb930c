using System.Text.Json.Serialization;
using Tautline.Engine.Jobs;

namespace Tautline.Engine.Fabric.Rolls;

/// <summary>How a piece of a roll is turned before it is hung.</summary>
public enum PieceTurn
{
    None,

    /// <summary>The roll is unrolled from its other end: its pieces are counted from there.</summary>
    OtherEndFirst,

    /// <summary>Cut, then turned end for end: an odd number of pickets shows the other state.</summary>
    EndForEnd,

    /// <summary>An even piece knuckled on both edges with a half count, turned top for bottom.</summary>
    TopForBottom,
}

/// <summary>How the two ends of a splice meet.</summary>
public enum SpliceMatch
{
    /// <summary>One whole, one half: the weaving picket comes from the offcut at the far end of the pull.</summary>
    Matches,

    /// <summary>Both alike: one picket is taken off and woven back in between, or one more is woven on from the offcut; the count is the same.</summary>
    OnePicket,

    /// <summary>Not known yet: one picket is allowed, the crew sees which of the two it is.</summary>
    ResolveOnSite,
}

/// <summary>
/// A piece of a roll in a pull. Of its pickets one is woven in at each splice of the pull. From and To are pickets of the roll, counted from
/// the end it is unrolled from first. A piece of none at its least is perhaps not needed.
/// </summary>
/// <param name="Roll">Index among the plan's rolls.</param>
public sealed record FabricPiece(int Roll, string Lot, PicketRange From, PicketRange To, PicketRange Pickets, NanometreRange Length, PieceTurn Turn);

/// <summary>Where two pieces of a pull are woven together.</summary>
/// <param name="Left">Index of the piece before it in the pull.</param>
/// <param name="Certain">False where the roll before may reach to the end of the pull.</param>
public sealed record FabricSplice(int Left, NanometreRange Station, SpliceMatch Match, bool Certain);

/// <summary>What feeds one pull, in the order of the line; nothing where no fabric is stocked.</summary>
/// <param name="HangsAs">Its place in the hanging order of its kind, from 0.</param>
public sealed record PullFeed(string Pull, int HangsAs, IReadOnlyList<FabricPiece> Pieces, IReadOnlyList<FabricSplice> Splices);

/// <summary>A roll the plan opens; kind by kind, in the order they are opened. Pickets: In = Hung + Woven + Scrap + Left, at the low and at the high alike.</summary>
/// <param name="LengthNm">As it comes.</param>
/// <param name="Missing">Nobody has it: the stock does not suffice.</param>
/// <param name="Certain">False where it is opened only if the advance turns out that way.</param>
/// <param name="Scrap">Pickets left that are shorter than the least useful length.</param>
/// <param name="Left">Pickets that go back as a remnant.</param>
/// <param name="Woven">One for each splice by which it was woven on, wherever that picket was taken from.</param>
/// <param name="LeftState">State of the end the remnant was cut at, where known.</param>
/// <param name="FarState">State of its other end.</param>
/// <param name="Drop">Where its first piece begins.</param>
public sealed record RollUse(
    RollId Id, string Lot, string Kind,
    [property: JsonPropertyName("length"), JsonConverter(typeof(NanometresAsMetres))] long LengthNm,
    bool Remnant, bool Missing, bool Certain, PicketRange In, PicketRange Hung, PicketRange Woven, PicketRange Scrap,
    PicketRange Left, NanometreRange LeftLength, EndState? LeftState, EndState? FarState, string FirstPull, NanometreRange Drop, double Kilograms);

/// <summary>Pieces woven together on the ground and carried by one machine.</summary>
/// <param name="FirstPiece">Index of its first piece in the pull.</param>
/// <param name="Over">One roll alone is more than the limit.</param>
public sealed record MachineLoad(
    string Pull, int FirstPiece, int Pieces,
    [property: JsonPropertyName("length"), JsonConverter(typeof(NanometresAsMetres))] long LengthNm,
    double Kilograms, bool Over);

/// <summary>
/// Pickets of one kind at one end of the advance's range: In = Hung + Woven + Scrap + Left. Part of those hung are cut by a bias: a part
/// of each hangs, a part is in the offcut.
/// </summary>
public sealed record PicketLedger(long In, long Hung, long Part, long Woven, long Scrap, long Left);

/// <summary>What was wished, in the order of the wishes; compared from the first on.</summary>
/// <param name="MissingNm">Length that nobody has.</param>
/// <param name="BoughtNm">Length of the new rolls opened.</param>
/// <param name="Rolls">New rolls opened.</param>
/// <param name="Scrap">Pickets left over in lengths too short to be used.</param>
/// <param name="Left">Pickets left over in all, scrap among them.</param>
/// <param name="CarryNm">Distance that opened rolls are carried from the end of a pull to the start of the next one they feed.</param>
public readonly record struct HangCost(
    [property: JsonPropertyName("missing"), JsonConverter(typeof(NanometresAsMetres))] long MissingNm,
    [property: JsonPropertyName("bought"), JsonConverter(typeof(NanometresAsMetres))] long BoughtNm,
    int Rolls, int Splices, long Scrap, long Left,
    [property: JsonPropertyName("carry"), JsonConverter(typeof(NanometresAsMetres))] long CarryNm) : IComparable<HangCost>
{
    public int CompareTo(HangCost other)
    {
        if (MissingNm != other.MissingNm) return MissingNm.CompareTo(other.MissingNm);
        if (BoughtNm != other.BoughtNm) return BoughtNm.CompareTo(other.BoughtNm);
        if (Rolls != other.Rolls) return Rolls.CompareTo(other.Rolls);
        if (Splices != other.Splices) return Splices.CompareTo(other.Splices);
        if (Scrap != other.Scrap) return Scrap.CompareTo(other.Scrap);
        return Left != other.Left ? Left.CompareTo(other.Left) : CarryNm.CompareTo(other.CarryNm);
    }

    public static bool operator <(HangCost a, HangCost b) => a.CompareTo(b) < 0;

    public static bool operator >(HangCost a, HangCost b) => a.CompareTo(b) > 0;
}

/// <summary>Below this no plan can be, whatever the order: bought length and splices.</summary>
/// <param name="Proven">Whether the plan is known to be the best there is in the order asked for; never before the roll is calibrated.</param>
public sealed record RollBound(
    [property: JsonPropertyName("bought"), JsonConverter(typeof(NanometresAsMetres))] long BoughtNm,
    int Splices, bool Proven);

/// <summary>What one kind of fabric comes to, at the widest advance (low counts) and at the narrowest.</summary>
public sealed record KindRolls(string Kind, HangCost AtLow, HangCost AtHigh, PicketLedger LedgerAtLow, PicketLedger LedgerAtHigh, RollBound Bound);

/// <summary>Stock that nobody needs to open.</summary>
public sealed record Unopened(string Stock, string Lot, bool Remnant, int Count);

/// <summary>Which roll feeds which pull.</summary>
/// <param name="Feeds">One for each pull, in the order they were listed.</param>
/// <param name="Returned">Rolls of a stated number and remnants that stay unopened; where it depends on the advance, the fewest.</param>
public sealed record RollPlan(
    IReadOnlyList<PullFeed> Feeds, IReadOnlyList<RollUse> Rolls, IReadOnlyList<MachineLoad> Loads, IReadOnlyList<Unopened> Returned,
    IReadOnlyList<KindRolls> Kinds, IReadOnlyList<RollFinding> Findings);
