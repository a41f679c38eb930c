namespace Tautline.Engine.Layout.Fit;

/// <summary>What a group of level bays costs, compared in this order. Whole numbers, so sums do not depend on how the bays are grouped.</summary>
/// <param name="Pins">By how much pinned tops of the group's bays differ from its level, nanometres.</param>
/// <param name="Forbidden">Length times cut and fill for which no remedy is allowed, square nanometres.</param>
/// <param name="Grading">Priced cut and fill, square nanometres times price units.</param>
/// <param name="Steps">Posts that a step turns into terminals.</param>
/// <param name="Height">Length times level over the lowest ground, square nanometres: the lower fence wins.</param>
internal readonly record struct SteppedCost(Int128 Pins, Int128 Forbidden, Int128 Grading, int Steps, Int128 Height) : IComparable<SteppedCost>
{
    public int CompareTo(SteppedCost other)
    {
        var first = Weighed.CompareTo(other.Weighed);
        if (first != 0) return first;
        return Steps != other.Steps ? Steps.CompareTo(other.Steps) : Height.CompareTo(other.Height);
    }

    /// <summary>What grows with every bay a group takes in.</summary>
    public LevelSlope Weighed => new(Pins, Forbidden, Grading);

    public static SteppedCost operator +(SteppedCost a, SteppedCost b)
        => new(a.Pins + b.Pins, a.Forbidden + b.Forbidden, a.Grading + b.Grading, a.Steps + b.Steps, a.Height + b.Height);
}

/// <summary>Amounts of the three costs that depend on a group's level, or what they change by per nanometre of it; the first that differs decides.</summary>
internal readonly record struct LevelSlope(Int128 Pins, Int128 Forbidden, Int128 Grading) : IComparable<LevelSlope>
{
    public bool Falls => CompareTo(default) < 0;

    public int CompareTo(LevelSlope other)
    {
        var first = Pins.CompareTo(other.Pins);
        if (first == 0) first = Forbidden.CompareTo(other.Forbidden);
        return first == 0 ? Grading.CompareTo(other.Grading) : first;
    }

    public static LevelSlope operator +(LevelSlope a, LevelSlope b) => new(a.Pins + b.Pins, a.Forbidden + b.Forbidden, a.Grading + b.Grading);

    public static LevelSlope operator -(LevelSlope a, LevelSlope b) => new(a.Pins - b.Pins, a.Forbidden - b.Forbidden, a.Grading - b.Grading);

    public static LevelSlope operator *(LevelSlope a, long times) => new(a.Pins * times, a.Forbidden * times, a.Grading * times);
}
