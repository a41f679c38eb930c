using Tautline.Engine.Quantities;

namespace Tautline.Engine.Jobs;

/// <summary>What stands in the ground. A built post is a fixed point of placing: the plan goes through it.</summary>
public sealed record BuiltFacts(IReadOnlyList<BuiltPost> Posts)
{
    public static BuiltFacts None { get; } = new([]);
}

/// <summary>A line post that stands at a level distance from the start of a leg.</summary>
public sealed record BuiltPost(BuiltPostId Id, LegId Leg, Length FromLegStart);
