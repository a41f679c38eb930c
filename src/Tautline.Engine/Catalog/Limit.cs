using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Catalog;

/// <summary>Up to where a limit of several steps holds, in metres.</summary>
/// <param name="UpTo">Nothing for the last step, which has no end.</param>
/// <param name="Included">Whether the end itself belongs to the step.</param>
public readonly record struct Step(double? UpTo, bool Included)
{
    public bool Holds(double at)
        => UpTo is not { } end || (Included ? Decide.Billionths(at) <= Decide.Billionths(end) : Decide.Billionths(at) < Decide.Billionths(end));
}

/// <summary>One limit of a rule set: its value in SI (degrees for turns), when it applies, where it comes from, and which set gave it.</summary>
/// <param name="Set">Name of the rule set that gave it, or <see cref="AsSpecified"/>.</param>
/// <param name="Step">For a limit of several steps, where this one holds.</param>
public sealed record Limit(RuleKey Rule, double Value, string Condition, Provenance From, string Set, Step? Step = null)
{
    /// <summary>In place of a rule set's name where the job itself states the limit.</summary>
    public const string AsSpecified = "as specified";

    public string Key => Rule.Key;

    public Unit Unit => Rule.Unit;

    /// <summary>The value as a length.</summary>
    /// <exception cref="InvalidOperationException">The limit is not a length.</exception>
    public Length Length => Unit == Unit.Length ? new Length(Value) : throw new InvalidOperationException($"rule '{Key}' is no length");
}
