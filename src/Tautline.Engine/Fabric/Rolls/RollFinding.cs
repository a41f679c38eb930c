namespace Tautline.Engine.Fabric.Rolls;

/// <summary>What is wrong with a request, or what the plan could not do. Figures are named for each: found, then what would be right.</summary>
public enum RollFindingKind
{
    /// <summary>Two kinds, pulls or pieces of stock share an id.</summary>
    IdTwice,

    /// <summary>A pull or a piece of stock names a kind that is not listed.</summary>
    KindUnknown,

    /// <summary>The advance is not above nothing, or its least is above its most. Found: least; right: most.</summary>
    AdvanceWrong,

    /// <summary>The weight is negative or no number.</summary>
    WeightWrong,

    /// <summary>A pull needs no fabric. Found: nanometres.</summary>
    NeedNotPositive,

    /// <summary>Pickets of a pull or a count are below one, or the least is above the most. Found: least; right: most.</summary>
    PicketsWrong,

    /// <summary>Part-pickets are below nothing or more than the pull has. Found: part-pickets; right: pickets of the pull.</summary>
    PartPicketsWrong,

    /// <summary>A pull ends before it starts. Found: its end; right: its start.</summary>
    StationsWrong,

    /// <summary>A roll or remnant has no length. Found: nanometres.</summary>
    RollHasNoLength,

    /// <summary>A length beyond what is reckoned with. Found: nanometres; right: the most.</summary>
    LengthTooGreat,

    /// <summary>A roll or remnant is shorter than the least useful length, or than one picket. Found: nanometres; right: the least.</summary>
    RollTooShort,

    /// <summary>A number of rolls below nothing. Found: the number.</summary>
    CountWrong,

    /// <summary>The least useful length is below nothing. Found: nanometres.</summary>
    LeastUsefulWrong,

    /// <summary>The limit of a machine load is below one roll or has no length. Found: rolls; right: nanometres.</summary>
    CarryLimitWrong,

    /// <summary>The states of both ends do not go with the counted pickets. Found: pickets.</summary>
    EndsDisagree,

    /// <summary>A report names a roll that the plan does not open. Found: its number.</summary>
    SeenRollUnknown,

    /// <summary>Pulls of a kind for which there is no roll or remnant at all. Found: pulls.</summary>
    NoStock,

    /// <summary>The stock does not suffice: rolls were added that are not there. Found: rolls; right: their length together.</summary>
    Shortage,
}

/// <param name="Subject">Id of the kind, pull or stock it is about.</param>
public sealed record RollFinding(RollFindingKind Kind, string Subject, long Found = 0, long Right = 0);
