using Tautline.Engine.Quantities;

namespace Tautline.Engine.Jobs;

/// <summary>
/// What stands in the ground. A built post is a fixed point of placing and of the fit over the ground: the plan goes through it. Where every built post stands
/// as the plan without it would have it, to <see cref="SameStation"/> and <see cref="SameTop"/>, the plan is that plan.
/// </summary>
public sealed record BuiltFacts(IReadOnlyList<BuiltPost> Posts)
{
    /// <summary>Stations that differ by no more are one place.</summary>
    public static readonly Length SameStation = Length.FromNanometres(1_000);

    /// <summary>Tops that differ by no more are one height.</summary>
    public static readonly Length SameTop = Length.FromNanometres(100_000);

    public static BuiltFacts None { get; } = new([]);
}

/// <summary>A line post that stands at a level distance from the start of a leg.</summary>
/// <param name="Top">Height of the top of the fabric it is set for over the job's datum; counts over measured ground.</param>
public sealed record BuiltPost(BuiltPostId Id, LegId Leg, Length FromLegStart, Length? Top = null);
