using Tautline.Engine.Reasons;

namespace Tautline.Engine.Catalog;

/// <summary>What a limit is measured in.</summary>
public enum RuleUnit
{
    /// <summary>Metres.</summary>
    Length,

    /// <summary>Cubic metres.</summary>
    Volume,

    /// <summary>A slope or change of slope, rise over run.</summary>
    Slope,

    /// <summary>Degrees.</summary>
    Angle,

    /// <summary>Days.</summary>
    Days,

    /// <summary>A plain number.</summary>
    Number,

    /// <summary>How many: a whole number from 1 up.</summary>
    Count,

    /// <summary>1 for yes, 0 for no.</summary>
    YesNo,
}

/// <summary>A limit that rule sets and jobs may state.</summary>
/// <param name="Meaning">What it limits; for one that no set needs to state, also what holds without it.</param>
/// <param name="Use">Whether the plan is made by it.</param>
/// <param name="SteppedBy">What its value changes with, such as 'radius'; nothing for a limit of one value.</param>
/// <param name="MayBeZero">True where zero means something.</param>
public sealed record RuleKey(
    string Key, RuleUnit Measure, string Meaning, RuleUse Use, string? SteppedBy = null, bool MayBeZero = false)
{
    /// <summary>The dimension of its value; angles, days and plain numbers have none.</summary>
    public Unit Unit => Measure switch
    {
        RuleUnit.Length => Unit.Length,
        RuleUnit.Volume => Unit.Volume,
        _ => Unit.Ratio,
    };

    private const double MostCount = 1000;

    /// <summary>A finite value above zero, or zero where that means something; a count is whole, a yes or no is 1 or 0.</summary>
    public bool Allows(double value) => Measure switch
    {
        RuleUnit.YesNo => value is 0 or 1,
        RuleUnit.Count => value is >= 1 and <= MostCount && value == Math.Floor(value),
        _ => double.IsFinite(value) && (value > 0 || (MayBeZero && value == 0)),
    };
}

/// <summary>What becomes of a limit.</summary>
public enum RuleUse
{
    /// <summary>Every rule set states it, and the plan is made by it.</summary>
    Needed,

    /// <summary>Where it is stated the plan is made by it.</summary>
    Optional,

    /// <summary>Kept and shown; the plan is not made by it.</summary>
    Recorded,
}
