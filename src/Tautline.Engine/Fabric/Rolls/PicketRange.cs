namespace Tautline.Engine.Fabric.Rolls;

/// <summary>
/// A number of pickets: one figure once the roll is calibrated or counted, before that the least and the most it can be. Low goes with
/// the widest advance, High with the narrowest.
/// </summary>
public readonly record struct PicketRange(int Low, int High)
{
    public static PicketRange Exactly(int pickets) => new(pickets, pickets);

    public bool IsExact => Low == High;

    /// <summary>Of two figures, whichever way round they come.</summary>
    public static PicketRange Of(int one, int other) => new(Math.Min(one, other), Math.Max(one, other));
}

/// <summary>A length or station in whole nanometres that hangs on a count of pickets, so a range until that is known.</summary>
public readonly record struct NanometreRange(long Low, long High)
{
    public static NanometreRange Of(long one, long other) => new(Math.Min(one, other), Math.Max(one, other));

    public bool IsExact => Low == High;
}

/// <summary>What stands at the top of an end of fabric; it changes from each picket to the next, and a splice needs one of each.</summary>
public enum EndState { Half, Whole }
