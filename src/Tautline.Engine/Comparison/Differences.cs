using Tautline.Engine.Catalog;
using Tautline.Engine.Reasons;
using Tautline.Engine.Takeoff;

namespace Tautline.Engine.Comparison;

/// <summary>A limit on which two rule sets differ; nothing where a set states none.</summary>
public sealed record LimitDifference(RuleKey Rule, Step? Step, Limit? A, Limit? B)
{
    /// <summary>False for a limit that is only recorded: it changes nothing in the plan.</summary>
    public bool Planned => Rule.Use != RuleUse.Recorded;
}

/// <summary>What a job comes to, in one figure.</summary>
public enum JobFigure
{
    Posts, Terminals, LinePosts, Bays, LargestBay, WidestHole, DeepestHole, Concrete, Bags, BracedEnds, Bands, PostTies, RailTies, Rings,
}

/// <summary>One figure of the job by either set.</summary>
public sealed record FigureDifference(JobFigure Figure, Unit Unit, double A, double B)
{
    public bool Differs => Decide.Billionths(A) != Decide.Billionths(B);
}

/// <summary>A take-off line whose net quantity, purchase or weight differs; nothing where a plan has no such line.</summary>
public sealed record TakeoffDifference(TakeoffLine? A, TakeoffLine? B)
{
    /// <summary>The line itself, for what both have in common.</summary>
    public TakeoffLine Item => A ?? B!;
}
