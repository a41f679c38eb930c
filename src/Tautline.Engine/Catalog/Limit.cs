using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Catalog;

/// <summary>One limit of a rule set: its value in SI (degrees for turns), when it applies, and where it comes from.</summary>
public sealed record Limit(string Key, double Value, Unit Unit, string Condition, Provenance From)
{
    /// <summary>The value as a length.</summary>
    /// <exception cref="InvalidOperationException">The limit is not a length.</exception>
    public Length Length => Unit == Unit.Length ? new Length(Value) : throw new InvalidOperationException($"rule '{Key}' is no length");
}
