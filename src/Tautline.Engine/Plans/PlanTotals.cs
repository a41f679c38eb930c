using Tautline.Engine.Quantities;

namespace Tautline.Engine.Plans;

/// <summary>What a plan amounts to, or several plans together.</summary>
/// <param name="Lines">Without temporary fence, which is on no line.</param>
/// <param name="Fence">Of all lines along the ground, gates included.</param>
/// <param name="Posts">As numbered along the lines; those that stand already are among them.</param>
public sealed record PlanTotals(int Lines, Length Fence, int Posts, int Gates)
{
    public static PlanTotals None { get; } = new(0, Length.Zero, 0, 0);

    public static PlanTotals Of(Plan plan) => plan.Lines.Aggregate(
        None, (sum, line) => sum + new PlanTotals(1, line.Along, line.Posts.Count, line.Gates.Count));

    public static PlanTotals operator +(PlanTotals a, PlanTotals b)
        => new(a.Lines + b.Lines, a.Fence + b.Fence, a.Posts + b.Posts, a.Gates + b.Gates);
}
