namespace Tautline.Engine.Fabric.Rolls;

/// <summary>In which order pulls are hung: as listed, or as the rolls suit.</summary>
public enum HangingOrder { AsListed, Free }

/// <summary>Fabric that may feed the same pulls: one height, mesh, gauge, colour and selvage.</summary>
/// <param name="Key">Says the same for two kinds only if they are interchangeable; not looked into.</param>
/// <param name="AdvanceLowNm">Least advance of a picket; equal to the other once calibrated.</param>
/// <param name="TurnsOver">
/// Whether a piece turned top for bottom changes half for whole: knuckled on both edges (never KT) and a half in its count of diamonds.
/// </param>
/// <param name="KilogramsPerMetre">Weight of the fabric as it is rolled.</param>
public sealed record FabricKind(string Key, long AdvanceLowNm, long AdvanceHighNm, bool TurnsOver, double KilogramsPerMetre);

/// <summary>One length of fabric between two terminals.</summary>
/// <param name="Pickets">What it takes from square fabric, with half the mismatch of each end: pickets from the plan, the low with the widest advance.</param>
/// <param name="FromNm">Station of its first terminal, on one axis for all pulls, so that distances between pulls mean something.</param>
/// <param name="PartPickets">Columns of pickets that the bias cuts of its two ends go through; what falls off them is in parts.</param>
public sealed record FabricPull(string Id, string Kind, long NeedNm, PicketRange Pickets, long FromNm, long ToNm, int PartPickets = 0);

/// <summary>Unopened rolls of one lot and length.</summary>
/// <param name="SpliceClass">Rolls of different classes are never woven together: lots that differ in diamond count, gauge or coil hand.</param>
/// <param name="Count">How many there are; left out, as many as are wanted can be bought.</param>
/// <param name="Counted">Pickets somebody counted; left out, the length over the advance.</param>
public sealed record NewRolls(string Id, string Lot, string Kind, string SpliceClass, long LengthNm, int? Count = null, int? Counted = null);

/// <summary>What is left of an opened roll, lying in the yard.</summary>
/// <param name="First">State of the end that lies outside, where somebody looked.</param>
/// <param name="Far">State of the other end.</param>
public sealed record Remnant(
    string Id, string Lot, string Kind, string SpliceClass, long LengthNm, int? Counted = null, EndState? First = null, EndState? Far = null);

/// <summary>A roll of the plan: the id it was stocked under and which of those, counted from 1 in the order they are opened.</summary>
public readonly record struct RollId(string Stock, int Number);

/// <summary>What the crew saw of a roll that the plan opens: its two ends before it is cut.</summary>
public sealed record SeenRoll(RollId Roll, EndState? First, EndState? Far);

/// <summary>What a machine carries woven together. 3 rolls of 50 ft: common practice, no source.</summary>
public sealed record CarryLimit(int Rolls, long LengthNm)
{
    private const long NmPerFoot = 304_800_000;

    public static CarryLimit CommonPractice { get; } = new(3, 150 * NmPerFoot);
}

/// <summary>All that decides which roll feeds which pull.</summary>
public sealed record RollRequest
{
    public required IReadOnlyList<FabricKind> Kinds { get; init; }

    /// <summary>In hanging order.</summary>
    public required IReadOnlyList<FabricPull> Pulls { get; init; }

    public IReadOnlyList<NewRolls> New { get; init; } = [];

    public IReadOnlyList<Remnant> Remnants { get; init; } = [];

    /// <summary>Shorter than this, what is left of a roll is not woven in again and is scrap at the end.</summary>
    public long LeastUsefulNm { get; init; }

    public HangingOrder Order { get; init; }

    public CarryLimit Carry { get; init; } = CarryLimit.CommonPractice;

    public IReadOnlyList<SeenRoll> Seen { get; init; } = [];
}
